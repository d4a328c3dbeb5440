// What is written in our own layout reads back as it was, whatever the zone and the delimiter.
#include <gtest/gtest.h>
#include <rapidcheck.h>
// after gtest
#include <rapidcheck/gtest.h>

#include <array>
#include <charconv>
#include <cmath>

#include "weather_texts.hpp"

namespace wetout::climate::test {
namespace {

std::string shortest(double value) {
  std::array<char, 64> buffer{};
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value).ptr;
  return {buffer.data(), end};
}

/// Kelvin and shares of 1 are what a point holds, so that digits are exact.
std::string written(const Weather& weather, char delimiter, const time::Zone& zone) {
  const bool comma = delimiter == ';';
  std::string out;
  const auto add = [&](std::string cell) {
    if (comma) std::replace(cell.begin(), cell.end(), '.', ',');
    out += cell + delimiter;
  };
  for (const char* const name :
       {"time", "air [K]", "dew point [K]", "humidity [1]", "wind [m/s]"}) {
    out += std::string(name) + delimiter;
  }
  out += "sun [W/m2]\n";
  for (const WeatherPoint& p : weather.points) {
    out += time::rfc3339(p.at, zone) + delimiter;
    add(shortest(p.air.in_kelvin()));
    add(p.dew_point ? shortest(p.dew_point->in_kelvin()) : "");
    add(p.relative_humidity ? shortest(*p.relative_humidity) : "");
    add(p.wind_m_s ? shortest(*p.wind_m_s) : "");
    add(p.sun_w_m2 ? shortest(*p.sun_w_m2) : "");
    out.back() = '\n';
  }
  return out;
}

rc::Gen<double> between(double low, double high) {
  return rc::gen::map(rc::gen::inRange(0L, 1L << 40), [=](long n) {
    return low + (high - low) * static_cast<double>(n) / static_cast<double>(1L << 40);
  });
}

Weather any_weather() {
  Weather out;
  time::Instant now =
      at("2026-01-01T00:00Z") + std::chrono::seconds(*rc::gen::inRange(0, 31'536'000));
  const int n = *rc::gen::inRange(2, 40);
  for (int i = 0; i < n; ++i) {
    now += std::chrono::seconds(*rc::gen::inRange(1, 6 * 3600));
    WeatherPoint point{now, units::Temperature::kelvin(*between(203.15, 343.15))};
    const auto maybe = [](const rc::Gen<double>& gen) {
      return *rc::gen::arbitrary<bool>() ? std::optional<double>(*gen) : std::nullopt;
    };
    if (const auto dew = maybe(between(203.15, point.air.in_kelvin()))) {
      point.dew_point = units::Temperature::kelvin(*dew);
    }
    point.relative_humidity = maybe(between(0.02, 1.1));
    point.wind_m_s = maybe(between(0.0, 120.0));
    point.sun_w_m2 = maybe(between(0.0, 2000.0));
    out.points.push_back(point);
  }
  return out;
}

RC_GTEST_PROP(WeatherCsv, ReadsBackWhatWasWritten, ()) {
  const Weather weather = any_weather();
  const char delimiter = *rc::gen::element(',', ';');
  const time::Zone zone = time::Zone::named(*rc::gen::element<std::string>(
                                                "UTC", "America/Los_Angeles", "Asia/Kolkata"))
                              .value();
  const std::string text = written(weather, delimiter, zone);
  const auto back = read_weather(text, "w");
  RC_ASSERT(back.has_value());
  RC_ASSERT(back->points == weather.points);
}

// Written every hour by a clock on the wall, clocks put back and forward: the same instants again.
TEST(WeatherCsv, ReadsBackWallTimesThroughAWholeYear) {
  for (const char* const name :
       {"America/Los_Angeles", "Europe/Lisbon", "Australia/Lord_Howe", "Asia/Kathmandu", "UTC"}) {
    SCOPED_TRACE(name);
    const time::Zone zone = time::Zone::named(name).value();
    std::string text = "time [" + std::string(name) + "];air [C];humidity [%]\n";
    std::vector<time::Instant> instants;
    for (time::Instant now = at("2026-01-01T00:00Z"); now < at("2027-01-01T00:00Z");
         now += std::chrono::minutes(15)) {
      instants.push_back(now);
      text += time::rfc3339(now, zone).substr(0, 19) + ";10,5;50\n";
    }
    const Weather weather = read(text);
    ASSERT_EQ(weather.points.size(), instants.size());
    for (std::size_t i = 0; i < instants.size(); ++i) ASSERT_EQ(weather.points[i].at, instants[i]);
    EXPECT_TRUE(weather.gaps.empty());
  }
}

}  // namespace
}  // namespace wetout::climate::test
