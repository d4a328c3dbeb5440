// A child saves plans, schedules, events and entries of the ledger and is killed (SIGKILL) at a
// moment nobody chose. What it was told is saved must be there, whole, and the log sound; what was
// being saved is there whole or not at all.
//
//   joblog_kill [--kills N] [--seed S]
//
// The child works in rounds: plan N, schedule N of it, three events N in one call, entry N: bought
// or used. Everything bookable is sent a second time, as after a lost answer. It writes "committing
// I" before it saves its I-th thing and "done I" after. Kills between the two are counted and must
// be at least a tenth, or the test has not tested what it is for. It runs on a disk (TMPDIR or
// /tmp): in memory a commit is too short to be hit.
#include <poll.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <random>
#include <sstream>
#include <string>

#include "ledger_samples.hpp"
#include "record_samples.hpp"
#include "support.hpp"
#include "wetout/joblog/care.hpp"

namespace wetout::joblog {
namespace {

namespace fs = std::filesystem;
using testing::difference;
using testing::sample_plan;
using testing::TempFolder;
using testing::Where;

constexpr const char* slug = "sandpiper";
constexpr int kills_per_log = 25;  // then a new log, so that its creation is hit as well

[[noreturn]] void fail(const std::string& what) {
  std::fprintf(stderr, "FAILED: %s\n", what.c_str());
  std::exit(1);
}

// Small and large plans, so that a commit is one page or many.
std::size_t body_bytes(int n) { return n % 11 == 0 ? 30'000 : n % 3 == 0 ? 3'000 : 300; }

void say(int pipe_end, const char* word, int n) {
  char line[40];
  const int length = std::snprintf(line, sizeof line, "%s %d\n", word, n);
  if (::write(pipe_end, line, static_cast<std::size_t>(length)) != length) ::_exit(2);
}

enum class What { plan, schedule, events, entry };
constexpr What whats[] = {What::plan, What::schedule, What::events, What::entry};
constexpr int kinds = 4;

// The I-th thing, counted from 1: what it is, and of which round.
What what_of(int i) { return whats[(i - 1) % kinds]; }
int round_of(int i) { return (i + kinds - 1) / kinds; }
// How many of a kind the first `things` hold.
int count_of(What what, int things) {
  return (things + kinds - 1 - static_cast<int>(what)) / kinds;
}

NewSchedule schedule_of(int round) { return testing::sample_schedule(round, {{slug, round}}); }

// Lots of a kilogram, and boards that take a little more than the lots of their round hold.
constexpr std::int64_t lot_mg = 1'000'000;
constexpr std::int64_t lot_minor = 1999;
constexpr std::int64_t use_mg = 1'100'000;

NewEntry entry_of(int round) {
  const std::string token = "entry " + std::to_string(round);
  if (round % 2 == 1) {
    Received lot{.material = testing::mass("resin-a")};
    lot.quantity = lot_mg;
    lot.cost_minor = lot_minor;
    lot.lot = "lot " + std::to_string(round);
    return testing::receipt(token, {lot});
  }
  return testing::use(token, slug, "bottom-lam/wet", {{testing::mass("resin-a"), use_mg}});
}

std::string wrong_with_entry(const Log& log, int round) {
  const auto entries = log.entries({.number = round});
  if (entries.size() != 1) return "entry " + std::to_string(round) + " is not there once";
  std::int64_t quantity = 0;
  for (const MovementRow& line : entries[0].lines) quantity += line.quantity;
  const bool is_whole = entries[0].token == "entry " + std::to_string(round) &&
                        quantity == (round % 2 == 1 ? lot_mg : use_mg);
  return is_whole ? "" : "entry " + std::to_string(round) + " is there in part";
}

// What was bought less what was used, in goods and in money.
void verify_shelf(const Log& log, int entries) {
  if (entries == 0) return;
  const auto stock = log.stock_of("resin-a", Lots::all);
  const int uses = entries / 2;
  if (!stock || stock->quantity != (entries - uses) * lot_mg - uses * use_mg) {
    fail("the shelf does not hold what is left");
  }
  const auto cost = log.job_cost(slug);
  const std::int64_t used_minor = cost ? cost->goods_minor : 0;
  if (stock->minor + used_minor != (entries - uses) * lot_minor) fail("money came or went");
}

// True when it got the number it must have.
bool save(Log& log, int i) {
  const int n = round_of(i);
  switch (what_of(i)) {
    case What::plan:
      return log.save_plan(sample_plan(n, slug, body_bytes(n))).revision == n;
    case What::schedule: {
      const auto saved = log.save_schedule(schedule_of(n));
      return saved && saved->number == n;
    }
    case What::events: {
      const auto recorded = log.record_events(testing::sample_events(n, slug));
      return recorded && recorded->events[0].row.number == 3 * n - 2;
    }
    case What::entry: {
      const auto booked = log.book(entry_of(n));
      const auto again = log.book(entry_of(n));
      return booked && again && booked->number == n && again->number == n && again->already;
    }
  }
  return false;
}

std::string wrong_with(const Log& log, int i) {
  const int n = round_of(i);
  switch (what_of(i)) {
    case What::plan:
      return difference(log, n, n, slug, body_bytes(n));
    case What::schedule:
      return difference(log, n, schedule_of(n));
    case What::events:
      return difference(log, testing::sample_events(n, slug));
    case What::entry:
      return wrong_with_entry(log, n);
  }
  return "nothing";
}

// Works until killed. Every few things the log is closed, which moves the WAL into the file.
[[noreturn]] void write_things(const fs::path& path, int first, int pipe_end) {
  try {
    for (int i = first;;) {
      Log log = Log::open(path, {.access = Access::write});
      for (const int last = i + 4; i < last; ++i) {
        say(pipe_end, "committing", i);
        if (!save(log, i)) ::_exit(3);
        say(pipe_end, "done", i);
      }
    }
  } catch (const std::exception& error) {
    std::fprintf(stderr, "child: %s\n", error.what());
    ::_exit(4);
  }
}

struct Told {
  int committing = 0;  ///< the last thing that was begun
  int done = 0;        ///< the last thing that was acknowledged
};

void read_told(const std::string& text, Told& told) {
  std::istringstream words(text);
  std::string word;
  for (int n = 0; words >> word >> n;) (word == "done" ? told.done : told.committing) = n;
}

// Lets a child work for `microseconds` after its first word (or, for a log that is to be created,
// after its start), kills it, and returns all that it said.
std::string run_and_kill(const fs::path& path, int first, bool at_creation, int microseconds) {
  int ends[2];
  if (::pipe(ends) != 0) fail("no pipe");
  const pid_t child = ::fork();
  if (child == 0) {
    ::close(ends[0]);
    write_things(path, first, ends[1]);
  }
  ::close(ends[1]);
  if (!at_creation) {
    pollfd first_word{ends[0], POLLIN, 0};
    if (::poll(&first_word, 1, 60'000) != 1) fail("the child says nothing for a minute");
  }
  ::usleep(static_cast<useconds_t>(microseconds));
  ::kill(child, SIGKILL);
  std::string text;
  char buffer[65536];
  for (ssize_t got = 0; (got = ::read(ends[0], buffer, sizeof buffer)) > 0;) {
    text.append(buffer, static_cast<std::size_t>(got));
  }
  ::close(ends[0]);
  int status = 0;
  ::waitpid(child, &status, 0);
  if (!WIFSIGNALED(status)) fail("the child ended by itself");
  return text;
}

// How many things the log holds, after looking at all of it.
int verify(const fs::path& path, const Told& told) {
  try {
    Log::open(path);
  } catch (const StoreError& error) {
    // Its creation was cut short and has left nothing.
    if (error.kind() == StoreTrouble::missing && told.done == 0) return 0;
    fail(error.what());
  }
  const auto findings = check(path);
  if (!findings.empty()) fail("check: " + findings.front().text);
  const Log log = Log::open(path);
  const Info info = log.info();
  const auto things =
      static_cast<int>(info.plans + info.schedules + info.events / 3 + info.entries);
  if (info.plans != count_of(What::plan, things) ||
      info.schedules != count_of(What::schedule, things) ||
      info.events != 3 * count_of(What::events, things) ||
      info.entries != count_of(What::entry, things)) {
    fail("something is there in part, or out of its order");
  }
  if (things < told.done) fail("acknowledged thing " + std::to_string(told.done) + " is lost");
  if (things > told.committing) fail("a thing that nobody saved");
  for (int i = std::max(told.done, 1); i <= things; ++i) {
    const std::string wrong = wrong_with(log, i);
    if (!wrong.empty()) fail(wrong);
  }
  verify_shelf(log, static_cast<int>(info.entries));
  return things;
}

// A copy of what the kill left, so that the next child finds it as it was and mends it itself.
int verify_copy(const fs::path& path, const Told& told) {
  const TempFolder aside;
  for (const char* ending : {"", "-wal", "-journal"}) {
    const fs::path from = path.string() + ending;
    if (fs::exists(from)) fs::copy_file(from, (aside / "log.db").string() + ending);
  }
  return verify(aside / "log.db", told);
}

int microseconds_since(std::chrono::steady_clock::time_point start) {
  const auto gone = std::chrono::steady_clock::now() - start;
  return static_cast<int>(std::chrono::duration_cast<std::chrono::microseconds>(gone).count());
}

struct Pace {
  int creation = 0;  ///< microseconds from opening to the first plan saved
  int ten_things = 0;
};

// The moments of the kills are spread over what the work takes on this disk.
Pace measure_pace() {
  const TempFolder folder(Where::disk);
  Pace pace;
  auto start = std::chrono::steady_clock::now();
  Log log = Log::open(folder / "log.db", {.access = Access::write});
  save(log, 1);
  pace.creation = microseconds_since(start);
  start = std::chrono::steady_clock::now();
  for (int i = 2; i <= 11; ++i) save(log, i);
  pace.ten_things = microseconds_since(start);
  return pace;
}

int run(int kills, unsigned seed) {
  std::printf("seed %u\n", seed);
  std::fflush(stdout);
  std::mt19937 random(seed);
  const Pace pace = measure_pace();
  std::uniform_int_distribution<int> at_work(0, pace.ten_things);
  std::uniform_int_distribution<int> at_creation(0, 2 * pace.creation);
  int between = 0;
  int survived = 0;
  int creations = 0;
  int things = 0;
  for (int kill = 0; kill < kills;) {
    const TempFolder folder(Where::disk);
    const fs::path path = folder / "log.db";
    Told told;
    for (int i = 0; i < kills_per_log && kill < kills; ++i, ++kill) {
      const bool is_new = !Log::exists(path);
      creations += is_new ? 1 : 0;
      const int wait = is_new ? at_creation(random) : at_work(random);
      read_told(run_and_kill(path, told.done + 1, is_new, wait), told);
      const bool is_between = told.committing > told.done;
      between += is_between ? 1 : 0;
      const int there = i % 2 == 0 ? verify(path, told) : verify_copy(path, told);
      survived += is_between && there == told.committing ? 1 : 0;
      told.done = told.committing = there;  // a thing saved but not acknowledged counts from now on
    }
    things += told.done;
  }
  std::printf(
      "%d kills, %d between \"committing\" and \"done\" (%d of those things were kept whole, the "
      "others not at all), %d from the creation of a log on; %d plans, schedules, records and "
      "entries\n",
      kills, between, survived, creations, things);
  if (between * 10 < kills) fail("too few kills between \"committing\" and \"done\"");
  return 0;
}

}  // namespace
}  // namespace wetout::joblog

int main(int argc, char** argv) {
  int kills = 200;
  unsigned seed = std::random_device{}();
  for (int i = 1; i + 1 < argc; i += 2) {
    const std::string option = argv[i];
    if (option == "--kills") kills = std::atoi(argv[i + 1]);
    if (option == "--seed") seed = static_cast<unsigned>(std::strtoul(argv[i + 1], nullptr, 10));
  }
  return wetout::joblog::run(kills, seed);
}
