#include "wetout/work/job_sheet.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "drawn_board.hpp"
#include "made_file.hpp"
#include "planned_job.hpp"
#include "wetout/base/check.hpp"
#include "wetout/joblog/log.hpp"
#include "wetout/report/job_sheet.hpp"
#include "wetout/time/print.hpp"
#include "wetout/work/cloth.hpp"

namespace wetout::work {
namespace {

namespace fs = std::filesystem;

// A file that was planned and kept as it stands is the job of the log.
base::Result<PlannedJob> job_of_sheet(const Workshop& workshop, const std::string& named) {
  auto job = planned_job(workshop, named, {});
  if (!job || !is_file_argument(named) || !joblog::Log::exists(workshop.log)) return job;
  Workshop quiet = workshop;
  quiet.sink = base::drop;
  const std::string& id = job->document.job.id;
  if (!joblog::Log::open(workshop.log).job(id)) return job;
  auto kept = planned_job(quiet, id, {});
  if (kept && kept->document.plan == report::as_kept(job->document).plan) return kept;
  return job;
}

// A schedule of a job's plan, or why there is none.
struct Found {
  std::optional<report::ScheduleDocument> schedule;
  std::string why_not;
};

Found schedule_of(const Workshop& workshop, const report::JobRef& job) {
  if (!job.saved) {
    return {std::nullopt,
            "This plan is not in the job log, so it has no schedule: run \"wetout schedule\" with "
            "the job file, then make this page again."};
  }
  const std::string again = "run \"wetout schedule " + job.id + "\", then make this page again.";
  const auto row = joblog::Log::open(workshop.log).last_schedule(job.id);
  if (!row) return {std::nullopt, "There is no schedule yet: " + again};
  const bool of_this_plan = std::any_of(row->jobs.begin(), row->jobs.end(), [&](const auto& one) {
    return one.slug == job.id && one.revision == job.revision;
  });
  if (!of_this_plan) {
    return {std::nullopt, "The last schedule is of an earlier revision of the plan: " + again};
  }
  auto document = report::read_schedule(row->body);
  if (!document) return {std::nullopt, "The schedule is of a later version of wetout."};
  const bool knows_it = std::any_of(document->jobs.begin(), document->jobs.end(),
                                    [&](const auto& one) { return one.id == job.id; });
  if (!knows_it) {
    return {std::nullopt, "The last schedule is of the time before the job was renamed: " + again};
  }
  return {std::move(*document), ""};
}

// Cups of every coat that is to come, in the air that it will be mixed in. Of a coat that cannot be
// mixed so the plan's stay, and the page says for which air they are.
void mix_for_the_day(const Workshop& workshop, report::JobSheet& sheet) {
  if (!sheet.schedule) return;
  Workshop quiet = workshop;
  quiet.sink = base::drop;
  const std::string& job = sheet.plan.job.id;
  for (const laminate::CoatNeed& coat : sheet.plan.plan.coats) {
    for (const report::TimelineStep& step : sheet.schedule->timeline) {
      if (step.id != job + "/" + coat.id + "/wet" || !step.room) continue;
      if (step.state == report::StepState::done) continue;
      // To half a degree: nobody knows it better.
      const auto air = units::Temperature::celsius(std::round(2.0 * step.room->in_celsius()) / 2.0);
      const auto planned =
          planned_job(quiet, job, {.air = air, .resin_temp = std::nullopt, .cup = std::nullopt});
      if (!planned) continue;
      for (const laminate::CoatNeed& mixed : planned->document.plan.coats) {
        if (mixed.id != coat.id) continue;
        base::Notices notices;
        for (const base::Notice& notice : planned->document.plan.notices) {
          if (notice.subject == coat.id) notices.push_back(notice);
        }
        sheet.mixed.emplace(coat.id, report::MixedCoat{mixed, std::move(notices)});
      }
    }
  }
}

}  // namespace

base::Result<MadeJobSheet> make_job_sheet(const Workshop& workshop,
                                          const JobSheetRequest& request) {
  auto job = job_of_sheet(workshop, request.job);
  if (!job) return tl::unexpected(job.error());
  const fs::path file = request.file.value_or(job->document.job.id + "-sheet.html");
  if (auto may = may_make(workshop, file, made_job_sheet); !may) return tl::unexpected(may.error());
  const units::System system = request.units.value_or(job->files.shop.units);
  const auto zone = time::Zone::named(job->files.shop.time_zone);
  if (!zone) return tl::unexpected(zone.error());
  const auto now = workshop.now(*zone);
  if (!now) return tl::unexpected(now.error());
  Workshop quiet = workshop;
  quiet.sink = base::drop;
  // Of a file that is a job of the log: that job, of which coats may be done.
  const report::JobRef& of = job->document.job;
  auto cut = cut_cloth(quiet, {.jobs = {of.revision > 0 ? of.id : request.job},
                               .remnants = {},
                               .drawing = {},
                               .units = {}});
  if (!cut) return tl::unexpected(cut.error());
  auto board = drawn_board(job->files.job.board, system);
  base::promise(board.has_value(), "the board has been planned");

  report::JobSheet sheet;
  sheet.program = program();
  sheet.made = time::rfc3339(*now, *zone);
  sheet.plan = report::as_kept(job->document);
  sheet.board = std::move(*board);
  sheet.cloth = std::move(cut->document);
  Found found = schedule_of(workshop, sheet.plan.job);
  sheet.schedule = std::move(found.schedule);
  sheet.no_schedule = std::move(found.why_not);
  mix_for_the_day(workshop, sheet);
  if (auto made =
          make_file(workshop, file, report::job_sheet(sheet, system, *zone), made_job_sheet);
      !made) {
    return tl::unexpected(made.error());
  }
  MadeJobSheet out{file.string(), std::nullopt, sheet.no_schedule};
  if (sheet.schedule) out.schedule = sheet.schedule->number;
  return out;
}

}  // namespace wetout::work
