#include "schedule_save.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <optional>
#include <set>
#include <utility>

#include "wetout/base/check.hpp"
#include "wetout/base/sha256.hpp"
#include "wetout/joblog/log.hpp"
#include "wetout/joblog/schedules.hpp"
#include "wetout/laminate/defaults.hpp"

namespace wetout::work {
namespace {

using schedule::PlacedStep;

joblog::StepState state_of(PlacedStep::State state) {
  switch (state) {
    case PlacedStep::State::planned:
      return joblog::StepState::planned;
    case PlacedStep::State::fixed:
      return joblog::StepState::fixed;
    case PlacedStep::State::done:
      return joblog::StepState::done;
  }
  return joblog::StepState::planned;
}

// The same steps at the same times for the same plans under the same weather: nothing new, however
// much later it was asked.
base::Digest key_of(const ScheduleToSave& save) {
  const report::ScheduleDocument& document = save.answer.document;
  std::string all = std::string(laminate::model_version()) + '\n' +
                    std::string(report::schedule_format) + '\n' + document.weather.sha256 + '\n' +
                    document.prefer + ' ' + save.request.guard + '\n';
  for (const report::ScheduledJob& job : document.jobs) {
    all += job.id + ' ' + std::to_string(job.revision) + '\n';
  }
  for (const std::string& hours : save.request.hours) all += hours + '\n';
  for (const report::TimelineStep& step : document.timeline) {
    all += step.id + ' ' + step.start + ' ' + step.attended_until + ' ' +
           std::string(to_string(step.state)) + '\n';
  }
  return base::sha256(all);
}

joblog::NewSchedule new_schedule(ScheduleToSave& save) {
  const Scheduling& s = save.s;
  report::ScheduleDocument& document = save.answer.document;
  joblog::NewSchedule out;
  out.program = document.program;
  out.made = save.now;
  out.input_key = key_of(save);
  out.result_format = std::string(report::schedule_format);
  out.weather = joblog::WeatherText{
      s.asked.weather.source, std::string(to_string(s.asked.weather.kind)), save.weather_bytes};
  for (const report::ScheduledJob& job : document.jobs) out.jobs.push_back({job.id, job.revision});
  for (const PlacedStep& placed : s.arrangement.steps) {
    out.steps.push_back({s.board(placed.board).job,
                         to_string(s.step(placed.board, placed.step).name), placed.start,
                         placed.attended_until, state_of(placed.state)});
  }
  out.result_body = [&document](std::int64_t number) {
    document.number = static_cast<int>(number);
    document.saved = true;
    return report::to_json(document);
  };
  return out;
}

void tell_changes(ScheduleToSave& save, const joblog::Log& log) {
  report::ScheduleDocument& document = save.answer.document;
  const auto last = log.last_schedule(document.jobs.front().id);
  if (!last) return;
  const auto before = report::read_schedule(last->body);
  if (!before) return;  // of a later version; nothing to compare with
  document.changed_since = static_cast<int>(last->number);
  document.changed = changed(save.s, *before, save.now);
}

// Others share people, stands and the room.
void tell_others(ScheduleToSave& save, const joblog::Log& log) {
  std::set<std::string> ours, told;
  for (const report::ScheduledJob& job : save.answer.document.jobs) ours.insert(job.id);
  for (const joblog::ScheduleHead& head : log.schedules()) {
    for (const joblog::ScheduledJob& job : head.jobs) {
      if (ours.contains(job.slug) || told.contains(job.slug)) continue;
      const auto last = log.last_schedule(job.slug);
      if (!last || last->number != head.number) continue;
      const auto row = log.job(job.slug);
      if (!row || row->archived) continue;
      const auto steps = log.schedule_steps(head.number);
      const bool coming = std::any_of(steps.begin(), steps.end(), [&](const auto& step) {
        return step.job == job.slug && step.finish > save.now &&
               step.state != joblog::StepState::done;
      });
      if (!coming || !told.insert(job.slug).second) continue;
      save.answer.document.notices.push_back(
          {.code = "schedule.other_board",
           .text = "another board is scheduled for the same days and is not looked at here: name "
                   "it too, so that they share people, stands and the room",
           .subject = job.slug});
    }
  }
}

}  // namespace

void save_schedule(ScheduleToSave& save) {
  ScheduleAnswer& answer = save.answer;
  if (joblog::Log::exists(save.workshop.log)) {
    const joblog::Log log = joblog::Log::open(save.workshop.log);
    tell_changes(save, log);
    tell_others(save, log);
  }
  const joblog::NewSchedule schedule = new_schedule(save);
  joblog::SavedSchedule saved;
  if (save.workshop.dry_run) {
    if (!joblog::Log::exists(save.workshop.log)) return;
    std::vector<std::string> slugs;
    for (const joblog::ScheduledJob& job : schedule.jobs) slugs.push_back(job.slug);
    saved = joblog::Log::open(save.workshop.log).foresee_schedule(slugs, schedule.input_key);
    answer.document.number = static_cast<int>(saved.number);
  } else {
    joblog::Log log = joblog::Log::open(
        save.workshop.log,
        {.access = joblog::Access::write, .make_folder = save.workshop.make_log_folder});
    const auto result = log.save_schedule(schedule);
    base::promise(result.has_value(), "the plans of a schedule are in the log");
    saved = *result;
  }
  answer.unchanged = saved.unchanged;
  if (saved.unchanged) {
    answer.document.number = static_cast<int>(saved.number);
    answer.document.saved = !save.workshop.dry_run;
  }
}

}  // namespace wetout::work
