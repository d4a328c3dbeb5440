#include "wetout/schedule/window_odds.hpp"

#include <chrono>
#include <cmath>

#include "normal.hpp"

namespace wetout::schedule {

double WindowOdds::Ages::between(time::Instant from, time::Instant to) const {
  const auto age = [&](time::Instant at) {
    return clock.age(std::chrono::duration<double>(at - first).count());
  };
  return age(to) - age(from);
}

base::Result<WindowOdds> WindowOdds::of(const climate::Weather& weather, const climate::Room& room,
                                        time::Instant issued, const time::History& air,
                                        const Sources& sources,
                                        const climate::ClimateDefaults& climate,
                                        const OddsDefaults& defaults) {
  // Films have no core.
  const auto inside =
      conditions(weather, room, units::Duration(), climate::Guard::normal, issued, climate);
  if (!inside) return tl::unexpected(inside.error());
  WindowOdds odds;
  for (const auto& [id, source] : sources) {
    if (!source->calibration()) continue;
    const resin::Cure& cure = source->calibration()->cure;
    const auto ages = [&](const time::History& course) {
      return Ages{resin::Clock(cure.kinetics.energy_j_per_mol, cure.sheet_air, course),
                  course.first()};
    };
    odds.resins_.emplace(
        id, OfResin{ages(air), ages(inside->air), ages(inside->warm_air),
                    source->product().speed_spread.value_or(defaults.speed_spread.value)});
  }
  return odds;
}

double WindowOdds::holds(const std::string& resin, time::Instant spread, time::Instant closes,
                         time::Instant must) const {
  const auto of = resins_.find(resin);
  if (of == resins_.end() || must <= spread) return 1.0;
  if (closes <= spread) return 0.0;
  const auto& [air, plain, warm, own] = of->second;
  const double room = std::log(air.between(spread, closes) / air.between(spread, must));
  const double weather = std::log(warm.between(spread, must) / plain.between(spread, must));
  return normal_below(room / std::hypot(own, weather));
}

}  // namespace wetout::schedule
