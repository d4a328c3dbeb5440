#include "wetout/work/schedule.hpp"

#include <algorithm>
#include <chrono>
#include <set>
#include <utility>

#include "days_asked.hpp"
#include "fixed_starts.hpp"
#include "made_file.hpp"
#include "schedule_boards.hpp"
#include "schedule_calendar.hpp"
#include "schedule_facts.hpp"
#include "schedule_save.hpp"
#include "scheduling.hpp"
#include "weather_in_use.hpp"
#include "wetout/base/sha256.hpp"
#include "wetout/files/answer_store.hpp"
#include "wetout/joblog/log.hpp"
#include "wetout/time/read_near.hpp"

namespace wetout::work {
namespace {

using time::Instant;

constexpr std::chrono::days usual_horizon{14};

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
    if (request_.calendar) {
      if (auto may = may_make(workshop_, *request_.calendar, made_calendar); !may) {
        return base::fail(may.error());
      }
    }
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
    tell_notices(s, *use_, document);
    keep(s);
    answer_.units = boards_.front().files.shop.units;
    answer_.zone = asked_.zone;
    if (auto written = write_calendar(); !written) return base::fail(written.error());
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
    return read_fixed_starts(request_.fixed, now_, assumed_.steps, asked_);
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
  }

  // Last: what is kept is the whole document.
  void keep(const Scheduling& s) {
    if (!s.arrangement.fits()) return;
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
    const search::Limits limits = more_limits();
    auto changes = smallest_changes(asked_, assumed_, s.set_up, replan, limits, &cups_);
    if (limits.elapsed_s && limits.elapsed_s() > limits.time_limit_s) {
      answer_.document.notices.push_back(
          {.code = "schedule.changes_cut",
           .text = "not every change was tried in the time there was: a smaller one may help too",
           .value = limits.time_limit_s,
           .unit = "s"});
    }
    out.why = why_impossible(s, more_limits());
    if (changes.empty()) return;
    const report::SmallestChange& least = changes.front();
    out.change = least.change;
    out.value = least.value;
    out.text = least.text;
    out.finish = least.finish;
    out.others.assign(changes.begin() + 1, changes.end());
  }

  base::Result<void> write_calendar() {
    if (!request_.calendar || answer_.document.timeline.empty()) return {};
    const auto facts = calendar_facts(workshop_, answer_.document, now_);
    auto made = make_file(workshop_, *request_.calendar,
                          report::to_calendar(answer_.document, facts, answer_.units, answer_.zone),
                          made_calendar);
    answer_.calendar_written = made.has_value() && !workshop_.dry_run;
    return made;
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
