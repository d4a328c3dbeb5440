// What the tests of the log share: folders, children, plans whose content follows from a number.
#pragma once

#include <sys/types.h>

#include <filesystem>
#include <functional>
#include <map>
#include <string>
#include <vector>

#include "wetout/joblog/log.hpp"

namespace wetout::joblog::testing {

enum class Where { memory, disk };

/// A folder of its own that anybody may enter, removed at the end of the scope: below TMPDIR, else
/// in memory if there is such a file system (an fsync on a busy disk takes a hundred times longer).
class TempFolder {
 public:
  explicit TempFolder(Where where = Where::memory);
  TempFolder(const TempFolder&) = delete;
  TempFolder& operator=(const TempFolder&) = delete;
  ~TempFolder();
  std::filesystem::path operator/(const char* name) const { return path_ / name; }
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

std::string read_bytes(const std::filesystem::path& path);
void write_bytes(const std::filesystem::path& path, const std::string& bytes);

/// Names and bytes of all files of a folder.
std::map<std::string, std::string> snapshot(const std::filesystem::path& folder);

/// A plan made from `n` alone; its result also names the revision.
NewPlan sample_plan(int n, const std::string& slug = "sandpiper", std::size_t body_bytes = 3000);

/// Empty when revision `revision` of the log holds exactly sample_plan(n, ...), else what differs.
std::string difference(const Log& log, int revision, int n, const std::string& slug = "sandpiper",
                       std::size_t body_bytes = 3000);

/// Creates a log with the sample plans 1 ... plans of one job, closed afterwards.
void make_log(const std::filesystem::path& path, int plans = 1);

OpenOptions writing();  ///< Access::write with a short busy timeout
OpenOptions reading();

/// "ok", or the kind of the StoreError that `work` throws.
std::string outcome(const std::function<void()>& work);

enum class User { same, nobody };

/// Runs `work` in a child process and returns what it returns ("exception: ..." when it throws,
/// "signal 9" when it is killed). As User::nobody, without root's power over permissions; the
/// same user when the tests do not run as root.
std::string in_child(const std::function<std::string()>& work, User user = User::same);

/// A child that has run `work` and then waits, keeping what it holds, until the end of the scope.
class Holder {
 public:
  explicit Holder(const std::function<std::shared_ptr<void>()>& work);
  Holder(const Holder&) = delete;
  Holder& operator=(const Holder&) = delete;
  ~Holder();

 private:
  pid_t child_ = -1;
  int release_ = -1;
};

}  // namespace wetout::joblog::testing
