// What the parts of Log share.
#pragma once

#include <SQLiteCpp/Statement.h>

#include <cstdint>
#include <memory>
#include <optional>
#include <string_view>

#include "joblog/connection.hpp"
#include "joblog/errors.hpp"
#include "wetout/joblog/log.hpp"

namespace wetout::joblog {

class Books;

struct Log::Impl {
  Connection connection;
  std::shared_ptr<Books> books = {};  ///< while Log::together runs

  SQLite::Database& db() { return *connection.db; }
  template <class Work>
  auto guarded(Work&& work) {
    return joblog::guarded(connection.db, connection.path, std::forward<Work>(work));
  }
};

inline Instant to_instant(std::int64_t seconds) { return Instant(std::chrono::seconds(seconds)); }
inline std::int64_t to_seconds(Instant instant) { return instant.time_since_epoch().count(); }

/// Binds without copying: `text` must outlive the statement's run.
void bind_text(SQLite::Statement& statement, int at, std::string_view text);
void bind_bytes(SQLite::Statement& statement, int at, std::string_view bytes);
void bind_digest(SQLite::Statement& statement, int at, const Digest& digest);
Digest read_digest(SQLite::Column column);
std::optional<Instant> read_instant(SQLite::Column column);
std::optional<std::int64_t> read_number(SQLite::Column column);

struct JobState {
  std::int64_t id = 0;
  bool archived = false;
  int last_revision = 0;
  std::optional<Digest> last_key = {};
};
std::optional<JobState> find_job(SQLite::Database& db, std::string_view slug);

}  // namespace wetout::joblog
