#include "wetout/work/house.hpp"

#include <string>
#include <utility>

#include "job_and_shop.hpp"
#include "stored_plan.hpp"
#include "wetout/files/starter.hpp"
#include "wetout/joblog/care.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

// Files and logs belong to no one place: their reports are told in UTC.
base::Result<std::string> utc_now(const Workshop& workshop) {
  const auto now = workshop.now(time::Zone());
  if (!now) return tl::unexpected(now.error());
  return time::rfc3339(*now, time::Zone());
}

report::CheckedFile checked(const Workshop& workshop, const std::filesystem::path& file) {
  report::CheckedFile answer;
  answer.name = file.string();
  if (files::is_shop_file(file)) {
    auto shop = files::read_shop(file);
    if (shop) {
      answer.notices = std::move(shop->notices);
    } else {
      answer.problems = std::move(shop.error());
    }
    return answer;
  }
  const auto both = read_job_and_shop(workshop, file);
  if (!both) {
    answer.problems = both.error();
    return answer;
  }
  auto plan = plan_of(workshop, *both, {});
  if (plan) {
    answer.notices = std::move(plan->notices);
  } else {
    answer.problems = std::move(plan.error());
  }
  return answer;
}

base::Result<report::LogDocument> log_document(const Workshop& workshop, std::string action) {
  const auto made = utc_now(workshop);
  if (!made) return tl::unexpected(made.error());
  report::LogDocument document;
  document.program = program();
  document.made = *made;
  document.action = std::move(action);
  document.path = workshop.log.string();
  return document;
}

void fill(report::LogDocument& document, const joblog::Info& info) {
  document.schema = info.schema_version;
  document.size_bytes = static_cast<std::int64_t>(info.file_bytes + info.wal_bytes);
  document.jobs = static_cast<int>(info.jobs);
  document.plans = static_cast<int>(info.plans);
  document.schedules = static_cast<int>(info.schedules);
  document.events = static_cast<int>(info.events);
  document.documents = static_cast<int>(info.documents);
}

}  // namespace

base::Result<report::CheckDocument> check_files(const Workshop& workshop,
                                                const std::vector<std::filesystem::path>& files) {
  const auto made = utc_now(workshop);
  if (!made) return tl::unexpected(made.error());
  report::CheckDocument document;
  document.program = program();
  document.made = *made;
  for (const std::filesystem::path& file : files) {
    document.files.push_back(checked(workshop, file));
  }
  return document;
}

base::Result<report::NewDocument> new_files(const Workshop& workshop,
                                            const std::filesystem::path& folder) {
  const auto made = utc_now(workshop);
  if (!made) return tl::unexpected(made.error());
  report::NewDocument document;
  document.program = program();
  document.made = *made;
  auto written = files::write_starter(folder, workshop.dry_run);
  if (!written) return tl::unexpected(written.error());
  document.files = {{"shop", written->shop.string()}, {"job", written->job.string()}};
  document.written = !workshop.dry_run;
  document.next = "wetout plan " + written->job.string();
  return document;
}

base::Result<report::LogDocument> log_info(const Workshop& workshop) {
  const auto log = open_log(workshop);
  if (!log) return tl::unexpected(log.error());
  auto document = log_document(workshop, "info");
  if (!document) return document;
  fill(*document, log->info());
  return document;
}

base::Result<report::LogDocument> log_check(const Workshop& workshop) {
  auto document = log_document(workshop, "check");
  if (!document) return document;
  if (!joblog::Log::exists(workshop.log)) return tl::unexpected(open_log(workshop).error());
  for (const joblog::Finding& finding : joblog::check(workshop.log)) {
    document->faults.push_back(finding.text);
  }
  document->sound = document->faults.empty();
  // A damaged log may not open at all: then its counts stay at nothing.
  if (*document->sound) fill(*document, joblog::Log::open(workshop.log).info());
  return document;
}

base::Result<report::LogDocument> log_backup(const Workshop& workshop,
                                             const std::filesystem::path& to) {
  const auto log = open_log(workshop);
  if (!log) return tl::unexpected(log.error());
  auto document = log_document(workshop, "backup");
  if (!document) return document;
  document->copy = to.string();
  if (!workshop.dry_run) {
    if (auto done = joblog::backup(workshop.log, to); !done) return tl::unexpected(done.error());
    document->sound = true;  // the copy was checked before it took its name
  }
  fill(*document, log->info());
  return document;
}

base::Result<report::LogDocument> log_restore(const Workshop& workshop,
                                              const std::filesystem::path& from) {
  auto document = log_document(workshop, "restore");
  if (!document) return document;
  if (!joblog::Log::exists(from)) {
    return base::fail({.code = "file.missing",
                       .message = "there is no such file",
                       .file = from.string(),
                       .hint = "name a copy made by \"wetout log backup FILE\""});
  }
  if (workshop.dry_run) {
    for (const joblog::Finding& finding : joblog::check(from)) {
      document->faults.push_back(finding.text);
    }
    document->sound = document->faults.empty();
    document->copy = from.string();
    return document;
  }
  auto restored = joblog::restore(from, workshop.log);
  if (!restored) return tl::unexpected(restored.error());
  document->copy = from.string();
  if (restored->kept) document->kept = restored->kept->string();
  document->sound = true;
  fill(*document, joblog::Log::open(workshop.log).info());
  return document;
}

}  // namespace wetout::work
