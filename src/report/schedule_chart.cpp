#include "schedule_chart.hpp"

#include <algorithm>

#include "weather_chart.hpp"
#include "wetout/climate/humid_air.hpp"
#include "wetout/climate/lag.hpp"

namespace wetout::report {
namespace {

using std::chrono::days;
using std::chrono::hours;
using std::chrono::minutes;
using time::History;
using time::Instant;
using time::WallTime;

constexpr std::string_view film_signs = "~=-.";
constexpr std::string_view people_signs = "#_";

// Of two signs of one row the one that stands earlier in `order`; nothing comes last.
void put(char& cell, char sign, std::string_view order) {
  if (cell == ' ' || order.find(sign) < order.find(cell)) cell = sign;
}

class Drawing {
 public:
  Drawing(const ScheduleView& view, WallTime day) : view_(view), day_(day) {}

  void span(Bar& bar, Instant from, Instant to, char sign, std::string_view order) const {
    // By the wall clock, so that a day of 23 or 25 hours has its own.
    constexpr minutes step{5};
    const Instant first = std::max(from, begin());
    for (Instant at = first; at < to && at < begin() + hours(26); at += step) {
      const WallTime wall = view_.wall.zone().wall(at);
      if (wall < day_ || wall >= day_ + days(1)) continue;
      put(bar.cells.at(static_cast<std::size_t>((wall - day_) / minutes(bar_cell_min))), sign,
          order);
    }
  }

  [[nodiscard]] std::vector<Bar> people() const {
    std::vector<Bar> bars;
    for (const ScheduleCalendar& calendar : view_.document.calendars) {
      Bar& bar = bars.emplace_back();
      bar.label = view_.one_person() ? "work" : calendar.id;
      for (const TimeSpan& span : calendar.spans) {
        this->span(bar, instant_of(span.from), instant_of(span.to), bar_hours, people_signs);
      }
      for (const Entry& entry : view_.entries) {
        if (!view_.one_person() && entry.timed->who != calendar.id) continue;
        this->span(bar, entry.start, entry.until, bar_work, people_signs);
      }
    }
    return bars;
  }

  [[nodiscard]] std::vector<Bar> films() const {
    std::vector<Bar> bars;
    for (const Entry& entry : view_.entries) {
      if (!entry.is_wet() || entry.timed->milestones.empty()) continue;
      Bar bar;
      bar.label = view_.coat_label(entry);
      Instant from = entry.start;
      const auto part = [&](std::string_view milestone, char sign, std::string_view word) {
        const auto at = ScheduleView::at(entry, milestone);
        if (!at || *at < from) return;
        span(bar, from, *at, sign, film_signs);
        from = *at;
        if (view_.wall.day(*at) == day_) {
          bar.aside = std::string(word) + " " + view_.wall.clock(*at);
        }
      };
      part("gel", bar_wet, "gel");
      part("tack_free", bar_tacky, "tack-free");
      part("handle", bar_firm, "handle");
      part("sandable", bar_hard, "sandable");
      if (bar.cells.find_first_not_of(' ') != std::string::npos) bars.push_back(std::move(bar));
    }
    return bars;
  }

 private:
  // An instant not after the day's first.
  [[nodiscard]] Instant begin() const { return view_.wall.zone().read(day_).first - hours(1); }

  const ScheduleView& view_;
  WallTime day_;
};

}  // namespace

RoomCourse::RoomCourse(const ScheduleDocument& document) {
  std::vector<time::HistoryPoint> room, dew_point;
  for (const ScheduleAir& air : document.weather.series) {
    const Instant at = instant_of(air.time);
    room.push_back({at, air.room.in_kelvin()});
    if (air.room_dew_point) dew_point.push_back({at, air.room_dew_point->in_kelvin()});
  }
  auto known = History::of(std::move(room));
  if (!known) return;
  room_ = *std::move(known);
  auto damp = History::of(std::move(dew_point));
  if (!damp) return;
  dew_point_ = *std::move(damp);
  coldest_ = room_;
  for (const ScheduledJob& job : document.jobs) {
    const History core = climate::Lagged::from(job.core_at_start, *room_, job.core_lag)
                             .sampled(units::TempDelta::kelvin(0.05));
    coldest_ = climate::lower_of(*coldest_, core);
  }
}

bool RoomCourse::knows(Instant at) const {
  return room_ && at >= room_->first() && at <= room_->last();
}

bool RoomCourse::knows_damp(Instant at) const {
  return knows(at) && dew_point_ && at >= dew_point_->first() && at <= dew_point_->last();
}

std::optional<units::Temperature> RoomCourse::room(Instant at) const {
  if (!knows(at)) return std::nullopt;
  return units::Temperature::kelvin(room_->at(at));
}

std::optional<units::TempDelta> RoomCourse::margin(Instant at) const {
  if (!knows_damp(at)) return std::nullopt;
  return units::TempDelta::kelvin(coldest_->at(at) - dew_point_->at(at));
}

std::optional<double> RoomCourse::humidity(Instant at) const {
  if (!knows_damp(at)) return std::nullopt;
  return climate::relative_humidity(units::Temperature::kelvin(room_->at(at)),
                                    units::Temperature::kelvin(dew_point_->at(at)));
}

DayBars day_bars(const ScheduleView& view, const RoomCourse& course, WallTime day) {
  DayBars bars;
  for (int hour = 0; hour < 24; ++hour) {
    const auto at = view.wall.instant(day + hours(hour));
    if (!at) continue;
    bars.room.at(static_cast<std::size_t>(hour)) = course.room(*at);
    bars.margin.at(static_cast<std::size_t>(hour)) = course.margin(*at);
  }
  const Drawing drawing(view, day);
  bars.people = drawing.people();
  bars.films = drawing.films();
  return bars;
}

Instant film_until(const Entry& wet) {
  for (const char* name : {"sandable", "handle", "tack_free", "gel"}) {
    if (const auto at = ScheduleView::at(wet, name)) return *at;
  }
  return wet.until;
}

}  // namespace wetout::report
