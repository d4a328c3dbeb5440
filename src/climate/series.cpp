#include "series.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <functional>
#include <utility>

#include "gaps.hpp"
#include "wetout/base/check.hpp"
#include "wetout/climate/weather_defaults.hpp"
#include "wetout/time/print.hpp"

namespace wetout::climate {
namespace {

using std::chrono::seconds;

// Rounding to whole degrees can lift a dew point this far above the air, and a little more.
constexpr units::TempDelta rounding_above_air = units::TempDelta::kelvin(2.0);
constexpr std::size_t fewest_for_whole_degrees = 4;

base::Notice notice(std::string code, std::string text, std::optional<double> value = {},
                    std::string unit = {}) {
  return {
      .code = std::move(code), .text = std::move(text), .value = value, .unit = std::move(unit)};
}

// Dates that nobody means, and that cannot be printed or reckoned with.
void check_dates(const std::vector<Row>& rows, const Locate& locate, Findings& findings) {
  for (const Row& row : rows) {
    const std::chrono::year_month_day date(std::chrono::floor<std::chrono::days>(row.at));
    const int year = static_cast<int>(date.year());
    if (year >= 1800 && year <= 2200) continue;
    base::Problem problem = locate(row.where);
    problem.code = "time.beyond";
    problem.message = "this is no date of weather";
    problem.found = fmt::format("the year {}", year);
    problem.expected = "a year from 1800 to 2200";
    findings.add(std::move(problem));
    if (findings.full()) return;
  }
}

void sort(std::vector<Row>& rows, Weather& weather) {
  const auto earlier = [](const Row& a, const Row& b) { return a.at < b.at; };
  int back = 0;
  for (std::size_t i = 1; i < rows.size(); ++i) back += earlier(rows[i], rows[i - 1]) ? 1 : 0;
  if (back == 0) return;
  std::stable_sort(rows.begin(), rows.end(), earlier);
  weather.notices.push_back(
      notice("weather.order", "rows did not follow in time and were sorted", back));
}

bool same_values(const Row& a, const Row& b) {
  return a.air == b.air && a.dew_point == b.dew_point &&
         a.relative_humidity == b.relative_humidity && a.wind_m_s == b.wind_m_s &&
         a.sun_w_m2 == b.sun_w_m2;
}

std::string place_of(const base::Problem& at) {
  return at.line > 0 ? fmt::format("line {}", at.line) : at.key;
}

void drop_doubles(std::vector<Row>& rows, Weather& weather, const Locate& locate,
                  Findings& findings) {
  int dropped = 0;
  const auto kept = std::unique(rows.begin(), rows.end(), [&](const Row& a, const Row& b) {
    if (a.at != b.at) return false;
    ++dropped;
    if (!same_values(a, b) && !findings.full()) {
      base::Problem problem = locate(b.where);
      problem.code = "weather.duplicate";
      problem.message = "this time stands twice, with different values";
      problem.found = time::rfc3339(b.at, time::Zone());
      problem.expected = "one row for each time";
      problem.hint = "the other stands in " + place_of(locate(a.where));
      findings.add(std::move(problem));
    }
    return true;
  });
  rows.erase(kept, rows.end());
  if (dropped == 0) return;
  weather.notices.push_back(
      notice("weather.doubles", "rows that stand twice with equal values were dropped", dropped));
}

// Takes a dew point down to the air where rounding explains it.
void check_dew_points(std::vector<Row>& rows, Weather& weather, const Locate& locate,
                      Findings& findings) {
  units::TempDelta most;
  for (Row& row : rows) {
    if (!row.air || !row.dew_point || *row.dew_point <= *row.air) continue;
    const units::TempDelta above = *row.dew_point - *row.air;
    if (above <= rounding_above_air) {
      most = std::max(most, above);
      row.dew_point = row.air;
      continue;
    }
    base::Problem problem = locate(row.where);
    problem.code = "weather.dew_above_air";
    problem.message = "the dew point is above the air temperature";
    problem.found = fmt::format("air {:.1f} C, dew point {:.1f} C", row.air->in_celsius(),
                                row.dew_point->in_celsius());
    problem.expected = "a dew point not above the air";
    problem.hint = "are both in the units that the file says?";
    findings.add(std::move(problem));
    if (findings.full()) return;
  }
  if (most > units::TempDelta()) {
    weather.notices.push_back(notice("weather.saturated",
                                     "dew points a little above the air were taken as the air",
                                     most.in_kelvin(), "K"));
  }
}

// No air outdoors is this dry: the sensor did not answer.
constexpr double driest_share = 0.001;
// Whole files below it are shares of 1 under a heading of percent.
constexpr double share_for_percent = 0.01;

void check_humidities(std::vector<Row>& rows, Weather& weather, Findings& findings) {
  int zeros = 0;
  double most = 0.0;
  for (Row& row : rows) {
    if (!row.relative_humidity) continue;
    most = std::max(most, *row.relative_humidity);
    if (*row.relative_humidity >= driest_share) continue;
    row.relative_humidity.reset();
    ++zeros;
  }
  if (most >= driest_share && most <= share_for_percent) {
    findings.add({.code = "weather.absurd",
                  .message = "no air is this dry all the time",
                  .key = std::string(name_of(Quantity::humidity)),
                  .found = fmt::format("at most {:.3g} %", most * 100.0),
                  .expected = "0 to 110 %",
                  .hint = "is it a share of 1 rather than a percentage? \"humidity [1]\""});
  }
  if (zeros == 0) return;
  weather.notices.push_back(
      notice("weather.zero_humidity", "a humidity of nothing was taken for no reading", zeros));
}

void keep_known_air(const std::vector<Row>& rows, Weather& weather) {
  weather.points.reserve(rows.size());
  for (const Row& row : rows) {
    if (!row.air) continue;
    weather.points.push_back(
        {row.at, *row.air, row.dew_point, row.relative_humidity, row.wind_m_s, row.sun_w_m2});
  }
  const auto missing = rows.size() - weather.points.size();
  if (missing == 0) return;
  weather.notices.push_back(notice("weather.missing_air", "rows without an air temperature",
                                   static_cast<double>(missing)));
}

// The median (of an even number the lower of the middle two); 0 for fewer than two rows.
seconds usual_spacing(const std::vector<Row>& rows) {
  std::vector<seconds> spacings;
  spacings.reserve(rows.size());
  for (std::size_t i = 1; i < rows.size(); ++i) spacings.push_back(rows[i].at - rows[i - 1].at);
  if (spacings.empty()) return seconds{0};
  const auto middle = spacings.begin() + static_cast<std::ptrdiff_t>((spacings.size() - 1) / 2);
  std::nth_element(spacings.begin(), middle, spacings.end());
  return *middle;
}

seconds from_minutes(double minutes) { return seconds(static_cast<long>(minutes * 60.0)); }

seconds longest_span(seconds usual, const WeatherDefaults& defaults) {
  const auto spacings = static_cast<double>(usual.count()) * defaults.gap_spacings.value;
  return std::min(
      std::max(seconds(static_cast<long>(spacings)), from_minutes(defaults.gap_least.value)),
      from_minutes(defaults.gap_most.value));
}

// Smoothing does nothing to a few values, or to a level course.
bool worth_smoothing(const std::vector<units::Temperature>& values) {
  return values.size() >= fewest_for_whole_degrees &&
         std::adjacent_find(values.begin(), values.end(), std::not_equal_to<>()) != values.end();
}

void mark_whole_degrees(const std::vector<Row>& rows, Weather& weather, seconds usual) {
  if (usual <= weather.smooth_step) return;
  std::vector<units::Temperature> airs;
  std::vector<units::Temperature> dew_points;
  for (const Row& row : rows) {
    if (row.air) airs.push_back(*row.air);
    if (row.air && row.dew_point) dew_points.push_back(*row.dew_point);
  }
  const auto all = [&](bool Row::*whole) {
    return std::all_of(rows.begin(), rows.end(), [=](const Row& row) { return row.*whole; });
  };
  weather.whole_degree_air = all(&Row::whole_air) && worth_smoothing(airs);
  weather.whole_degree_dew_point = all(&Row::whole_dew_point) && worth_smoothing(dew_points);
  if (!weather.whole_degree_air && !weather.whole_degree_dew_point) return;
  weather.notices.push_back(notice(
      "weather.smoothed", weather.whole_degree_air && weather.whole_degree_dew_point
                              ? "air and dew point are given in whole degrees and were smoothed"
                          : weather.whole_degree_air
                              ? "the air is given in whole degrees and was smoothed"
                              : "the dew point is given in whole degrees and was smoothed"));
}

}  // namespace

void set(Row& row, Quantity quantity, double value, Unit unit) {
  const double si = in_si(value, unit);
  switch (quantity) {
    case Quantity::air:
      row.air = units::Temperature::kelvin(si);
      row.whole_air = value == std::floor(value);
      return;
    case Quantity::dew_point:
      row.dew_point = units::Temperature::kelvin(si);
      row.whole_dew_point = value == std::floor(value);
      return;
    case Quantity::humidity:
      row.relative_humidity = si;
      return;
    case Quantity::wind:
      row.wind_m_s = si;
      return;
    case Quantity::sun:
      row.sun_w_m2 = std::max(si, 0.0);
      return;
  }
  base::broken_promise("a quantity without a place");
}

base::Problem too_many_rows() {
  return {.code = "weather.too_long",
          .message = "there are too many rows",
          .expected = fmt::format("at most {} rows", most_rows),
          .hint = "cut the file to the weeks that are planned"};
}

void fill(Weather& weather, std::vector<Row> rows, const WeatherDefaults& defaults,
          const Locate& locate, Findings& findings) {
  check_dates(rows, locate, findings);
  if (!findings.empty()) return;
  sort(rows, weather);
  drop_doubles(rows, weather, locate, findings);
  const seconds usual = usual_spacing(rows);
  weather.gap_over = longest_span(usual, defaults);
  weather.smooth_step = from_minutes(defaults.smooth_step.value);
  check_dew_points(rows, weather, locate, findings);
  check_humidities(rows, weather, findings);
  keep_known_air(rows, weather);
  if (!findings.empty()) return;
  if (weather.points.size() < 2) {
    findings.add({.code = "weather.too_short",
                  .message = "the weather is too short",
                  .found = fmt::format("{} air temperature{}", weather.points.size(),
                                       weather.points.size() == 1 ? "" : "s"),
                  .expected = "air temperatures at two instants or more"});
    return;
  }
  if (usual > from_minutes(defaults.gap_most.value)) {
    findings.add({.code = "weather.not_hourly",
                  .message = "the values lie too far apart to plan by",
                  .found = fmt::format("{:.3g} h from one to the next, as a rule",
                                       static_cast<double>(usual.count()) / 3600.0),
                  .expected = fmt::format("hourly weather, at most {:.3g} h apart",
                                          defaults.gap_most.value / 60.0),
                  .hint = "forecasts by the day or half-day often have an hourly one beside them"});
    return;
  }
  mark_whole_degrees(rows, weather, usual);
  find_gaps(weather);
}

}  // namespace wetout::climate
