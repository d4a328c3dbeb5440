// Questions as a shop asks them: boards, made-up weeks of weather, hours, a room.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "search/random_problem.hpp"
#include "wetout/schedule/arrange.hpp"
#include "wetout/schedule/set_up.hpp"

namespace wetout::schedule::sample {

using search::test::Random;

/// Of a day of the week: 0 is Monday.
time::DaySpan from_to(double from_h, double to_h);
/// The same hours every day.
WeekHours every_day(double from_h, double to_h);

/// Days that are warmer or colder than others, and damper.
struct Week {
  double mean_c = 20.0, swing_k = 4.0, dew_c = 9.0;
  std::vector<double> warmer_k = {}, damper_k = {};  ///< of each day; others: 0
};
Week random_week(Random& random, int days);
/// Hourly, from two days before sample::midnight.
climate::Weather weather(const Week& week, int days);

/// One board, an unheated room, evenings from 18 to 22 h, Saturdays by day too: from
/// sample::midnight (a Sunday) on, UTC.
Asked asked(std::vector<laminate::CoatSpec> coats, const Week& week, int days);

/// Lam and hotcoat of one face, quick: some twenty steps.
std::vector<laminate::CoatSpec> one_face();

struct Answered {
  SetUp set_up;
  Arranging arranging;
  Arrangement arrangement;
  [[nodiscard]] bool fits() const { return arrangement.fits(); }
  /// The start of the working span that holds the end of the last step.
  [[nodiscard]] time::Instant finish() const;
  [[nodiscard]] const PlacedStep* placed(std::string_view name) const;
};
/// Fails the test on problems.
Answered answer(const Asked& asked);

}  // namespace wetout::schedule::sample
