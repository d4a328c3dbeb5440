#include "wetout/joblog/log.hpp"

#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Statement.h>
#include <sqlite3.h>

#include <algorithm>
#include <utility>

#include "joblog/folder.hpp"
#include "joblog/log_impl.hpp"
#include "joblog/rows.hpp"
#include "joblog/transaction.hpp"
#include "wetout/base/check.hpp"
#include "wetout/base/words.hpp"

namespace wetout::joblog {
namespace {

constexpr const char* job_query =
    "SELECT slug, name, created, archived, ifnull(revision, 0), made, job.id FROM job"
    " LEFT JOIN plan ON plan.job = job.id AND plan.revision ="
    "   (SELECT max(revision) FROM plan WHERE job = job.id) ";

JobRow read_job(SQLite::Statement& row) {
  return {row.getColumn(0).getString(),
          row.getColumn(1).getString(),
          to_instant(row.getColumn(2).getInt64()),
          read_instant(row.getColumn(3)),
          row.getColumn(4).getInt(),
          read_instant(row.getColumn(5)),
          row.getColumn(6).getInt64()};
}

std::int64_t number(SQLite::Database& db, const char* query) {
  SQLite::Statement statement(db, query);
  return statement.executeStep() ? statement.getColumn(0).getInt64() : 0;
}

}  // namespace

void bind_text(SQLite::Statement& statement, int at, std::string_view text) {
  // SQLiteCpp has no text binding with a length and without a copy for a view; names are short.
  statement.bind(at, std::string(text));
}

void bind_bytes(SQLite::Statement& statement, int at, std::string_view bytes) {
  constexpr std::size_t most = 1'000'000'000;  // SQLITE_MAX_LENGTH
  base::promise(bytes.size() < most, "a document for the log is below 1 GB");
  // A null pointer would be read as NULL.
  const char* data = bytes.empty() ? "" : bytes.data();
  statement.bindNoCopy(at, static_cast<const void*>(data), static_cast<int>(bytes.size()));
}

void bind_digest(SQLite::Statement& statement, int at, const Digest& digest) {
  statement.bind(at, static_cast<const void*>(digest.data()), static_cast<int>(digest.size()));
}

Digest read_digest(SQLite::Column column) {
  Digest digest{};
  const std::string bytes = column.getString();
  if (bytes.size() != digest.size()) {
    throw SQLite::Exception("a digest is not 32 bytes long", SQLITE_CORRUPT);
  }
  std::transform(bytes.begin(), bytes.end(), digest.begin(),
                 [](char c) { return static_cast<std::uint8_t>(c); });
  return digest;
}

std::optional<Instant> read_instant(SQLite::Column column) {
  if (column.isNull()) return std::nullopt;
  return to_instant(column.getInt64());
}

std::optional<std::int64_t> read_number(SQLite::Column column) {
  if (column.isNull()) return std::nullopt;
  return column.getInt64();
}

Log::Log(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
Log::Log(Log&&) noexcept = default;
Log& Log::operator=(Log&&) noexcept = default;
Log::~Log() = default;

Log Log::open(const std::filesystem::path& path, const OpenOptions& options) {
  return Log(std::make_unique<Impl>(Impl{open_log(path, options)}));
}

Log Log::in_memory() { return Log(std::make_unique<Impl>(Impl{open_in_memory()})); }

bool Log::exists(const std::filesystem::path& path) {
  const FileState state = look(path);
  return (state.exists && !state.regular) || state.bytes > 0 ||
         look(beside(path, "-wal")).bytes > 0;
}

std::vector<JobRow> Log::jobs(bool with_archived) const {
  return impl_->guarded([&] {
    SQLite::Statement rows(impl_->db(),
                           std::string(job_query) + "WHERE archived IS NULL OR ?1 ORDER BY slug");
    rows.bind(1, with_archived ? 1 : 0);
    std::vector<JobRow> jobs;
    while (rows.executeStep()) jobs.push_back(read_job(rows));
    return jobs;
  });
}

std::optional<JobRow> Log::job(std::string_view slug) const {
  return impl_->guarded([&]() -> std::optional<JobRow> {
    SQLite::Statement rows(impl_->db(), std::string(job_query) + "WHERE slug = ?1");
    bind_text(rows, 1, slug);
    if (!rows.executeStep()) return std::nullopt;
    return read_job(rows);
  });
}

base::Result<void> Log::rename_job(std::string_view slug, const std::string& new_slug,
                                   const std::string& new_name) {
  if (!base::is_slug(new_slug)) {
    return base::fail({.code = "job.slug",
                       .message = "\"" + new_slug + "\" cannot be the id of a job.",
                       .found = new_slug,
                       .expected = "a-z, 0-9 and single hyphens, at most 64 characters"});
  }
  if (new_name.empty()) {
    return base::fail(
        base::Problem{.code = "job.name", .message = "A job needs a name that is not empty."});
  }
  return impl_->guarded([&]() -> base::Result<void> {
    Transaction transaction(impl_->db(), Transaction::Kind::immediate);
    const auto job = find_job(impl_->db(), slug);
    if (!job) return base::fail(unknown_job(slug));
    const auto taken = find_job(impl_->db(), new_slug);
    if (taken && taken->id != job->id) {
      return base::fail({.code = "job.taken",
                         .message = "There is already a job \"" + new_slug + "\" in the log.",
                         .found = new_slug,
                         .hint = "Choose another name; archived jobs keep theirs."});
    }
    SQLite::Statement update(impl_->db(), "UPDATE job SET slug = ?1, name = ?2 WHERE id = ?3");
    bind_text(update, 1, new_slug);
    bind_text(update, 2, new_name);
    update.bind(3, job->id);
    update.exec();
    transaction.commit();
    return {};
  });
}

base::Result<void> Log::archive_job(std::string_view slug, std::optional<Instant> when) {
  return impl_->guarded([&]() -> base::Result<void> {
    Transaction transaction(impl_->db(), Transaction::Kind::immediate);
    const auto job = find_job(impl_->db(), slug);
    if (!job) return base::fail(unknown_job(slug));
    SQLite::Statement update(impl_->db(), "UPDATE job SET archived = ?1 WHERE id = ?2");
    if (when) {
      update.bind(1, to_seconds(*when));
    } else {
      update.bind(1);
    }
    update.bind(2, job->id);
    update.exec();
    transaction.commit();
    return {};
  });
}

Info Log::info() const {
  return impl_->guarded([&] {
    SQLite::Database& db = impl_->db();
    const std::filesystem::path& path = impl_->connection.path;
    Transaction one_view(db, Transaction::Kind::read);
    Info info;
    info.path = path;
    if (!path.empty()) {
      info.file_bytes = look(path).bytes;
      info.wal_bytes = look(beside(path, "-wal")).bytes;
    }
    info.schema_version = impl_->connection.version;
    info.jobs = number(db, "SELECT count(*) FROM job");
    info.archived_jobs = number(db, "SELECT count(*) FROM job WHERE archived IS NOT NULL");
    info.plans = number(db, "SELECT count(*) FROM plan");
    info.schedules = number(db, "SELECT count(*) FROM schedule");
    info.events = number(db, "SELECT count(*) FROM event");
    info.materials = number(db, "SELECT count(*) FROM material");
    info.lots = number(db, "SELECT count(*) FROM lot");
    info.entries = number(db, "SELECT count(*) FROM entry");
    info.documents = number(db, "SELECT count(*) FROM document");
    info.document_bytes = number(db, "SELECT ifnull(sum(length(body)), 0) FROM document");
    SQLite::Statement mode(db, "PRAGMA journal_mode");
    if (mode.executeStep()) info.journal_mode = mode.getColumn(0).getString();
    info.sqlite_version = sqlite3_libversion();
    return info;
  });
}

}  // namespace wetout::joblog
