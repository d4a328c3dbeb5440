// What is better: terms compared one after the other, each smaller is better.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "wetout/search/problem.hpp"

namespace wetout::search {

/// Sum over `sets` of when the last operation of the set ends. With a calendar an end counts as the
/// start of the working span that holds it: the last span that starts before the end (by the start
/// for an operation without attended part); an end before all spans counts as 0. A set without an
/// operation that takes place counts 0. One value.
struct LastEnd {
  std::vector<std::vector<int>> sets = {};  ///< empty: all operations in one set
  int calendar = -1;
};

/// How many items are at level 0, how many at level 1 ... One value per level. An item is a
/// Tightness of an operation that takes place, or what is left before the maximum of a Lag with a
/// scale, at level left * per_scale / scale (rounded down). Levels from `levels` on do not count.
struct TightCounts {
  int levels = 5;
  int per_scale = 10;
};

/// Per set: 1 + number of gaps of `gap` slots or more without attended work between its first and
/// its last operation. One value, the sum.
struct Visits {
  Slot gap = 6;
  std::vector<std::vector<int>> sets = {};  ///< empty: all operations in one set
};

/// Sum over the operations that take place of a cost that depends on the start. One value.
struct Sum {
  std::vector<Map> cost = {};  ///< per operation; empty: the start itself
};

/// Starts, one value per operation, in the order of their ids; -1 for one that does not take place.
/// Only Choices may follow it.
struct Starts {};

/// Chosen options, one value per group; -1 for a group that does not exist. The last term.
struct Choices {};

using Term = std::variant<LastEnd, TightCounts, Visits, Sum, Starts, Choices>;

/// Each kind of term at most once.
struct Objective {
  std::vector<Term> terms = {};
};

/// The values of all terms one after the other; compared lexicographically.
using Value = std::vector<std::int64_t>;

/// Throws std::logic_error when the objective does not fit the problem.
void check(const Objective& objective, const Problem& problem);

/// A complete set of starts and choices. `start` has no value for an operation that does not take
/// place; `choice` is -1 for a group that does not exist.
struct Schedule {
  std::vector<std::optional<Slot>> start = {};
  std::vector<int> choice = {};
};

/// The value of a schedule, whether it keeps the rules or not.
Value evaluate(const Problem& problem, const Objective& objective, const Schedule& schedule);

/// What the schedule breaks, one line each, naming the operations; empty when it keeps every rule.
/// Slow and direct: the second route to what solve() promises.
std::vector<std::string> broken_rules(const Problem& problem, const Schedule& schedule);

}  // namespace wetout::search
