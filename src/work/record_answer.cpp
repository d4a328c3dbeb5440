#include "record_answer.hpp"

#include <algorithm>
#include <utility>

#include "record_step.hpp"
#include "wetout/laminate/make_plan.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

using joblog::EventKind;
using units::Milligrams;

std::optional<std::string> given(const std::string& text) {
  return text.empty() ? std::nullopt : std::optional(text);
}

void count(report::StepTotal& total, const joblog::EventRow& event, const time::Zone& zone) {
  const joblog::Facts& facts = event.facts;
  switch (event.kind) {
    case EventKind::mixed:
      // Parts of one mix alone would look like the parts of all of them.
      if (total.mixed == Milligrams()) {
        total.part_a = facts.part_a;
        total.part_b = facts.part_b;
      } else if (total.part_a && facts.part_a) {
        *total.part_a += *facts.part_a;
        *total.part_b += *facts.part_b;
      } else {
        total.part_a.reset();
        total.part_b.reset();
      }
      total.mixed += *facts.mass;
      break;
    case EventKind::left:
      total.left += *facts.mass;
      break;
    case EventKind::spilled:
      total.spilled += *facts.mass;
      break;
    case EventKind::started:
      total.started = time::rfc3339(event.at, zone);
      break;
    case EventKind::done:
      total.done = time::rfc3339(event.at, zone);
      break;
    default:
      break;
  }
}

report::StepTotal begun(const std::string& text, const JobOfRecord& job) {
  report::StepTotal total;
  total.step = text;
  const auto step = schedule::read_step_name(text);
  if (!step || step->coat.empty()) return total;
  total.coat = step->coat;
  const laminate::CoatNeed* coat = coat_of(job, *step);
  if (coat != nullptr && step->word == schedule::StepWord::wet) total.planned = coat->mix;
  return total;
}

// Steps of the plan's coats in their order, all others behind them.
std::size_t rank(const report::StepTotal& total, const JobOfRecord& job) {
  if (!job.plan || !total.coat) return SIZE_MAX;
  const auto& coats = job.plan->plan.coats;
  const auto found = std::find_if(coats.begin(), coats.end(),
                                  [&](const auto& coat) { return coat.id == *total.coat; });
  return found == coats.end() ? SIZE_MAX : static_cast<std::size_t>(found - coats.begin());
}

}  // namespace

report::RecordDocument record_document(const JobOfRecord& job, std::string action,
                                       time::Instant now) {
  report::RecordDocument document;
  document.program = program();
  document.made = time::rfc3339(now, job.zone);
  document.action = std::move(action);
  document.job.id = job.slug;
  document.job.name = job.name;
  if (job.plan) document.job.revision = job.plan->job.revision;
  return document;
}

report::RecordedFact fact_of(const joblog::EventRow& row, bool already, const time::Zone& zone) {
  report::RecordedFact fact;
  fact.number = row.number;
  fact.token = row.token;
  fact.already = already;
  fact.kind = joblog::to_string(row.kind);
  fact.step = given(row.step);
  fact.at = time::rfc3339(row.at, zone);
  fact.recorded = time::rfc3339(row.recorded, zone);
  fact.mass = row.facts.mass;
  fact.part_a = row.facts.part_a;
  fact.part_b = row.facts.part_b;
  fact.milestone = given(row.facts.milestone);
  if (row.facts.air_millikelvin) {
    fact.air = units::Temperature::kelvin(static_cast<double>(*row.facts.air_millikelvin) * 1e-3);
  }
  if (row.facts.humidity_ppm) {
    fact.humidity = static_cast<double>(*row.facts.humidity_ppm) * 1e-6;
  }
  fact.note = given(row.facts.note);
  fact.undoes = row.undoes;
  fact.undone_by = row.undone_by;
  fact.counts = row.counts;
  return fact;
}

std::vector<report::StepTotal> totals_of(const std::vector<joblog::EventRow>& events,
                                         const JobOfRecord& job,
                                         const std::optional<std::string>& step) {
  std::vector<report::StepTotal> totals;
  if (step) totals.push_back(begun(*step, job));
  for (const joblog::EventRow& event : events) {
    const bool counts = !event.undone_by && event.kind != EventKind::undo && !event.step.empty();
    if (!counts || (step && event.step != *step)) continue;
    auto total = std::find_if(totals.begin(), totals.end(),
                              [&](const auto& one) { return one.step == event.step; });
    if (total == totals.end()) total = totals.insert(totals.end(), begun(event.step, job));
    count(*total, event, job.zone);
  }
  std::stable_sort(totals.begin(), totals.end(),
                   [&](const auto& a, const auto& b) { return rank(a, job) < rank(b, job); });
  return totals;
}

base::Notices notices_of(const report::StepTotal& total) {
  base::Notices notices;
  // A second cup at most is usual; more looks like a slip of the unit or one record too many.
  constexpr std::int64_t far_more = 2;
  if (total.planned && total.mixed > *total.planned * far_more) {
    notices.push_back({.code = "record.much",
                       .text = "far more is recorded as mixed than planned",
                       .subject = total.step,
                       .value = total.mixed.in_grams(),
                       .limit = std::nullopt,
                       .unit = "g"});
  }
  if (total.left + total.spilled > total.mixed) {
    notices.push_back({.code = "record.left_over_mixed",
                       .text = "more is recorded as left and spilled than as mixed",
                       .subject = total.step,
                       .value = (total.left + total.spilled).in_grams(),
                       .limit = std::nullopt,
                       .unit = "g"});
  }
  return notices;
}

std::string leftover_caution(const JobOfRecord& job, const std::string& step) {
  const auto name = schedule::read_step_name(step);
  const laminate::CoatNeed* coat = name ? coat_of(job, *name) : nullptr;
  auto chemistry = resin::Chemistry::epoxy;
  if (coat != nullptr && job.shop) {
    for (const resin::Product& product : job.shop->shop.resins) {
      if (product.id == coat->resin) chemistry = product.chemistry;
    }
  }
  return laminate::mixing_cautions(chemistry).front();
}

}  // namespace wetout::work
