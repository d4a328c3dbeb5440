// Bits of messages.
#pragma once

#include <string>
#include <string_view>

namespace wetout::files {

/// `mark` + text + `mark`, the text as it is.
std::string enclosed(std::string_view text, char mark);
/// What someone wrote, cut and made safe, in double quotes.
std::string quoted(std::string_view typed);

}  // namespace wetout::files
