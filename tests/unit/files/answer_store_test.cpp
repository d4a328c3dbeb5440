#include "wetout/files/answer_store.hpp"

#include <gtest/gtest.h>
#include <signal.h>
#include <stdlib.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <fstream>
#include <functional>
#include <iterator>
#include <stdexcept>

#include "wetout/base/sha256.hpp"

namespace wetout::files {
namespace {

namespace fs = std::filesystem;

class TempFolder {
 public:
  TempFolder() {
    std::string name = (fs::temp_directory_path() / "wetout-answers-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
    path_ = name;
    fs::permissions(path_, fs::perms::all);
  }
  TempFolder(const TempFolder&) = delete;
  TempFolder& operator=(const TempFolder&) = delete;
  ~TempFolder() {
    fs::permissions(path_, fs::perms::all);
    fs::remove_all(path_);
  }
  fs::path operator/(const char* name) const { return path_ / name; }

 private:
  fs::path path_;
};

std::string key(int n) { return base::hex(base::sha256("key " + std::to_string(n))); }
std::string answer(int n) { return "answer to " + std::to_string(n) + std::string(200, '.'); }

std::string bytes(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}
void put_bytes(const fs::path& path, const std::string& text) {
  std::ofstream(path, std::ios::binary) << text;
}
std::size_t files_in(const fs::path& folder) {
  return static_cast<std::size_t>(
      std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
}

std::optional<std::string> on_disk(const fs::path& folder, int n) {
  return AnswerStore(folder).find(key(n));
}

pid_t start(const std::function<int()>& work) {
  const pid_t child = ::fork();
  if (child == 0) {
    int code = 99;
    try {
      code = work();
    } catch (...) {
    }
    ::_exit(code);
  }
  return child;
}
int exit_code(pid_t child) {
  int status = 0;
  ::waitpid(child, &status, 0);
  return WIFEXITED(status) ? WEXITSTATUS(status) : -WTERMSIG(status);
}

TEST(AnswerStore, FindsWhatAnEarlierOneKept) {
  const TempFolder temp;
  const fs::path folder = temp / "a/b/cups";
  AnswerStore first(folder);
  EXPECT_FALSE(first.find(key(1)));
  EXPECT_FALSE(fs::exists(folder)) << "nothing is made by looking";
  first.keep(key(1), answer(1));
  EXPECT_EQ(first.find(key(1)), answer(1));
  EXPECT_EQ(on_disk(folder, 1), answer(1));
  EXPECT_FALSE(on_disk(folder, 2));
  EXPECT_EQ(fs::status(folder).permissions(), fs::perms::owner_all);
  EXPECT_EQ(files_in(folder), 1U) << "no part files stay";
}

TEST(AnswerStore, WithoutAFolderRemembersWithinTheRun) {
  AnswerStore store(std::nullopt);
  store.keep(key(1), answer(1));
  EXPECT_EQ(store.find(key(1)), answer(1));
}

TEST(AnswerStore, TakesADamagedEntryForNone) {
  const TempFolder temp;
  const fs::path folder = temp / "cups";
  AnswerStore(folder).keep(key(1), answer(1));
  const fs::path file = folder / key(1);
  const std::string whole = bytes(file);
  for (std::size_t size = 0; size < whole.size(); ++size) {
    put_bytes(file, whole.substr(0, size));
    EXPECT_FALSE(on_disk(folder, 1)) << "cut to " << size;
  }
  for (std::size_t at = 0; at < whole.size(); ++at) {
    std::string other = whole;
    other[at] = static_cast<char>(other[at] ^ 1);
    put_bytes(file, other);
    EXPECT_FALSE(on_disk(folder, 1)) << "changed at " << at;
  }
  put_bytes(file, whole + "x");
  EXPECT_FALSE(on_disk(folder, 1));
  put_bytes(file, std::string(1 << 20, '\n'));
  EXPECT_FALSE(on_disk(folder, 1));

  AnswerStore(folder).keep(key(1), answer(1));
  EXPECT_EQ(on_disk(folder, 1), answer(1)) << "and writes it anew";
}

TEST(AnswerStore, DoesNotTakeTheAnswerOfAnotherKey) {
  const TempFolder temp;
  const fs::path folder = temp / "cups";
  AnswerStore(folder).keep(key(1), answer(1));
  fs::copy_file(folder / key(1), folder / key(2));
  EXPECT_FALSE(on_disk(folder, 2));
}

TEST(AnswerStore, DoesNotWaitForAPipeOrFollowALink) {
  const TempFolder temp;
  const fs::path folder = temp / "cups";
  AnswerStore(folder).keep(key(1), answer(1));
  ASSERT_EQ(::mkfifo((folder / key(2)).c_str(), 0600), 0);
  EXPECT_FALSE(on_disk(folder, 2));
  fs::rename(folder / key(1), temp / "elsewhere");
  fs::create_symlink(temp / "elsewhere", folder / key(1));
  EXPECT_FALSE(on_disk(folder, 1));
  AnswerStore(folder).keep(key(1), answer(3));
  EXPECT_EQ(on_disk(folder, 1), answer(3));
  EXPECT_NE(bytes(temp / "elsewhere").find(answer(1)), std::string::npos) << "not written through";
}

TEST(AnswerStore, IsSilentWhereNothingCanBeWritten) {
  const TempFolder temp;
  put_bytes(temp / "file", "");
  for (const fs::path& folder :
       {temp / "file", temp / "file/cups", fs::path("/proc/nowhere/cups"), fs::path("/dev/null"),
        fs::path(), temp / std::string(300, 'x').c_str()}) {
    AnswerStore store(folder);
    EXPECT_FALSE(store.find(key(1))) << folder;
    store.keep(key(1), answer(1));
    EXPECT_EQ(store.find(key(1)), answer(1)) << folder;
  }
  const fs::path name_taken = temp / "cups";
  fs::create_directories(name_taken / key(1) / "x");
  AnswerStore store(name_taken);
  store.keep(key(1), answer(1));
  EXPECT_EQ(store.find(key(1)), answer(1));
  EXPECT_EQ(files_in(name_taken), 1U) << "no part file stays";
}

TEST(AnswerStore, ReadsAFolderThatIsReadOnly) {
  const TempFolder temp;
  const fs::path folder = temp / "cups";
  AnswerStore(folder).keep(key(1), answer(1));
  fs::permissions(folder / key(1), fs::perms::all);
  fs::permissions(folder, fs::perms::all & ~(fs::perms::owner_write | fs::perms::group_write |
                                             fs::perms::others_write));
  const pid_t child = start([&] {
    constexpr uid_t nobody = 65534;
    if (::getuid() == 0 && ::setuid(nobody) != 0) return 1;
    AnswerStore store(folder);
    if (store.find(key(1)) != answer(1)) return 2;
    store.keep(key(2), answer(2));
    return store.find(key(2)) == answer(2) ? 0 : 3;
  });
  EXPECT_EQ(exit_code(child), 0);
  EXPECT_EQ(files_in(folder), 1U);
}

TEST(AnswerStore, LeavesNothingHalfWrittenOnAFullDisk) {
  const TempFolder temp;
  const fs::path folder = temp / "cups";
  const pid_t child = start([&] {
    ::signal(SIGXFSZ, SIG_IGN);
    const rlimit few{100, 100};
    if (::setrlimit(RLIMIT_FSIZE, &few) != 0) return 1;
    AnswerStore store(folder);
    store.keep(key(1), answer(1));
    return store.find(key(1)) == answer(1) ? 0 : 2;
  });
  EXPECT_EQ(exit_code(child), 0);
  EXPECT_EQ(files_in(folder), 0U);
}

TEST(AnswerStore, DropsAllWhenThereAreTooMany) {
  const TempFolder temp;
  const fs::path folder = temp / "cups";
  constexpr std::size_t most = 10;
  for (int n = 0; n < 35; ++n) {
    AnswerStore store(folder, most);  // each time a new process, as it were
    store.keep(key(n), answer(n));
    EXPECT_LE(files_in(folder), most);
    EXPECT_EQ(on_disk(folder, n), answer(n));
  }
  EXPECT_EQ(files_in(folder), 5U);
  AnswerStore one(folder, most);
  for (int n = 100; n < 135; ++n) {
    one.keep(key(n), answer(n));
    EXPECT_LE(files_in(folder), most);
  }
  EXPECT_EQ(one.find(key(100)), answer(100)) << "still known to this run";
}

TEST(AnswerStore, DropsItsOwnPartsButNothingElse) {
  const TempFolder temp;
  const fs::path folder = temp / "cups";
  fs::create_directories(folder);
  put_bytes(folder / "part-abcdef", "left by a killed process");
  put_bytes(folder / "notes.txt", "mine");
  AnswerStore(folder, 1).keep(key(1), answer(1));
  EXPECT_FALSE(fs::exists(folder / "part-abcdef"));
  EXPECT_EQ(bytes(folder / "notes.txt"), "mine");
  EXPECT_EQ(on_disk(folder, 1), answer(1));
}

TEST(AnswerStore, KeepsLongAnswersInMemoryOnly) {
  const TempFolder temp;
  const fs::path folder = temp / "cups";
  const std::string longest(AnswerStore::longest_answer, 'x');
  AnswerStore store(folder);
  store.keep(key(1), longest);
  store.keep(key(2), longest + "x");
  EXPECT_EQ(on_disk(folder, 1), longest);
  EXPECT_FALSE(on_disk(folder, 2));
  EXPECT_EQ(store.find(key(2)), longest + "x");
  EXPECT_LE(fs::file_size(folder / key(1)), 4096U);
  EXPECT_LE(AnswerStore::usual_most_files * 4096, 20'500'000U);
}

// Answers follow from their keys, so whatever is found must be the right one.
int use_for_a_while(const fs::path& folder, int seed) {
  for (int round = 0; round < 150; ++round) {
    AnswerStore store(folder, 20);
    const int n = (seed * 7 + round) % 30;
    const auto found = store.find(key(n));
    if (found && *found != answer(n)) return 1;
    store.keep(key(n), answer(n));
  }
  return 0;
}

TEST(AnswerStore, IsSharedByProcesses) {
  const TempFolder temp;
  const fs::path folder = temp / "cups";
  std::vector<pid_t> children;
  for (int seed = 0; seed < 4; ++seed) {
    children.push_back(start([&] { return use_for_a_while(folder, seed); }));
  }
  for (const pid_t child : children) EXPECT_EQ(exit_code(child), 0);
  for (const auto& entry : fs::directory_iterator(folder)) {
    EXPECT_FALSE(entry.path().filename().string().starts_with("part-")) << entry.path();
  }
}

TEST(AnswerStore, OutlivesKills) {
  const TempFolder temp;
  const fs::path folder = temp / "cups";
  for (int kill = 0; kill < 30; ++kill) {
    const pid_t child = start([&] {
      for (;;) use_for_a_while(folder, kill);
      return 0;
    });
    ::usleep(static_cast<useconds_t>(1000 + 700 * (kill % 7)));
    ::kill(child, SIGKILL);
    EXPECT_EQ(exit_code(child), -SIGKILL);
    for (int n = 0; n < 30; ++n) {
      const auto found = on_disk(folder, n);
      EXPECT_TRUE(!found || *found == answer(n)) << n;
    }
  }
  EXPECT_LE(files_in(folder), 60U) << "what killed ones left is bounded, too";
}

TEST(AnswerStore, GivesBackAFollowedCupToTheLastBit) {
  const TempFolder temp;
  const fs::path folder = temp / "cups";
  resin::CupRun run;
  run.kinetics.k_per_s = 5e-4;
  run.kinetics.r = 0.1;
  run.bulk.heat_j_per_kg = 4e5;
  run.fill = {units::metres(0.07), units::metres(0.05)};
  run.air = run.resin = units::Temperature::celsius(25.0);
  run.grid = resin::coarse_grid;
  const std::string plain = resin::to_text(resin::follow(run));
  AnswerStore first(folder);
  EXPECT_EQ(resin::to_text(resin::follow(run, &first)), plain);
  EXPECT_EQ(on_disk(folder, 0), std::nullopt);
  ASSERT_EQ(files_in(folder), 1U);
  EXPECT_EQ(AnswerStore(folder).find(resin::cup_key(run)), plain);
}

TEST(AnswerStore, RefusesKeysThatAreNone) {
  AnswerStore store(std::nullopt);
  EXPECT_THROW((void)store.find("../log.db"), std::logic_error);
  EXPECT_THROW(store.keep(std::string(64, '/'), "x"), std::logic_error);
}

}  // namespace
}  // namespace wetout::files
