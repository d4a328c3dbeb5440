#include "record_one.hpp"

#include <utility>

#include "record_facts.hpp"
#include "record_step.hpp"
#include "wetout/base/check.hpp"
#include "wetout/base/words.hpp"

namespace wetout::work {
namespace {

using joblog::Access;
using joblog::Log;

std::string listed(const std::vector<std::string>& words) {
  std::string list;
  for (const std::string& word : words) list += (list.empty() ? "one of: " : ", ") + word;
  return list;
}

base::Result<std::optional<resin::Product>> resin_of(const RecordRequest& request,
                                                     const JobOfRecord& job) {
  if (!request.resin) return std::nullopt;
  std::vector<std::string> ids;
  if (job.shop) {
    for (const resin::Product& product : job.shop->shop.resins) ids.push_back(product.id);
  }
  const std::vector<std::size_t> found = base::matches(*request.resin, ids);
  if (found.size() == 1) return job.shop->shop.resins[found.front()];
  const auto near = base::nearest(base::slug(*request.resin), ids);
  return base::fail({.code = found.empty() ? "resin.unknown" : "resin.ambiguous",
                     .message = found.empty() ? "--resin: the shop file has no such resin"
                                              : "--resin: more than one resin begins like that",
                     .key = "--resin",
                     .found = *request.resin,
                     .expected = ids.empty() ? "a [[resin]] of the shop file" : listed(ids),
                     .hint = found.empty() && near ? "did you mean \"" + *near + "\"?" : ""});
}

template <class T>
void gather(base::Problems& problems, const base::Result<T>& result) {
  if (result) return;
  problems.insert(problems.end(), result.error().begin(), result.error().end());
}

RecordContext context_of(const RecordToKeep& record) {
  return {record.job, record.step, record.goods, record.resin ? &*record.resin : nullptr,
          record.before};
}

}  // namespace

base::Result<RecordToKeep> record_to_keep(const Workshop& workshop, const Log* log,
                                          const RecordRequest& request) {
  base::promise(!request.token.empty(), "a call has a token");
  base::promise(request.part_a.has_value() == request.part_b.has_value(), "both parts or neither");
  auto job = job_of_record(workshop, log, request.job, request.begin);
  if (!job) return tl::unexpected(job.error());
  const auto now = workshop.now(job->zone);
  if (!now) return tl::unexpected(now.error());
  auto step = step_meant(*job, request.step);
  if (!step) return tl::unexpected(step.error());
  auto before = log != nullptr ? log->events(job->slug) : std::vector<joblog::EventRow>{};
  auto goods = goods_of_record(request, *job, log);
  auto resin = resin_of(request, *job);
  // Whatever was named of goods stands there as something said, so that all problems are told.
  auto facts = facts_of(request, {*job, *step, before, goods ? goods->said : "?",
                                  resin && *resin ? &**resin : nullptr, *now});
  if (!goods || !resin || !facts) {
    base::Problems problems;
    gather(problems, facts);
    gather(problems, goods);
    gather(problems, resin);
    return base::fail(std::move(problems));
  }
  joblog::NewEvents events;
  events.job_slug = job->slug;
  if (request.begin) events.begin_as = job->name;
  events.recorded = *now;
  events.events = std::move(facts->events);
  return RecordToKeep{std::move(*job),          std::move(*step),  std::move(*goods),
                      std::move(*resin),        std::move(before), std::move(events),
                      std::move(facts->notices)};
}

base::Result<KeptEvents> keep_events(Log& log, const RecordToKeep& record) {
  auto recorded = log.record_events(record.events);
  if (!recorded) return tl::unexpected(recorded.error());
  auto bookings = bookings_of(context_of(record), recorded->events, &log);
  if (!bookings) return tl::unexpected(bookings.error());
  return KeptEvents{std::move(*recorded), std::move(*bookings)};
}

base::Result<KeptEvents> foresee_events(const Log* log, const RecordToKeep& record) {
  auto recorded = log != nullptr ? log->foresee_events(record.events)
                                 : Log::in_memory().foresee_events(record.events);
  if (!recorded) return tl::unexpected(recorded.error());
  auto bookings = bookings_of(context_of(record), recorded->events, log);
  if (!bookings) return tl::unexpected(bookings.error());
  return KeptEvents{std::move(*recorded), std::move(*bookings)};
}

std::optional<Log> log_so_far(const Workshop& workshop) {
  if (!Log::exists(workshop.log)) return std::nullopt;
  return Log::open(workshop.log);
}

Log log_to_write(const Workshop& workshop) {
  return Log::open(workshop.log,
                   {.access = Access::write, .make_folder = workshop.make_log_folder});
}

}  // namespace wetout::work
