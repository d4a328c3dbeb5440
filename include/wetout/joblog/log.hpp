// The job log: every plan that was ever saved, with the files it was made from; every schedule;
// what was recorded of the work; and the ledger.
#pragma once

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/joblog/events.hpp"
#include "wetout/joblog/ledger.hpp"
#include "wetout/joblog/moment.hpp"
#include "wetout/joblog/schedules.hpp"
#include "wetout/joblog/stock.hpp"
#include "wetout/joblog/store_error.hpp"

namespace wetout::joblog {

enum class Access {
  read,   ///< never creates or changes a file; an older log is read through a copy in memory
  write,  ///< creates the log when there is none, brings an older one up to date
};

struct OpenOptions {
  Access access = Access::read;
  /// With Access::write: create the folders that are missing, for this user only (0700, as the
  /// XDG Base Directory Specification asks for data folders). Otherwise a missing folder is
  /// StoreTrouble::missing.
  bool make_folder = false;
  /// How long to wait for another program before StoreTrouble::locked.
  std::chrono::milliseconds busy_timeout{5000};
};

/// A file or a text that a plan was made from, kept byte for byte.
struct Input {
  std::string role = {};    ///< job | shop | outline | learned | options
  std::string name = {};    ///< as the user named it; (role, name) is unique within a plan
  std::string format = {};  ///< e.g. "wetout.job/1"
  std::string body = {};
};

struct NewPlan {
  std::string job_slug = {};  ///< base::is_slug
  std::string job_name =
      {};  ///< used when the job is new, not empty; later only rename_job changes it
  std::string program = {};  ///< "wetout 0.1.0"
  Instant made = {};
  Digest input_key = {};  ///< of everything the result depends on
  std::string result_format = {};
  /// Makes the document to keep, given the revision it will have. Called inside the transaction
  /// and only when a revision is saved; an exception undoes the save.
  std::function<std::string(int revision)> result_body = {};
  std::vector<Input> inputs = {};
};

struct Saved {
  int revision = 0;
  bool unchanged = false;     ///< the last revision has the same input key: nothing was added
  bool brought_back = false;  ///< the job was archived and is not any more
};

struct JobRow {
  std::string slug = {};
  std::string name = {};
  Instant created = {};
  std::optional<Instant> archived = {};
  int revisions = 0;  ///< the last revision; they count 1, 2, 3 ...; 0: recorded, never planned
  std::optional<Instant> last_made = {};
  std::int64_t key = 0;  ///< stays when it is renamed; no other job of this log ever has it
};

struct RevisionRow {
  int revision = 0;
  Instant made = {};
  std::string program = {};
  Digest input_key = {};
};

struct PlanRow {
  std::string job_slug = {};
  std::string job_name = {};
  int revision = 0;
  Instant made = {};
  std::string program = {};
  Digest input_key = {};
  std::string format = {};
  std::string body = {};
  Digest sha256 = {};  ///< of body
};

struct InputRow {
  std::string role = {};
  std::string name = {};
  std::string format = {};
  std::string body = {};
  Digest sha256 = {};  ///< of body
};

struct Info {
  std::filesystem::path path = {};
  std::uint64_t file_bytes = 0;
  std::uint64_t wal_bytes = 0;  ///< committed or not, not yet in the file itself
  int schema_version = 0;
  std::int64_t jobs = 0;
  std::int64_t archived_jobs = 0;
  std::int64_t plans = 0;
  std::int64_t schedules = 0;
  std::int64_t events = 0;  ///< undone ones and undos among them
  std::int64_t materials = 0;
  std::int64_t lots = 0;
  std::int64_t entries = 0;  ///< of the ledger; undone ones and undos among them
  std::int64_t documents = 0;
  std::int64_t document_bytes = 0;
  std::string journal_mode = {};  ///< "wal"
  std::string sqlite_version = {};
};

/// One connection. Move-only; not for two threads at once. Any number of processes may use the
/// same log: writers wait for each other, readers never wait. Every member that touches the file
/// may throw StoreError.
class Log {
 public:
  /// Throws StoreError. Does not look at every page: damage inside is found by check() and at use.
  static Log open(const std::filesystem::path& path, const OpenOptions& options = {});
  /// A log that lives in memory and is gone with the object.
  static Log in_memory();
  /// False when there is nothing at `path` yet, or an empty file. Does not open the log: after a
  /// creation that was cut short it is true, and open() still says StoreTrouble::missing.
  static bool exists(const std::filesystem::path& path);

  Log(Log&&) noexcept;
  Log& operator=(Log&&) noexcept;
  ~Log();

  /// Saves a revision unless the job's last one has the same input key. On the disk (fsync) when
  /// it returns. A new job is created, an archived one brought back.
  Saved save_plan(const NewPlan& plan);
  /// What save_plan would say, writing nothing.
  Saved foresee_plan(std::string_view slug, const Digest& input_key) const;

  /// By slug.
  std::vector<JobRow> jobs(bool with_archived = false) const;
  std::optional<JobRow> job(std::string_view slug) const;
  /// Oldest first; empty for an unknown job.
  std::vector<RevisionRow> revisions(std::string_view slug) const;
  /// The given revision, else the last. The bytes are compared with their digest: throws
  /// StoreTrouble::damaged rather than return a changed document.
  std::optional<PlanRow> plan(std::string_view slug, std::optional<int> revision = {}) const;
  /// By role and name; empty for an unknown plan.
  std::vector<InputRow> inputs(std::string_view slug, int revision) const;

  /// Saves a schedule unless nothing has changed (SavedSchedule::unchanged). On the disk when it
  /// returns. Archived jobs are brought back. Problems, one for each job: "job.unknown",
  /// "plan.unknown".
  base::Result<SavedSchedule> save_schedule(const NewSchedule& schedule);
  /// What save_schedule would say, writing nothing. Jobs the log does not know (their plans are not
  /// saved either) are new ones.
  SavedSchedule foresee_schedule(const std::vector<std::string>& slugs,
                                 const Digest& input_key) const;
  /// The last one that holds the job. Bytes are compared with their digest, as of plan().
  std::optional<ScheduleRow> last_schedule(std::string_view slug) const;
  std::optional<ScheduleRow> schedule(std::int64_t number) const;
  /// By job, start and step; empty for an unknown schedule.
  std::vector<ScheduledStep> schedule_steps(std::int64_t number) const;
  /// Nothing where the schedule is unknown or was made without a forecast.
  std::optional<WeatherText> schedule_weather(std::int64_t number) const;
  /// All of them, or those that hold the job; oldest first.
  std::vector<ScheduleHead> schedules(std::optional<std::string_view> slug = {}) const;

  /// Records events of one job, all or none, on the disk when it returns. An event whose token is
  /// there already is not added again: the earlier one is returned. An archived job is brought
  /// back. Problems: "job.unknown"; "event.token" when a token names an event that says something
  /// else (`at` and `recorded` apart: a clock goes on).
  base::Result<RecordedEvents> record_events(const NewEvents& events);
  /// What record_events would say, writing nothing.
  base::Result<RecordedEvents> foresee_events(const NewEvents& events) const;
  /// Takes an event back by adding one that names it. An archived job stays archived. Problems:
  /// "event.unknown", "event.undone" (already), "event.is_undo" (an undo is not taken back; record
  /// the event anew), "event.token" as above.
  base::Result<RecordedUndo> undo_event(const NewUndo& undo);
  /// What undo_event would say, writing nothing.
  base::Result<RecordedUndo> foresee_undo(const NewUndo& undo) const;
  /// Leaves an event aside where losses, pace and speeds are learned, or lets it count again; it
  /// stays recorded as it was. On the disk when it returns, except inside together(). Problems:
  /// "event.unknown", "event.undone", "event.no_lesson" (nothing is learned from its kind).
  base::Result<Lesson> set_lesson(std::int64_t event, bool counts, Instant made);
  /// What set_lesson would say, writing nothing.
  base::Result<Lesson> foresee_lesson(std::int64_t event, bool counts) const;
  /// Every event of the job by number, undone ones and undos among them; empty for an unknown job.
  std::vector<EventRow> events(std::string_view slug) const;
  std::optional<EventRow> event(std::int64_t number) const;

  /// Books an entry: on the disk when it returns, except inside together(). One whose token is
  /// there already is not booked again: what was answered then is answered.
  ///
  /// Goods leave stock first in, first out: from the lot that was received first (then by label),
  /// what is past its date only when no other lot has any, and then marked. More than the shelf has
  /// may be taken; what is missing comes from the last lot, or one called "unknown" where there is
  /// none, and is in `shortages`. The cost of a lot leaves with its goods: all that was taken from
  /// it costs round-half-even(price × taken / received), so that a lot used up has cost its price.
  /// A count brings lots that lie below zero back to it, takes what is missing from the oldest, and
  /// gives what is more to the youngest, at no cost. A cut goes from a roll to adjustment and from
  /// there into its own lot, at one cost; such a lot is taken from by its name only.
  ///
  /// Problems: "material.unit" (the log keeps it in another), "amount.range", "lot.taken",
  /// "lot.label", "lot.unknown", "lot.short" (a cut of what no lot has), "job.unknown",
  /// "ledger.currency" (the log has another), "entry.token" (it names an entry that says something
  /// else; `at`, `on` and `recorded` apart). Of a reversal: "entry.unknown", "entry.undone"
  /// (already), "entry.is_undo".
  base::Result<Booked> book(const NewEntry& entry);
  /// What booking these one after the other would answer, writing nothing. A job that the log does
  /// not know is taken for one that will have begun by then.
  base::Result<std::vector<Booked>> foresee_bookings(const std::vector<NewEntry>& entries) const;
  /// Runs `work`, and keeps all that it writes through this log or, when it returns problems or
  /// throws, nothing. On the disk when it returns. Many bookings are fastest this way. Inside,
  /// another together() is part of the outer one.
  base::Result<void> together(const std::function<base::Result<void>()>& work);
  /// Something was received that was not taken back: whoever keeps the log keeps stock.
  bool keeps_stock() const;
  /// Of all money in the log; nothing as long as there is none.
  std::optional<std::string> currency() const;
  /// By number.
  std::vector<EntryRow> entries(const EntryFilter& filter = {}) const;
  /// The same one at a time, however many there are. `read` does not write to the log.
  void each_entry(const EntryFilter& filter,
                  const std::function<void(const EntryRow&)>& read) const;

  /// Every material that was ever booked, by slug.
  std::vector<MaterialStock> stock(Lots lots = Lots::open) const;
  std::optional<MaterialStock> stock_of(std::string_view material, Lots lots = Lots::open) const;
  /// Nothing for an unknown job.
  std::optional<JobCost> job_cost(std::string_view slug) const;
  /// Boards that hold some of a lot, by slug; empty for an unknown material or lot. The lots that a
  /// board holds are in its job_cost().
  std::vector<LotInJob> boards_with(std::string_view material, std::string_view lot) const;
  /// By slug; of one job, only what it used.
  std::vector<MaterialTotals> material_totals(std::optional<std::string_view> job = {}) const;
  /// Months in which something was booked, the earliest first; of one job, what is in it.
  std::vector<MonthTotals> month_totals(std::optional<std::string_view> job = {}) const;
  /// Jobs that something was booked for, by slug.
  std::vector<JobTotals> job_totals() const;

  /// Plans, schedules, events and entries stay with the job. Problems: "job.unknown", "job.taken",
  /// "job.slug", "job.name".
  base::Result<void> rename_job(std::string_view slug, const std::string& new_slug,
                                const std::string& new_name);
  /// Hides a job from jobs(), or brings it back with nullopt. Nothing is deleted; its slug stays
  /// taken. Problem: "job.unknown".
  base::Result<void> archive_job(std::string_view slug, std::optional<Instant> when);

  Info info() const;

 private:
  struct Impl;
  explicit Log(std::unique_ptr<Impl> impl);
  std::unique_ptr<Impl> impl_;
};

}  // namespace wetout::joblog
