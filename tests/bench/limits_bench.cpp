// Room, core and every limit for the 4032 five-minute starts of 14 days (budget 10 ms in all, on
// one core): the courses with the forecast moved both ways, what ranges are looked up in, verdicts.
#include <benchmark/benchmark.h>

#include <chrono>
#include <cmath>
#include <fstream>
#include <iterator>
#include <numbers>
#include <string>
#include <vector>

#include "wetout/climate/core.hpp"
#include "wetout/climate/weather.hpp"
#include "wetout/schedule/limits.hpp"

namespace {

using namespace wetout;
using namespace wetout::schedule;
using climate::Guard;
using units::Temperature;

constexpr int days = 14;
constexpr int starts_a_day = 288;
// So that the last starts too have weather until they are tack-free.
constexpr int days_known = days + 2;

climate::Weather made_up() {
  climate::Weather weather;
  for (int h = 0; h <= 24 * days_known; ++h) {
    climate::WeatherPoint point;
    point.at = time::Instant{} + std::chrono::hours(h);
    point.air = Temperature::celsius(17.0 + 6.0 * std::sin(std::numbers::pi / 12.0 * (h - 9)) +
                                     3.0 * std::sin(0.041 * h));
    point.dew_point = Temperature::celsius(10.0 + 2.0 * std::sin(0.13 * h));
    weather.points.push_back(point);
  }
  return weather;
}

// Two weeks of July; made up where the data are not there.
climate::Weather chicago() {
  std::ifstream file(std::string(WETOUT_TEST_DATA) + "/weather/chicago.epw", std::ios::binary);
  const std::string bytes{std::istreambuf_iterator<char>(file), {}};
  const auto read = climate::read_weather(bytes, "chicago.epw");
  if (!read) return made_up();
  climate::Weather weather = climate::place(*read, 2026).value();
  const time::Instant from = std::chrono::sys_days{std::chrono::year{2026} / 7 / 1};
  std::erase_if(weather.points, [&](const climate::WeatherPoint& point) {
    return point.at < from || point.at > from + std::chrono::days(days_known);
  });
  return weather;
}

climate::Room room(bool heated) {
  climate::Room room;
  if (heated) {
    room.kind = climate::RoomKind::heated;
    room.heater = climate::Heater{climate::HeaterKind::electric, Temperature::celsius(18)};
    room.humidity_max = 0.6;
  }
  return room;
}

FilmRules rules() {
  FilmRules rules;
  rules.lowest = Temperature::celsius(15);
  rules.highest = Temperature::celsius(30);
  rules.humidity_most = 0.8;
  rules.margin_least = units::TempDelta::kelvin(3);
  rules.core_rise_most = units::TempDelta::kelvin(1);
  return rules;
}

std::vector<OpenFilm> films(time::Instant first) {
  using std::chrono::minutes;
  std::vector<OpenFilm> films;
  for (int i = 0; i < days * starts_a_day; ++i) {
    const time::Instant start = first + minutes(5 * i), wet_out = start + minutes(30);
    // As in the warm and in the cool.
    const int gel = 300 + i % 300;
    films.push_back({start, wet_out, wet_out + minutes(gel), wet_out + minutes(gel * 7 / 4)});
  }
  return films;
}

Conditions all_conditions(const climate::Weather& weather, bool heated) {
  const auto foam = climate::usual_foam(climate::FoamKind::eps);
  const units::Duration lag = climate::core_lag(units::millimetres(60), foam).value();
  return conditions(weather, room(heated), lag, Guard::normal, weather.first()).value();
}

void everything(benchmark::State& state, const climate::Weather& weather, bool heated) {
  const std::vector<OpenFilm> open = films(weather.first());
  const FilmRules kept = rules();
  int refused = 0;
  for (auto _ : state) {
    const LimitTester tester(all_conditions(weather, heated));
    refused = 0;
    for (const OpenFilm& film : open) {
      refused += tester.verdict(film, kept).state == State::refuse ? 1 : 0;
    }
    benchmark::DoNotOptimize(refused);
  }
  state.counters["refused"] = refused;
}
BENCHMARK_CAPTURE(everything, chicago_unheated, chicago(), false)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(everything, chicago_heated, chicago(), true)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(everything, made_up_unheated, made_up(), false)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(everything, made_up_heated, made_up(), true)->Unit(benchmark::kMillisecond);

// The parts of it.
void the_conditions(benchmark::State& state, const climate::Weather& weather) {
  std::size_t points = 0;
  for (auto _ : state) {
    const Conditions found = all_conditions(weather, false);
    points = found.air.points().size() + found.core.points().size() +
             found.cold_air.points().size() + found.cold_surface.points().size() +
             found.damp_dew_point->points().size() + found.warm_air.points().size();
    benchmark::DoNotOptimize(points);
  }
  state.counters["points"] = static_cast<double>(points);
}
BENCHMARK_CAPTURE(the_conditions, chicago, chicago())->Unit(benchmark::kMillisecond);

void the_tester(benchmark::State& state, const climate::Weather& weather) {
  const Conditions found = all_conditions(weather, false);
  for (auto _ : state) {
    const LimitTester tester(found);
    benchmark::DoNotOptimize(tester);
  }
}
BENCHMARK_CAPTURE(the_tester, chicago, chicago())->Unit(benchmark::kMillisecond);

void the_verdicts(benchmark::State& state, const climate::Weather& weather) {
  const LimitTester tester(all_conditions(weather, false));
  const std::vector<OpenFilm> open = films(weather.first());
  const FilmRules kept = rules();
  for (auto _ : state) {
    for (const OpenFilm& film : open) benchmark::DoNotOptimize(tester.verdict(film, kept));
  }
}
BENCHMARK_CAPTURE(the_verdicts, chicago, chicago())->Unit(benchmark::kMillisecond);

void one_start_in_detail(benchmark::State& state, const climate::Weather& weather) {
  const LimitTester tester(all_conditions(weather, false));
  const OpenFilm film = films(weather.first())[1000];
  const FilmRules kept = rules();
  for (auto _ : state) benchmark::DoNotOptimize(tester.details(film, kept));
}
BENCHMARK_CAPTURE(one_start_in_detail, chicago, chicago())->Unit(benchmark::kMicrosecond);

}  // namespace

BENCHMARK_MAIN();
