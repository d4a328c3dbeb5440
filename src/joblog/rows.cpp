#include "joblog/rows.hpp"

#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Statement.h>
#include <sqlite3.h>

namespace wetout::joblog {

std::int64_t insert_job(SQLite::Database& db, std::string_view slug, std::string_view name,
                        Instant created) {
  SQLite::Statement insert(db, "INSERT INTO job(slug, name, created) VALUES(?1, ?2, ?3)");
  bind_text(insert, 1, slug);
  bind_text(insert, 2, name);
  insert.bind(3, to_seconds(created));
  insert.exec();
  return db.getLastInsertRowid();
}

void bring_back(SQLite::Database& db, std::int64_t job) {
  SQLite::Statement update(db, "UPDATE job SET archived = NULL WHERE id = ?1");
  update.bind(1, job);
  update.exec();
}

base::Problem unknown_job(std::string_view slug) {
  return {.code = "job.unknown",
          .message = "There is no job \"" + std::string(slug) + "\" in the log.",
          .found = std::string(slug),
          .hint = "`wetout jobs` lists them."};
}

Digest keep_document(SQLite::Database& db, std::string_view body) {
  const Digest digest = base::sha256(body);
  SQLite::Statement find(db, "SELECT body = ?2 FROM document WHERE sha256 = ?1");
  bind_digest(find, 1, digest);
  bind_bytes(find, 2, body);
  if (find.executeStep()) {
    if (find.getColumn(0).getInt() == 1) return digest;
    throw SQLite::Exception("document " + base::hex(digest) + " has changed", SQLITE_CORRUPT);
  }
  SQLite::Statement insert(db, "INSERT INTO document(sha256, body) VALUES(?1, ?2)");
  bind_digest(insert, 1, digest);
  bind_bytes(insert, 2, body);
  insert.exec();
  return digest;
}

std::string checked_body(SQLite::Column column, const Digest& digest) {
  if (column.isNull()) {
    throw SQLite::Exception("document " + base::hex(digest) + " is gone", SQLITE_CORRUPT);
  }
  std::string body = column.getString();
  if (base::sha256(body) != digest) {
    throw SQLite::Exception("document " + base::hex(digest) + " has changed", SQLITE_CORRUPT);
  }
  return body;
}

std::optional<JobState> find_job(SQLite::Database& db, std::string_view slug) {
  SQLite::Statement rows(db,
                         "SELECT job.id, archived IS NOT NULL, revision, input_key FROM job"
                         " LEFT JOIN plan ON plan.job = job.id"
                         " WHERE slug = ?1 ORDER BY revision DESC LIMIT 1");
  bind_text(rows, 1, slug);
  if (!rows.executeStep()) return std::nullopt;
  JobState state{rows.getColumn(0).getInt64(), rows.getColumn(1).getInt() == 1};
  if (!rows.getColumn(2).isNull()) {
    state.last_revision = rows.getColumn(2).getInt();
    state.last_key = read_digest(rows.getColumn(3));
  }
  return state;
}

}  // namespace wetout::joblog
