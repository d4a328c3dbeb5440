// Reading weather from memory. Budget: a year of EPW (8760 rows) in 30 ms. Texts are made here, as
// long as real ones; `real_epw` is the file of the test data where they are found.
#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <chrono>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

#include "wetout/climate/weather.hpp"
#include "wetout/time/print.hpp"

namespace {

using namespace wetout;
namespace chrono = std::chrono;

constexpr int hours_of_a_year = 8760;

double air_c(int hour) { return 15.0 + 10.0 * std::sin(hour * 0.2618) + 0.1 * (hour % 7); }

time::Instant instant(int hour) {
  return chrono::sys_days(chrono::year(2026) / 1 / 1) + chrono::hours(hour);
}

std::string epw() {
  std::string out =
      "LOCATION,Beach Town,CA,USA,made up,000000,36.0,-121.0,-8.0,10.0\nDESIGN CONDITIONS,0\n"
      "TYPICAL/EXTREME PERIODS,0\nGROUND TEMPERATURES,0\nHOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0\n"
      "COMMENTS 1,made up\nCOMMENTS 2,made up\nDATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\n";
  for (int i = 0; i < hours_of_a_year; ++i) {
    const chrono::year_month_day date(chrono::floor<chrono::days>(instant(i)));
    out += fmt::format(
        "{},{},{},{},0,?9?9?9?9E0?9?9?9?9?9?9?9?9?9?9?9?9?9?9*_*9*9*9*9*9,{:.1f},5.0,73,99500,0,0,"
        "218,0,0,0,0,0,0,0,270,2.6,9,9,24.1,2740,9,999999999,40,0.0000,0,88,999.000,999.0,99.0\n",
        static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
        static_cast<unsigned>(date.day()), i % 24 + 1, air_c(i));
  }
  return out;
}

std::string csv() {
  std::string out = "time [America/Los_Angeles],air [C],humidity [%],wind [m/s],sun [W/m2]\n";
  const time::Zone zone = time::Zone::named("America/Los_Angeles").value();
  for (int i = 0; i < hours_of_a_year; ++i) {
    out += fmt::format("{},{:.1f},70,2.6,0\n", time::rfc3339(instant(i), zone).substr(0, 19),
                       air_c(i));
  }
  return out;
}

std::string nws() {
  std::string out = R"({"properties":{"units":"us","periods":[)";
  for (int i = 0; i < 156; ++i) {
    out += i == 0 ? "" : ",";
    out += fmt::format(
        R"({{"number":1,"name":"","startTime":"{}","endTime":"","isDaytime":true,"temperature":{},)"
        R"("temperatureUnit":"F","dewpoint":{{"unitCode":"wmoUnit:degC","value":5}},)"
        R"("relativeHumidity":{{"unitCode":"wmoUnit:percent","value":61}},"windSpeed":"10 mph"}})",
        time::rfc3339(instant(i), time::Zone()), std::lround(air_c(i) * 1.8 + 32.0));
  }
  return out + "]}}";
}

std::string arrays() {
  std::string times;
  std::string airs;
  for (int i = 0; i < hours_of_a_year; ++i) {
    const char* const comma = i == 0 ? "" : ",";
    times += fmt::format("{}\"{}\"", comma, time::rfc3339(instant(i), time::Zone()).substr(0, 16));
    airs += fmt::format("{}{:.1f}", comma, air_c(i));
  }
  return fmt::format(
      R"({{"utc_offset_seconds":0,"hourly_units":{{"temperature_2m":"C"}},"hourly":{{"time":[{}],)"
      R"("temperature_2m":[{}]}}}})",
      times, airs);
}

void reading(benchmark::State& state, const std::string& text) {
  for (auto _ : state) {
    const auto weather = climate::read_weather(text, "bench");
    if (!weather) state.SkipWithError(weather.error().front().message.c_str());
    benchmark::DoNotOptimize(weather);
  }
  state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(text.size()));
}
BENCHMARK_CAPTURE(reading, epw_year, epw())->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(reading, csv_year, csv())->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(reading, arrays_year, arrays())->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(reading, nws_week, nws())->Unit(benchmark::kMillisecond);

void real_epw(benchmark::State& state) {
  const char* const given = std::getenv("WETOUT_TEST_DATA");
  const std::filesystem::path folder = given != nullptr ? given : WETOUT_TEST_DATA;
  std::ifstream in(folder / "weather" / "chicago.epw", std::ios::binary);
  const std::string text{std::istreambuf_iterator<char>(in), {}};
  if (text.empty()) {
    state.SkipWithError("no test data");
    return;
  }
  reading(state, text);
}
BENCHMARK(real_epw)->Unit(benchmark::kMillisecond);

// A forecast in whole degrees: both courses, and the year on the dates of two others.
void courses(benchmark::State& state) {
  const climate::Weather weather = climate::read_weather(nws(), "bench").value();
  for (auto _ : state) {
    benchmark::DoNotOptimize(climate::air_history(weather));
    benchmark::DoNotOptimize(climate::dew_point_history(weather));
  }
}
BENCHMARK(courses)->Unit(benchmark::kMicrosecond);

void placing(benchmark::State& state) {
  const climate::Weather weather = climate::read_weather(epw(), "bench").value();
  for (auto _ : state) benchmark::DoNotOptimize(climate::place(weather, 2027, 2));
}
BENCHMARK(placing)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
