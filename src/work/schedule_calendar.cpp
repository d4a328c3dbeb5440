#include "schedule_calendar.hpp"

#include <map>
#include <set>
#include <string>

#include "wetout/joblog/log.hpp"

namespace wetout::work {
namespace {

struct Planned {
  time::Instant start, end;
};

// Where each step was put last.
std::map<std::string, Planned> planned_so_far(const joblog::Log& log, const std::string& job) {
  std::map<std::string, Planned> all;
  for (const joblog::ScheduleHead& head : log.schedules(job)) {
    for (const joblog::ScheduledStep& step : log.schedule_steps(head.number)) {
      if (step.job == job) all[job + "/" + step.step] = {step.start, step.finish};
    }
  }
  return all;
}

}  // namespace

report::CalendarFacts calendar_facts(const Workshop& workshop,
                                     const report::ScheduleDocument& document, time::Instant now) {
  report::CalendarFacts facts;
  if (!joblog::Log::exists(workshop.log)) return facts;
  std::set<std::string> taking_place;
  for (const report::TimelineStep& step : document.timeline) taking_place.insert(step.id);
  const joblog::Log log = joblog::Log::open(workshop.log);
  for (const report::ScheduledJob& job : document.jobs) {
    const auto row = log.job(job.id);
    if (!row) continue;
    // Its id may change, and another log may have a job of that id.
    facts.identities[job.id] =
        std::to_string(row->created.time_since_epoch().count()) + " " + std::to_string(row->key);
    for (const auto& [id, planned] : planned_so_far(log, job.id)) {
      if (taking_place.contains(id) || planned.end <= now) continue;
      facts.cancelled.push_back({id, planned.start, planned.end});
    }
  }
  return facts;
}

}  // namespace wetout::work
