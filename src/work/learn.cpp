#include "wetout/work/learn.hpp"

#include <fmt/format.h>

#include <string>
#include <utility>
#include <vector>

#include "learned.hpp"
#include "learned_rates.hpp"
#include "stored_plan.hpp"
#include "wetout/base/cited.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

// Three digits that count are more than any spread leaves.
std::string digits(double value) { return fmt::format("{:.3g}", value); }

// Where a rate stands in the shop file.
std::string_view table_of(const LearnedRate& rate) {
  if (!resin_of_speed(rate.key).empty()) return "resin";
  const bool is_pace = rate.key.starts_with("spread.") || !step_of_pace(rate.key).empty();
  return is_pace ? "pace" : "losses";
}

std::string_view word(RecordOf of) {
  switch (of) {
    case RecordOf::resin:
      return "resin";
    case RecordOf::time:
      return "time";
    case RecordOf::speed:
      return "speed";
  }
  return "";
}

std::string quantity(const LearnedRate& rate) {
  if (rate.unit.empty() || rate.unit == "x") return digits(rate.value);
  return '"' + digits(rate.value) + ' ' + std::string(rate.unit) + '"';
}

// `run_off.laminate` and `run_off.hotcoat` stand in one table of the shop file.
std::vector<std::string> shop_lines(const std::vector<LearnedRate>& rates) {
  std::vector<std::string> lines;
  // A speed stands in the table of its resin, which is there already.
  for (const std::string_view table : {"losses", "pace"}) {
    std::vector<std::pair<std::string, std::string>> entries;
    for (const LearnedRate& rate : rates) {
      if (rate.records == 0 || table_of(rate) != table) continue;
      const std::string key(rate.key);
      const std::size_t dot = key.find('.');
      if (dot == std::string::npos) {
        entries.emplace_back(key, quantity(rate));
        continue;
      }
      const std::string part = key.substr(dot + 1) + " = " + quantity(rate);
      if (!entries.empty() && entries.back().first == key.substr(0, dot)) {
        entries.back().second.insert(entries.back().second.size() - 2, ", " + part);
      } else {
        entries.emplace_back(key.substr(0, dot), "{ " + part + " }");
      }
    }
    if (entries.empty()) continue;
    lines.push_back("[" + std::string(table) + "]");
    for (const auto& [key, value] : entries) lines.push_back(key + " = " + value);
  }
  return lines;
}

base::Result<Lessons> lessons_of(const LearnRequest& request) {
  Lessons lessons;
  for (const std::int64_t event : request.forget) lessons[event] = false;
  for (const std::int64_t event : request.remember) {
    if (!lessons.try_emplace(event, true).second && !lessons[event]) {
      return base::fail({.code = "event.both",
                         .message = "an event cannot be forgotten and remembered at once",
                         .key = "--remember",
                         .found = std::to_string(event),
                         .expected = "it with one of --forget and --remember"});
    }
  }
  return lessons;
}

// What `keep(event, counts)` has against any of them.
template <class Keep>
base::Result<void> each_lesson(const Lessons& lessons, Keep&& keep) {
  base::Problems problems;
  for (const auto& [event, counts] : lessons) {
    if (auto kept = keep(event, counts); !kept) {
      problems.insert(problems.end(), kept.error().begin(), kept.error().end());
    }
  }
  if (!problems.empty()) return base::fail(std::move(problems));
  return {};
}

base::Result<Learned> learned_after(const Workshop& workshop, const LearnRequest& request,
                                    time::Instant now) {
  const auto lessons = lessons_of(request);
  if (!lessons) return tl::unexpected(lessons.error());
  if (lessons->empty()) {
    const bool is_there = joblog::Log::exists(workshop.log);
    return learned_from(is_there ? joblog::Log::open(workshop.log) : joblog::Log::in_memory());
  }
  const auto reading = open_log(workshop);
  if (!reading) return tl::unexpected(reading.error());
  if (workshop.dry_run) {
    const auto allowed = each_lesson(
        *lessons, [&](auto event, bool counts) { return reading->foresee_lesson(event, counts); });
    if (!allowed) return tl::unexpected(allowed.error());
    return learned_from(*reading, *lessons);
  }
  auto log = joblog::Log::open(workshop.log, {.access = joblog::Access::write});
  const auto kept = log.together([&] {
    return each_lesson(*lessons,
                       [&](auto event, bool counts) { return log.set_lesson(event, counts, now); });
  });
  if (!kept) return tl::unexpected(kept.error());
  return learned_from(log);
}

}  // namespace

base::Result<report::LearnDocument> learn(const Workshop& workshop, const LearnRequest& request) {
  report::LearnDocument document;
  document.program = program();
  const auto now = workshop.now(time::Zone());
  if (!now) return tl::unexpected(now.error());
  document.made = time::rfc3339(*now, time::Zone());
  const auto learned = learned_after(workshop, request, *now);
  if (!learned) return tl::unexpected(learned.error());
  document.boards = learned->boards;
  for (const LearnedRate& rate : learned->rates) {
    document.values.push_back(
        {.key = std::string(rate.key),
         .table = std::string(table_of(rate)),
         .standing = std::string(
             base::to_string(rate.records > 0 ? base::Standing::fitted : base::Standing::assumed)),
         .unit = std::string(rate.unit),
         .value = rate.value,
         .spread = rate.spread,
         .standard = rate.standard,
         .standard_spread = rate.standard_spread,
         .records = rate.records});
  }
  for (const WeighedRecord& record : learned->records) {
    document.records.push_back({.job = record.job,
                                .coat = record.coat,
                                .of = std::string(word(record.of)),
                                .value = record.value,
                                .expected = record.expected,
                                .weight = record.weight,
                                .event = record.event});
  }
  document.shop_lines = shop_lines(learned->rates);
  for (const joblog::EventRow& event : learned->aside) {
    document.aside.push_back(
        {event.number, event.job_slug, event.step, std::string(to_string(event.kind))});
  }
  document.notices = learned->notices;
  return document;
}

}  // namespace wetout::work
