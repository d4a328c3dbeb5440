// A name for one call that no other call has: sent again, it is the same call.
#pragma once

#include <string>

namespace wetout::cli {

/// 128 random bits as 32 digits of base 16. Throws std::exception when the computer has none.
std::string random_token();

}  // namespace wetout::cli
