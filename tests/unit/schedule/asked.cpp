#include "asked.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>

#include "board_work.hpp"
#include "sample.hpp"
#include "wetout/resin/answer_cache.hpp"

namespace wetout::schedule::sample {
namespace {

constexpr int days_before = 2;

double of_day(const std::vector<double>& values, double h) {
  // From noon to noon, so that nothing jumps.
  const double day = h / 24.0 - 0.5;
  const auto at = [&](double d) {
    const auto i = static_cast<std::ptrdiff_t>(d);
    return d < 0 || i >= static_cast<std::ptrdiff_t>(values.size())
               ? 0.0
               : values[static_cast<std::size_t>(i)];
  };
  const double share = day - std::floor(day);
  return at(std::floor(day)) * (1.0 - share) + at(std::floor(day) + 1.0) * share;
}

}  // namespace

time::DaySpan from_to(double from_h, double to_h) {
  const auto minutes = [](double h) { return std::chrono::minutes(std::lround(h * 60.0)); };
  return {minutes(from_h), minutes(to_h)};
}

WeekHours every_day(double from_h, double to_h) {
  WeekHours hours;
  hours.days.fill({from_to(from_h, to_h)});
  return hours;
}

Week random_week(Random& random, int days) {
  Week week;
  week.mean_c = random.between(14, 26);
  week.swing_k = random.between(2, 8);
  week.dew_c = week.mean_c - random.between(4, 14);
  for (int day = 0; day < days; ++day) {
    week.warmer_k.push_back(random.between(-4, 4));
    week.damper_k.push_back(random.between(-3, 3));
  }
  return week;
}

climate::Weather weather(const Week& week, int days) {
  climate::Weather weather;
  for (int h = -24 * days_before; h <= 24 * days; ++h) {
    climate::WeatherPoint point;
    point.at = hours_on(h);
    const double air = daily(h, week.mean_c, week.swing_k) + of_day(week.warmer_k, h);
    point.air = units::Temperature::celsius(air);
    point.dew_point =
        units::Temperature::celsius(std::min(air, week.dew_c + of_day(week.damper_k, h)));
    weather.points.push_back(point);
  }
  return weather;
}

Asked asked(std::vector<laminate::CoatSpec> coats, const Week& week, int days) {
  Asked asked;
  BoardAsked& board = asked.boards.emplace_back();
  board.work = rough(std::move(coats));
  board.work.job = "board";
  asked.shop = shop();
  asked.weather = weather(week, days + 14);
  asked.issued = midnight;
  asked.room.kind = climate::RoomKind::unheated;
  asked.room.lag = units::hours(2);
  Person& person = asked.people.emplace_back();
  person.id = "ana";
  person.hours = every_day(18, 22);
  person.hours.days[5] = {from_to(9, 13), from_to(14, 19)};
  asked.from = midnight;
  asked.until = hours_on(24.0 * days);
  return asked;
}

std::vector<laminate::CoatSpec> one_face() {
  std::vector coats = {lam("lam", Face::deck, Laps::cut),
                       coat("hot", Face::deck, CoatKind::hotcoat)};
  for (CoatSpec& one : coats) one.resin = "kelp-quick";
  return coats;
}

time::Instant Answered::finish() const {
  time::Instant last = set_up.setting.grid.at(set_up.setting.begin);
  for (const PlacedStep& placed : arrangement.steps) last = std::max(last, placed.attended_until);
  time::Instant found = last;
  for (const auto& [from, until] : arranging.problem.calendars.front().spans) {
    const time::Instant start = set_up.setting.grid.at(from);
    if (start < last) found = start;
  }
  return found;
}

const PlacedStep* Answered::placed(std::string_view name) const {
  for (const PlacedStep& placed : arrangement.steps) {
    const auto& board = set_up.setting.boards[static_cast<std::size_t>(placed.board)];
    const Step& step = board.steps.steps[static_cast<std::size_t>(placed.step)];
    if (to_string(step.name) == name) return &placed;
  }
  return nullptr;
}

Answered answer(const Asked& asked) {
  static resin::MemoryCache cups;
  auto set_up = schedule::set_up(asked, Assumed{}, &cups);
  if (!set_up) {
    ADD_FAILURE() << set_up.error().front().code << " " << set_up.error().front().message;
    return {};
  }
  Answered out{std::move(*set_up), {}, {}};
  out.arranging = arranging(out.set_up.setting);
  out.arrangement = arrange(out.set_up.setting, out.arranging, {});
  return out;
}

}  // namespace wetout::schedule::sample
