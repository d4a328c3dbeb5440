#include "wetout/files/answer_store.hpp"

#include <fcntl.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <string_view>
#include <system_error>
#include <utility>

#include "descriptor.hpp"
#include "wetout/base/check.hpp"
#include "wetout/base/sha256.hpp"

namespace wetout::files {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t key_digits = 64;
constexpr std::string_view first_word = "wetout answer 1 ";
constexpr std::string_view part_beginning = "part-";

bool is_key(std::string_view name) {
  return name.size() == key_digits &&
         name.find_first_not_of("0123456789abcdef") == std::string_view::npos;
}

// Answers, and what a killed process left of one.
bool is_ours(std::string_view name) { return is_key(name) || name.starts_with(part_beginning); }

std::string head_of(const std::string& key, std::string_view answer) {
  std::string digested = key + '\n';
  digested += answer;
  return std::string(first_word) + base::hex(base::sha256(digested)) + '\n';
}

std::optional<std::string> read_small(const fs::path& path) {
  // What should be a file may be a pipe: never wait for a writer.
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOFOLLOW));
  struct stat about {};
  if (file.get() < 0 || ::fstat(file.get(), &about) != 0 || !S_ISREG(about.st_mode)) {
    return std::nullopt;
  }
  std::array<char, AnswerStore::longest_answer + 256> block{};
  std::size_t size = 0;
  while (size < block.size()) {
    const ssize_t got = ::read(file.get(), block.data() + size, block.size() - size);
    if (got == 0) return std::string(block.data(), size);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return std::nullopt;
    size += static_cast<std::size_t>(got);
  }
  return std::nullopt;  // no answer is that long
}

bool write_all(int fd, std::string_view text) {
  while (!text.empty()) {
    const ssize_t put = ::write(fd, text.data(), text.size());
    if (put < 0 && errno == EINTR) continue;
    if (put <= 0) return false;
    text.remove_prefix(static_cast<std::size_t>(put));
  }
  return true;
}

// XDG Base Directory Specification 0.8: folders that are made are the user's alone.
bool make_folder(const fs::path& folder) {
  struct stat about {};
  if (::stat(folder.c_str(), &about) == 0) return S_ISDIR(about.st_mode);
  if (folder.has_parent_path() && folder.parent_path() != folder &&
      !make_folder(folder.parent_path())) {
    return false;
  }
  return ::mkdir(folder.c_str(), 0700) == 0 || errno == EEXIST;
}

template <typename Do>
bool each_of_ours(const fs::path& folder, const Do& act) {
  std::error_code error;
  fs::directory_iterator entry(folder, error);
  while (!error && entry != fs::directory_iterator()) {
    const fs::path path = entry->path();
    if (is_ours(path.filename().native())) act(path);
    entry.increment(error);
  }
  return !error;
}

}  // namespace

AnswerStore::AnswerStore(std::optional<fs::path> folder, std::size_t most_files)
    : folder_(std::move(folder)), most_files_(std::max<std::size_t>(most_files, 1)) {}

std::optional<std::string> AnswerStore::find(const std::string& key) {
  base::promise(is_key(key), "a key of answers that is not 64 hexadecimal digits");
  if (auto known = memory_.find(key)) return known;
  if (!folder_) return std::nullopt;
  const auto text = read_small(*folder_ / key);
  if (!text) return std::nullopt;
  const std::size_t head = text->find('\n');
  if (head == std::string::npos) return std::nullopt;
  std::string answer = text->substr(head + 1);
  if (text->compare(0, head + 1, head_of(key, answer)) != 0) return std::nullopt;
  memory_.keep(key, answer);
  return answer;
}

void AnswerStore::keep(const std::string& key, const std::string& answer) {
  base::promise(is_key(key), "a key of answers that is not 64 hexadecimal digits");
  memory_.keep(key, answer);
  if (!folder_ || answer.size() > longest_answer) return;
  // Where one write fails the next will, too: a full disk is not asked again.
  if (!make_room() || !write(key, answer)) folder_.reset();
}

bool AnswerStore::make_room() {
  if (!files_) {
    if (!make_folder(*folder_)) return false;
    std::size_t count = 0;
    if (!each_of_ours(*folder_, [&](const fs::path&) { ++count; })) return false;
    files_ = count;
  }
  if (*files_ < most_files_) return true;
  files_ = 0;
  return each_of_ours(*folder_, [](const fs::path& path) { ::unlink(path.c_str()); });
}

bool AnswerStore::write(const std::string& key, const std::string& answer) {
  std::string part = (*folder_ / std::string(part_beginning)).string() + "XXXXXX";
  const Descriptor file(::mkostemp(part.data(), O_CLOEXEC));
  if (file.get() < 0) return false;
  // Not forced to the disk: what a crash leaves of it does not carry its digest.
  if (!write_all(file.get(), head_of(key, answer) + answer) ||
      ::rename(part.c_str(), (*folder_ / key).c_str()) != 0) {
    ::unlink(part.c_str());
    return false;
  }
  ++*files_;
  return true;
}

}  // namespace wetout::files
