// The keys of problems and notices, which several documents carry.
#pragma once

#include <optional>
#include <string>

#include "fields.hpp"
#include "numbers.hpp"
#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"

namespace wetout::report {

template <>
struct Fields<base::Notice> {
  static void visit(auto& v, auto& notice) {
    v("code", notice.code);
    v("text", notice.text);
    v("subject", notice.subject);
    v("value", notice.value, as::Plain{});
    v("limit", notice.limit, as::Plain{});
    v("unit", notice.unit);
  }
};

/// Written only. `source_line` serves the caret and stays out.
template <>
struct Fields<base::Problem> {
  static void visit(auto& v, const base::Problem& problem) {
    v("code", problem.code);
    v("message", problem.message);
    v("file", given(problem.file));
    v("line", given(problem.line));
    v("column", given(problem.column));
    v("key", given(problem.key));
    v("found", given(problem.found));
    v("expected", given(problem.expected));
    v("hint", given(problem.hint));
  }

 private:
  template <class T>
  static std::optional<T> given(const T& value) {
    return value == T{} ? std::nullopt : std::optional<T>(value);
  }
};

}  // namespace wetout::report
