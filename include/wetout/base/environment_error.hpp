// The surroundings do not let us: a locked log, a full disk, a folder we may not write in.
#pragma once

#include <stdexcept>
#include <string>
#include <utility>

namespace wetout::base {

/// what() is one sentence for people; word() a stable word for programs; hint() the next step, may
/// be empty. Nothing has been changed when it is thrown.
class EnvironmentError : public std::runtime_error {
 public:
  EnvironmentError(std::string code, const std::string& message, std::string hint = "")
      : std::runtime_error(message), code_(std::move(code)), hint_(std::move(hint)) {}

  [[nodiscard]] const std::string& word() const { return code_; }
  [[nodiscard]] const std::string& hint() const { return hint_; }

 private:
  std::string code_;
  std::string hint_;
};

}  // namespace wetout::base
