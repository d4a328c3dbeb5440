#include <sqlite3.h>

#include <string>
#include <thread>

#include "joblog/copy.hpp"
#include "joblog/errors.hpp"
#include "joblog/folder.hpp"
#include "joblog/inspect.hpp"
#include "joblog/transaction.hpp"
#include "wetout/joblog/care.hpp"

namespace wetout::joblog {
namespace fs = std::filesystem;
namespace {

using Milliseconds = std::chrono::milliseconds;

fs::path kept_name(const fs::path& log, int n) {
  return beside(log, (".before-restore-" + std::to_string(n)).c_str());
}

// The first free name; helpers left of an earlier one count as taken.
fs::path free_name(const fs::path& log) {
  int n = 1;
  while (look(kept_name(log, n)).exists || look(beside(kept_name(log, n), "-wal")).exists) ++n;
  return kept_name(log, n);
}

// A log in use must not be renamed: who has it open would go on writing to it under its old name.
// So its content is replaced in one transaction of SQLite, while nobody else has it open.
std::optional<fs::path> replace_content(Connection& log, SQLite::Database& backup) {
  return guarded(log.db, log.path, [&] {
    std::optional<fs::path> kept;
    bool is_empty = false;
    log.db->exec("PRAGMA locking_mode = EXCLUSIVE");  // the lock outlives the transaction
    {
      const Transaction take_the_lock(*log.db, Transaction::Kind::exclusive);
      is_empty = look(log.path).bytes == 0;
    }
    if (!is_empty) {
      const PartFile part(log.path);
      copy_and_check(log, part.path());  // kept as it is, whatever is found
      do {
        kept = free_name(log.path);
      } while (!move_unless_there(part.path(), *kept));
      sync_folder_of(log.path);
    }
    copy_pages(backup, *log.db);
    return kept;
  });
}

// Holds SQLite's exclusive lock on a file whose content SQLite cannot read.
class FileLock {
 public:
  FileLock(const fs::path& path, Milliseconds busy_timeout)
      : db_(open_file(path, false, busy_timeout)) {
    sqlite3_db_config(db_->getHandle(), SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1, nullptr);
    sqlite3_file_control(db_->getHandle(), "main", SQLITE_FCNTL_FILE_POINTER, &file_);
    constexpr Milliseconds pause{20};
    for (Milliseconds waited{0}; !try_lock(); waited += pause) {
      if (waited >= busy_timeout) throw store_error(StoreTrouble::locked, path, {}, SQLITE_BUSY);
      std::this_thread::sleep_for(pause);
    }
  }
  FileLock(const FileLock&) = delete;
  FileLock& operator=(const FileLock&) = delete;
  ~FileLock() { file_->pMethods->xUnlock(file_, SQLITE_LOCK_NONE); }

 private:
  bool try_lock() {
    if (file_->pMethods->xLock(file_, SQLITE_LOCK_SHARED) == SQLITE_OK &&
        file_->pMethods->xLock(file_, SQLITE_LOCK_EXCLUSIVE) == SQLITE_OK) {
      return true;
    }
    file_->pMethods->xUnlock(file_, SQLITE_LOCK_NONE);
    return false;
  }

  std::unique_ptr<SQLite::Database> db_;
  sqlite3_file* file_ = nullptr;
};

// What is left of a log goes aside with its helpers, the log itself last: until then an opening
// finds the damaged log, afterwards the backup.
void put_aside(const fs::path& log, const fs::path& kept) {
  for (const char* ending : {"-wal", "-journal"}) {
    if (look(beside(log, ending)).exists) {
      move_unless_there(beside(log, ending), beside(kept, ending));
    }
  }
  fs::remove(beside(log, "-shm"));
  if (look(log).exists) move_unless_there(log, kept);
}

// `log` is damaged or not there, so nobody can be working with it.
std::optional<fs::path> replace_file(const fs::path& log, const fs::path& part,
                                     Milliseconds busy_timeout) {
  std::optional<FileLock> lock;
  if (look(log).exists) lock.emplace(log, busy_timeout);
  std::optional<fs::path> kept;
  if (lock || look(beside(log, "-wal")).exists) {
    kept = free_name(log);
    put_aside(log, *kept);
  }
  if (!move_unless_there(part, log)) {
    throw store_error(StoreTrouble::locked, log, "another program has just made a new log");
  }
  sync_folder_of(log);
  return kept;
}

// The log that stands at `path`, or nothing when there is none that SQLite can open. Throws
// StoreError for what must not be touched.
std::optional<Connection> open_target(const fs::path& path, Milliseconds busy_timeout) {
  const FileState state = look(path);
  if (!state.exists) return std::nullopt;
  try {
    if (state.bytes > 0 || !state.regular) return open_as_it_is(path, Access::write, busy_timeout);
    if (is_left_by_its_log(path)) return std::nullopt;
    return Connection{path, open_file(path, false, busy_timeout), 0};
  } catch (const StoreError& error) {
    if (error.kind() == StoreTrouble::damaged) return std::nullopt;
    if (error.kind() != StoreTrouble::missing) throw;
    return Connection{path, open_file(path, false, busy_timeout), 0};  // a creation was undone
  }
}

}  // namespace

base::Result<Restored> restore(const fs::path& from, const fs::path& to,
                               Milliseconds busy_timeout) {
  if (look(from).exists && look(to).exists && fs::equivalent(from, to)) {
    return base::fail({.code = "backup.same",
                       .message = from.string() + " is the log itself.",
                       .found = from.string(),
                       .hint = "Name the backup that is to take its place."});
  }
  const Connection backup = open_as_it_is(from, Access::read, busy_timeout);

  // Before anything is written: is there something in the way that must not be touched?
  std::optional<Connection> log = open_target(to, busy_timeout);

  const PartFile part(to);
  const auto findings =
      guarded(backup.db, from, [&] { return copy_and_check(backup, part.path()); });
  if (!findings.empty()) {
    return base::fail(
        {.code = "backup.damaged",
         .message = "The backup " + from.string() + " is damaged: " + summary(findings) + ".",
         .found = from.string(),
         .hint = "The log was left as it is. Try an older backup."});
  }
  if (log) {
    const Connection checked = open_as_it_is(part.path(), Access::read, busy_timeout);
    try {
      return Restored{replace_content(*log, *checked.db)};
    } catch (const StoreError& error) {
      if (error.kind() != StoreTrouble::damaged) throw;
      log.reset();
    }
  }
  return Restored{replace_file(to, part.path(), busy_timeout)};
}

}  // namespace wetout::joblog
