#include "wetout/schedule/odds.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

#include "normal.hpp"

namespace wetout::schedule {
namespace {

constexpr double guards_a_step = 0.5;
constexpr int steps = 6;

// How many guards the forecast may be wrong before the slack is gone: negative where even the
// forecast itself breaks the limit, by how much better it would have to be.
double guards_to_zero(const std::vector<double>& slack) {
  for (std::size_t i = 1; i < slack.size(); ++i) {
    if (slack[i] >= 0.0) continue;
    const double fall = slack[i - 1] - slack[i];
    // A limit that moving the weather does not touch is kept or broken for certain.
    if (fall <= 0.0) return -std::numeric_limits<double>::infinity();
    return guards_a_step * (static_cast<double>(i - 1) + slack[i - 1] / fall);
  }
  return guards_a_step * steps;
}

}  // namespace

base::Result<WeatherOdds> WeatherOdds::of(const climate::Weather& weather,
                                          const climate::Room& room, units::Duration core_lag,
                                          time::Instant issued, const LimitDefaults& limits,
                                          const climate::ClimateDefaults& defaults) {
  WeatherOdds odds;
  for (int i = 0; i <= steps; ++i) {
    climate::ClimateDefaults moved = defaults;
    moved.guard_wide.value = guards_a_step * i;
    auto inside = conditions(weather, room, core_lag, climate::Guard::wide, issued, moved);
    if (!inside) return tl::unexpected(inside.error());
    odds.moved_.emplace_back(std::move(*inside), limits);
  }
  return odds;
}

double WeatherOdds::holds(const OpenFilm& film, const FilmRules& rules) const {
  std::array<std::vector<double>, limit_count> slack;
  for (const LimitTester& tester : moved_) {
    for (const Tested& tested : tester.details(film, rules)) {
      // A limit just met is met, whatever the last bit says.
      slack[static_cast<std::size_t>(tested.limit)].push_back(
          tested.state == State::refuse ? tested.slack : std::max(tested.slack, 0.0));
    }
  }
  double colder = guards_a_step * steps;
  double warmer = colder;
  const auto of = [&](Limit limit) -> const auto& {
    return slack[static_cast<std::size_t>(limit)];
  };
  if (!of(Limit::weather).empty() || !of(Limit::foul_air).empty()) return 0.0;
  for (const Limit limit : {Limit::cold, Limit::dew_margin, Limit::humidity, Limit::core_rise}) {
    if (!of(limit).empty()) colder = std::min(colder, guards_to_zero(of(limit)));
  }
  if (!of(Limit::warm).empty()) warmer = guards_to_zero(of(Limit::warm));
  return std::max(0.0, normal_below(colder) + normal_below(warmer) - 1.0);
}

}  // namespace wetout::schedule
