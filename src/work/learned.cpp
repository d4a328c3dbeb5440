#include "learned.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include "learned_rates.hpp"
#include "learned_speed.hpp"
#include "schedule_boards.hpp"
#include "stored_plan.hpp"
#include "wetout/laminate/takes.hpp"
#include "wetout/schedule/step_word.hpp"
#include "wetout/schedule/steps.hpp"

namespace wetout::work {
namespace {

using joblog::EventKind;

// Errors as assumed (docs/models/learning.md): the scale and the eye, and a share of the whole.
double spread_of_grams(double expected) { return 3.0 + 0.04 * expected; }
double spread_of_minutes(double expected) { return 2.0 + 0.15 * expected; }

// Longer than anybody spreads a coat: the end was recorded another day.
constexpr std::chrono::hours longest{4};

// What was recorded of one coat.
struct CoatFacts {
  double mixed = 0.0;
  double spilled = 0.0;
  std::optional<double> left = {};
  std::optional<joblog::Instant> started = {}, done = {};
  std::int64_t mixed_by = 0, done_by = 0;  // events
  bool grams_count = true, times_count = true;
};

std::map<std::string, CoatFacts> facts_of(const std::vector<joblog::EventRow>& events) {
  std::map<std::string, CoatFacts> coats;
  for (const joblog::EventRow& event : events) {
    const auto step = schedule::read_step_name(event.step);
    if (event.undone_by || !step || step->word != schedule::StepWord::wet) continue;
    CoatFacts& coat = coats[step->coat];
    const double grams = event.facts.mass ? event.facts.mass->in_grams() : 0.0;
    const bool of_time = event.kind == EventKind::started || event.kind == EventKind::done;
    (of_time ? coat.times_count : coat.grams_count) &=
        event.counts || event.kind == EventKind::milestone;
    if (event.kind == EventKind::mixed) {
      coat.mixed += grams;
      coat.mixed_by = event.number;
    }
    if (event.kind == EventKind::left) coat.left = coat.left.value_or(0.0) + grams;
    if (event.kind == EventKind::spilled) coat.spilled += grams;
    if (event.kind == EventKind::started && !coat.started) coat.started = event.at;
    if (event.kind == EventKind::done) {
      coat.done = event.at;
      coat.done_by = event.number;
    }
  }
  return coats;
}

double minutes_between(joblog::Instant from, joblog::Instant to) {
  return std::chrono::duration<double, std::ratio<60>>(to - from).count();
}

laminate::Losses as_believed() {
  laminate::Losses losses;
  for (const LossRate& rate : loss_rates()) rate.set_rate(losses, rate.belief.value);
  return losses;
}

// As believed, then each rate by itself one spread higher: takings are linear in every rate.
std::vector<laminate::Losses> cases() {
  std::vector<laminate::Losses> all{as_believed()};
  for (const LossRate& rate : loss_rates()) {
    all.push_back(as_believed());
    rate.set_rate(all.back(), rate.belief.value + rate.belief.spread);
  }
  return all;
}

// What the coats of a board take in terms of the rates: constant + row · rates.
struct CoatModel {
  std::vector<double> row = {};
  double constant = 0.0;
  double expected = 0.0;  ///< at the beliefs
  std::optional<units::Duration> spread = {};
};

base::Result<std::vector<CoatModel>> coat_models(const JobAndShop& both) {
  laminate::PlanInput input;
  input.board = both.job.board;
  input.coats = both.job.coats;
  input.shop = both.shop.shop;
  input.air = both.shop.shop.air;
  input.shop.pace = {};  // minutes are told over the default's
  const auto takings = laminate::takings(input, cases(), {});
  if (!takings) return tl::unexpected(takings.error());
  std::vector<CoatModel> models;
  for (std::size_t i = 0; i < input.coats.size(); ++i) {
    CoatModel model;
    model.expected = takings->front()[i].resin.in_grams();
    model.spread = takings->front()[i].spread;
    model.constant = model.expected;
    for (std::size_t k = 0; k < loss_rates().size(); ++k) {
      const learn::Belief& belief = loss_rates()[k].belief;
      const double slope = ((*takings)[k + 1][i].resin.in_grams() - model.expected) / belief.spread;
      model.row.push_back(slope);
      model.constant -= slope * belief.value;
    }
    models.push_back(std::move(model));
  }
  return models;
}

// Records of all boards as the fits want them.
class Collector {
 public:
  Collector(const joblog::Log& log, const Lessons& lessons) : lessons_(lessons), watch_(log) {}

  Learned run(const joblog::Log& log) {
    for (const joblog::JobRow& job : log.jobs(true)) {
      if (job.revisions > 0) board(log, job.slug);
    }
    fit_losses();
    for (std::size_t k = 0; k < pace_rates().size(); ++k) fit_pace(k);
    fit_handwork();
    fit_speeds();
    learned_.boards = static_cast<int>(boards_.size());
    std::sort(learned_.aside.begin(), learned_.aside.end(),
              [](const auto& a, const auto& b) { return a.number < b.number; });
    return std::move(learned_);
  }

 private:
  void board(const joblog::Log& log, const std::string& slug) {
    const auto events = told(log.events(slug));
    if (events.empty()) return;
    const auto facts = facts_of(events);
    const auto stored = stored_plan(log, slug, std::nullopt);
    const auto both = stored ? files_as_written(*stored) : tl::unexpected(stored.error());
    if (!both) return skip(slug);
    const auto models = coat_models(*both);
    if (!models) return skip(slug);
    const auto steps = schedule::steps_of(board_work(slug, *both, stored->document.plan),
                                          both->shop.shop, schedule::StepDefaults{});
    if (!steps) return skip(slug);
    const auto& coats = both->job.coats;
    for (std::size_t i = 0; i < coats.size(); ++i) {
      const auto coat = facts.find(coats[i].id);
      if (coat == facts.end() || !coat->second.done) continue;
      taken(slug, coats[i], coat->second, (*models)[i]);
      const int wet = steps->wets[i];
      if (wet < 0) continue;
      timed(slug, coats[i], coat->second, (*models)[i],
            steps->steps[static_cast<std::size_t>(wet)].beside_spreading);
    }
    handwork(slug, *steps, events);
    for (FilmSeen& film : watch_.seen(slug, *both, events, learned_.notices)) {
      boards_.insert(slug);
      films_[film.resin].push_back(std::move(film));
    }
  }

  std::vector<joblog::EventRow> told(std::vector<joblog::EventRow> events) {
    for (joblog::EventRow& event : events) {
      const auto lesson = lessons_.find(event.number);
      if (lesson != lessons_.end()) event.counts = lesson->second;
      if (!event.counts && !event.undone_by) learned_.aside.push_back(event);
    }
    return events;
  }

  void skip(const std::string& slug) {
    learned_.notices.push_back({.code = "learn.plan",
                                .text = "its plan cannot be read any more: not counted",
                                .subject = slug});
  }

  void taken(const std::string& slug, const laminate::CoatSpec& coat, const CoatFacts& facts,
             const CoatModel& model) {
    if (facts.mixed <= 0.0 || !facts.left || !facts.grams_count) return;
    const double grams = facts.mixed - *facts.left - facts.spilled;
    losses_.push_back({.row = model.row,
                       .value = grams - model.constant,
                       .spread = spread_of_grams(model.expected)});
    constants_.push_back(model.constant);
    named_.push_back(
        {.job = slug, .coat = coat.id, .kind = coat.kind, .value = grams, .event = facts.mixed_by});
    boards_.insert(slug);
  }

  // `beside`: minutes of the step in which nothing is spread. They are not learned, so a shop that
  // is quick or slow at them has it counted as its speed of spreading.
  void timed(const std::string& slug, const laminate::CoatSpec& coat, const CoatFacts& facts,
             const CoatModel& model, double beside) {
    const bool is_timed =
        facts.started && *facts.done > *facts.started && *facts.done - *facts.started < longest;
    if (!is_timed || !facts.times_count || !model.spread) return;
    const std::size_t k = coat.kind == laminate::CoatKind::laminate ? 0
                          : coat.kind == laminate::CoatKind::gloss  ? 2
                                                                    : 1;
    const double minutes = minutes_between(*facts.started, *facts.done);
    const double planned = units::in_minutes(*model.spread);
    times_[k].push_back({.row = {planned / pace_rates()[k].belief.value},
                         .value = minutes - beside,
                         .spread = spread_of_minutes(planned + beside)});
    beside_[k].push_back(beside);
    timed_[k].push_back({.job = slug,
                         .coat = coat.id,
                         .kind = coat.kind,
                         .of = RecordOf::time,
                         .value = minutes,
                         .event = facts.done_by});
    boards_.insert(slug);
  }

  // Steps by hand, started and done.
  void handwork(const std::string& slug, const schedule::BoardSteps& steps,
                const std::vector<joblog::EventRow>& events) {
    for (const schedule::Step& step : steps.steps) {
      if (step.usual_minutes <= 0.0) continue;
      std::optional<joblog::Instant> started, done;
      std::int64_t by = 0;
      bool counts = true;
      for (const joblog::EventRow& event : events) {
        const bool of_time = event.kind == EventKind::started || event.kind == EventKind::done;
        if (event.undone_by || !of_time || event.step != to_string(step.name)) continue;
        (event.kind == EventKind::started ? started : done) = event.at;
        counts = counts && event.counts;
        by = event.number;
      }
      if (!started || !done || !counts || *done <= *started || *done - *started >= longest)
        continue;
      Handwork& hand = hands_[step.name.word];
      hand.records.push_back({.row = {step.usual_minutes},
                              .value = minutes_between(*started, *done),
                              .spread = spread_of_minutes(step.usual_minutes)});
      hand.named.push_back({.job = slug,
                            .coat = to_string(step.name),
                            .of = RecordOf::time,
                            .value = hand.records.back().value,
                            .event = by});
      boards_.insert(slug);
    }
  }

  void fit_handwork() {
    for (auto& [word, hand] : hands_) {
      const learn::Belief belief = belief_of_step_pace();
      const learn::Fit fit = learn::fit({belief}, hand.records);
      learned_.rates.push_back({.key = step_pace_of(word),
                                .unit = "x",
                                .value = fit.values[0],
                                .spread = fit.spread(0),
                                .standard = belief.value,
                                .standard_spread = belief.spread,
                                .records = static_cast<int>(hand.records.size())});
      for (std::size_t i = 0; i < hand.named.size(); ++i) {
        hand.named[i].expected = hand.records[i].row[0] * fit.values[0];
        hand.named[i].weight = fit.weights[i];
        learned_.records.push_back(std::move(hand.named[i]));
      }
    }
  }

  void fit_losses() {
    std::vector<learn::Belief> beliefs;
    for (const LossRate& rate : loss_rates()) beliefs.push_back(rate.belief);
    learned_.losses = learn::fit(beliefs, losses_);
    const learn::Fit& fit = learned_.losses;
    for (std::size_t k = 0; k < beliefs.size(); ++k) {
      const LossRate& rate = loss_rates()[k];
      const auto speaks = std::count_if(losses_.begin(), losses_.end(), [&](const auto& record) {
        return std::abs(record.row[k]) * beliefs[k].spread > 1.0;  // a gram or more
      });
      learned_.rates.push_back(
          {.key = std::string(rate.key),
           .unit = rate.unit,
           .value = rate.shown(fit.values[k]),
           .spread = rate.slope(fit.values[k]) * fit.spread(k),
           .standard = rate.shown(rate.belief.value),
           .standard_spread = rate.slope(rate.belief.value) * rate.belief.spread,
           .records = static_cast<int>(speaks)});
    }
    for (std::size_t i = 0; i < named_.size(); ++i) {
      named_[i].expected =
          constants_[i] + learn::predict(fit, losses_[i].row, losses_[i].spread).value;
      named_[i].weight = fit.weights[i];
      learned_.records.push_back(std::move(named_[i]));
    }
  }

  void fit_pace(std::size_t k) {
    const PaceRate& rate = pace_rates()[k];
    const learn::Fit fit = learn::fit({rate.belief}, times_[k]);
    learned_.rates.push_back({.key = std::string(rate.key),
                              .unit = "min/m2",
                              .value = fit.values[0],
                              .spread = fit.spread(0),
                              .standard = rate.belief.value,
                              .standard_spread = rate.belief.spread,
                              .records = static_cast<int>(times_[k].size())});
    for (std::size_t i = 0; i < timed_[k].size(); ++i) {
      timed_[k][i].expected = beside_[k][i] + times_[k][i].row[0] * fit.values[0];
      timed_[k][i].weight = fit.weights[i];
      learned_.records.push_back(std::move(timed_[k][i]));
    }
  }

  void fit_speeds() {
    const learn::Belief belief = belief_of_speed();
    for (auto& [resin, films] : films_) {
      std::vector<learn::Record> records;
      for (const FilmSeen& film : films) {
        records.push_back({.row = {1.0}, .value = film.log_speed, .spread = film.spread});
      }
      const learn::Fit fit = learn::fit({belief}, records);
      const double speed = std::exp(fit.values[0]);
      learned_.rates.push_back({.key = speed_of(resin),
                                .unit = "x",
                                .value = speed,
                                .spread = speed * fit.spread(0),
                                .standard = 1.0,
                                .standard_spread = belief.spread,
                                .records = static_cast<int>(films.size())});
      for (std::size_t i = 0; i < films.size(); ++i) {
        learned_.records.push_back({.job = films[i].job,
                                    .coat = films[i].coat,
                                    .of = RecordOf::speed,
                                    .value = std::exp(films[i].log_speed),
                                    .expected = speed,
                                    .weight = fit.weights[i],
                                    .event = films[i].event});
      }
    }
  }

  const Lessons& lessons_;
  FilmWatch watch_;
  Learned learned_;
  std::set<std::string> boards_;
  std::vector<learn::Record> losses_;
  std::vector<double> constants_;  // of each: what does not hang on a rate, a fill
  std::vector<WeighedRecord> named_;
  std::vector<learn::Record> times_[3];
  std::vector<WeighedRecord> timed_[3];
  std::vector<double> beside_[3];
  std::map<std::string, std::vector<FilmSeen>> films_;  // by resin
  struct Handwork {
    std::vector<learn::Record> records;
    std::vector<WeighedRecord> named;
  };
  std::map<schedule::StepWord, Handwork> hands_;
};

}  // namespace

Learned learned_from(const joblog::Log& log, const Lessons& lessons) {
  return Collector(log, lessons).run(log);
}

std::vector<learn::Prediction> predictions(const Learned& learned, const JobAndShop& both) {
  std::vector<learn::Prediction> all;
  const auto models = coat_models(both);
  if (!models || learned.losses.values.empty()) return all;
  for (const CoatModel& model : *models) {
    all.push_back(learn::predict(learned.losses, model.row, spread_of_grams(model.expected)));
    all.back().value += model.constant;
  }
  return all;
}

}  // namespace wetout::work
