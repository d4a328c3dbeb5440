#include "wetout/work/jobs.hpp"

#include <string>
#include <utility>

#include "stored_plan.hpp"
#include "wetout/base/words.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

// The list has no shop whose clock it could be told by.
std::string utc(time::Instant instant) { return time::rfc3339(instant, time::Zone()); }

base::Result<report::JobsDocument> list_of(const Workshop& workshop, const joblog::Log* log) {
  report::JobsDocument document;
  document.program = program();
  const auto now = workshop.now(time::Zone());
  if (!now) return tl::unexpected(now.error());
  document.made = utc(*now);
  if (log == nullptr) return document;
  for (const joblog::JobRow& job : log->jobs()) {
    report::JobLine line{.id = job.slug,
                         .name = job.name,
                         .created = utc(job.created),
                         .archived = std::nullopt,
                         .revision = std::nullopt,
                         .made = std::nullopt};
    if (job.archived) line.archived = utc(*job.archived);
    if (job.revisions > 0) line.revision = job.revisions;
    if (job.last_made) line.made = utc(*job.last_made);
    document.jobs.push_back(std::move(line));
  }
  return document;
}

// A stored plan with the units and clock of the shop it was made with.
base::Result<Printable> printable(const joblog::Log& log, const std::string& slug,
                                  std::optional<int> revision) {
  auto stored = stored_plan(log, slug, revision);
  if (!stored) return tl::unexpected(stored.error());
  Printable answer;
  answer.document = std::move(stored->document);
  // The document prints whatever has become of the reader of shop files since.
  if (const auto shop = files::parse_shop(stored->shop_text, stored->shop_name)) {
    answer.units = shop->units;
    answer.time_zone = shop->time_zone;
  }
  return answer;
}

// Opens for writing what must exist, or for reading on a dry run.
base::Result<joblog::Log> open_for_change(const Workshop& workshop) {
  auto log = open_log(workshop);
  if (!log || workshop.dry_run) return log;
  return joblog::Log::open(workshop.log, {.access = joblog::Access::write});
}

}  // namespace

base::Result<report::JobsDocument> jobs(const Workshop& workshop) {
  if (!joblog::Log::exists(workshop.log)) return list_of(workshop, nullptr);
  const joblog::Log log = joblog::Log::open(workshop.log);
  return list_of(workshop, &log);
}

base::Result<Printable> show_job(const Workshop& workshop, std::string_view job,
                                 std::optional<int> revision) {
  auto log = open_log(workshop);
  if (!log) return tl::unexpected(log.error());
  const auto slug = job_named(*log, job);
  if (!slug) return tl::unexpected(slug.error());
  return printable(*log, *slug, revision);
}

base::Result<std::pair<Printable, Printable>> compare_job(const Workshop& workshop,
                                                          std::string_view job,
                                                          std::optional<int> a,
                                                          std::optional<int> b) {
  auto log = open_log(workshop);
  if (!log) return tl::unexpected(log.error());
  const auto slug = job_named(*log, job);
  if (!slug) return tl::unexpected(slug.error());
  const int last = log->job(*slug).value().revisions;
  const int newer = b.value_or(last);
  const int older = a.value_or(newer - 1);
  if (!a && last > 0 && older < 1) {
    return base::fail({.code = "revision.unknown",
                       .message = "the job has one revision only: there is nothing to compare",
                       .found = *slug});
  }
  auto was = printable(*log, *slug, older);
  if (!was) return tl::unexpected(was.error());
  auto now = printable(*log, *slug, newer);
  if (!now) return tl::unexpected(now.error());
  return std::pair{std::move(*was), std::move(*now)};
}

base::Result<report::JobsDocument> rename_job(const Workshop& workshop, std::string_view job,
                                              const std::string& name) {
  auto log = open_for_change(workshop);
  if (!log) return tl::unexpected(log.error());
  const auto slug = job_named(*log, job);
  if (!slug) return tl::unexpected(slug.error());
  if (base::is_reserved(base::slug(name))) {
    return base::fail({.code = "job.id",
                       .message = "\"" + name + "\" is a word of the command line",
                       .found = name,
                       .expected = "another name"});
  }
  if (!workshop.dry_run) {
    if (auto renamed = log->rename_job(*slug, base::slug(name), name); !renamed) {
      return tl::unexpected(renamed.error());
    }
  }
  return list_of(workshop, &*log);
}

base::Result<report::JobsDocument> archive_job(const Workshop& workshop, std::string_view job) {
  auto log = open_for_change(workshop);
  if (!log) return tl::unexpected(log.error());
  const auto slug = job_named(*log, job);
  if (!slug) return tl::unexpected(slug.error());
  if (!workshop.dry_run) {
    const auto now = workshop.now(time::Zone());
    if (!now) return tl::unexpected(now.error());
    if (auto archived = log->archive_job(*slug, *now); !archived) {
      return tl::unexpected(archived.error());
    }
  }
  return list_of(workshop, &*log);
}

}  // namespace wetout::work
