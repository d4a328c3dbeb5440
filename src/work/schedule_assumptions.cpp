// Which numbers that nobody gave a schedule hangs on.
#include <algorithm>
#include <string>
#include <utility>

#include "scheduling.hpp"
#include "weather_assumptions.hpp"
#include "wetout/schedule/window_odds.hpp"

namespace wetout::work {
namespace {

using laminate::Assumption;

// What a step's attended time or its lags come to.
std::vector<double> numbers_of(const schedule::BoardSteps& steps) {
  std::vector<double> numbers;
  for (const schedule::Step& step : steps.steps) numbers.push_back(step.attended.si());
  for (const schedule::Link& link : steps.links) {
    numbers.push_back(link.min ? link.min->si() : -1.0);
    numbers.push_back(link.max ? link.max->si() : -1.0);
  }
  return numbers;
}

// "film.sandable_of_gel" where a sheet prints no sanding time, and its like.
bool guessed(const Scheduling& s, std::string_view name) {
  const auto& notices = s.set_up.notices;
  return std::any_of(notices.begin(), notices.end(), [&](const base::Notice& notice) {
    const std::string_view code = notice.code;
    const std::size_t end = code.find("_guessed");
    return end != std::string_view::npos && name == std::string(code.substr(0, end)) + "_of_gel";
  });
}

// Those that move a step when they are moved over their range: five minutes hide less.
void steps(const Scheduling& s, std::vector<Assumption>& out) {
  schedule::StepDefaults moved = s.assumed.steps;
  std::vector<std::vector<double>> usual;
  const auto all = [&] {
    std::vector<std::vector<double>> numbers;
    for (const schedule::BoardAsked& board : s.asked.boards) {
      numbers.push_back(numbers_of(*schedule::steps_of(board.work, s.asked.shop, moved)));
    }
    return numbers;
  };
  usual = all();
  const bool dust = !s.setting().sanding_room;
  visit_steps(moved, [&](base::Default<double>& value) {
    const double was = value.value;
    bool moves = (value.name == moved.dust_settles.name && dust) ||
                 value.name == moved.window_scale.name || value.name == moved.visit_gap.name;
    for (const double to : {value.low, value.high}) {
      value.value = to;
      moves = moves || all() != usual;
    }
    value.value = was;
    if (!moves && !guessed(s, value.name)) return;
    const bool quotient = value.name.substr(0, 5) == "film.";
    out.push_back({std::string(value.name),
                   value.value,
                   quotient ? "times gel" : "min",
                   std::string(base::to_string(value.source.standing)),
                   std::string(value.source.locator),
                   {"steps"}});
  });
}

// Of resins that no record speaks of.
void speeds(const Scheduling& s, std::vector<Assumption>& out) {
  const schedule::OddsDefaults odds;
  Assumption one{std::string(odds.speed_spread.name),
                 odds.speed_spread.value,
                 "share",
                 std::string(base::to_string(odds.speed_spread.source.standing)),
                 std::string(odds.speed_spread.source.locator),
                 {}};
  for (const auto& [id, source] : s.setting().sources) {
    if (source->calibration() && !source->product().speed_spread) one.used_by.push_back(id);
  }
  if (!one.used_by.empty()) out.push_back(std::move(one));
}

}  // namespace

std::vector<Assumption> schedule_assumptions(const Scheduling& s, const WeatherInUse& use) {
  std::vector<Assumption> out;
  steps(s, out);
  speeds(s, out);
  const bool humidity = s.set_up.conditions.front().dew_point.has_value();
  const WeatherAssumed assumed{{}, s.assumed.limits, s.assumed.climate, {}, s.assumed.resin};
  for (const auto& [id, source] : s.setting().sources) {
    std::vector<std::string> names;
    if (const auto& fit = source->calibration()) names = fit->assumed;
    // Films hang on no cup's cooling.
    std::erase_if(names, [](const std::string& name) { return name.rfind("cup.", 0) == 0; });
    const WeatherQuestion question{.use = use,
                                   .product = source->product(),
                                   .room = s.asked.room,
                                   .guard = s.asked.guard,
                                   .from = s.asked.from,
                                   .to = s.asked.until,
                                   .zone = s.asked.zone};
    for (Assumption& one : weather_assumptions(question, assumed, humidity, names)) {
      // A board's own core and coats are known here.
      if (one.name == assumed.work.core_thickness.name || one.name == assumed.work.wet_out.name) {
        continue;
      }
      const auto known = std::find_if(
          out.begin(), out.end(), [&](const Assumption& other) { return other.name == one.name; });
      if (known == out.end()) {
        out.push_back(std::move(one));
        continue;
      }
      for (std::string& by : one.used_by) {
        auto& used = known->used_by;
        if (std::find(used.begin(), used.end(), by) == used.end()) used.push_back(std::move(by));
      }
    }
  }
  return out;
}

}  // namespace wetout::work
