// Expected errors: bad input, out of a model's range, a plan that cannot be met. Bugs are
// std::logic_error (base/check.hpp), the environment is an exception (joblog::StoreError).
#pragma once

#include <string>
#include <tl/expected.hpp>
#include <utility>
#include <vector>

namespace wetout::base {

/// One thing that is wrong, said so that the reader can mend it without a manual.
/// Empty strings and zeros mean "does not apply".
struct Problem {
  std::string code = {};         ///< stable word for programs, e.g. "unit.wrong"
  std::string message = {};      ///< one sentence for people
  std::string file = {};         ///< as the user named it
  int line = 0;                  ///< from 1
  int column = 0;                ///< from 1, in characters
  std::string key = {};          ///< e.g. "board.width.nose12"
  std::string found = {};        ///< what stands there
  std::string expected = {};     ///< what should stand there, with an example
  std::string hint = {};         ///< the next step
  std::string source_line = {};  ///< text of `line`, for the caret
};

using Problems = std::vector<Problem>;

/// A value, or everything that is wrong.
template <class T>
using Result = tl::expected<T, Problems>;

/// `return fail({.code = "...", .message = "..."});`
inline tl::unexpected<Problems> fail(Problem problem) {
  Problems problems;
  problems.push_back(std::move(problem));
  return tl::unexpected<Problems>(std::move(problems));
}
inline tl::unexpected<Problems> fail(Problems problems) {
  return tl::unexpected<Problems>(std::move(problems));
}

}  // namespace wetout::base
