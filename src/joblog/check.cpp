#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Statement.h>
#include <sqlite3.h>

#include <map>
#include <string>
#include <utility>

#include "joblog/errors.hpp"
#include "joblog/folder.hpp"
#include "joblog/inspect.hpp"
#include "joblog/log_impl.hpp"
#include "joblog/transaction.hpp"
#include "wetout/joblog/care.hpp"

namespace wetout::joblog {
namespace {

using Findings = std::vector<Finding>;

// Damage found while looking for damage is an answer, and the next look may still have one.
template <class Look>
void add(Findings& findings, SQLite::Database& db, const std::string& code, Look&& look) {
  try {
    std::forward<Look>(look)();
  } catch (const SQLite::Exception& error) {
    const StoreTrouble kind =
        classify(error.getExtendedErrorCode(), sqlite3_system_errno(db.getHandle()));
    if (kind != StoreTrouble::damaged) throw;
    findings.push_back({code, error.what()});
  }
}

void check_pages(Findings& findings, SQLite::Database& db) {
  SQLite::Statement rows(db, "PRAGMA integrity_check");
  while (rows.executeStep()) {
    const std::string text = rows.getColumn(0).getString();
    if (text != "ok") findings.push_back({"pages", text});
  }
}

// SQLite takes what is missing of the last page for zeros.
void check_size(Findings& findings, const Connection& connection) {
  if (connection.path.empty() || look(beside(connection.path, "-wal")).bytes > 0) return;
  SQLite::Statement rows(*connection.db,
                         "SELECT page_count * page_size FROM"
                         " pragma_page_count, pragma_page_size");
  if (rows.executeStep() &&
      look(connection.path).bytes < static_cast<std::uint64_t>(rows.getColumn(0).getInt64())) {
    findings.push_back({"pages", "the last page is cut off"});
  }
}

void check_references(Findings& findings, SQLite::Database& db) {
  SQLite::Statement rows(db, "PRAGMA foreign_key_check");
  while (rows.executeStep()) {
    findings.push_back({"references", "a row of " + rows.getColumn(0).getString() +
                                          " refers to a row of " + rows.getColumn(2).getString() +
                                          " that is not there"});
  }
}

void check_documents(Findings& findings, SQLite::Database& db) {
  SQLite::Statement rows(db, "SELECT sha256, body FROM document");
  while (rows.executeStep()) {
    const Digest digest = read_digest(rows.getColumn(0));
    if (base::sha256(rows.getColumn(1).getString()) != digest) {
      findings.push_back({"document", "document " + base::hex(digest) + " has changed"});
    }
  }
}

using Schema = std::map<std::pair<std::string, std::string>, std::string>;

Schema read_schema(SQLite::Database& db) {
  SQLite::Statement rows(db,
                         "SELECT type, name, ifnull(sql, '') FROM sqlite_schema"
                         " WHERE name NOT LIKE 'sqlite\\_%' ESCAPE '\\'");
  Schema schema;
  while (rows.executeStep()) {
    schema[{rows.getColumn(0).getString(), rows.getColumn(1).getString()}] =
        rows.getColumn(2).getString();
  }
  return schema;
}

std::span<const Migration> up_to(int version, std::span<const Migration> steps) {
  std::size_t n = 0;
  while (n < steps.size() && steps[n].version <= version) ++n;
  return steps.first(n);
}

void check_schema(Findings& findings, const Connection& connection,
                  std::span<const Migration> steps) {
  const Connection model = open_in_memory(up_to(connection.version, steps));
  Schema found = read_schema(*connection.db);
  for (const auto& [key, sql] : read_schema(*model.db)) {
    const auto same = found.find(key);
    const std::string what = key.first + " " + key.second;
    if (same == found.end()) {
      findings.push_back({"schema", what + " is missing"});
    } else {
      if (same->second != sql) findings.push_back({"schema", what + " is not as wetout made it"});
      found.erase(same);
    }
  }
  for (const auto& [key, sql] : found) {
    findings.push_back({"schema", key.first + " " + key.second + " is not of wetout"});
  }
}

}  // namespace

Findings inspect(const Connection& connection, std::span<const Migration> steps) {
  Findings findings;
  SQLite::Database& db = *connection.db;
  add(findings, db, "pages", [&] { check_pages(findings, db); });
  add(findings, db, "pages", [&] { check_size(findings, connection); });
  add(findings, db, "schema", [&] { check_schema(findings, connection, steps); });
  add(findings, db, "references", [&] { check_references(findings, db); });
  add(findings, db, "document", [&] { check_documents(findings, db); });
  add(findings, db, "revisions", [&] { check_revisions(findings, db); });
  add(findings, db, "inputs", [&] { check_inputs(findings, db); });
  if (connection.version < 2) return findings;
  add(findings, db, "schedules", [&] { check_schedules(findings, db); });
  add(findings, db, "events", [&] { check_events(findings, db); });
  if (connection.version < 3) return findings;
  add(findings, db, "ledger", [&] { check_entries(findings, db); });
  add(findings, db, "ledger", [&] { check_lots(findings, db); });
  add(findings, db, "ledger", [&] { check_sums(findings, db); });
  if (connection.version < 4) return findings;
  add(findings, db, "lessons", [&] { check_lessons(findings, db); });
  return findings;
}

std::string summary(const Findings& findings) {
  if (findings.empty()) return {};
  std::string line = findings.front().text;
  if (findings.size() > 1) line += " (and " + std::to_string(findings.size() - 1) + " more)";
  return line;
}

Findings check(const std::filesystem::path& path, std::chrono::milliseconds busy_timeout) {
  try {
    const Connection connection = open_as_it_is(path, Access::read, busy_timeout);
    return guarded(connection.db, path, [&] {
      const Transaction one_view(*connection.db, Transaction::Kind::read);
      return inspect(connection);
    });
  } catch (const StoreError& error) {
    if (error.kind() != StoreTrouble::damaged) throw;
    return {{"header", error.what()}};
  }
}

}  // namespace wetout::joblog
