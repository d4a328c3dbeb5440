#include "text_file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <system_error>
#include <utility>
#include <vector>

#include "descriptor.hpp"
#include "lines.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/base/words.hpp"

namespace wetout::files {
namespace {

namespace fs = std::filesystem;

std::string name_of(const fs::path& path) { return base::shown(path.string()); }

base::Problem about(const fs::path& path, std::string code, std::string message) {
  return {.code = std::move(code), .message = std::move(message), .file = path.string()};
}

std::string megabytes(std::uintmax_t bytes) {
  return fmt::format("{:.1f} MiB", static_cast<double>(bytes) / static_cast<double>(1 << 20));
}

base::Problem too_big(std::string file, std::uintmax_t bytes, const FileKind& kind) {
  return {.code = "file.too_big",
          .message = fmt::format("is too big for {}; it was not read", kind.name),
          .file = std::move(file),
          .found = megabytes(bytes),
          .expected = std::string(kind.expected),
          .hint = "is this the file you meant?"};
}

// The name most like it in the same folder.
std::string meant(const fs::path& path) {
  constexpr int most_looked_at = 5000;
  std::vector<std::string> names;
  std::error_code error;
  const fs::path folder = path.has_parent_path() ? path.parent_path() : fs::path(".");
  fs::directory_iterator entry(folder, error);
  for (int n = 0; !error && entry != fs::directory_iterator() && n < most_looked_at; ++n) {
    const std::string name = entry->path().filename().string();
    if (name != path.filename().string() && !fs::is_directory(entry->path(), error)) {
      names.push_back(name);
    }
    entry.increment(error);
  }
  const auto near = base::nearest(path.filename().string(), names);
  return near ? (path.parent_path() / *near).string() : std::string();
}

base::Problem missing(const fs::path& path, const FileKind& kind) {
  base::Problem problem = about(path, "file.missing", "there is no such file");
  std::error_code error;
  const fs::path folder = path.parent_path();
  if (path.empty()) {
    problem.message = "no file is named";
    problem.expected = "the name of a file";
  } else if (fs::is_symlink(fs::symlink_status(path, error))) {
    problem.message = "is a link to a file that does not exist";
  } else if (!folder.empty() && !fs::is_directory(folder, error)) {
    problem.message = "there is no folder \"" + name_of(folder) + "\"";
  } else if (const std::string near = meant(path); !near.empty()) {
    problem.hint = "did you mean \"" + base::shown(near) + "\"?";
  } else {
    problem.hint = kind.start;
  }
  return problem;
}

base::Problem unreadable(const fs::path& path, const std::error_code& why) {
  base::Problem problem = about(path, "file.unreadable", "cannot be read: " + why.message());
  if (why == std::errc::permission_denied) {
    problem.hint = "you may not read this file; its owner can allow it (chmod)";
  }
  return problem;
}

std::error_code last_error() { return {errno, std::generic_category()}; }

// Offset of the first byte that is no UTF-8 text, or the size.
std::size_t first_wrong(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  for (std::size_t i = 0; i < text.size();) {
    const unsigned char c = byte(i);
    if (c == 0) return i;
    if (c < 0x80) {
      ++i;
      continue;
    }
    // Unicode standard, table 3-7: well-formed byte sequences.
    std::size_t more = 0;
    unsigned char low = 0x80, high = 0xbf;
    if (c >= 0xc2 && c <= 0xdf) more = 1;
    if (c >= 0xe0 && c <= 0xef) more = 2;
    if (c >= 0xf0 && c <= 0xf4) more = 3;
    if (c == 0xe0) low = 0xa0;
    if (c == 0xed) high = 0x9f;
    if (c == 0xf0) low = 0x90;
    if (c == 0xf4) high = 0x8f;
    if (more == 0 || i + more >= text.size()) return i;
    if (byte(i + 1) < low || byte(i + 1) > high) return i;
    for (std::size_t k = 2; k <= more; ++k) {
      if (byte(i + k) < 0x80 || byte(i + k) > 0xbf) return i;
    }
    i += more + 1;
  }
  return text.size();
}

base::Problem binary(std::string_view text, std::size_t at, std::string_view name) {
  constexpr std::string_view byte_order_mark = "\xef\xbb\xbf";
  const bool marked = text.starts_with(byte_order_mark);
  const Position place = Lines(text).position(marked && at >= 3 ? at - 3 : at);
  base::Problem problem{.code = "file.binary",
                        .message = "is not a text file",
                        .file = std::string(name),
                        .line = place.line,
                        .column = place.column,
                        .expected = "TOML text in UTF-8"};
  const auto c = static_cast<unsigned char>(text[at]);
  problem.found = fmt::format("byte 0x{:02x} at offset {}", c, at);
  if (text.starts_with("\xff\xfe") || text.starts_with("\xfe\xff")) {
    problem.message = "is text in UTF-16, which TOML does not allow";
    problem.hint = "save it as UTF-8";
  } else if (c != 0) {
    problem.message = "is not UTF-8 text";
    problem.hint = "save it as UTF-8; or is this the file you meant?";
  } else {
    problem.hint = "is this the file you meant?";
  }
  return problem;
}

}  // namespace

base::Result<std::string> read_text(const fs::path& path) { return read_bytes(path, toml_file); }

base::Result<std::string> read_bytes(const fs::path& path, const FileKind& kind) {
  if (path.empty()) return base::fail(missing(path, kind));
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  if (status.type() == fs::file_type::not_found) return base::fail(missing(path, kind));
  if (error) return base::fail(unreadable(path, error));
  if (fs::is_directory(status)) {
    base::Problem problem = about(path, "file.folder", "is a folder, not a file");
    problem.hint = "name the file in it, e.g. \"" + name_of(path / kind.example) + "\"";
    return base::fail(std::move(problem));
  }
  if (!fs::is_regular_file(status)) {
    return base::fail(about(path, "file.special", "is a device or a pipe, not a file"));
  }

  // What was a file a moment ago may be a pipe by now: never wait for a writer.
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
  if (file.get() < 0) return base::fail(unreadable(path, last_error()));
  struct stat now {};
  if (::fstat(file.get(), &now) != 0) return base::fail(unreadable(path, last_error()));
  const auto size = static_cast<std::uintmax_t>(now.st_size);
  if (size > kind.largest) return base::fail(too_big(path.string(), size, kind));

  std::string text;
  std::array<char, 1 << 16> block{};
  while (text.size() <= kind.largest) {
    const ssize_t got = ::read(file.get(), block.data(), block.size());
    if (got == 0) return text;
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return base::fail(unreadable(path, last_error()));
    text.append(block.data(), static_cast<std::size_t>(got));
  }
  return base::fail(too_big(path.string(), text.size(), kind));
}

base::Problems wrong_text(std::string_view text, std::string_view name) {
  if (text.size() > largest_file) return {too_big(std::string(name), text.size(), toml_file)};
  if (const std::size_t at = first_wrong(text); at < text.size()) return {binary(text, at, name)};
  if (text.find_first_not_of(" \t\r\n", text.starts_with("\xef\xbb\xbf") ? 3 : 0) ==
      std::string_view::npos) {
    return {{.code = "file.empty",
             .message = "is empty",
             .file = std::string(name),
             .expected = "TOML text",
             .hint = "\"wetout new\" writes a shop and a job file to start from"}};
  }
  return {};
}

}  // namespace wetout::files
