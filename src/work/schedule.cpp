#include "wetout/work/schedule.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <iterator>
#include <set>
#include <utility>

#include "days_asked.hpp"
#include "schedule_boards.hpp"
#include "schedule_facts.hpp"
#include "schedule_save.hpp"
#include "scheduling.hpp"
#include "stored_plan.hpp"
#include "weather_in_use.hpp"
#include "wetout/base/sha256.hpp"
#include "wetout/base/words.hpp"
#include "wetout/files/answer_store.hpp"
#include "wetout/time/print.hpp"
#include "wetout/time/read_near.hpp"

namespace wetout::work {
namespace {

using time::Instant;

constexpr std::chrono::days usual_horizon{14};
// Room air that differs so much from what the plan was made for changes how long cups last.
constexpr double other_air_k = 3.0;

base::Result<schedule::Prefer> read_prefer(const std::string& text) {
  if (text == "finish") return schedule::Prefer::finish;
  if (text == "slack") return schedule::Prefer::slack;
  if (text == "visits") return schedule::Prefer::visits;
  return base::fail({.code = "word.unknown",
                     .message = "this is nothing to prefer",
                     .key = "--prefer",
                     .found = text,
                     .expected = "finish, slack or visits"});
}

base::Problems with_key(base::Problems problems, const std::string& key) {
  for (base::Problem& problem : problems) problem.key = key;
  return problems;
}

class Scheduler {
 public:
  Scheduler(const Workshop& workshop, const ScheduleRequest& request)
      : workshop_(workshop), request_(request), cups_(workshop.cache) {}

  base::Result<ScheduleAnswer> run() {
    if (auto problems = ask(); !problems.empty()) return base::fail(std::move(problems));
    auto set_up = schedule::set_up(asked_, assumed_, &cups_);
    if (!set_up) return base::fail(in_files(set_up.error()));
    const schedule::Arranging arranging = schedule::arranging(set_up->setting);
    const schedule::Arrangement arrangement =
        schedule::arrange(set_up->setting, arranging, limits());
    const Scheduling s{asked_, assumed_, *set_up, arranging, arrangement};
    report::ScheduleDocument& document = answer_.document;
    describe(s);
    tell_rules(s, document);
    document.weather.sha256 = weather_sha256_;
    document.weather.placed = use_->placed;
    for (std::size_t b = 0; b < boards_.size(); ++b)
      document.jobs[b].revision = boards_[b].revision;
    tell_timeline(s, document);
    document.windows = coat_windows(s);
    judge(s);
    document.assumptions = schedule_assumptions(s, *use_);
    cautions();
    notices(s);
    answer_.units = boards_.front().files.shop.units;
    answer_.zone = asked_.zone;
    return std::move(answer_);
  }

 private:
  // --- what is asked

  base::Problems ask() {
    const auto guard = climate::read_guard(request_.guard);
    if (!guard) return with_key(guard.error(), "--guard");
    asked_.guard = *guard;
    const auto prefer = read_prefer(request_.prefer);
    if (!prefer) return prefer.error();
    asked_.prefer = *prefer;
    auto boards = boards_to_schedule(workshop_, request_.jobs);
    if (!boards) return boards.error();
    boards_ = std::move(*boards);
    const files::ShopFile& shop = boards_.front().files.shop;
    auto zone = time::Zone::named(shop.time_zone);
    if (!zone) return zone.error();
    asked_.zone = *zone;
    const auto now = workshop_.now(*zone);
    if (!now) return now.error();
    now_ = *now;
    asked_.shop = shop.shop;
    asked_.room = shop.room;
    asked_.people = shop.people;
    asked_.shared = shop.shared;
    if (request_.hours.empty() && nobody_works()) {
      return {{.code = "shop.no_hours",
               .message = "the shop file does not say when anybody works",
               .file = shop.source.name,
               .key = "hours",
               .expected = "[hours] with sat = [\"08:00-12:00\", \"14:00-18:00\"] and the like, or "
                           "--hours \"18:00-22:00\""}};
    }
    for (const std::string& text : request_.hours) {
      const auto hours = schedule::read_hours_instead(text);
      if (!hours) return with_key(hours.error(), "--hours");
      for (schedule::Person& person : asked_.people) schedule::put_instead(*hours, person.hours);
    }
    for (const BoardToSchedule& board : boards_) {
      schedule::BoardAsked& one = asked_.boards.emplace_back();
      one.work = board.work;
    }
    if (auto problems = recorded(); !problems.empty()) return problems;
    if (auto problems = days(); !problems.empty()) return problems;
    return fixed();
  }

  [[nodiscard]] bool nobody_works() const {
    return std::all_of(asked_.people.begin(), asked_.people.end(), [](const auto& person) {
      const auto& days = person.hours.days;
      return std::all_of(days.begin(), days.end(), [](const auto& spans) { return spans.empty(); });
    });
  }

  // What has been done, as far as a log knows.
  base::Problems recorded() {
    if (!joblog::Log::exists(workshop_.log)) return {};
    const joblog::Log log = joblog::Log::open(workshop_.log);
    for (std::size_t b = 0; b < boards_.size(); ++b) {
      auto& board = asked_.boards[b];
      const auto steps = schedule::steps_of(board.work, asked_.shop, assumed_.steps);
      if (!steps) return in_files(steps.error());
      RecordedWork work = recorded_work(log.events(boards_[b].job), *steps);
      std::erase_if(work.facts, [&](const schedule::Fact& fact) { return fact.start > now_; });
      for (const schedule::Fact& fact : work.facts) first_done_ = std::min(first_done_, fact.start);
      board.facts = std::move(work.facts);
      auto& air = asked_.recorded_air;
      air.insert(air.end(), work.air.begin(), work.air.end());
    }
    std::stable_sort(asked_.recorded_air.begin(), asked_.recorded_air.end(),
                     [](const auto& a, const auto& b) { return a.at < b.at; });
    return {};
  }

  base::Problems days() {
    using Asked = std::optional<Instant>;
    const auto read = [&](const std::optional<std::string>& text,
                          const char* key) -> base::Result<Asked> {
      if (!text) return Asked();
      const auto at = time::read_near(*text, asked_.zone, now_, time::Side::coming);
      if (!at) return base::fail(with_key(at.error(), key));
      return Asked(*at);
    };
    const auto from = read(request_.from, "--from");
    if (!from) return from.error();
    const auto until = read(request_.until, "--until");
    if (!until) return until.error();
    const files::ShopFile& shop = boards_.front().files.shop;
    auto weather = usual_weather(request_.weather, shop, asked_.zone, "--weather");
    if (!weather) return weather.error();
    weather_bytes_ = std::move(weather->bytes);
    weather_sha256_ = base::hex(base::sha256(weather_bytes_));
    auto use = in_use(std::move(weather->weather), now_, from->value_or(now_));
    if (!use) return use.error();
    use_ = std::move(*use);
    const auto days = days_asked(*use_, now_, *from, *until, usual_horizon, asked_.zone);
    if (!days) return days.error();
    answer_.document.notices = days->notices;
    asked_.from = days->from;
    asked_.until = schedule::on_grid_before(days->to);
    asked_.issued = use_->issued;
    asked_.weather = part_of(use_->weather, std::min(asked_.from, first_done_), asked_.until,
                             climate::room_lag(asked_.room, assumed_.climate));
    return {};
  }

  // "coat/step=time".
  base::Problems fixed() {
    base::Problems problems;
    for (const std::string& text : request_.fixed) {
      const std::size_t equals = text.find('=');
      if (equals == std::string::npos || equals == 0) {
        problems.push_back({.code = "fix.bad",
                            .message = "a fixed start is a step, an equals sign and a time",
                            .key = "--fix",
                            .found = text,
                            .expected = "e.g. \"deck-lam=2026-06-14 18:30\""});
        continue;
      }
      const auto at =
          time::read_near(text.substr(equals + 1), asked_.zone, now_, time::Side::coming);
      if (!at) {
        auto wrong = with_key(at.error(), "--fix");
        problems.insert(problems.end(), wrong.begin(), wrong.end());
        continue;
      }
      if (*at < asked_.from || *at >= asked_.until) {
        problems.push_back({.code = "fix.outside",
                            .message = "this start lies outside the time that is planned",
                            .key = "--fix",
                            .found = time::print_wall(*at, asked_.zone),
                            .expected = time::print_wall(asked_.from, asked_.zone) + " to " +
                                        time::print_wall(asked_.until, asked_.zone)});
        continue;
      }
      auto wrong = fix(text.substr(0, equals), *at);
      problems.insert(problems.end(), wrong.begin(), wrong.end());
    }
    return problems;
  }

  // The step that is meant may be named by its beginning, and without its job where there is one.
  base::Problems fix(const std::string& typed, Instant at) {
    std::vector<std::string> ids;
    std::vector<std::pair<std::size_t, schedule::StepName>> of;
    for (std::size_t b = 0; b < boards_.size(); ++b) {
      const auto steps = schedule::steps_of(asked_.boards[b].work, asked_.shop, assumed_.steps);
      if (!steps) return in_files(steps.error());
      for (const schedule::Step& step : steps->steps) {
        const std::string id = to_string(step.name);
        const std::string prefix = boards_[b].job + "/";
        const auto add = [&](std::string name) {
          ids.push_back(std::move(name));
          of.emplace_back(b, step.name);
        };
        add(prefix + id);
        if (step.is_wet()) add(prefix + step.name.coat);
        if (boards_.size() > 1) continue;
        add(id);
        if (step.is_wet()) add(step.name.coat);
      }
    }
    std::vector<std::size_t> found = base::matches(typed, ids);
    // A coat alone is its wet, though every step of it begins so.
    if (found.size() > 1) {
      std::vector<std::size_t> wets;
      for (const std::size_t i : found) {
        if (of[i].second.word == schedule::StepWord::wet) wets.push_back(i);
      }
      if (typed.find('/') == std::string::npos || !wets.empty()) found = wets;
    }
    std::set<std::pair<std::size_t, std::string>> meant;
    for (const std::size_t i : found) meant.emplace(of[i].first, to_string(of[i].second));
    if (meant.size() == 1) {
      asked_.boards[of[found.front()].first].fixed.push_back({of[found.front()].second, at});
      return {};
    }
    const auto near = base::nearest(typed, ids);
    std::string list;
    for (const auto& [b, name] : meant) list += (list.empty() ? "" : ", ") + name;
    return {{.code = meant.empty() ? "step.unknown" : "step.ambiguous",
             .message = meant.empty() ? "there is no such step" : "several steps begin so",
             .key = "--fix",
             .found = typed,
             .expected = meant.empty() ? "a step such as \"" + ids.front() + "\"" : list,
             .hint = near && meant.empty() ? "did you mean \"" + *near + "\"?" : ""}};
  }

  base::Problems in_files(base::Problems problems) const {
    return locate(std::move(problems), boards_.front().files);
  }

  // --- the search

  [[nodiscard]] search::Limits limits() {
    search::Limits limits;
    limits.elapsed_s = request_.elapsed_s;
    limits.time_limit_s = request_.elapsed_s ? request_.time_limit_s : 0.0;
    limits.interrupted = [this] {
      stopped_ = stopped_ || (request_.interrupted && request_.interrupted());
      return stopped_;
    };
    if (request_.progress) {
      limits.progress = [this](const search::Progress& progress) {
        request_.progress({progress.elapsed_s, progress.best != nullptr, std::nullopt});
      };
    }
    return limits;
  }
  // For what is asked beside the schedule itself: as long again.
  [[nodiscard]] search::Limits more_limits() {
    search::Limits limits = this->limits();
    if (!request_.elapsed_s) return limits;
    limits.elapsed_s = [this, begun = request_.elapsed_s()] {
      return request_.elapsed_s() - begun;
    };
    return limits;
  }

  void describe(const Scheduling& s) {
    report::ScheduleDocument& document = answer_.document;
    document.program = program();
    document.made = s.told(now_);
    document.prefer = request_.prefer;
  }

  void judge(const Scheduling& s) {
    report::ScheduleDocument& document = answer_.document;
    const search::Answer& found = s.arrangement.answer;
    document.optimal = found.state == search::State::proved;
    document.gap = search::gap(found);
    document.bound_leaves_out = found.bound_leaves_out;
    if (found.state == search::State::feasible || found.state == search::State::stopped) {
      document.stopped = stopped_ ? "interrupted" : "time";
    }
    const bool one = s.setting().boards.size() == 1;
    const bool finish_first = asked_.prefer == schedule::Prefer::finish;
    if (one && finish_first && s.arrangement.fits() && !found.bound.empty()) {
      document.bound = s.told(s.setting().grid.at(static_cast<schedule::Slot>(found.bound[0])));
    }
    if (found.state == search::State::infeasible) {
      impossible(s);
      return;
    }
    if (!s.arrangement.fits()) {
      answer_.interrupted = !s.arranging.problem.ops.empty();
      return;
    }
    if (request_.alternatives > 0) {
      document.alternatives = alternatives(s, request_.alternatives, more_limits());
    }
    ScheduleToSave save{workshop_, s, now_, weather_bytes_, request_, answer_};
    save_schedule(save);
  }

  void impossible(const Scheduling& s) {
    report::Impossible& out = answer_.document.impossible.emplace();
    const Replan replan = [this](
                              std::size_t board, const std::string& resin,
                              const std::string& instead) -> std::optional<schedule::BoardAsked> {
      const BoardToSchedule& of = boards_[board];
      JobAndShop both = of.files;
      for (laminate::CoatSpec& coat : both.job.coats) {
        if (coat.resin == resin) coat.resin = instead;
      }
      auto plan = plan_of(workshop_, both, of.choices);
      if (!plan) return std::nullopt;
      schedule::BoardAsked asked = asked_.boards[board];
      asked.work.plan = std::move(*plan);
      asked.work.coats = both.job.coats;
      return asked;
    };
    auto changes = smallest_changes(asked_, assumed_, s.set_up, replan, more_limits(), &cups_);
    out.why = why_impossible(s, more_limits());
    if (changes.empty()) return;
    const report::SmallestChange& least = changes.front();
    out.change = least.change;
    out.value = least.value;
    out.text = least.text;
    out.finish = least.finish;
    out.others.assign(changes.begin() + 1, changes.end());
  }

  void cautions() {
    std::set<std::string> said;
    for (std::size_t b = 0; b < boards_.size(); ++b) {
      for (laminate::Caution caution : asked_.boards[b].work.plan.cautions) {
        if (!said.insert(caution.text).second) continue;
        if (caution.step != "all" && boards_.size() > 1) {
          caution.step = boards_[b].job + "/" + caution.step;
        }
        answer_.document.cautions.push_back(std::move(caution));
      }
    }
  }

  void notices(const Scheduling& s) {
    base::Notices& out = answer_.document.notices;
    const auto add = [&](const base::Notices& more) {
      for (const base::Notice& notice : more) {
        if (std::find(out.begin(), out.end(), notice) == out.end()) out.push_back(notice);
      }
    };
    add(use_->weather.notices);
    add(s.set_up.notices);
    const schedule::Conditions& inside = s.set_up.conditions.front();
    if (!inside.dew_point) {
      out.push_back({.code = "schedule.no_humidity",
                     .text = "the weather has no humidity: neither the dew-point margin nor the "
                             "humidity is looked at"});
    }
    if (inside.foul_air) {
      out.push_back({.code = "room.foul_air",
                     .text = "an unvented heater gives water, carbon dioxide and carbon monoxide "
                             "to the room: no film is to be open while it burns"});
    }
    if (boards_.size() > 1 && asked_.prefer != schedule::Prefer::finish) {
      out.push_back({.code = "schedule.prefer_one",
                     .text = "what is preferred holds for each board once its finish is found"});
    }
    for (const report::TimelineStep& step : answer_.document.timeline) {
      fixed_against(step, out);
      if (!step.room || step.state == report::StepState::done) continue;
      other_air(s, step, out);
    }
  }

  static void fixed_against(const report::TimelineStep& step, base::Notices& out) {
    if (step.state != report::StepState::fixed) return;
    for (const report::StepSlack& slack : step.slack) {
      if (slack.slack >= 0.0) continue;
      out.push_back({.code = "schedule.fixed_against",
                     .text = "its start is fixed, against the limit of " + slack.limit,
                     .subject = step.id,
                     .value = slack.value,
                     .limit = slack.bound,
                     .unit = slack.unit});
    }
  }

  // Cups were worked out for the plan's air.
  void other_air(const Scheduling& s, const report::TimelineStep& told, base::Notices& out) const {
    for (const schedule::PlacedStep& placed : s.arrangement.steps) {
      const schedule::Step& step = s.step(placed.board, placed.step);
      if (!step.is_wet() || s.id(placed.board, placed.step) != told.id) continue;
      const auto planned = asked_.boards[static_cast<std::size_t>(placed.board)].work.plan.air;
      const double warmer = (*told.room - planned).in_kelvin();
      if (std::abs(warmer) < other_air_k) return;
      out.push_back({.code = "schedule.other_air",
                     .text = "the plan's cups are for other air than the room will have: mix by "
                             "\"wetout mix\" with --air on the day",
                     .subject = told.id,
                     .value = told.room->in_celsius(),
                     .limit = planned.in_celsius(),
                     .unit = "C"});
    }
  }

  const Workshop& workshop_;
  const ScheduleRequest& request_;
  files::AnswerStore cups_;
  schedule::Asked asked_;
  schedule::Assumed assumed_;
  std::vector<BoardToSchedule> boards_;
  std::optional<WeatherInUse> use_;
  std::string weather_bytes_, weather_sha256_;
  Instant now_;
  Instant first_done_ = Instant::max();
  bool stopped_ = false;
  ScheduleAnswer answer_;
};

}  // namespace

base::Result<ScheduleAnswer> schedule(const Workshop& workshop, const ScheduleRequest& request) {
  return Scheduler(workshop, request).run();
}

}  // namespace wetout::work
