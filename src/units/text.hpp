// Typed text made plain before it is scanned.
#pragma once

#include <string>
#include <string_view>

namespace wetout::units {

/// No quantity is longer than this, in bytes.
inline constexpr std::size_t longest_text = 200;

/// The same text in ASCII: primes and curly quotes as ' and ", dashes as -, superscripts as ^2,
/// the degree sign as "deg", 1/2 for the half sign, plain blanks, lower case. Bytes it does not
/// know are kept.
std::string plain(std::string_view text);

/// Without blanks at both ends.
std::string_view trimmed(std::string_view text);

}  // namespace wetout::units
