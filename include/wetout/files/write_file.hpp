// Files that are made for people: a calendar, a page.
#pragma once

#include <filesystem>
#include <string_view>

#include "wetout/base/problem.hpp"

namespace wetout::files {

/// What is made, for messages and to know an earlier one by.
struct Made {
  std::string_view name;    ///< "a calendar"
  std::string_view begins;  ///< with these bytes; a file that begins otherwise is somebody's own
  std::string_view holds = {};  ///< somewhere; likewise
};

/// Whether write_made() would begin; looks only. Problems: "file.not_ours" (a file that does not
/// begin so is there), "file.folder", "file.special", "file.unwritable" (no such folder, or none to
/// write in).
base::Result<void> may_make(const std::filesystem::path& path, const Made& made);

/// Writes the file, all of it or nothing: beside it, then renamed; on the disk when it returns. One
/// that was made before is replaced. Problems: those of may_make(). Throws base::EnvironmentError
/// "disk.full" or "disk.error".
base::Result<void> write_made(const std::filesystem::path& path, std::string_view bytes,
                              const Made& made);

}  // namespace wetout::files
