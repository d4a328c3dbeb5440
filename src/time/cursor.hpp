// Digits and marks at fixed places, the way dates and times are written.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace wetout::time {

class Cursor {
 public:
  explicit Cursor(std::string_view text) : rest_(text) {}

  /// Exactly `digits` digits, which no further digit follows.
  std::optional<int> number(std::size_t digits) {
    if (count_digits() != digits) return std::nullopt;
    int value = 0;
    for (std::size_t i = 0; i < digits; ++i) value = value * 10 + (rest_[i] - '0');
    rest_.remove_prefix(digits);
    return value;
  }
  bool take(char mark) {
    if (rest_.empty() || rest_.front() != mark) return false;
    rest_.remove_prefix(1);
    return true;
  }
  bool take(std::string_view marks) {
    if (!rest_.starts_with(marks)) return false;
    rest_.remove_prefix(marks.size());
    return true;
  }
  bool take_any(std::string_view marks) {
    if (rest_.empty() || marks.find(rest_.front()) == std::string_view::npos) return false;
    rest_.remove_prefix(1);
    return true;
  }
  void skip_digits() { rest_.remove_prefix(count_digits()); }
  void skip_blanks() {
    while (take(' ')) {
    }
  }
  [[nodiscard]] std::size_t count_digits() const {
    std::size_t n = 0;
    while (n < rest_.size() && rest_[n] >= '0' && rest_[n] <= '9') ++n;
    return n;
  }
  [[nodiscard]] bool at_end() const { return rest_.empty(); }

 private:
  std::string_view rest_;
};

}  // namespace wetout::time
