// Several programs at one log at the same time.
#include <SQLiteCpp/Database.h>
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <functional>
#include <iostream>
#include <map>
#include <random>
#include <set>
#include <sstream>

#include "record_samples.hpp"
#include "support.hpp"
#include "wetout/joblog/care.hpp"
#include "writers.hpp"

namespace wetout::joblog {
namespace {

using testing::patient;
using testing::run_writers;
using testing::sample_plan;
using testing::TempFolder;

struct Acknowledged {
  std::string slug;
  int revision = 0;
  int n = 0;
};

// Each writer saves plans of its own.
std::vector<Acknowledged> run_planners(const std::filesystem::path& path, int writers, int plans) {
  const auto lines = run_writers(writers, [&](int writer, const auto& say) {
    for (int i = 0; i < plans; ++i) {
      Log log = Log::open(path, patient());
      const int n = writer * 1000 + i;
      const std::string slug = i % 2 == 0 ? "sandpiper" : "egret";
      const Saved saved = log.save_plan(sample_plan(n, slug));
      say(slug + " " + std::to_string(saved.revision) + " " + std::to_string(n));
    }
  });
  std::vector<Acknowledged> acknowledged;
  for (const std::string& line : lines) {
    std::istringstream words(line);
    Acknowledged one;
    if (words >> one.slug >> one.revision >> one.n) {
      acknowledged.push_back(one);
    } else {
      ADD_FAILURE() << line;
    }
  }
  return acknowledged;
}

TEST(Processes, LoseNothingFromTheCreationOn) {
  constexpr int writers = 5;
  constexpr int plans = 30;
  const TempFolder folder;
  const auto acknowledged = run_planners(folder / "log.db", writers, plans);
  EXPECT_EQ(acknowledged.size(), static_cast<std::size_t>(writers * plans));
  const Log log = Log::open(folder / "log.db");
  std::map<std::string, std::set<int>> revisions;
  for (const Acknowledged& one : acknowledged) {
    EXPECT_EQ(testing::difference(log, one.revision, one.n, one.slug), "");
    EXPECT_TRUE(revisions[one.slug].insert(one.revision).second) << "given twice";
  }
  for (const auto& [slug, numbers] : revisions) {
    EXPECT_EQ(*numbers.begin(), 1) << slug;
    EXPECT_EQ(*numbers.rbegin(), static_cast<int>(numbers.size())) << slug;
    EXPECT_EQ(log.job(slug)->revisions, static_cast<int>(numbers.size()));
  }
  EXPECT_EQ(log.info().journal_mode, "wal");
  EXPECT_TRUE(check(folder / "log.db").empty());
}

TEST(Processes, LoseNoRecordAndNoSchedule) {
  constexpr int writers = 4;
  constexpr int rounds = 20;
  const TempFolder folder;
  const auto path = folder / "log.db";
  testing::make_log(path);
  const auto lines = run_writers(writers, [&](int writer, const auto& say) {
    for (int i = 0; i < rounds; ++i) {
      Log log = Log::open(path, patient());
      const int n = writer * 1000 + i;
      const auto recorded = log.record_events(testing::sample_events(n));
      say("events " + std::to_string(recorded->events[0].row.number) + " " + std::to_string(n));
      const auto saved = log.save_schedule(testing::sample_schedule(n));
      say("schedule " + std::to_string(saved->number) + " " + std::to_string(n));
    }
  });
  EXPECT_EQ(lines.size(), static_cast<std::size_t>(2 * writers * rounds));
  const Log log = Log::open(path);
  std::set<int> events;
  std::set<int> schedules;
  for (const std::string& line : lines) {
    std::istringstream words(line);
    std::string word;
    int number = 0;
    int n = 0;
    ASSERT_TRUE(words >> word >> number >> n) << line;
    if (word == "events") {
      EXPECT_TRUE(events.insert(number).second) << "given twice";
      EXPECT_EQ(testing::difference(log, testing::sample_events(n)), "");
    } else {
      EXPECT_TRUE(schedules.insert(number).second) << "given twice";
      EXPECT_EQ(testing::difference(log, number, testing::sample_schedule(n)), "");
    }
  }
  EXPECT_EQ(*events.rbegin(), 3 * writers * rounds - 2);
  EXPECT_EQ(*schedules.rbegin(), writers * rounds);
  EXPECT_TRUE(check(path).empty());
}

// A phone that sends its record again while the first sending is still on its way.
TEST(Processes, SendingOneRecordKeepItOnce) {
  constexpr int writers = 6;
  const TempFolder folder;
  const auto path = folder / "log.db";
  testing::make_log(path);
  const auto lines = run_writers(writers, [&](int, const auto& say) {
    Log log = Log::open(path, patient());
    for (int n = 1; n <= 10; ++n) {
      const auto recorded = log.record_events(testing::sample_events(n));
      say(recorded->events[0].already ? "already" : "new");
    }
  });
  EXPECT_EQ(std::count(lines.begin(), lines.end(), "new"), 10);
  EXPECT_EQ(std::count(lines.begin(), lines.end(), "already"), 10 * (writers - 1));
  EXPECT_EQ(Log::open(path).info().events, 30);
}

TEST(Processes, BringAnOldLogUpToDateOnce) {
  constexpr int writers = 5;
  const TempFolder folder;
  const auto path = folder / "log.db";
  SQLite::Database(path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE)
      .exec(testing::read_bytes(std::filesystem::path(JOBLOG_TEST_DATA) / "version_1.sql"));
  const auto lines = run_writers(writers, [&](int writer, const auto& say) {
    Log log = Log::open(path, patient());
    say(log.record_events(testing::sample_events(writer)) ? "recorded" : "refused");
  });
  EXPECT_EQ(std::count(lines.begin(), lines.end(), "recorded"), writers);
  EXPECT_TRUE(check(path).empty());
  const Log log = Log::open(path);
  for (int n = 0; n < writers; ++n) {
    EXPECT_EQ(testing::difference(log, testing::sample_events(n)), "");
  }
  EXPECT_EQ(testing::difference(log, 2, 2, "sandpiper", 60), "");
}

TEST(Processes, TakingOneEventBackDoItOnce) {
  constexpr int writers = 6;
  const TempFolder folder;
  const auto path = folder / "log.db";
  testing::make_log(path);
  ASSERT_TRUE(Log::open(path, patient()).record_events(testing::sample_events(1)));
  const auto lines = run_writers(writers, [&](int writer, const auto& say) {
    Log log = Log::open(path, patient());
    const auto undone = log.undo_event({.token = std::to_string(writer), .number = 2});
    say(undone ? "undone" : undone.error()[0].code);
  });
  EXPECT_EQ(std::count(lines.begin(), lines.end(), "undone"), 1);
  EXPECT_EQ(std::count(lines.begin(), lines.end(), "event.undone"), writers - 1);
  EXPECT_EQ(Log::open(path).info().events, 4);
}

TEST(Processes, WritingTheSamePlanSaveItOnce) {
  const TempFolder folder;
  int answers = 0;
  int unchanged = 0;
  for (int i = 0; i < 4; ++i) {
    const std::string said = testing::in_child([&] {
      Log log = Log::open(folder / "log.db", testing::writing());
      const Saved saved = log.save_plan(sample_plan(1));
      return std::to_string(saved.revision) + (saved.unchanged ? " unchanged" : " new");
    });
    ++answers;
    if (said == "1 unchanged") ++unchanged;
  }
  EXPECT_EQ(answers, unchanged + 1);
}

// Kills `work` in a child after `microseconds`; false when it was done before.
bool kill_after(int microseconds, const std::function<void()>& work) {
  const pid_t child = ::fork();
  if (child == 0) {
    try {
      work();
    } catch (...) {
      ::_exit(1);
    }
    ::_exit(0);
  }
  ::usleep(static_cast<useconds_t>(microseconds));
  ::kill(child, SIGKILL);
  int status = 0;
  ::waitpid(child, &status, 0);
  return WIFSIGNALED(status);
}

// A log of five plans and a backup with two of them; what was there before is never lost.
TEST(Processes, KilledWhileRestoringLeaveTheLogOrTheBackup) {
  const unsigned seed = std::random_device{}();
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::mt19937 random(seed);
  int killed = 0;
  int restored = 0;
  for (int i = 0; i < 60; ++i) {
    const TempFolder folder;
    const auto log = folder / "log.db";
    testing::make_log(log, 2);
    ASSERT_TRUE(backup(log, folder / "backup.db"));
    const bool is_cut = i % 3 == 2;  // a damaged log is moved aside instead
    {
      Log more = Log::open(log, testing::writing());
      for (int n = 3; n <= 5; ++n) more.save_plan(sample_plan(n));
    }
    const std::string cut = testing::read_bytes(log).substr(0, 9000);
    if (is_cut) testing::write_bytes(log, cut);
    const int wait = std::uniform_int_distribution<int>(0, 12'000)(random);
    killed += kill_after(wait, [&] { (void)restore(folder / "backup.db", log); }) ? 1 : 0;

    const auto kept = folder / "log.db.before-restore-1";
    if (!is_cut || Log::exists(kept)) {
      const bool is_new = testing::outcome([&] { Log::open(log).jobs(); }) == "ok" &&
                          Log::open(log).job("sandpiper")->revisions == 2;
      restored += is_new ? 1 : 0;
      if (is_new && !is_cut) {
        EXPECT_EQ(Log::open(kept).job("sandpiper")->revisions, 5);
      } else if (!is_new && !is_cut) {
        EXPECT_EQ(Log::open(log).job("sandpiper")->revisions, 5);
      } else {
        EXPECT_TRUE(testing::read_bytes(kept) == cut);
      }
    } else {
      EXPECT_TRUE(testing::read_bytes(log) == cut);
    }
    ASSERT_TRUE(restore(folder / "backup.db", log)) << "and it can be done again";
    EXPECT_EQ(Log::open(log).job("sandpiper")->revisions, 2);
    EXPECT_TRUE(check(log).empty());
  }
  EXPECT_GT(killed, 5);
  std::cout << killed << " of 60 restores killed, " << restored << " logs restored\n";
}

TEST(Processes, CopyAWholeLogWhileOthersWrite) {
  const TempFolder folder;
  testing::make_log(folder / "log.db", 1);
  const pid_t child = ::fork();
  if (child == 0) {
    try {
      Log log = Log::open(folder / "log.db", {.access = Access::write});
      for (int n = 2; n <= 400; ++n) log.save_plan(sample_plan(n));
    } catch (...) {
      ::_exit(1);
    }
    ::_exit(0);
  }
  int copies = 0;
  int last = 0;
  for (int status = 0; ::waitpid(child, &status, WNOHANG) == 0;) {
    const auto copy = folder.path() / ("copy-" + std::to_string(++copies));
    ASSERT_TRUE(backup(folder / "log.db", copy));
    const Log log = Log::open(copy);
    const int revisions = log.job("sandpiper")->revisions;
    EXPECT_GE(revisions, last);
    EXPECT_EQ(testing::difference(log, revisions, revisions), "");
    last = revisions;
  }
  EXPECT_GT(copies, 1);
  EXPECT_EQ(Log::open(folder / "log.db").job("sandpiper")->revisions, 400);
}

}  // namespace
}  // namespace wetout::joblog
