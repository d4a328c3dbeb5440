#include "joblog/errors.hpp"

#include <sqlite3.h>
#include <sys/resource.h>

#include <cerrno>
#include <string>

#include "joblog/folder.hpp"
#include "wetout/base/check.hpp"

namespace wetout::joblog {
namespace {

struct Words {
  const char* sentence;
  const char* hint;
};

Words words(StoreTrouble kind) {
  switch (kind) {
    case StoreTrouble::locked:
      return {"is in use by another program", "Close it, or try again in a moment."};
    case StoreTrouble::read_only:
      return {"cannot be written",
              "Look at the owner and the permissions of the file and of its folder, or choose "
              "another log."};
    case StoreTrouble::not_ours:
      return {"is not a job log of wetout", "It was left as it is. Choose another file."};
    case StoreTrouble::newer:
      return {"was written by a later version of wetout",
              "It was left as it is. Update wetout, or choose another log."};
    case StoreTrouble::damaged:
      return {"is damaged",
              "See what is wrong with `wetout log check`; put the last backup in its place with "
              "`wetout log restore FILE`, which keeps the damaged file."};
    case StoreTrouble::disk_full:
      return {"could not be written: the disk, the quota or the size limit is full",
              "Make room and run the command again; nothing was half saved."};
    case StoreTrouble::missing:
      return {"does not exist yet", "Saving a plan starts the log: `wetout plan FILE`."};
    case StoreTrouble::other:
      return {"cannot be used",
              "Check that the disk and its file system are sound, or choose another log."};
  }
  base::broken_promise("kind of trouble outside its list");
}

bool is_disk_full(int system_errno) {
  return system_errno == ENOSPC || system_errno == EDQUOT || system_errno == EFBIG;
}

bool is_forbidden(int system_errno) {
  return system_errno == EACCES || system_errno == EPERM || system_errno == EROFS;
}

int last_errno(sqlite3* db, int file_pointer) {
  sqlite3_file* file = nullptr;
  int number = 0;
  if (sqlite3_file_control(db, "main", file_pointer, &file) == SQLITE_OK && file != nullptr &&
      file->pMethods != nullptr) {
    file->pMethods->xFileControl(file, SQLITE_FCNTL_LAST_ERRNO, &number);
  }
  return number;
}

// sqlite3_system_errno alone is what errno happened to be after the rollback. The files remember
// theirs, except a rollback journal, which is closed by then: its failed write is told by the
// limit it must have met (ENOSPC never comes here, SQLite calls it SQLITE_FULL).
int reason_of(int extended_code, sqlite3* db) {
  if (db == nullptr) return errno;
  if ((extended_code & 0xff) != SQLITE_IOERR) return sqlite3_system_errno(db);
  for (const int pointer : {SQLITE_FCNTL_JOURNAL_POINTER, SQLITE_FCNTL_FILE_POINTER}) {
    if (const int number = last_errno(db, pointer); number != 0) return number;
  }
  rlimit limit = {};
  if (extended_code == SQLITE_IOERR_WRITE && getrlimit(RLIMIT_FSIZE, &limit) == 0 &&
      limit.rlim_cur != RLIM_INFINITY) {
    return EFBIG;
  }
  return sqlite3_system_errno(db);
}

}  // namespace

std::string_view to_string(StoreTrouble kind) {
  switch (kind) {
    case StoreTrouble::locked:
      return "locked";
    case StoreTrouble::read_only:
      return "read_only";
    case StoreTrouble::not_ours:
      return "not_ours";
    case StoreTrouble::newer:
      return "newer";
    case StoreTrouble::damaged:
      return "damaged";
    case StoreTrouble::disk_full:
      return "disk_full";
    case StoreTrouble::missing:
      return "missing";
    case StoreTrouble::other:
      return "other";
  }
  base::broken_promise("kind of trouble outside its list");
}

StoreError::StoreError(StoreTrouble kind, const std::filesystem::path& path,
                       const std::string& message, std::string hint, int code)
    : base::EnvironmentError("log." + std::string(to_string(kind)), message, std::move(hint)),
      kind_(kind),
      path_(path),
      code_(code) {}

StoreTrouble classify(int extended_code, int system_errno) {
  switch (extended_code) {
    case SQLITE_IOERR_SHORT_READ:
    case SQLITE_IOERR_CORRUPTFS:
    case SQLITE_IOERR_DATA:
      return StoreTrouble::damaged;
    case SQLITE_READONLY_DBMOVED:
      return StoreTrouble::other;
    default:
      break;
  }
  switch (extended_code & 0xff) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
    case SQLITE_PROTOCOL:
      return StoreTrouble::locked;
    case SQLITE_READONLY:
    case SQLITE_PERM:
    case SQLITE_AUTH:
      return StoreTrouble::read_only;
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
    case SQLITE_ERROR:  // "no such table": the header is ours, what it announces is not there
    case SQLITE_FORMAT:
      return StoreTrouble::damaged;
    case SQLITE_FULL:
      return StoreTrouble::disk_full;
    case SQLITE_IOERR:
    case SQLITE_CANTOPEN:
      if (is_disk_full(system_errno)) return StoreTrouble::disk_full;
      if (is_forbidden(system_errno)) return StoreTrouble::read_only;
      return StoreTrouble::other;
    default:
      return StoreTrouble::other;
  }
}

StoreError store_error(StoreTrouble kind, const std::filesystem::path& path,
                       const std::string& detail, int code) {
  const Words w = words(kind);
  std::string message = "The job log " + path.string() + " " + w.sentence;
  if (!detail.empty()) message += ": " + detail;
  return StoreError(kind, path, message + ".", w.hint, code);
}

void raise(const SQLite::Exception& error, sqlite3* db, const std::filesystem::path& path) {
  const int code =
      error.getExtendedErrorCode() > 0 ? error.getExtendedErrorCode() : error.getErrorCode();
  if ((code & 0xff) == SQLITE_CONSTRAINT || (code & 0xff) == SQLITE_MISUSE ||
      (code & 0xff) == SQLITE_RANGE) {
    base::broken_promise(std::string("the job log refused a row: ") + error.what());
  }
  StoreTrouble kind = classify(code, reason_of(code, db));
  // A folder without write permission shows as "cannot open", of the files SQLite needs beside it.
  if (kind == StoreTrouble::other && (code & 0xff) == SQLITE_CANTOPEN && !may_write_beside(path)) {
    kind = StoreTrouble::read_only;
  }
  const bool explain = kind == StoreTrouble::damaged || kind == StoreTrouble::other;
  throw store_error(kind, path, explain ? error.what() : "", code);
}

}  // namespace wetout::joblog
