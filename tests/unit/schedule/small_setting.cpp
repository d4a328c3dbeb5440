#include "small_setting.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <stdexcept>
#include <string>
#include <utility>

#include "board_work.hpp"
#include "sample.hpp"

namespace wetout::schedule::sample {
namespace {

using resin::Milestone;
using time::Instant;
using units::minutes;

std::size_t u(int i) { return static_cast<std::size_t>(i); }

class Maker {
  static constexpr Slot most_before = 16;

 public:
  Maker(Random& random, const SmallShape& shape) : r_(random), shape_(shape) {}

  Setting make() {
    s_.grid.origin = midnight;
    s_.grid.step = std::chrono::hours(r_.chance(50) ? 1 : 3);
    s_.sanding_room = r_.chance(40);
    s_.stands = r_.between(1, 2);
    if (r_.chance(20)) s_.racks = r_.between(1, shape_.boards);
    s_.prefer = std::array{Prefer::finish, Prefer::slack, Prefer::visits}[u(r_.between(0, 2))];
    s_.defaults.window_scale.value = r_.between(1, 8) * 60.0;
    s_.defaults.visit_gap.value = r_.between(1, 3) * 60.0;
    s_.defaults.dust_settles.value = r_.between(0, 2) * 90.0;
    std::vector<bool> begun(u(shape_.boards), false);
    for (auto&& b : begun) b = shape_.facts && r_.chance(35);
    // Before the first start there is room for what has been done.
    const bool any = std::find(begun.begin(), begun.end(), true) != begun.end();
    if (any) s_.begin = most_before;
    s_.grid.slots = s_.begin + shape_.slots;
    films();
    people();
    const auto limits = std::make_shared<const LimitTester>(weather());
    for (int b = 0; b < shape_.boards; ++b) {
      BoardSetting& board = s_.boards.emplace_back();
      board.job = "board-" + std::to_string(b);
      board.limits = limits;
      steps(board);
      done(board, begun[u(b)]);
    }
    if (any) as_few_before_as_can_be();
    return std::move(s_);
  }

 private:
  [[nodiscard]] double step_h() const { return s_.grid.step_s() / 3600.0; }
  /// Hours, in thirds.
  double some_hours(double low, double high) {
    return r_.between(static_cast<int>(low * 3), static_cast<int>(high * 3)) / 3.0;
  }

  void films() {
    for (const char* resin : {"resin-0", "resin-1"}) {
      auto table = std::make_shared<FilmTable>();
      const double slow = some_hours(0.5, 1.5) * step_h();
      for (Slot slot = 0; slot < s_.grid.slots + 8; ++slot) {
        FilmSpans& film = table->at.emplace_back();
        const double begun = slot * s_.grid.step_s();
        // Gel, then whatever may follow in any order: the rules ask for none.
        const double gel = some_hours(0, 2) * slow;
        for (const Milestone m : resin::milestones) {
          const double after = m == Milestone::gel ? gel : gel + some_hours(0, 4) * slow;
          film[m] = begun + std::round(after * 3600.0);
        }
        film[Milestone::recoat_until] += 2.0 * 3600.0 * step_h();
        film[Milestone::trim_until] += 1.0 * 3600.0 * step_h();
        if (r_.chance(4)) film[Milestone::sandable] = never;
        if (r_.chance(4)) film[Milestone::recoat_until] = never;
      }
      s_.films[resin] = std::move(table);
      s_.sources[resin] = some_source();
    }
    s_.air = std::make_shared<const time::History>(time::History::constant(295.0));
  }

  void people() {
    const int count = r_.chance(40) ? 2 : 1;
    for (int p = 0; p < count; ++p) {
      PersonSpans& person = s_.people.emplace_back();
      person.id = "person-" + std::to_string(p);
      if (p > 0 && !shape_.different_people) {
        person.spans = s_.people.front().spans;
        continue;
      }
      Slot at = s_.begin + r_.between(0, 2);
      while (at < s_.grid.slots) {
        const Slot until = at + r_.between(3, 12);
        // Hours know nothing of the grid.
        const auto late = std::chrono::minutes(r_.chance(30) ? 20 : 0);
        person.spans.push_back({s_.grid.at(at) + late, s_.grid.at(until) + late});
        at = until + r_.between(1, 3);
      }
    }
  }

  Conditions weather() {
    const double warm = r_.between(15, 26), damp = r_.between(4, 16);
    const int days = static_cast<int>((s_.grid.slots + 30) * step_h() / 24.0) + 2;
    return outdoors(sample::weather(
        days, [&](double) { return warm + r_.between(-3, 3); },
        [&](double) { return damp + r_.between(-3, 3); }));
  }

  // --- steps, chained as those of a real board

  int add(BoardSteps& steps, Step step) {
    const int index = static_cast<int>(steps.steps.size());
    step.title = "Step " + std::to_string(index);
    const bool always = step.when.group < 0;
    steps.steps.push_back(std::move(step));
    for (const int before : tails_) {
      Link link{.from = before, .to = index, .min = units::Duration{}};
      if (r_.chance(15)) link.min = units::hours(some_hours(0, 2) * step_h());
      steps.links.push_back(link);
    }
    if (always) tails_.clear();
    tails_.push_back(index);
    return index;
  }

  Step plain(StepWord word, int coat) {
    Step step;
    step.name = {coat < 0 ? "" : "coat-" + std::to_string(coat), word, ""};
    step.coat = coat;
    step.attended = minutes(5.0 * r_.between(1, static_cast<int>(step_h() * 18)));
    return step;
  }

  When group(BoardSteps& steps, const char* id) {
    steps.groups.push_back({std::to_string(steps.groups.size()) + id, {"a", "b"}, {"A", "B"}});
    return {static_cast<int>(steps.groups.size()) - 1, 0};
  }

  void steps(BoardSetting& board) {
    tails_.clear();
    BoardSteps& steps = board.steps;
    const int count = r_.between(shape_.least_steps, shape_.most_steps);
    const int wets = r_.between(1, shape_.most_wets);
    int serial = 0;
    while (static_cast<int>(steps.steps.size()) < count) {
      const int made = static_cast<int>(steps.steps.size());
      const bool another =
          static_cast<int>(steps.wets.size()) < wets && (r_.chance(50) || made + 1 == count);
      if (another) {
        coat(board);
        continue;
      }
      constexpr std::array words{StepWord::prepare, StepWord::sand, StepWord::wash, StepWord::open};
      const int last = static_cast<int>(steps.wets.size()) - 1;
      Step step = plain(words[u(r_.between(0, 3))], std::max(0, last));
      step.name.detail = std::to_string(++serial);
      step.dusty = r_.chance(35);
      if (last >= 0 && r_.chance(30)) step.when = {group(steps, "-choice").group, r_.between(0, 1)};
      const int index = add(steps, std::move(step));
      if (last >= 0 && r_.chance(60)) after(steps, steps.wets[u(last)], index);
    }
  }

  void coat(BoardSetting& board) {
    BoardSteps& steps = board.steps;
    const int coat = static_cast<int>(steps.wets.size());
    const int below = coat == 0 ? -1 : steps.wets.back();
    When window;
    int scuff = -1;
    if (below >= 0 && r_.chance(70)) {
      window = group(steps, "-ground");
      Step step = plain(StepWord::scuff, coat);
      step.dusty = true;
      step.when = {window.group, 1};
      scuff = add(steps, std::move(step));
      steps.links.push_back(
          {.from = below, .moment = Moment::sandable, .to = scuff, .min = units::Duration{}});
    }
    const int wet = add(steps, plain(StepWord::wet, coat));
    steps.wets.push_back(wet);
    steps.sealed.push_back(false);
    board.resins.push_back(r_.chance(50) ? "resin-0" : "resin-1");
    FilmRules limits = rules();
    limits.lowest = units::Temperature::celsius(r_.between(8, 18));
    if (r_.chance(50)) limits.notice_below = units::Temperature::celsius(r_.between(16, 24));
    limits.core_rise_most = units::TempDelta::kelvin(r_.between(1, 8));
    board.rules.push_back(limits);
    if (below >= 0) {
      steps.links.push_back(
          {.from = below, .moment = Moment::recoat_from, .to = wet, .min = units::Duration{}});
    }
    if (window.group >= 0) {
      steps.links.push_back({.from = below,
                             .moment = Moment::recoat_until,
                             .to = wet,
                             .to_end = true,
                             .max = units::Duration{},
                             .tight = true,
                             .when = window});
      if (r_.chance(50)) {
        steps.links.push_back(
            {.from = below, .moment = Moment::start, .to = wet, .good_film = true, .when = window});
      }
    }
    if (r_.chance(40)) {
      Step look = plain(StepWord::watch, coat);
      const int index = add(steps, std::move(look));
      const double least = r_.between(0, 2) * step_h();
      steps.links.push_back({.from = wet,
                             .to = index,
                             .min = units::hours(least),
                             .max = units::hours(least + r_.between(0, 3) * step_h())});
    }
  }

  void after(BoardSteps& steps, int wet, int step) {
    constexpr std::array moments{Moment::gel, Moment::handle, Moment::sandable, Moment::tack_free};
    const When when = steps.steps[u(step)].when;
    if (r_.chance(30)) {
      steps.links.push_back({.from = wet,
                             .moment = Moment::trim_until,
                             .to = step,
                             .to_end = true,
                             .max = units::Duration{},
                             .tight = true,
                             .when = when});
      steps.links.push_back(
          {.from = wet, .moment = Moment::gel, .to = step, .min = units::Duration{}});
      return;
    }
    steps.links.push_back({.from = wet,
                           .moment = moments[u(r_.between(0, 3))],
                           .to = step,
                           .min = units::Duration{},
                           .when = {}});
  }

  // --- what has been done, what is fixed

  void as_few_before_as_can_be() {
    Slot needed = 0;
    for (const BoardSetting& board : s_.boards) {
      needed = std::max(needed, slots_of_films(board, s_.grid, s_.defaults));
    }
    const Slot fewer = s_.begin - needed;
    if (fewer < 0) throw std::logic_error("a small setting: too few slots before the first start");
    s_.grid.origin += fewer * s_.grid.step;
    s_.grid.slots -= fewer;
    s_.begin = needed;
    for (auto& [resin, table] : s_.films) {
      FilmTable later{{table->at.begin() + fewer, table->at.end()}};
      for (FilmSpans& film : later.at) {
        for (const Milestone m : resin::milestones) {
          if (film[m] < never) film[m] -= fewer * s_.grid.step_s();
        }
      }
      table = std::make_shared<const FilmTable>(std::move(later));
    }
  }

  void done(BoardSetting& board, bool begun) {
    const Instant now = s_.grid.at(s_.begin);
    const auto& steps = board.steps.steps;
    std::vector<Fact> facts;
    int first_open = 0;
    if (begun) {
      first_open = r_.between(1, static_cast<int>(steps.size()) - 1);
      Instant at = now - std::chrono::minutes(r_.between(0, 600));
      for (int i = first_open - 1; i >= 0; --i) {
        // Some options were not taken, some steps not written down.
        const bool left_out = steps[u(i)].when.group >= 0 && r_.chance(50);
        if (left_out || (!steps[u(i)].is_wet() && r_.chance(30))) continue;
        Fact fact{steps[u(i)].name, at - std::chrono::minutes(r_.between(5, 60)), at, {}};
        if (steps[u(i)].is_wet()) seen(fact);
        at = fact.start - std::chrono::minutes(r_.between(0, 200));
        facts.push_back(std::move(fact));
      }
    }
    std::vector<FixedStart> fixed;
    if (r_.chance(15)) {
      const int i = r_.between(first_open, static_cast<int>(steps.size()) - 1);
      const Slot slot = r_.between(s_.begin, s_.grid.slots - 1);
      fixed.push_back({steps[u(i)].name, s_.grid.at(slot) + std::chrono::minutes(17)});
    }
    const auto problems = put_facts(board, facts, fixed, now);
    if (!problems.empty() && problems.front().code == "step.done") {
      put_facts(board, facts, {}, now);
    } else if (!problems.empty()) {
      throw std::logic_error("a small setting: " + problems.front().message);
    }
  }

  void seen(Fact& fact) {
    for (const Milestone m : resin::milestones) {
      const double after = some_hours(0, 4) * step_h();
      fact.observed.emplace_back(m, fact.end + std::chrono::minutes(std::lround(after * 60)));
    }
  }

  Random& r_;
  SmallShape shape_;
  Setting s_;
  std::vector<int> tails_;
};

}  // namespace

Setting small_setting(Random& random, const SmallShape& shape) {
  return Maker(random, shape).make();
}

std::shared_ptr<const FilmSource> some_source() {
  static const auto source = [] {
    auto of = FilmSource::of(waxed_polyester(), resin::Defaults{}, StepDefaults{}, nullptr);
    if (!of) throw std::logic_error("the polyester of the tests has films");
    return std::make_shared<const FilmSource>(std::move(*of));
  }();
  return source;
}

}  // namespace wetout::schedule::sample
