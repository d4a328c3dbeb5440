// Nothing fits: the smallest single change of each kind that makes it fit, found by making it and
// solving again.
#include <algorithm>
#include <chrono>
#include <cmath>
#include <set>
#include <utility>

#include "scheduling.hpp"
#include "wetout/time/print.hpp"
#include "wetout/units/print.hpp"

namespace wetout::work {
namespace {

using report::SmallestChange;
using schedule::Asked;
using schedule::HoursInstead;
using search::State;
using std::chrono::minutes;
using time::Instant;

constexpr minutes hours_step{15};
constexpr int most_hours_steps = 16;
constexpr double heater_step_k = 0.5;
constexpr double hottest_c = 30.0;
constexpr std::size_t most_spans_later = 20;

bool good(State state) { return state == State::proved || state == State::feasible; }

class Changes {
 public:
  Changes(const Asked& asked, const schedule::Assumed& assumed, const schedule::SetUp& set_up,
          const Replan& replan, const search::Limits& limits, resin::AnswerCache* cache)
      : asked_(asked),
        assumed_(assumed),
        set_up_(set_up),
        replan_(replan),
        limits_(limits),
        cache_(cache) {}

  std::vector<SmallestChange> find() {
    std::vector<SmallestChange> found;
    for (auto change : {hours(), heater(), hardener(), later_end()}) {
      if (change) found.push_back(std::move(*change));
    }
    return found;
  }

 private:
  // --- hours: a quarter more on one day

  struct Day {
    time::Date date;
    std::vector<time::DaySpan> spans;  ///< as they are
  };

  [[nodiscard]] std::vector<Day> days() const {
    using namespace std::chrono;
    std::vector<Day> all;
    const schedule::WeekHours& hours = asked_.people.front().hours;
    const auto last = floor<std::chrono::days>(asked_.zone.wall(asked_.until));
    for (auto day = floor<std::chrono::days>(asked_.zone.wall(asked_.from)); day <= last;
         day += std::chrono::days(1)) {
      const time::Date date(day);
      const auto single = hours.single.find(date);
      const bool off = std::any_of(hours.off.begin(), hours.off.end(), [&](const auto& range) {
        return range.first <= date && date <= range.last;
      });
      const unsigned weekday = std::chrono::weekday(day).iso_encoding() - 1;
      if (single != hours.single.end()) {
        all.push_back({date, single->second});
      } else {
        all.push_back({date, off ? std::vector<time::DaySpan>{} : hours.days[weekday]});
      }
    }
    return all;
  }

  // When a day off would begin: as most working days do.
  [[nodiscard]] minutes usual_begin() const {
    std::map<minutes, int> begins;
    for (const auto& day : asked_.people.front().hours.days) {
      if (!day.empty()) ++begins[day.front().from];
    }
    minutes usual{18 * 60};
    int most = 0;
    for (const auto& [from, count] : begins) {
      if (count > most) {
        usual = from;
        most = count;
      }
    }
    return usual;
  }

  // Day by day: longer in the evening, earlier in the morning; a day off gets hours at all.
  [[nodiscard]] std::optional<HoursInstead> more(const Day& day, int how, int steps) const {
    HoursInstead out{day.date, {}, day.spans};
    const minutes by = steps * hours_step;
    if (day.spans.empty()) {
      if (how > 0) return std::nullopt;
      const minutes from = usual_begin();
      out.spans = {{from, std::min(minutes(24 * 60), from + by)}};
      return out;
    }
    if (how == 0) {
      if (out.spans.back().until + by > minutes(24 * 60)) return std::nullopt;
      out.spans.back().until += by;
    } else {
      if (out.spans.front().from < by) return std::nullopt;
      out.spans.front().from -= by;
    }
    return out;
  }

  // What is found by then is shown.
  [[nodiscard]] bool out_of_time() const {
    if (limits_.interrupted && limits_.interrupted()) return true;
    return limits_.elapsed_s && limits_.time_limit_s > 0.0 &&
           limits_.elapsed_s() > limits_.time_limit_s;
  }
  [[nodiscard]] bool fits_with(const HoursInstead& instead) const {
    return good(schedule::fits(setting_with(asked_hours(instead)), limits_));
  }
  // With hours beside those that are asked for: what has a fixed start, and looks.
  [[nodiscard]] schedule::Setting setting_with(const Asked& asked) const {
    schedule::Setting setting = set_up_.setting;
    const auto as_it_is = schedule::people_of(asked_);
    setting.people = schedule::people_of(asked);
    for (std::size_t p = 0; p < as_it_is.size(); ++p) {
      const auto& usual = as_it_is[p].spans;
      for (const schedule::WorkingSpan& span : set_up_.setting.people[p].spans) {
        if (std::find(usual.begin(), usual.end(), span) != usual.end()) continue;
        schedule::add_span(setting.people[p].spans, span);
      }
    }
    return setting;
  }
  // As --hours means them: of everybody.
  [[nodiscard]] Asked asked_hours(const HoursInstead& instead) const {
    Asked asked = asked_;
    for (schedule::Person& person : asked.people) schedule::put_instead(instead, person.hours);
    return asked;
  }
  // Were even all of them together of no use, none is.
  [[nodiscard]] bool more_hours_could_help(const std::vector<Day>& all) const {
    Asked wide = asked_;
    const minutes by = most_hours_steps * hours_step;
    for (const Day& day : all) {
      HoursInstead longer{day.date, {}, day.spans};
      if (longer.spans.empty()) longer.spans = {{usual_begin(), usual_begin()}};
      longer.spans.front().from = std::max(minutes(0), longer.spans.front().from - by);
      longer.spans.back().until = std::min(minutes(24 * 60), longer.spans.back().until + by);
      schedule::put_instead(longer, wide.people.front().hours);
    }
    schedule::Setting setting = set_up_.setting;
    const auto longest = schedule::people_of(wide);
    for (schedule::PersonSpans& person : setting.people) {
      for (const schedule::WorkingSpan& span : longest.front().spans) {
        schedule::add_span(person.spans, span);
      }
    }
    return good(schedule::fits(setting, limits_));
  }

  std::optional<SmallestChange> hours() {
    const std::vector<Day> all = days();
    if (!more_hours_could_help(all)) return std::nullopt;
    std::optional<HoursInstead> best;
    int least = most_hours_steps + 1;
    for (const Day& day : all) {
      for (int how = 0; how < 2 && !out_of_time(); ++how) {
        // More hours never fit less, so that halving finds the fewest.
        int low = 0, high = least - 1;
        while (high > 0 && !more(day, how, high)) --high;
        if (high == 0 || !fits_with(*more(day, how, high))) continue;
        while (high - low > 1) {
          const int middle = (low + high) / 2;
          (fits_with(*more(day, how, middle)) ? high : low) = middle;
        }
        least = high;
        best = more(day, how, high);
      }
    }
    if (!best) return std::nullopt;
    const Asked asked = asked_hours(*best);
    const schedule::Setting setting = setting_with(asked);
    const std::string value = print(*best);
    return told("hours", value,
                std::to_string((least * hours_step).count()) + " min more: work " + value, asked,
                setting);
  }

  // --- heater: half a degree warmer

  std::optional<SmallestChange> heater() {
    if (asked_.room.kind == climate::RoomKind::outdoors) return std::nullopt;
    // The first half degree above the coldest that it gets.
    const double coldest_c = set_up_.conditions.front().air.lowest() - 273.15;
    double from_c = (std::floor(coldest_c / heater_step_k) + 1.0) * heater_step_k;
    const auto& heater = asked_.room.heater;
    const bool heated = asked_.room.kind == climate::RoomKind::heated && heater.has_value();
    if (heated) from_c = heater->minimum.in_celsius() + heater_step_k;
    for (double c = from_c; c <= hottest_c && !out_of_time(); c += heater_step_k) {
      Asked asked = asked_;
      asked.room.kind = climate::RoomKind::heated;
      asked.room.heater = {heated ? heater->kind : climate::HeaterKind::electric,
                           units::Temperature::celsius(c)};
      if (!every_wet_could_begin(asked)) continue;
      const auto set_up = schedule::set_up(asked, assumed_, cache_);
      if (!set_up || !good(schedule::fits(set_up->setting, limits_))) continue;
      const std::string value = units::print(units::Temperature::celsius(c), units::System::metric);
      return told("heater", value, "keep the room at " + value + " or warmer", asked,
                  set_up->setting);
    }
    return std::nullopt;
  }

  // Whether there is an instant in working hours for every wet at which no limit is broken. Films
  // need not be followed for that, which in a cold room takes far longer than all else.
  [[nodiscard]] bool every_wet_could_begin(const Asked& asked) const {
    const schedule::Setting& setting = set_up_.setting;
    for (std::size_t b = 0; b < setting.boards.size(); ++b) {
      const schedule::BoardSetting& board = setting.boards[b];
      auto inside = schedule::conditions(asked.weather, asked.room, set_up_.cores[b].lag,
                                         asked.guard, asked.issued, assumed_.climate);
      if (!inside) return false;
      const schedule::LimitTester limits(std::move(*inside), assumed_.limits);
      for (const int wet : board.steps.wets) {
        const auto i = static_cast<std::size_t>(wet);
        if (board.facts[i] || board.passed[i] || board.fixed[i]) continue;
        const auto coat = static_cast<std::size_t>(board.steps.steps[i].coat);
        if (!could_begin(limits, board.rules[coat])) return false;
      }
    }
    return true;
  }
  [[nodiscard]] bool could_begin(const schedule::LimitTester& limits,
                                 const schedule::FilmRules& rules) const {
    const schedule::Setting& setting = set_up_.setting;
    for (const schedule::PersonSpans& person : setting.people) {
      for (const schedule::WorkingSpan& span : person.spans) {
        for (schedule::Slot slot = setting.grid.not_before(span.from);
             setting.grid.at(slot) < span.until; ++slot) {
          const Instant at = setting.grid.at(slot);
          const auto verdict = limits.verdict({at, at, at, at}, rules);
          if (verdict.state != schedule::State::refuse) return true;
        }
      }
    }
    return false;
  }

  // --- hardener: another resin of the shop for one that is used

  std::optional<SmallestChange> hardener() {
    std::set<std::string> used;
    for (const schedule::BoardSetting& board : set_up_.setting.boards) {
      for (std::size_t c = 0; c < board.resins.size(); ++c) used.insert(board.resins[c]);
    }
    for (const std::string& resin : used) {
      for (const resin::Product& other : asked_.shop.resins) {
        if (other.id == resin || out_of_time()) continue;
        auto asked = replanned(resin, other.id);
        if (!asked) continue;
        const auto set_up = schedule::set_up(*asked, assumed_, cache_);
        if (!set_up || !good(schedule::fits(set_up->setting, limits_))) continue;
        return told("hardener", other.id, "use " + other.id + " in place of " + resin, *asked,
                    set_up->setting);
      }
    }
    return std::nullopt;
  }
  [[nodiscard]] std::optional<Asked> replanned(const std::string& resin,
                                               const std::string& instead) const {
    Asked asked = asked_;
    for (std::size_t b = 0; b < asked.boards.size(); ++b) {
      auto board = replan_(b, resin, instead);
      if (!board) return std::nullopt;
      asked.boards[b] = std::move(*board);
    }
    return asked;
  }

  // --- until: one working span more, inside the weather

  std::optional<SmallestChange> later_end() {
    Asked longest = asked_;
    longest.until = schedule::on_grid_before(asked_.weather.last());
    if (longest.until <= asked_.until) return std::nullopt;
    std::set<Instant> later;
    for (const schedule::PersonSpans& person : schedule::people_of(longest)) {
      for (const schedule::WorkingSpan& span : person.spans) {
        const Instant end = schedule::on_grid_before(span.until);
        if (end > asked_.until) later.insert(end);
      }
    }
    if (later.empty()) return std::nullopt;
    std::vector<Instant> ends(later.begin(), later.end());
    if (ends.size() > most_spans_later) ends.resize(most_spans_later);
    longest.until = ends.back();
    // Films and limits of the longest time are those of every shorter one: only hours end earlier.
    const auto set_up = schedule::set_up(longest, assumed_, cache_);
    if (!set_up) return std::nullopt;
    schedule::Setting setting = set_up->setting;
    const auto cut = [&](Instant end) {
      setting.people = set_up->setting.people;
      for (schedule::PersonSpans& person : setting.people) {
        std::erase_if(person.spans, [&](const auto& span) { return span.from >= end; });
        for (schedule::WorkingSpan& span : person.spans) span.until = std::min(span.until, end);
      }
    };
    const auto fits_until = [&](Instant end) {
      cut(end);
      return good(schedule::fits(setting, limits_));
    };
    if (!fits_until(ends.back())) return std::nullopt;
    // More time never fits less, so that halving finds the first end.
    std::size_t below = 0, first = ends.size() - 1;
    while (below < first) {
      const std::size_t middle = (below + first) / 2;
      if (fits_until(ends[middle])) {
        first = middle;
      } else {
        below = middle + 1;
      }
    }
    Asked asked = asked_;
    asked.until = ends[first];
    cut(asked.until);
    const std::string value = time::print_wall(asked.until, asked_.zone);
    return told("until", time::rfc3339(asked.until, asked_.zone), "give it until " + value, asked,
                setting);
  }

  // When it would be finished then.
  std::optional<SmallestChange> told(std::string change, std::string value, std::string text,
                                     const Asked& asked, const schedule::Setting& setting) {
    schedule::Arranging arranging = schedule::arranging(setting);
    // Of one board to the minute, as it will be found; of several what counts most.
    if (setting.boards.size() > 1) arranging.objective.terms.resize(1);
    const auto arrangement = schedule::arrange(setting, arranging, limits_);
    if (!arrangement.fits()) return std::nullopt;
    Instant last = asked.from;
    for (const schedule::PlacedStep& placed : arrangement.steps) {
      last = std::max(last, placed.attended_until);
    }
    return SmallestChange{std::move(change), std::move(value), std::move(text),
                          time::rfc3339(last, asked.zone)};
  }

  const Asked& asked_;
  const schedule::Assumed& assumed_;
  const schedule::SetUp& set_up_;
  const Replan& replan_;
  const search::Limits& limits_;
  resin::AnswerCache* cache_;
};

}  // namespace

std::vector<SmallestChange> smallest_changes(const Asked& asked, const schedule::Assumed& assumed,
                                             const schedule::SetUp& set_up, const Replan& replan,
                                             const search::Limits& limits,
                                             resin::AnswerCache* cache) {
  return Changes(asked, assumed, set_up, replan, limits, cache).find();
}

}  // namespace wetout::work
