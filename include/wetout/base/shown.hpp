// What people typed, made safe to repeat in a message.
#pragma once

#include <string>
#include <string_view>

namespace wetout::base {

/// `typed` cut after 60 bytes (with "..."), control characters and bytes that are not UTF-8 as "?".
std::string shown(std::string_view typed);

}  // namespace wetout::base
