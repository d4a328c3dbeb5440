#include "wetout/files/write_file.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <string>
#include <system_error>
#include <utility>

#include "descriptor.hpp"
#include "wetout/base/environment_error.hpp"

namespace wetout::files {
namespace {

namespace fs = std::filesystem;

constexpr ::mode_t usual_mode = 0666;  // less what the user's mask takes away

base::Problem about(const fs::path& path, std::string code, std::string message) {
  return {.code = std::move(code), .message = std::move(message), .file = path.string()};
}

base::Problem unwritable(const fs::path& path, int error) {
  base::Problem problem =
      about(path, "file.unwritable",
            "cannot be written: " + std::error_code(error, std::generic_category()).message());
  const fs::path folder = path.parent_path();
  std::error_code ignored;
  if (!folder.empty() && !fs::is_directory(folder, ignored)) {
    problem.message = "there is no such folder to write it in";
  }
  problem.hint = "choose a folder that you may write in";
  return problem;
}

// Full or broken is the computer's trouble, not the user's choice of a name.
base::Result<void> failed(const fs::path& path, int error) {
  if (error == ENOSPC || error == EDQUOT) {
    throw base::EnvironmentError("disk.full",
                                 "the disk is full: " + path.string() + " was not written");
  }
  if (error == EIO) {
    throw base::EnvironmentError("disk.error",
                                 "the disk failed: " + path.string() + " was not written");
  }
  return base::fail(unwritable(path, error));
}

// As much as there is, up to `most`.
std::string read_some(int fd, std::size_t most) {
  std::string bytes(most, '\0');
  std::size_t size = 0;
  while (size < most) {
    const ssize_t got = ::read(fd, bytes.data() + size, most - size);
    if (got < 0 && errno == EINTR) continue;
    if (got <= 0) break;
    size += static_cast<std::size_t>(got);
  }
  bytes.resize(size);
  return bytes;
}

// More than anything that is made here.
constexpr std::size_t longest = std::size_t{16} << 20U;

// What is there is one of these; an empty file is nobody's work.
bool is_one(int fd, const Made& made) {
  const std::string bytes = read_some(fd, made.holds.empty() ? made.begins.size() : longest);
  return bytes.empty() ||
         (bytes.starts_with(made.begins) && bytes.find(made.holds) != std::string::npos);
}

int write_all(int fd, std::string_view text) {
  while (!text.empty()) {
    const ssize_t put = ::write(fd, text.data(), text.size());
    if (put < 0 && errno == EINTR) continue;
    if (put < 0) return errno;
    text.remove_prefix(static_cast<std::size_t>(put));
  }
  return ::fsync(fd) == 0 ? 0 : errno;
}

// A link is written through, not replaced.
fs::path target_of(const fs::path& path) {
  std::error_code error;
  const fs::path real = fs::canonical(path, error);
  return error ? path : real;
}

struct Part {
  std::string path;
  int fd = -1;
};
// A new file beside it. Not by mkstemp: that gives a file nobody else may read.
Part open_part(const fs::path& beside) {
  constexpr int most_left_over = 100;
  Part part;
  for (int n = 0; n < most_left_over; ++n) {
    part.path = beside.string() + ".part" + std::to_string(::getpid()) + "-" + std::to_string(n);
    part.fd = ::open(part.path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, usual_mode);
    if (part.fd >= 0 || errno != EEXIST) return part;
  }
  return part;
}

}  // namespace

base::Result<void> may_make(const fs::path& path, const Made& made) {
  if (path.empty()) {
    return base::fail(
        {.code = "file.missing", .message = "no file is named", .expected = "the name of a file"});
  }
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  if (status.type() == fs::file_type::not_found) {
    const fs::path folder = path.parent_path().empty() ? fs::path(".") : path.parent_path();
    if (::access(folder.c_str(), W_OK | X_OK) != 0) return base::fail(unwritable(path, errno));
    return {};
  }
  if (fs::is_directory(status)) {
    return base::fail(about(path, "file.folder", "is a folder, not a file"));
  }
  if (!fs::is_regular_file(status)) {
    return base::fail(about(path, "file.special", "is a device or a pipe, not a file"));
  }
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
  if (file.get() < 0) return base::fail(unwritable(path, errno));
  if (is_one(file.get(), made)) return {};
  base::Problem problem =
      about(path, "file.not_ours",
            "is there already and is not " + std::string(made.name) + ": it is left as it is");
  problem.hint = "choose another name, or move that file away";
  return base::fail(std::move(problem));
}

base::Result<void> write_made(const fs::path& path, std::string_view bytes, const Made& made) {
  if (auto may = may_make(path, made); !may) return may;
  const fs::path target = target_of(path);
  const Part part = open_part(target);
  const Descriptor file(part.fd);
  if (file.get() < 0) return failed(path, errno);
  struct stat before {};
  if (::stat(target.c_str(), &before) == 0) ::fchmod(file.get(), before.st_mode & 07777U);
  int error = write_all(file.get(), bytes);
  if (error == 0 && ::rename(part.path.c_str(), target.c_str()) != 0) error = errno;
  if (error == 0) return {};
  ::unlink(part.path.c_str());
  return failed(path, error);
}

}  // namespace wetout::files
