// From a path to a text that can be parsed: everything that can be wrong before the first key.
#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>

#include "wetout/base/problem.hpp"

namespace wetout::files {

inline constexpr std::uintmax_t largest_file = std::uintmax_t{4} << 20;

/// What a file is expected to be, for messages about one that is not.
struct FileKind {
  std::uintmax_t largest = largest_file;
  std::string_view name;      ///< "a job or shop file"
  std::string_view expected;  ///< where it is too big
  std::string_view example;   ///< a file's name
  std::string_view start;     ///< a hint where there is none; may be empty
};
inline constexpr FileKind toml_file{largest_file, "a job or shop file",
                                    "at most 4 MiB of TOML text", "board.toml",
                                    "\"wetout new\" writes a shop and a job file to start from"};
inline constexpr FileKind weather_file{std::uintmax_t{32} << 20, "weather", "at most 32 MiB",
                                       "weather.csv", ""};

inline constexpr FileKind drawing_file{std::uintmax_t{16} << 20, "a drawing", "at most 16 MiB",
                                       "board.svg", ""};

/// The bytes of a file. Codes "file.missing", "file.folder", "file.special", "file.too_big",
/// "file.unreadable".
base::Result<std::string> read_bytes(const std::filesystem::path& path, const FileKind& kind);
/// Of a job or shop file.
base::Result<std::string> read_text(const std::filesystem::path& path);

/// Nothing, or why this is no text: "file.empty", "file.binary" (a NUL, or bytes that are not
/// UTF-8, with the place), "file.too_big".
base::Problems wrong_text(std::string_view text, std::string_view name);

}  // namespace wetout::files
