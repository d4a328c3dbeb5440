#include "joblog/folder.hpp"

#include <fcntl.h>
#include <sqlite3.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <system_error>

#include "joblog/errors.hpp"

namespace wetout::joblog {
namespace fs = std::filesystem;
namespace {

std::string reason(int error) { return std::error_code(error, std::system_category()).message(); }

[[noreturn]] void raise_errno(int error, const fs::path& path) {
  // SQLite's own rule for what an errno means, so that a disk is full in one way only.
  const StoreTrouble kind = classify(SQLITE_IOERR, error);
  throw store_error(kind, path, kind == StoreTrouble::disk_full ? "" : reason(error));
}

class Descriptor {
 public:
  Descriptor(const fs::path& path, int flags) : fd_(::open(path.c_str(), flags | O_CLOEXEC)) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() {
    if (fd_ >= 0) ::close(fd_);
  }
  int get() const { return fd_; }

 private:
  int fd_;
};

void sync(const fs::path& path, int flags) {
  const Descriptor file(path, flags);
  if (file.get() < 0 || ::fsync(file.get()) != 0) raise_errno(errno, path);
}

}  // namespace

FileState look(const fs::path& path) {
  struct stat s = {};
  if (::stat(path.c_str(), &s) != 0) {
    if (errno == ENOENT || errno == ENOTDIR) return {};
    raise_errno(errno, path);
  }
  return {true, S_ISREG(s.st_mode), S_ISDIR(s.st_mode), static_cast<std::uint64_t>(s.st_size)};
}

fs::path beside(const fs::path& path, const char* ending) {
  fs::path other = path;
  other += ending;
  return other;
}

fs::path folder_of(const fs::path& path) {
  return path.has_parent_path() ? path.parent_path() : fs::path(".");
}

bool may_write_beside(const fs::path& path) {
  return ::access(folder_of(path).c_str(), W_OK | X_OK) == 0;
}

void make_folder_for(const fs::path& path) {
  const fs::path folder = folder_of(path);
  if (look(folder).exists) return;
  make_folder_for(folder);
  if (::mkdir(folder.c_str(), 0700) != 0 && errno != EEXIST) raise_errno(errno, path);
  sync_folder_of(folder);
}

bool move_unless_there(const fs::path& from, const fs::path& to) {
  if (::renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE) == 0) return true;
  if (errno == EEXIST) return false;
  if (errno != EINVAL && errno != ENOSYS) raise_errno(errno, to);
  // A file system without that flag; hard links refuse an existing name as well.
  if (::link(from.c_str(), to.c_str()) != 0) {
    if (errno == EEXIST) return false;
    raise_errno(errno, to);
  }
  ::unlink(from.c_str());
  return true;
}

void sync_file(const fs::path& path) { sync(path, O_RDONLY); }

void sync_folder_of(const fs::path& path) { sync(folder_of(path), O_RDONLY | O_DIRECTORY); }

PartFile::PartFile(const fs::path& target) {
  std::string name = target.string() + ".part-XXXXXX";
  const int fd = ::mkostemp(name.data(), O_CLOEXEC);
  if (fd < 0) raise_errno(errno, target);
  ::close(fd);
  path_ = name;
}

PartFile::~PartFile() {
  for (const char* ending : {"", "-wal", "-shm", "-journal"}) {
    ::unlink(beside(path_, ending).c_str());
  }
}

}  // namespace wetout::joblog
