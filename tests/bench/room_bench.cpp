// Room, dew point and core over 14 days of hourly weather (budget, with all limits, 10 ms): the
// courses, their straight lines, and every 5 minutes by exact evaluation.
#include <benchmark/benchmark.h>

#include <chrono>
#include <cmath>

#include "wetout/climate/core.hpp"
#include "wetout/climate/guard.hpp"
#include "wetout/climate/room.hpp"

namespace {

using namespace wetout;
using namespace wetout::climate;

time::History outdoors(double mean_c, double swing_k) {
  std::vector<time::HistoryPoint> points;
  for (int h = 0; h <= 14 * 24; ++h) {
    points.push_back({time::Instant{} + std::chrono::hours(h),
                      273.15 + mean_c + swing_k * std::sin(0.2617994 * (h - 9)) +
                          0.3 * swing_k * std::sin(0.041 * h)});
  }
  return *time::History::of(std::move(points));
}

Room room(bool heated) {
  Room room;
  if (heated) {
    room.kind = RoomKind::heated;
    room.heater = Heater{HeaterKind::electric, units::Temperature::celsius(18)};
  }
  room.humidity_max = 0.6;
  return room;
}

void histories(benchmark::State& state, bool heated) {
  const time::History air = outdoors(16, 7), dew = outdoors(11, 2);
  const units::Duration lag = core_lag(units::millimetres(60), usual_foam(FoamKind::eps)).value();
  std::size_t points = 0;
  for (auto _ : state) {
    const RoomAir inside = RoomAir::of(room(heated), moved(air, Way::colder, Guard::normal, {}),
                                       moved(dew, Way::warmer, Guard::normal, {}))
                               .value();
    const time::History room_air = inside.air_history();
    const auto room_dew = inside.dew_point_history();
    const time::History core = core_course(room_air, lag).sampled();
    const time::History cold = surface(room_air, core);
    points = room_air.points().size() + room_dew->points().size() + core.points().size();
    benchmark::DoNotOptimize(cold);
  }
  state.counters["points"] = static_cast<double>(points);
}
BENCHMARK_CAPTURE(histories, unheated, false)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(histories, heated, true)->Unit(benchmark::kMillisecond);

void five_minute_points(benchmark::State& state) {
  const RoomAir inside = RoomAir::of(room(true), outdoors(16, 7), outdoors(11, 2)).value();
  for (auto _ : state) {
    double sum = 0.0;
    for (int i = 0; i <= 14 * 288; ++i) {
      const time::Instant at = time::Instant{} + std::chrono::minutes(5 * i);
      sum += inside.air(at).in_kelvin() + inside.dew_point(at)->in_kelvin();
    }
    benchmark::DoNotOptimize(sum);
  }
}
BENCHMARK(five_minute_points)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
