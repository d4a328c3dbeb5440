// Followed cups kept from one run of the program to the next.
#pragma once

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>

#include "wetout/resin/answer_cache.hpp"

namespace wetout::files {

/// In memory, and in a folder of its own as one small file per key, written beside and renamed:
/// several processes may share it, and be killed. Whatever goes wrong there is silent: answers are
/// then kept in memory only. What does not carry the digest of its key and answer counts as not
/// there. Not for several threads.
class AnswerStore : public resin::AnswerCache {
 public:
  /// Together at most 20 MB on file systems with blocks of 4 KiB.
  static constexpr std::size_t usual_most_files = 5000;
  /// Longer answers stay in memory only.
  static constexpr std::size_t longest_answer = 3900;

  /// Without a folder in memory only. A folder that does not exist is made when the first answer
  /// is kept. When it holds `most_files`, all answers in it are dropped; files of other names are
  /// left alone.
  explicit AnswerStore(std::optional<std::filesystem::path> folder,
                       std::size_t most_files = usual_most_files);

  [[nodiscard]] std::optional<std::string> find(const std::string& key) override;
  void keep(const std::string& key, const std::string& answer) override;

 private:
  bool make_room();
  bool write(const std::string& key, const std::string& answer);

  resin::MemoryCache memory_;
  std::optional<std::filesystem::path> folder_;
  std::size_t most_files_;
  std::optional<std::size_t> files_;  ///< in the folder; unknown until something is written
};

}  // namespace wetout::files
