#include "record_facts.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <map>
#include <set>
#include <utility>

#include "record_step.hpp"
#include "record_times.hpp"
#include "wetout/base/words.hpp"
#include "wetout/resin/ratio.hpp"
#include "wetout/units/print.hpp"

namespace wetout::work {
namespace {

using joblog::EventKind;
using joblog::Facts;
using units::Milligrams;

// Mass of part B per mass of part A that the coat was planned with: a polyester's own dose.
std::optional<double> planned_ratio(const JobOfRecord& job, const laminate::CoatNeed& coat) {
  if (coat.ratio.a <= 0.0) return std::nullopt;
  if (coat.ratio.by == resin::By::mass) return coat.ratio.b / coat.ratio.a;
  if (job.shop) {
    for (const resin::Product& product : job.shop->shop.resins) {
      if (product.id == coat.resin) return resin::hardener_per_resin(product);
    }
  }
  return std::nullopt;
}

double stirred_in(const laminate::CoatNeed& coat) {
  double share = 0.0;
  for (const laminate::Additive& additive : coat.additives) share += additive.share;
  return share;
}

// Additives come on top of A + B.
void split(Facts& facts, double ratio, double additives) {
  const Milligrams both =
      Milligrams(std::llround(static_cast<double>(facts.mass->count()) / (1.0 + additives)));
  facts.part_a = Milligrams(std::llround(static_cast<double>(both.count()) / (1.0 + ratio)));
  facts.part_b = both - *facts.part_a;
}

class Builder {
 public:
  Builder(const RecordRequest& request, const FactsContext& context)
      : request_(request),
        job_(context.job),
        step_(context.step),
        coat_(coat_of(context.job, context.step)),
        goods_(context.goods),
        resin_(context.resin),
        times_(context.job.zone, context.now),
        history_(
            history_of(context.before, schedule::to_string(context.step), request.token + "/")),
        now_(context.now) {}

  base::Result<FactsOfRecord> run() {
    if (says_nothing()) return base::fail(nothing());
    at_ = times_.read(request_.at, "--at").value_or(now_);
    start_ = times_.read(request_.start, "--start");
    check_step();
    check_air();
    started();
    conditions();
    mixes();
    if (!goods_.empty()) add(EventKind::note, "used", at_).facts.note = goods_;
    milestones();
    done();
    note();
    for (base::Problem& problem : times_.problems()) problems_.push_back(std::move(problem));
    if (!problems_.empty()) return base::fail(std::move(problems_));
    for (base::Notice& notice : times_.notices()) out_.notices.push_back(std::move(notice));
    if (!job_.shop && times_.has_clock()) {
      out_.notices.push_back(
          {.code = "record.utc", .text = "there is no shop file, so times are those of UTC"});
    }
    return std::move(out_);
  }

 private:
  bool says_nothing() const {
    const RecordRequest& r = request_;
    return !r.mixed && !r.part_a && !r.part_b && !r.left && !r.spilled && !r.start && !r.air &&
           !r.humidity && r.observed.empty() && r.cloth.empty() && r.used.empty() &&
           r.remnants.empty() && !r.done && !r.note;
  }

  base::Problem nothing() const {
    return {.code = "record.nothing",
            .message = "nothing is said of " + schedule::to_string(step_),
            .expected =
                "--mixed, --part-a and --part-b, --left, --spilled, --cloth, --used, --start, "
                "--air, --humidity, --observed, --done or --note",
            .hint = "for example: wetout record " + job_.slug + " " + schedule::to_string(step_) +
                    " --done"};
  }

  bool is_wet() const { return !step_.coat.empty() && step_.word == schedule::StepWord::wet; }

  void wrong_step(std::string_view option, std::string_view why) {
    problems_.push_back({.code = "record.step",
                         .message = std::string(option) + ": " + std::string(why),
                         .key = std::string(option),
                         .found = schedule::to_string(step_),
                         .expected = step_.coat.empty() ? "a coat, e.g. bottom-lam" : step_.coat});
  }

  // Resin is mixed for a coat, and for what is filled before the next one.
  void check_step() {
    const bool takes_resin = is_wet() || step_.word == schedule::StepWord::spot;
    const std::pair<std::string_view, bool> masses[] = {
        {"--mixed", request_.mixed.has_value()},
        {"--part-a", request_.part_a.has_value()},
        {"--part-b", request_.part_b.has_value()},
        {"--left", request_.left.has_value()},
        {"--spilled", request_.spilled.has_value()}};
    for (const auto& [option, is_given] : masses) {
      if (is_given && !takes_resin) wrong_step(option, "no resin is mixed for this step");
    }
    if (!request_.observed.empty() && !is_wet()) {
      wrong_step("--observed", "this step has no film of its own");
    }
  }

  void check_air() {
    // What people work in, with room for a slip of theirs; beyond it is a slip of the hand.
    const auto lowest = units::Temperature::celsius(-30);
    const auto highest = units::Temperature::celsius(60);
    if (!request_.air || (*request_.air >= lowest && *request_.air <= highest)) return;
    const auto print = [&](units::Temperature t) {
      return units::print(t, job_.shop ? job_.shop->units : units::System::us);
    };
    problems_.push_back({.code = "value.range",
                         .message = "--air: nobody works in such air",
                         .key = "--air",
                         .found = print(*request_.air),
                         .expected = print(lowest) + " to " + print(highest)});
  }

  joblog::NewEvent& add(EventKind kind, std::string_view name, time::Instant at) {
    out_.events.push_back({.token = request_.token + "/" + std::string(name),
                           .kind = kind,
                           .step = schedule::to_string(step_),
                           .at = at,
                           .facts = {}});
    return out_.events.back();
  }

  void started() {
    if (!start_) return;
    add(EventKind::started, "started", *start_);
    if (history_.done && *history_.done > *start_) {
      out_.notices.push_back({.code = "record.done_before",
                              .text = "this step was recorded as done already",
                              .subject = schedule::to_string(step_)});
    }
  }

  void conditions() {
    if (!request_.air && !request_.humidity) return;
    Facts& facts = add(EventKind::conditions, "conditions", at_).facts;
    if (request_.air) facts.air_millikelvin = std::llround(request_.air->in_kelvin() * 1e3);
    if (request_.humidity) facts.humidity_ppm = std::llround(*request_.humidity * 1e6);
  }

  void mixes() {
    if (request_.mixed) mixed(*request_.mixed);
    if (request_.part_a && request_.part_b) weighed(*request_.part_a, *request_.part_b);
    if (request_.left) {
      add(EventKind::left, "left", at_).facts.mass = Milligrams::nearest(*request_.left);
    }
    if (request_.spilled) {
      add(EventKind::spilled, "spilled", at_).facts.mass = Milligrams::nearest(*request_.spilled);
    }
  }

  // The least that a record holds; readers of masses let smaller ones through.
  void too_little(std::string_view option) {
    problems_.push_back({.code = "value.range",
                         .message = std::string(option) + ": this is less than a milligram",
                         .key = std::string(option),
                         .expected = "a mass, e.g. 245g"});
  }

  std::optional<double> ratio() const {
    if (coat_ != nullptr) return planned_ratio(job_, *coat_);
    if (resin_ == nullptr || resin_->chemistry != resin::Chemistry::epoxy) return std::nullopt;
    return resin::hardener_per_resin(*resin_);
  }

  void mixed(units::Mass mass) {
    Facts& facts = add(EventKind::mixed, "mixed", at_).facts;
    facts.mass = Milligrams::nearest(mass);
    if (facts.mass->count() < 1) return too_little("--mixed");
    if (const auto ratio = this->ratio()) {
      split(facts, *ratio, coat_ != nullptr ? stirred_in(*coat_) : 0.0);
      return;
    }
    out_.notices.push_back({.code = "record.not_split",
                            .text = "no ratio is planned, so parts A and B are not told apart",
                            .subject = schedule::to_string(step_)});
  }

  void weighed(units::Mass a, units::Mass b) {
    Facts& facts = add(EventKind::mixed, "mixed", at_).facts;
    facts.part_a = Milligrams::nearest(a);
    facts.part_b = Milligrams::nearest(b);
    facts.mass = *facts.part_a + *facts.part_b;
    if (facts.part_a->count() < 1) return too_little("--part-a");
    if (facts.part_b->count() < 1) return too_little("--part-b");
    if (coat_ == nullptr) return;
    const double additives = stirred_in(*coat_) * facts.mass->in_grams();
    if (additives > 0.0) {
      *facts.mass += Milligrams(std::llround(additives * 1e3));
      out_.notices.push_back({.code = "record.additives",
                              .text = "additives are counted as planned",
                              .subject = step_.coat,
                              .value = additives,
                              .unit = "g"});
    }
    const auto ratio = planned_ratio(job_, *coat_);
    if (!ratio) return;
    const double off = b / a / *ratio - 1.0;
    // A millionth for the last bit of what was typed.
    if (std::abs(off) <= coat_->ratio.tolerance + 1e-6) return;
    out_.notices.push_back({.code = "ratio.off",
                            .text = off > 0 ? "part B is above what the ratio wants"
                                            : "part B is below what the ratio wants",
                            .subject = step_.coat,
                            .value = std::abs(off),
                            .limit = coat_->ratio.tolerance,
                            .unit = "share"});
  }

  void milestones() {
    std::set<resin::Milestone> seen;
    for (const std::string& text : request_.observed) {
      const auto one = times_.observed(text);
      if (!one) continue;
      const std::string word(resin::to_string(one->milestone));
      if (!seen.insert(one->milestone).second) {
        problems_.push_back({.code = "observed.twice",
                             .message = "--observed: " + word + " is given more than once",
                             .key = "--observed",
                             .found = text,
                             .hint = "leave one"});
        continue;
      }
      add(EventKind::milestone, "observed-" + word, one->at).facts.milestone = word;
      not_before_start(one->at, "--observed");
    }
    in_their_order();
  }

  // Gel comes before tack-free, that before sandable, that before full cure: as a data sheet says.
  void in_their_order() {
    constexpr std::string_view order[] = {"gel", "tack_free", "sandable", "full_cure"};
    std::map<std::string, time::Instant> known = history_.milestones;
    bool is_any_new = false;
    for (const joblog::NewEvent& event : out_.events) {
      if (event.kind != EventKind::milestone) continue;
      known[event.facts.milestone] = event.at;
      is_any_new = true;
    }
    if (!is_any_new) return;
    std::optional<std::pair<std::string_view, time::Instant>> last;
    for (const std::string_view word : order) {
      const auto found = known.find(std::string(word));
      if (found == known.end()) continue;
      if (last && found->second < last->second) {
        out_.notices.push_back({.code = "record.milestones",
                                .text = spoken(word) + " was seen before " + spoken(last->first),
                                .subject = schedule::to_string(step_)});
      }
      last = {word, found->second};
    }
  }

  static std::string spoken(std::string_view word) {
    std::string text(word);
    std::replace(text.begin(), text.end(), '_', '-');
    return text;
  }

  void done() {
    if (!request_.done) return;
    add(EventKind::done, "done", at_);
    not_before_start(at_, "--done");
    if (history_.done) {
      out_.notices.push_back({.code = "record.done_before",
                              .text = "this step was recorded as done before",
                              .subject = schedule::to_string(step_)});
    }
    if (is_wet() && !history_.is_mixed && !request_.mixed && !request_.part_a) {
      out_.notices.push_back({.code = "record.no_mix",
                              .text = "no resin was recorded as mixed for it",
                              .subject = schedule::to_string(step_)});
    }
  }

  void not_before_start(time::Instant at, std::string_view option) {
    const std::optional<time::Instant> start = start_ ? start_ : history_.started;
    if (!start || at >= *start) return;
    problems_.push_back({.code = "record.order",
                         .message = std::string(option) + ": this is before the step began",
                         .key = std::string(option),
                         .found = times_.print(at),
                         .expected = "a time from " + times_.print(*start) + " on",
                         .hint = start_
                                     ? "--at says when the rest happened"
                                     : "take the start back if it is wrong: wetout record undo " +
                                           std::to_string(history_.started_by)});
  }

  void note() {
    if (request_.note) add(EventKind::note, "note", at_).facts.note = *request_.note;
  }

  const RecordRequest& request_;
  const JobOfRecord& job_;
  const schedule::StepName& step_;
  const laminate::CoatNeed* coat_;
  const std::string& goods_;
  const resin::Product* resin_;
  RecordTimes times_;
  StepHistory history_;
  time::Instant now_;
  time::Instant at_;
  std::optional<time::Instant> start_;
  base::Problems problems_;
  FactsOfRecord out_;
};

}  // namespace

base::Result<FactsOfRecord> facts_of(const RecordRequest& request, const FactsContext& context) {
  return Builder(request, context).run();
}

}  // namespace wetout::work
