#include "joblog/connection.hpp"

#include <SQLiteCpp/Backup.h>
#include <SQLiteCpp/Statement.h>
#include <sqlite3.h>
#include <unistd.h>

#include <optional>
#include <string>

#include "joblog/errors.hpp"
#include "joblog/folder.hpp"
#include "joblog/header.hpp"

namespace wetout::joblog {
namespace fs = std::filesystem;
namespace {

constexpr int open_flags = SQLITE_OPEN_READWRITE | SQLITE_OPEN_EXRESCODE;

// SQLite takes "file:" for the beginning of a URI and ":memory:" for no file at all.
std::string sqlite_name(const fs::path& path) {
  return path.is_absolute() ? path.string() : "./" + path.string();
}

std::string immutable_uri(const fs::path& path) {
  constexpr std::string_view hex = "0123456789ABCDEF";
  std::string uri = "file:";
  for (const char c : sqlite_name(path)) {
    if (c == '%' || c == '?' || c == '#') {
      uri += '%';
      uri += hex[static_cast<std::size_t>(c) >> 4];
      uri += hex[static_cast<std::size_t>(c) & 0xf];
    } else {
      uri += c;
    }
  }
  return uri + "?immutable=1";
}

std::unique_ptr<SQLite::Database> open_named(const std::string& name, const fs::path& path,
                                             int flags, std::chrono::milliseconds busy_timeout) {
  try {
    return std::make_unique<SQLite::Database>(name, flags, static_cast<int>(busy_timeout.count()));
  } catch (const SQLite::Exception& error) {
    if (look(path).exists && ::access(path.c_str(), R_OK) != 0) {
      throw store_error(StoreTrouble::read_only, path, "it cannot even be read by this user",
                        error.getErrorCode());
    }
    raise(error, nullptr, path);
  }
}

std::string text(SQLite::Database& db, const char* query) {
  SQLite::Statement statement(db, query);
  return statement.executeStep() ? statement.getColumn(0).getString() : std::string();
}

void configure(SQLite::Database& db) {
  sqlite3_db_config(db.getHandle(), SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
  sqlite3_db_config(db.getHandle(), SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr);
  set_foreign_keys(db, true);
  // recursive_triggers: the delete triggers then also see what REPLACE takes away.
  // cache_size: a large import stays in memory until it is committed, 64 MiB at most; with the
  // default of 2 MiB it was written twice and took half as long again.
  db.exec(
      "PRAGMA recursive_triggers = ON; PRAGMA synchronous = FULL; PRAGMA cell_size_check = ON;"
      "PRAGMA cache_size = -65536");
}

void refuse_newer(const fs::path& path, int version, std::span<const Migration> steps) {
  if (version <= latest(steps)) return;
  throw store_error(StoreTrouble::newer, path,
                    "log version " + std::to_string(version) + ", this program knows up to " +
                        std::to_string(latest(steps)));
}

[[noreturn]] void refuse_as_no_sqlite(const fs::path& path) {
  throw store_error(StoreTrouble::not_ours, path,
                    "it does not begin as an SQLite database does (or its beginning is damaged)",
                    SQLITE_NOTADB);
}

// Everything that can be known without a lock, so that a file that is not ours is not touched.
void accept_header(const Header& header, const fs::path& path, std::span<const Migration> steps) {
  if (!header.is_sqlite) refuse_as_no_sqlite(path);
  if (header.application_id != application_id) {
    throw store_error(StoreTrouble::not_ours, path, "it is the database of another program");
  }
  refuse_newer(path, header.user_version, steps);
}

// Whether the last connection moves the WAL into the file when it closes. Off until the file is
// known to be a log that we may work with.
void set_checkpoint_on_close(SQLite::Database& db, bool on) {
  sqlite3_db_config(db.getHandle(), SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, on ? 0 : 1, nullptr);
}

void set_wal(SQLite::Database& db) {
  try {
    if (text(db, "PRAGMA journal_mode = WAL") == "wal") {
      db.exec("PRAGMA synchronous = FULL");
      return;
    }
  } catch (const SQLite::Exception& error) {
    // Somebody is reading at this moment: the next opening does it.
    if ((error.getErrorCode() & 0xff) != SQLITE_BUSY) throw;
  }
  // With a rollback journal FULL does not sync the folder after the journal is unlinked.
  db.exec("PRAGMA synchronous = EXTRA");
}

// True when the database is empty, after a creation that a crash undid.
bool is_empty(SQLite::Database& db) { return text(db, "PRAGMA page_count") == "0"; }

void create(SQLite::Database& db, std::span<const Migration> steps) {
  db.exec("PRAGMA page_size = 4096; PRAGMA synchronous = EXTRA");
  // With a rollback journal, so that application_id is in the file itself from its first byte on;
  // a WAL would hold it back until the first checkpoint.
  migrate(db, steps);
}

int accepted_version(SQLite::Database& db, const fs::path& path, std::span<const Migration> steps) {
  if (read_application_id(db) != application_id) {
    throw store_error(StoreTrouble::not_ours, path, "it is the database of another program");
  }
  const int version = read_version(db);
  refuse_newer(path, version, steps);
  if (version < 1) throw store_error(StoreTrouble::damaged, path, "its version number is missing");
  return version;
}

[[noreturn]] void refuse_missing(const fs::path& path) {
  throw store_error(StoreTrouble::missing, path);
}

FileState look_at_log(const fs::path& path) {
  const FileState state = look(path);
  if (state.exists && !state.regular) {
    throw store_error(StoreTrouble::not_ours, path,
                      state.folder ? "it is a folder" : "it is not a file");
  }
  if (state.exists && state.bytes > 0 && state.bytes < header_bytes) refuse_as_no_sqlite(path);
  // SQLite would delete the WAL of an empty database, and with it the last plans.
  if (is_left_by_its_log(path)) {
    throw store_error(StoreTrouble::damaged, path,
                      "the file is gone or empty, but " + beside(path, "-wal").filename().string() +
                          " is still there");
  }
  return state;
}

void prepare_folder(const fs::path& path, bool make_folder) {
  if (make_folder) make_folder_for(path);
  if (look(folder_of(path)).folder) return;
  throw StoreError(StoreTrouble::missing, path,
                   "The folder of the job log " + path.string() + " does not exist.",
                   "Create the folder, or choose another log.");
}

// Reads the file itself and nothing beside it, and creates nothing.
std::unique_ptr<SQLite::Database> open_alone(const fs::path& path) {
  constexpr int flags = SQLITE_OPEN_READONLY | SQLITE_OPEN_URI | SQLITE_OPEN_EXRESCODE;
  return open_named(immutable_uri(path), path, flags, {});
}

// SQLite makes two helper files beside a log even for reading. When they cannot be made (a full
// disk), or when their owner could not open them afterwards (a log of somebody else), a log
// without a WAL is read alone.
void prepare_reading(std::unique_ptr<SQLite::Database>& db, const fs::path& path) {
  const bool has_wal = look(beside(path, "-wal")).bytes > 0;
  const bool is_foreign =
      sqlite3_db_readonly(db->getHandle(), "main") == 1 || !may_write_beside(path);
  if (is_foreign && !has_wal) {
    db = open_alone(path);
    return;
  }
  try {
    is_empty(*db);
  } catch (const SQLite::Exception& error) {
    const int code = error.getErrorCode() & 0xff;
    if (has_wal || (code != SQLITE_IOERR && code != SQLITE_CANTOPEN && code != SQLITE_FULL)) throw;
    db = open_alone(path);
  }
}

struct Opened {
  std::unique_ptr<SQLite::Database> db;
  int version = 0;  // 0: empty
  bool is_wal = false;
};

Opened open_checked(const fs::path& path, Access access, bool may_create,
                    std::chrono::milliseconds busy_timeout, std::span<const Migration> steps) {
  Opened opened;
  opened.db = open_file(path, may_create, busy_timeout);
  return guarded(opened.db, path, [&] {
    // With an empty WAL closing only tidies up.
    if (look(beside(path, "-wal")).bytes > 0) set_checkpoint_on_close(*opened.db, false);
    const Header header = read_header(*opened.db);
    if (header.file_bytes > 0) accept_header(header, path, steps);
    if (access == Access::write && sqlite3_db_readonly(opened.db->getHandle(), "main") == 1) {
      throw store_error(StoreTrouble::read_only, path, {}, SQLITE_READONLY);
    }
    if (header.file_bytes == 0 && access == Access::read) refuse_missing(path);
    if (access == Access::read) prepare_reading(opened.db, path);
    if (!is_empty(*opened.db)) {
      opened.version = accepted_version(*opened.db, path, steps);
    } else if (access == Access::read) {
      refuse_missing(path);
    }
    configure(*opened.db);
    if (access == Access::read) opened.db->exec("PRAGMA query_only = ON");
    set_checkpoint_on_close(*opened.db, true);
    opened.is_wal = header.is_wal;
    return std::move(opened);
  });
}

}  // namespace

bool is_left_by_its_log(const fs::path& path) {
  // The log is looked at last: a program that creates one has filled it before its WAL exists.
  return look(beside(path, "-wal")).bytes > 0 && look(path).bytes == 0;
}

std::unique_ptr<SQLite::Database> open_file(const fs::path& path, bool may_create,
                                            std::chrono::milliseconds busy_timeout) {
  const int flags = may_create ? open_flags | SQLITE_OPEN_CREATE : open_flags;
  return open_named(sqlite_name(path), path, flags, busy_timeout);
}

void copy_pages(SQLite::Database& from, SQLite::Database& to) {
  SQLite::Backup backup(to, from);
  const int code = backup.executeStep(-1);
  if (code != SQLITE_DONE) throw SQLite::Exception("the copy could not be finished", code);
}

Connection open_log(const fs::path& path, const OpenOptions& options,
                    std::span<const Migration> steps) {
  const bool writes = options.access == Access::write;
  const FileState state = look_at_log(path);
  if (!state.exists || state.bytes == 0) {
    if (!writes) refuse_missing(path);
    prepare_folder(path, options.make_folder);
  }
  Opened opened =
      open_checked(path, options.access, writes && !state.exists, options.busy_timeout, steps);
  return guarded(opened.db, path, [&] {
    SQLite::Database& db = *opened.db;
    if (writes) {
      if (opened.version == 0) {
        create(db, steps);
      } else if (opened.version < latest(steps)) {
        migrate(db, steps);
      }
      if (!opened.is_wal) set_wal(db);
      if (opened.version < latest(steps)) opened.version = accepted_version(db, path, steps);
    } else if (opened.version < latest(steps)) {
      auto copy = std::make_unique<SQLite::Database>(":memory:", open_flags | SQLITE_OPEN_CREATE);
      copy_pages(db, *copy);
      configure(*copy);
      migrate(*copy, steps);
      opened = {std::move(copy), latest(steps), false};
    }
    return Connection{path, std::move(opened.db), opened.version};
  });
}

Connection open_as_it_is(const fs::path& path, Access access,
                         std::chrono::milliseconds busy_timeout, std::span<const Migration> steps) {
  if (look_at_log(path).bytes == 0) refuse_missing(path);
  Opened opened = open_checked(path, access, false, busy_timeout, steps);
  if (opened.version == 0) refuse_missing(path);
  return {path, std::move(opened.db), opened.version};
}

Connection open_in_memory(std::span<const Migration> steps) {
  auto db = std::make_unique<SQLite::Database>(":memory:", open_flags | SQLITE_OPEN_CREATE);
  configure(*db);
  migrate(*db, steps);
  return {{}, std::move(db), latest(steps)};
}

}  // namespace wetout::joblog
