#include "record_samples.hpp"

#include <algorithm>

namespace wetout::joblog::testing {
namespace {

using units::Milligrams;

Instant minute(int n) { return Instant(std::chrono::seconds(1'760'000'000 + 60 * n)); }

std::string result_text(int n, std::int64_t number) {
  return "schedule " + std::to_string(n) + " number " + std::to_string(number);
}

bool is_as_wanted(const EventRow& row, const NewEvents& call, const NewEvent& wanted) {
  return row.token == wanted.token && row.job_slug == call.job_slug && row.kind == wanted.kind &&
         row.step == wanted.step && row.at == wanted.at && row.recorded == call.recorded &&
         row.facts == wanted.facts && !row.undoes;
}

}  // namespace

NewSchedule sample_schedule(int n, const std::vector<ScheduledJob>& jobs) {
  NewSchedule schedule;
  std::string names;
  for (const ScheduledJob& job : jobs) {
    names += " " + job.slug;
    schedule.steps.push_back(
        {job.slug, "bottom-lam/wet", minute(n), minute(n + 40), StepState::fixed});
    schedule.steps.push_back(
        {job.slug, "bottom-lam/trim", minute(n + 200), minute(n + 215), StepState::planned});
  }
  schedule.program = "wetout test";
  schedule.made = minute(n);
  schedule.input_key = base::sha256("schedule " + std::to_string(n) + names);
  schedule.result_format = "wetout.schedule/1";
  schedule.result_body = [n](std::int64_t number) { return result_text(n, number); };
  schedule.weather = WeatherText{"june.csv", "csv", "time,air\n" + std::to_string(n) + ",20\n"};
  schedule.jobs = jobs;
  return schedule;
}

std::string difference(const Log& log, std::int64_t number, const NewSchedule& expected) {
  const std::string where = "schedule " + std::to_string(number) + ": ";
  const auto row = log.schedule(number);
  if (!row) return where + "not there";
  if (row->body != expected.result_body(number)) return where + "result differs";
  auto jobs = expected.jobs;
  const auto by_slug = [](const ScheduledJob& a, const ScheduledJob& b) { return a.slug < b.slug; };
  std::sort(jobs.begin(), jobs.end(), by_slug);
  if (row->number != number || row->made != expected.made || row->program != expected.program ||
      row->input_key != expected.input_key || row->format != expected.result_format ||
      row->sha256 != base::sha256(row->body) || row->jobs != jobs) {
    return where + "head differs";
  }
  auto steps = expected.steps;
  std::sort(steps.begin(), steps.end(), [](const ScheduledStep& a, const ScheduledStep& b) {
    return std::tie(a.job, a.start, a.step) < std::tie(b.job, b.start, b.step);
  });
  if (log.schedule_steps(number) != steps) return where + "steps differ";
  const auto weather = log.schedule_weather(number);
  if (weather.has_value() != expected.weather.has_value()) return where + "forecast differs";
  if (weather &&
      (weather->name != expected.weather->name || weather->format != expected.weather->format ||
       weather->body != expected.weather->body)) {
    return where + "forecast differs";
  }
  return {};
}

NewEvents sample_events(int n, const std::string& slug) {
  const std::string token = "token-" + slug + "-" + std::to_string(n);
  NewEvents call;
  call.job_slug = slug;
  call.recorded = minute(n + 5);
  call.events = {
      {.token = token + "/1",
       .kind = EventKind::mixed,
       .step = "bottom-lam/wet",
       .at = minute(n),
       .facts = {.mass = Milligrams(300'000 + n),
                 .part_a = Milligrams(200'000),
                 .part_b = Milligrams(100'000 + n)}},
      {.token = token + "/2",
       .kind = EventKind::left,
       .step = "bottom-lam/wet",
       .at = minute(n),
       .facts = {.mass = Milligrams(n), .note = "in the cup"}},
      {.token = token + "/3", .kind = EventKind::done, .step = "bottom-lam/wet", .at = minute(n)}};
  return call;
}

std::string difference(const Log& log, const NewEvents& expected) {
  const std::string& first = expected.events.front().token;
  const auto rows = log.events(expected.job_slug);
  auto row = std::find_if(rows.begin(), rows.end(),
                          [&](const EventRow& one) { return one.token == first; });
  std::int64_t number = row == rows.end() ? 0 : row->number;
  for (const NewEvent& wanted : expected.events) {
    if (row == rows.end()) return wanted.token + ": not there";
    if (row->number != number++) return wanted.token + ": not numbered in one";
    if (!is_as_wanted(*row, expected, wanted)) return wanted.token + ": differs";
    ++row;
  }
  return {};
}

}  // namespace wetout::joblog::testing
