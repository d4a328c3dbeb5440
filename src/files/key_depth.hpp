// The parser bounds brackets and braces but not dotted keys, and frees its tree by recursion: a key
// of a hundred thousand parts would overflow the stack.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace wetout::files {

/// Far more than any key of a job or shop file has.
inline constexpr int most_key_parts = 16;

/// Byte at which a key gets longer than that, up to the first syntax error.
std::optional<std::size_t> too_many_parts(std::string_view text);

}  // namespace wetout::files
