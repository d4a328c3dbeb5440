// The log cannot be used as it stands: the environment's doing, not a bug and not bad input.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "wetout/base/environment_error.hpp"

namespace wetout::joblog {

enum class StoreTrouble {
  locked,     ///< another program holds it longer than the busy timeout
  read_only,  ///< the file or its folder cannot be written by this user
  not_ours,   ///< a folder, not SQLite, or the database of another program
  newer,      ///< written by a later wetout
  damaged,    ///< truncated, torn or inconsistent
  disk_full,  ///< no room, over a quota or over a file size limit
  missing,    ///< no log there yet, or its folder is missing
  other,      ///< anything else SQLite reports; see `code`
};

/// "locked", "read_only" ... stable words for programs.
std::string_view to_string(StoreTrouble kind);

/// Nothing has been changed when this is thrown: a transaction is kept whole or not at all.
/// what() is one sentence for people that names the file; word() is "log." and the kind; hint()
/// the next step.
class StoreError : public base::EnvironmentError {
 public:
  StoreError(StoreTrouble kind, const std::filesystem::path& path, const std::string& message,
             std::string hint, int code = 0);

  StoreTrouble kind() const { return kind_; }
  const std::filesystem::path& path() const { return path_; }
  /// SQLite's extended result code; 0 when the trouble was found before SQLite was asked.
  int code() const { return code_; }

 private:
  StoreTrouble kind_;
  std::filesystem::path path_;
  int code_;
};

}  // namespace wetout::joblog
