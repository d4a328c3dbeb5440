// The file system around a log: what stands at a path, moving without overwriting, syncing.
#pragma once

#include <cstdint>
#include <filesystem>
#include <string>

namespace wetout::joblog {

struct FileState {
  bool exists = false;
  bool regular = false;
  bool folder = false;
  std::uint64_t bytes = 0;
};

/// Follows links. Throws StoreError when the path cannot be looked at.
FileState look(const std::filesystem::path& path);

/// "log.db" and "-wal" make "log.db-wal".
std::filesystem::path beside(const std::filesystem::path& path, const char* ending);

std::filesystem::path folder_of(const std::filesystem::path& path);
bool may_write_beside(const std::filesystem::path& path);

/// Creates the missing folders above `path` for this user only. Throws StoreError.
void make_folder_for(const std::filesystem::path& path);

/// False when `to` exists; it is never overwritten. Throws StoreError naming `to`.
bool move_unless_there(const std::filesystem::path& from, const std::filesystem::path& to);

/// Bytes and name are on the disk when these return. Throw StoreError.
void sync_file(const std::filesystem::path& path);
void sync_folder_of(const std::filesystem::path& path);

/// A new empty file `target`.part-XXXXXX for a database to be built in; it is removed at the end
/// of the scope, together with what SQLite left beside it, unless it has been moved away.
class PartFile {
 public:
  /// Throws StoreError naming `target`.
  explicit PartFile(const std::filesystem::path& target);
  PartFile(const PartFile&) = delete;
  PartFile& operator=(const PartFile&) = delete;
  ~PartFile();
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

}  // namespace wetout::joblog
