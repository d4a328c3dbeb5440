#include "wetout/work/record_import.hpp"

#include <algorithm>
#include <chrono>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "few_notices.hpp"
#include "past_requests.hpp"
#include "record_booked.hpp"
#include "record_one.hpp"
#include "wetout/files/past_boards.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

using joblog::Log;

constexpr std::size_t most_problems = 1000;

/// What became of one step.
struct Entered {
  const PastRequest* wanted = nullptr;
  std::string job, name;
  KeptEvents kept;
  base::Notices notices;
  std::vector<joblog::Booked> booked;
};

struct Shop {
  time::Zone zone;
  std::string currency;
  units::System units = units::System::us;
};

class PastImport {
 public:
  PastImport(const Workshop& workshop, const files::PastBoards& past, PastRequests wanted)
      : workshop_(workshop),
        past_(past),
        wanted_(std::move(wanted.all)),
        problems_(std::move(wanted.problems)) {}

  /// Every step, one after the other; nothing of them where one is bad.
  base::Result<void> enter(Log& log) {
    return log.together([&]() -> base::Result<void> {
      for (const PastRequest& one : wanted_) {
        auto entered = one_step(
            one, &log, [&](const RecordToKeep& record) { return keep_events(log, record); });
        if (!entered) continue;
        auto booked = book_all(log, entered->kept.bookings.entries);
        if (!booked) {
          refuse(one, booked.error());
          continue;
        }
        entered->booked = std::move(*booked);
        entered_.push_back(std::move(*entered));
      }
      return end();
    });
  }

  /// What entering them would say. `log` may be null.
  base::Result<void> foresee(const Log* log) {
    std::vector<joblog::NewEntry> entries;
    for (const PastRequest& one : wanted_) {
      auto entered = one_step(
          one, log, [&](const RecordToKeep& record) { return foresee_events(log, record); });
      if (!entered) continue;
      const auto& more = entered->kept.bookings.entries;
      entries.insert(entries.end(), more.begin(), more.end());
      entered_.push_back(std::move(*entered));
    }
    if (auto ended = end(); !ended) return ended;
    auto booked = foresee_all(log, entries);
    if (!booked) return base::fail(foresee_one_by_one(log));
    auto next = booked->begin();
    for (Entered& one : entered_) {
      for (std::size_t i = 0; i < one.kept.bookings.entries.size(); ++i) {
        one.booked.push_back(std::move(*next++));
      }
    }
    return {};
  }

  const std::vector<Entered>& entered() const { return entered_; }
  const Shop& shop() const { return shop_; }

 private:
  void refuse(const PastRequest& one, const base::Problems& problems) {
    for (const base::Problem& each : problems) {
      if (problems_.size() >= most_problems) return;
      base::Problem problem = at_fact(each, past_, *one.step);
      // A day that is still to come is that of the start and of the end.
      const bool is_said =
          std::any_of(problems_.begin(), problems_.end(), [&](const base::Problem& other) {
            return other.code == problem.code && other.line == problem.line &&
                   other.column == problem.column;
          });
      if (!is_said) problems_.push_back(std::move(problem));
    }
  }

  base::Result<void> end() {
    if (problems_.empty()) return {};
    std::stable_sort(problems_.begin(), problems_.end(),
                     [](const base::Problem& a, const base::Problem& b) {
                       return std::pair(a.line, a.column) < std::pair(b.line, b.column);
                     });
    return base::fail(std::move(problems_));
  }

  using Keep = std::function<base::Result<KeptEvents>(const RecordToKeep&)>;

  std::optional<Entered> one_step(const PastRequest& one, const Log* log, const Keep& keep) {
    const auto record = record_to_keep(workshop_, log, one.request);
    if (!record) {
      refuse(one, record.error());
      return std::nullopt;
    }
    remember(record->job);
    auto kept = keep(*record);
    if (!kept) {
      refuse(one, kept.error());
      return std::nullopt;
    }
    return Entered{&one, record->job.slug, record->job.name, std::move(*kept), record->notices, {}};
  }

  void remember(const JobOfRecord& job) {
    shop_.zone = job.zone;
    if (!job.shop) return;
    shop_.currency = job.shop->shop.currency;
    shop_.units = job.shop->units;
  }

  // Which step cannot be booked: each after those before it.
  base::Problems foresee_one_by_one(const Log* log) {
    std::vector<joblog::NewEntry> entries;
    for (const Entered& one : entered_) {
      const auto& more = one.kept.bookings.entries;
      entries.insert(entries.end(), more.begin(), more.end());
      const auto booked = foresee_all(log, entries);
      if (booked) continue;
      refuse(*one.wanted, booked.error());
      break;
    }
    return std::move(problems_);
  }

  const Workshop& workshop_;
  const files::PastBoards& past_;
  std::vector<PastRequest> wanted_;
  base::Problems problems_;
  std::vector<Entered> entered_;
  Shop shop_;
};

void count(report::PastBoard& board, const Entered& one) {
  board.began = board.began || one.kept.events.began;
  board.from = std::min(board.from, one.wanted->from);
  board.to = std::max(board.to, one.wanted->from);
  ++board.steps;
  for (const joblog::RecordedEvent& event : one.kept.events.events) {
    if (event.already) {
      ++board.before;
      continue;
    }
    ++board.facts;
    if (event.row.kind == joblog::EventKind::mixed) board.mixed += *event.row.facts.mass;
    if (event.row.kind == joblog::EventKind::left || event.row.kind == joblog::EventKind::spilled) {
      board.left += *event.row.facts.mass;
    }
  }
  for (const joblog::Booked& entry : one.booked) {
    for (const joblog::MovementRow& line : entry.lines) {
      const bool is_work = line.material.empty();
      (is_work ? board.work : board.goods).minor += line.minor;
      if (is_work) board.minutes += line.quantity;
    }
  }
}

// Steps that took time where an hour costs nothing have no entry for it.
void count_time(report::PastBoard& board, const Entered& one) {
  std::optional<joblog::Instant> start, end;
  for (const joblog::RecordedEvent& event : one.kept.events.events) {
    if (event.already) return;
    if (event.row.kind == joblog::EventKind::started) start = event.row.at;
    if (event.row.kind == joblog::EventKind::done) end = event.row.at;
  }
  if (start && end) {
    board.minutes += std::chrono::duration_cast<std::chrono::minutes>(*end - *start).count();
  }
}

std::vector<report::PastBoard> boards_of(const std::vector<Entered>& entered,
                                         const std::string& currency) {
  std::vector<report::PastBoard> boards;
  for (const Entered& one : entered) {
    auto board = std::find_if(boards.begin(), boards.end(),
                              [&](const report::PastBoard& b) { return b.job == one.job; });
    if (board == boards.end()) {
      report::PastBoard begun;
      begun.job = one.job;
      begun.name = one.name;
      begun.from = begun.to = one.wanted->from;
      begun.goods.currency = begun.work.currency = currency;
      board = boards.insert(boards.end(), std::move(begun));
    }
    count(*board, one);
    const bool is_booked = std::any_of(
        one.booked.begin(), one.booked.end(),
        [](const joblog::Booked& entry) { return entry.lines.front().material.empty(); });
    if (!is_booked) count_time(*board, one);
  }
  return boards;
}

base::Notices notices_of(const std::vector<Entered>& entered, const std::string& file) {
  FewNotices few;
  for (const Entered& one : entered) {
    const auto& events = one.kept.events.events;
    const bool is_new = std::any_of(events.begin(), events.end(),
                                    [](const joblog::RecordedEvent& e) { return !e.already; });
    if (!is_new) continue;
    for (const base::Notice& notice : one.notices) {
      // That is why they are entered this way.
      if (notice.code != "record.old") few.add(notice, one.job);
    }
    for (const base::Notice& notice : one.kept.bookings.notices) {
      few.add(notice, notice.code == "stock.other_unit" ? "" : one.job);
    }
    for (const base::Notice& notice : notices_of(one.booked, one.kept.bookings)) {
      few.add(notice, "");
    }
  }
  return few.take(file);
}

}  // namespace

base::Result<Imported> import_past(const Workshop& workshop, const std::filesystem::path& file) {
  const auto past = files::read_past_boards(file);
  if (!past) return tl::unexpected(past.error());
  PastRequests wanted = past_requests(*past);
  // What is wrong already keeps all of it out: the rest is only looked at.
  const bool only_look = workshop.dry_run || !wanted.problems.empty();
  PastImport import(workshop, *past, std::move(wanted));
  std::optional<Log> log;
  if (only_look) {
    log = log_so_far(workshop);
    if (auto done = import.foresee(log ? &*log : nullptr); !done) {
      return tl::unexpected(done.error());
    }
  } else {
    log = log_to_write(workshop);
    if (auto done = import.enter(*log); !done) return tl::unexpected(done.error());
  }
  const auto now = workshop.now(import.shop().zone);
  if (!now) return tl::unexpected(now.error());

  Imported answer;
  answer.units = import.shop().units;
  report::PastDocument& document = answer.document;
  document.program = program();
  document.made = time::rfc3339(*now, import.shop().zone);
  document.file = past->name;
  document.saved = !workshop.dry_run;
  const auto kept = log ? log->currency() : std::nullopt;
  document.boards = boards_of(import.entered(), kept.value_or(import.shop().currency));
  for (const report::PastBoard& board : document.boards) {
    document.facts += board.facts;
    document.before += board.before;
  }
  for (const Entered& one : import.entered()) {
    document.entries += static_cast<std::int64_t>(one.booked.size());
  }
  document.notices = notices_of(import.entered(), past->name);
  return answer;
}

}  // namespace wetout::work
