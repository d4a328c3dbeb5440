// What the tests of actions share.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "sheets.hpp"
#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/laminate/plan.hpp"
#include "wetout/resin/defaults.hpp"

namespace wetout::work::testing {

inline bool has(const base::Notices& notices, std::string_view code) {
  return std::any_of(notices.begin(), notices.end(),
                     [&](const base::Notice& n) { return n.code == code; });
}

/// Of the only problem: "code key".
template <class T>
std::string problem_of(const base::Result<T>& result) {
  if (result) return "none";
  if (result.error().size() != 1) return std::to_string(result.error().size()) + " problems";
  return result.error().front().code + " " + result.error().front().key;
}

inline bool lists(const std::vector<laminate::Assumption>& assumptions, std::string_view name) {
  return std::any_of(assumptions.begin(), assumptions.end(),
                     [&](const laminate::Assumption& a) { return a.name == name; });
}

/// Moves each default of resins by 1 % of its range, both ways: it must be listed if and only if
/// the answer moves. `answer` is the whole document without its assumptions.
inline void expect_listed_if_it_moves(
    const std::vector<laminate::Assumption>& listed,
    const std::function<std::string(const resin::Defaults&)>& answer) {
  const std::string before = answer({});
  resin::Defaults moved;
  const auto try_moving = [&](auto& value, const char*) {
    if constexpr (std::is_same_v<decltype(value.value), double>) {
      const double usual = value.value;
      bool moves = false;
      for (const double sign : {-1.0, 1.0}) {
        value.value =
            std::clamp(usual + sign * 0.01 * (value.high - value.low), value.low, value.high);
        moves = moves || (value.value != usual && answer(moved) != before);
      }
      value.value = usual;
      EXPECT_EQ(lists(listed, value.name), moves) << value.name << " of " << before;
    }
  };
  visit(moved, try_moving);
  visit(moved.cure, try_moving);
}

}  // namespace wetout::work::testing
