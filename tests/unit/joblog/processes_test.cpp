// Several programs at one log at the same time.
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <iostream>
#include <map>
#include <random>
#include <set>
#include <sstream>

#include "support.hpp"
#include "wetout/joblog/care.hpp"

namespace wetout::joblog {
namespace {

using testing::sample_plan;
using testing::TempFolder;

struct Acknowledged {
  std::string slug;
  int revision = 0;
  int n = 0;
};

// Starts all writers at once, each with plans of its own, and collects what they were told.
std::vector<Acknowledged> run_writers(const std::filesystem::path& path, int writers, int plans) {
  int answers[2];
  int start[2];
  if (::pipe(answers) != 0 || ::pipe(start) != 0) throw std::runtime_error("no pipe");
  std::vector<pid_t> children;
  for (int writer = 0; writer < writers; ++writer) {
    const pid_t child = ::fork();
    if (child == 0) {
      ::close(start[1]);
      char gate = 0;
      if (::read(start[0], &gate, 1) != 0) ::_exit(2);  // returns at once when all are there
      try {
        for (int i = 0; i < plans; ++i) {
          Log log =
              Log::open(path, {.access = Access::write, .busy_timeout = std::chrono::seconds(60)});
          const int n = writer * 1000 + i;
          const std::string slug = i % 2 == 0 ? "sandpiper" : "egret";
          const Saved saved = log.save_plan(sample_plan(n, slug));
          const std::string line =
              slug + " " + std::to_string(saved.revision) + " " + std::to_string(n) + "\n";
          if (::write(answers[1], line.data(), line.size()) < 0) ::_exit(3);
        }
      } catch (const std::exception& error) {
        const std::string line = std::string("failed: ") + error.what() + "\n";
        (void)!::write(answers[1], line.data(), line.size());
        ::_exit(1);
      }
      ::_exit(0);
    }
    children.push_back(child);
  }
  ::close(start[0]);
  ::close(start[1]);
  ::close(answers[1]);
  std::string all;
  char buffer[4096];
  for (ssize_t got = 0; (got = ::read(answers[0], buffer, sizeof buffer)) > 0;) {
    all.append(buffer, static_cast<std::size_t>(got));
  }
  ::close(answers[0]);
  for (const pid_t child : children) {
    int status = 0;
    ::waitpid(child, &status, 0);
    EXPECT_EQ(status, 0);
  }
  std::vector<Acknowledged> acknowledged;
  std::istringstream lines(all);
  for (std::string line; std::getline(lines, line);) {
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
  const auto acknowledged = run_writers(folder / "log.db", writers, plans);
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
