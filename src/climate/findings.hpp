// The problems of one weather file, up to a number that can still be read.
#pragma once

#include <string>
#include <string_view>
#include <utility>

#include "wetout/base/problem.hpp"

namespace wetout::climate {

class Findings {
 public:
  explicit Findings(std::string_view file) : file_(file) {}

  void add(base::Problem problem) {
    if (full()) return;
    problem.file = file_;
    problems_.push_back(std::move(problem));
    if (full()) {
      problems_.push_back({.code = "weather.more",
                           .message = "reading stopped here: there are too many problems",
                           .file = file_});
    }
  }
  /// Reading on would find nothing that is kept.
  [[nodiscard]] bool full() const { return problems_.size() >= most; }
  [[nodiscard]] bool empty() const { return problems_.empty(); }
  [[nodiscard]] base::Problems take() { return std::move(problems_); }
  [[nodiscard]] const std::string& file() const { return file_; }

 private:
  static constexpr std::size_t most = 20;
  std::string file_;
  base::Problems problems_;
};

}  // namespace wetout::climate
