#include "wetout/schedule/conditions.hpp"

#include <utility>

#include "wetout/climate/core.hpp"

namespace wetout::schedule {
namespace {

struct Inside {
  time::History air, core;
  std::optional<time::History> dew_point;
};

base::Result<Inside> inside(const climate::Room& room, const time::History& air,
                            std::optional<time::History> dew_point, units::Duration core_lag,
                            const climate::ClimateDefaults& defaults) {
  const auto course = climate::RoomAir::of(room, air, std::move(dew_point), defaults);
  if (!course) return tl::unexpected(course.error());
  time::History room_air = course->air_history();
  time::History core = climate::core_course(room_air, core_lag).sampled();
  return Inside{std::move(room_air), std::move(core), course->dew_point_history()};
}

}  // namespace

base::Result<Conditions> conditions(const climate::Weather& weather, const climate::Room& room,
                                    units::Duration core_lag, climate::Guard guard,
                                    time::Instant issued,
                                    const climate::ClimateDefaults& defaults) {
  using climate::Way;
  const time::History air = climate::air_history(weather);
  const auto dew_point = climate::dew_point_history(weather);
  const auto at = [&](const time::History& history, Way way) {
    return climate::moved(history, way, guard, issued, defaults);
  };
  const auto damp = dew_point ? std::optional(at(*dew_point, Way::warmer)) : std::nullopt;
  auto plain = inside(room, air, dew_point, core_lag, defaults);
  if (!plain) return tl::unexpected(plain.error());
  auto cold = inside(room, at(air, Way::colder), damp, core_lag, defaults);
  if (!cold) return tl::unexpected(cold.error());
  auto warm = inside(room, at(air, Way::warmer), std::nullopt, core_lag, defaults);
  if (!warm) return tl::unexpected(warm.error());
  time::History cold_surface = climate::surface(cold->air, cold->core);
  return Conditions{.air = std::move(plain->air),
                    .core = std::move(plain->core),
                    .dew_point = std::move(plain->dew_point),
                    .cold_air = std::move(cold->air),
                    .cold_surface = std::move(cold_surface),
                    .damp_dew_point = std::move(cold->dew_point),
                    .warm_air = std::move(warm->air),
                    .gaps = weather.gaps,
                    .humidity_gaps = weather.humidity_gaps,
                    .foul_air = climate::fouls_the_air(room)};
}

}  // namespace wetout::schedule
