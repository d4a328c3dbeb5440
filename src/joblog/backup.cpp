#include "joblog/copy.hpp"
#include "joblog/errors.hpp"
#include "joblog/folder.hpp"
#include "joblog/inspect.hpp"
#include "wetout/joblog/care.hpp"

namespace wetout::joblog {
namespace fs = std::filesystem;

std::vector<Finding> copy_and_check(const Connection& from, const fs::path& to) {
  Connection copy{to, open_file(to, false, std::chrono::seconds(5)), from.version};
  guarded(copy.db, to, [&] {
    copy_pages(*from.db, *copy.db);
    // One file without helpers beside it, which also opens where nothing can be written.
    copy.db->exec("PRAGMA journal_mode = DELETE");
  });
  auto findings = guarded(copy.db, to, [&] { return inspect(copy); });
  copy.db.reset();
  std::error_code ignored;  // a file system without permissions is no reason not to copy
  fs::permissions(to, fs::status(from.path, ignored).permissions(), ignored);
  sync_file(to);
  return findings;
}

base::Result<std::uintmax_t> backup(const fs::path& from, const fs::path& to,
                                    std::chrono::milliseconds busy_timeout) {
  const base::Problem exists = {.code = "backup.exists",
                                .message = "There is already something at " + to.string() + ".",
                                .found = to.string(),
                                .hint = "Nothing is overwritten: choose another name."};
  if (fs::exists(fs::symlink_status(to))) return base::fail(exists);
  const Connection log = open_as_it_is(from, Access::read, busy_timeout);
  const PartFile part(to);
  const auto findings = guarded(log.db, from, [&] { return copy_and_check(log, part.path()); });
  if (!findings.empty()) {
    throw store_error(StoreTrouble::damaged, from, summary(findings) + "; no backup was kept");
  }
  const std::uintmax_t bytes = look(part.path()).bytes;
  if (!move_unless_there(part.path(), to)) return base::fail(exists);
  sync_folder_of(to);
  return bytes;
}

}  // namespace wetout::joblog
