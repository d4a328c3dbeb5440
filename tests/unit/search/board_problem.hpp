// A board to be glassed as a search problem: for tests and benchmarks of the search alone. The
// numbers are of the right size, not the program's: steps, times and limits are made up here.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "wetout/search/objective.hpp"

namespace wetout::search::test {

/// Five minutes.
inline constexpr Slot slots_per_hour = 12;
inline constexpr Slot slots_per_day = 24 * slots_per_hour;

/// Room air for every slot.
struct Air {
  std::vector<double> celsius;
};

/// Days and slow changes as two sines; heated to at least `heated` degrees.
Air made_up_air(int days, double mean, double heated);

struct Shop {
  Air air;
  int days = 14;
  enum class Hours { evenings, days_and_saturday, all_day } hours = Hours::evenings;
  int people = 1;
  int stands = 1;
  bool sanding_room = false;
};

struct Board {
  std::string name = "a";
  double scale = 1.0;  ///< of the attended times
  bool gloss = false;
};

/// Boards that share the people, the stands and the room of a shop.
Problem glass(const Shop& shop, const std::vector<Board>& boards);

/// The objective of one board, to the bit: last span, tight counts, visits, sum of starts, starts,
/// choices. For several boards the first term is the sum of their last ends.
Objective board_objective(const Problem& problem, const std::vector<Board>& boards);

}  // namespace wetout::search::test
