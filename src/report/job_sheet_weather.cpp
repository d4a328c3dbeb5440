// The room's air, week by week, with the windows of the coats below it.
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>

#include "job_sheet_parts.hpp"
#include "phrases.hpp"
#include "svg.hpp"
#include "weather_chart.hpp"

namespace wetout::report {
namespace {

using std::chrono::days;
using time::Instant;
using time::WallTime;
using units::Temperature;

// In the units of the picture, which on a phone are pixels.
constexpr double width = 340.0, left = 30.0, right = 4.0;
constexpr double top = 16.0, plot = 96.0, row = 11.0, bottom = 4.0;
constexpr int days_across = 7;

class Week {
 public:
  Week(const ScheduleView& view, units::System system, WallTime first, int count)
      : view_(view), system_(system), first_(first), count_(count) {
    from_ = at(first);
    to_ = at(first + days(count));
    for (const ScheduleStep& step : view.document.steps) {
      if (step.step == "wet" && step.coat) coats_.push_back(*step.coat);
    }
  }

  Markup draw(double lowest, double highest) {
    lowest_ = lowest;
    highest_ = highest;
    grid();
    line([](const ScheduleAir& air) { return std::optional(air.air); }, "class=\"thin\"");
    line([](const ScheduleAir& air) { return air.room_dew_point; }, "class=\"dots\"");
    line([](const ScheduleAir& air) { return std::optional(air.room); }, "class=\"thick\"");
    rows();
    const double height = top + plot + 4.0 + row * static_cast<double>(coats_.size() + 1) + bottom;
    const std::string when =
        WallClock::date(first_) + " to " + WallClock::date(first_ + days(count_ - 1));
    return Markup::ours(
        fmt::format("<svg class=\"chart\" role=\"img\" viewBox=\"0 0 {:.0f} {:.0f}\">"
                    "<title>Air of the room and windows, {}</title>\n"
                    "<desc>The same is said in words at each step.</desc>\n{}</svg>\n",
                    width, height, escaped(when), svg_.body()));
  }

 private:
  [[nodiscard]] Instant at(WallTime wall) const { return view_.wall.zone().read(wall).first; }
  [[nodiscard]] double x(Instant when) const {
    const auto part = static_cast<double>((when - from_).count());
    const auto all = static_cast<double>(days(days_across) / std::chrono::seconds(1));
    return left + part / all * (width - left - right);
  }
  [[nodiscard]] double shown(Temperature t) const {
    return system_ == units::System::us ? t.in_fahrenheit() : t.in_celsius();
  }
  [[nodiscard]] double y(double degrees) const {
    return top + plot * (highest_ - degrees) / (highest_ - lowest_);
  }

  void grid() {
    for (int day = 0; day <= count_; ++day) {
      const double here = x(at(first_ + days(day)));
      svg_.line(here, top - 2.0, here, below(coats_.size()) + row, "class=\"grid\"");
      if (day == count_) break;
      // "Mon 15"
      svg_.text(here + 2.0, top - 5.0, WallClock::date(first_ + days(day)).substr(0, 6));
    }
    const double step = system_ == units::System::us ? 10.0 : 5.0;
    for (double degrees = lowest_; degrees <= highest_ + 0.1; degrees += step) {
      svg_.line(left, y(degrees), x(to_), y(degrees), "class=\"grid\"");
      const bool unit = degrees + step > highest_ + 0.1;
      svg_.text(left - 3.0, y(degrees) + 3.0,
                units::print_number(degrees, 0) +
                    (unit ? (system_ == units::System::us ? " °F" : " °C") : ""),
                "end");
    }
  }

  void line(auto value, std::string_view attributes) {
    std::string points;
    const auto finish = [&] {
      if (!points.empty()) {
        svg_.raw(fmt::format("<polyline points=\"{}\" {}/>\n", points, attributes));
      }
      points.clear();
    };
    for (const ScheduleAir& air : view_.document.weather.series) {
      const Instant when = instant_of(air.time);
      const std::optional<Temperature> one = value(air);
      if (when < from_ || when > to_ || !one) {
        finish();
        continue;
      }
      points += fmt::format("{:.1f},{:.1f} ", x(when), y(shown(*one)));
    }
    finish();
  }

  [[nodiscard]] double below(std::size_t n) const {
    return top + plot + 4.0 + row * static_cast<double>(n);
  }

  void span(Instant from, Instant to, std::size_t n, double height, std::string_view attributes) {
    from = std::max(from, from_);
    to = std::min(to, to_);
    if (from >= to) return;
    const double wide = std::max(x(to) - x(from), 1.5);
    svg_.rect(x(from), below(n) + (row - height) / 2.0, wide, height, attributes);
  }

  void rows() {
    for (std::size_t n = 0; n < coats_.size(); ++n) {
      svg_.text(left - 3.0, below(n) + row - 2.5, std::to_string(n + 1), "end");
      for (const CoatWindow& window : view_.document.windows) {
        if (window.coat != coats_[n] || window.ok == schedule::State::refuse) continue;
        span(instant_of(window.from), instant_of(window.to), n, row - 4.0,
             window.ok == schedule::State::good ? "class=\"good\"" : "class=\"notice\"");
      }
    }
    svg_.text(left - 3.0, below(coats_.size()) + row - 2.5, "work", "end");
    for (const Entry& entry : view_.entries) {
      const auto coat = std::find(coats_.begin(), coats_.end(), entry.coat);
      if (entry.is_wet() && coat != coats_.end()) {
        span(entry.start, entry.until, static_cast<std::size_t>(coat - coats_.begin()), row,
             "class=\"at\"");
      } else if (!entry.is_watch()) {
        span(entry.start, entry.until, coats_.size(), row - 5.0, "class=\"at\"");
      }
    }
  }

  const ScheduleView& view_;
  units::System system_;
  WallTime first_;
  int count_;
  Instant from_, to_;
  double lowest_ = 0.0, highest_ = 1.0;
  std::vector<std::string> coats_;
  Svg svg_;
};

}  // namespace

std::vector<Markup> weather_charts(const ScheduleView& view, units::System system) {
  std::vector<Markup> charts;
  const auto& series = view.document.weather.series;
  if (view.entries.empty() || series.empty()) return charts;
  const auto [first, last] =
      std::minmax_element(view.entries.begin(), view.entries.end(),
                          [](const Entry& a, const Entry& b) { return a.start < b.start; });
  double lowest = 1e9, highest = -1e9;
  for (const ScheduleAir& air : series) {
    const WallTime day = view.wall.day(instant_of(air.time));
    if (day < first->day || day > last->day) continue;
    for (const auto& one : {std::optional(air.air), std::optional(air.room), air.room_dew_point}) {
      if (!one) continue;
      const double degrees = system == units::System::us ? one->in_fahrenheit() : one->in_celsius();
      lowest = std::min(lowest, degrees);
      highest = std::max(highest, degrees);
    }
  }
  if (lowest > highest) return charts;
  const double step = system == units::System::us ? 10.0 : 5.0;
  lowest = step * std::floor(lowest / step);
  highest = std::max(step * std::ceil(highest / step), lowest + step);
  for (WallTime day = first->day; day <= last->day; day += days(days_across)) {
    const auto left_over = std::chrono::floor<days>(last->day - day).count() + 1;
    const int count = static_cast<int>(std::min<long long>(days_across, left_over));
    charts.push_back(Week(view, system, day, count).draw(lowest, highest));
  }
  return charts;
}

}  // namespace wetout::report
