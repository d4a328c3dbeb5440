// SHA-256 as published in FIPS 180-4: the name of a document in the log, and of a set of inputs.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace wetout::base {

using Digest = std::array<std::uint8_t, 32>;

/// Digest of the bytes of `data`. Not constant-time: for naming documents, not for secrets.
Digest sha256(std::string_view data);

/// 64 lower-case hexadecimal digits.
std::string hex(const Digest& digest);

}  // namespace wetout::base
