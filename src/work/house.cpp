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

std::string utc(time::Instant instant) { return time::rfc3339(instant, time::Zone()); }

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
  auto plan = plan_of(*both, {});
  if (plan) {
    answer.notices = std::move(plan->notices);
  } else {
    answer.problems = std::move(plan.error());
  }
  return answer;
}

report::LogDocument log_document(const Workshop& workshop, std::string action) {
  report::LogDocument document;
  document.program = program();
  document.made = utc(workshop.now);
  document.action = std::move(action);
  document.path = workshop.log.string();
  return document;
}

void fill(report::LogDocument& document, const joblog::Info& info) {
  document.schema = info.schema_version;
  document.size_bytes = static_cast<std::int64_t>(info.file_bytes + info.wal_bytes);
  document.jobs = static_cast<int>(info.jobs);
  document.plans = static_cast<int>(info.plans);
  document.documents = static_cast<int>(info.documents);
}

}  // namespace

report::CheckDocument check_files(const Workshop& workshop,
                                  const std::vector<std::filesystem::path>& files) {
  report::CheckDocument document;
  document.program = program();
  document.made = utc(workshop.now);
  for (const std::filesystem::path& file : files) {
    document.files.push_back(checked(workshop, file));
  }
  return document;
}

base::Result<report::NewDocument> new_files(const Workshop& workshop,
                                            const std::filesystem::path& folder) {
  report::NewDocument document;
  document.program = program();
  document.made = utc(workshop.now);
  auto written = files::write_starter(folder, workshop.dry_run);
  if (!written) return tl::unexpected(written.error());
  document.files = {{"shop", written->shop.string()}, {"job", written->job.string()}};
  document.next = "wetout plan " + written->job.string();
  return document;
}

base::Result<report::LogDocument> log_info(const Workshop& workshop) {
  const auto log = open_log(workshop);
  if (!log) return tl::unexpected(log.error());
  report::LogDocument document = log_document(workshop, "info");
  fill(document, log->info());
  return document;
}

base::Result<report::LogDocument> log_check(const Workshop& workshop) {
  report::LogDocument document = log_document(workshop, "check");
  if (!joblog::Log::exists(workshop.log)) return tl::unexpected(open_log(workshop).error());
  for (const joblog::Finding& finding : joblog::check(workshop.log)) {
    document.faults.push_back(finding.text);
  }
  document.sound = document.faults.empty();
  // A damaged log may not open at all: then its counts stay at nothing.
  if (*document.sound) fill(document, joblog::Log::open(workshop.log).info());
  return document;
}

base::Result<report::LogDocument> log_backup(const Workshop& workshop,
                                             const std::filesystem::path& to) {
  const auto log = open_log(workshop);
  if (!log) return tl::unexpected(log.error());
  report::LogDocument document = log_document(workshop, "backup");
  document.copy = to.string();
  if (!workshop.dry_run) {
    if (auto done = log->backup(to); !done) return tl::unexpected(done.error());
    document.sound = true;  // backup() has checked the copy before it took its name
  }
  fill(document, log->info());
  return document;
}

base::Result<report::LogDocument> log_restore(const Workshop& workshop,
                                              const std::filesystem::path& from) {
  report::LogDocument document = log_document(workshop, "restore");
  if (workshop.dry_run) {
    for (const joblog::Finding& finding : joblog::check(from)) {
      document.faults.push_back(finding.text);
    }
    document.sound = document.faults.empty();
    document.copy = from.string();
    return document;
  }
  auto restored = joblog::restore(from, workshop.log);
  if (!restored) return tl::unexpected(restored.error());
  if (restored->kept) document.copy = restored->kept->string();
  document.sound = true;
  fill(document, joblog::Log::open(workshop.log).info());
  return document;
}

}  // namespace wetout::work
