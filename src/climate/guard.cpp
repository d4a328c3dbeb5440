#include "wetout/climate/guard.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "wetout/base/check.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/base/words.hpp"

namespace wetout::climate {

base::Result<Guard> read_guard(std::string_view text) {
  if (text == "none") return Guard::none;
  if (text == "normal") return Guard::normal;
  if (text == "wide") return Guard::wide;
  const auto meant = base::nearest(text, {"none", "normal", "wide"});
  return base::fail({.code = "word.unknown",
                     .message = "\"" + base::shown(text) + "\" is not a guard",
                     .found = base::shown(text),
                     .expected = "none, normal or wide",
                     .hint = meant ? "did you mean \"" + *meant + "\"?" : std::string()});
}

std::string_view to_string(Guard guard) {
  switch (guard) {
    case Guard::none:
      return "none";
    case Guard::normal:
      return "normal";
    case Guard::wide:
      return "wide";
  }
  base::broken_promise("a guard is none, normal or wide");
}

units::TempDelta guard_shift(Guard guard, units::Duration lead, const ClimateDefaults& defaults) {
  if (guard == Guard::none) return {};
  const double days = std::max(0.0, units::in_seconds(lead) / 86400.0);
  const double normal = std::min(defaults.guard_now.value + defaults.guard_per_day.value * days,
                                 defaults.guard_most.value);
  return units::TempDelta::kelvin(guard == Guard::wide ? defaults.guard_wide.value * normal
                                                       : normal);
}

time::History moved(const time::History& kelvin, Way way, Guard guard, time::Instant issued,
                    const ClimateDefaults& defaults) {
  if (guard == Guard::none) return kelvin;
  std::vector<time::Instant> instants;
  for (const time::HistoryPoint& point : kelvin.points()) instants.push_back(point.at);
  const auto bend = [&](double lead_s) {
    for (const double s : {std::floor(lead_s), std::ceil(lead_s)}) {
      const auto at = issued + std::chrono::seconds(static_cast<std::int64_t>(s));
      if (at > kelvin.first() && at < kelvin.last()) instants.push_back(at);
    }
  };
  bend(0.0);
  const double grows = defaults.guard_most.value - defaults.guard_now.value;
  if (grows > 0.0 && defaults.guard_per_day.value > 0.0) {
    bend(86400.0 * grows / defaults.guard_per_day.value);
  }
  std::sort(instants.begin(), instants.end());
  instants.erase(std::unique(instants.begin(), instants.end()), instants.end());
  std::vector<time::HistoryPoint> points;
  points.reserve(instants.size());
  for (const time::Instant at : instants) {
    const auto lead = units::seconds(static_cast<double>((at - issued).count()));
    const double shift = guard_shift(guard, lead, defaults).in_kelvin();
    points.push_back({at, kelvin.at(at) + (way == Way::warmer ? shift : -shift)});
  }
  return *time::History::of(std::move(points));
}

}  // namespace wetout::climate
