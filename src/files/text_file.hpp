// From a path to a text that can be parsed: everything that can be wrong before the first key.
#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>

#include "wetout/base/problem.hpp"

namespace wetout::files {

inline constexpr std::uintmax_t largest_file = std::uintmax_t{4} << 20;

/// The bytes of a file of at most 4 MiB. Codes "file.missing", "file.folder", "file.special",
/// "file.too_big", "file.unreadable".
base::Result<std::string> read_text(const std::filesystem::path& path);

/// Nothing, or why this is no text: "file.empty", "file.binary" (a NUL, or bytes that are not
/// UTF-8, with the place), "file.too_big".
base::Problems wrong_text(std::string_view text, std::string_view name);

}  // namespace wetout::files
