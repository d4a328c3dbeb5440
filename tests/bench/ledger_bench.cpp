// The ledger of a shop that has booked a million movements. Budgets: a board's cost and a material
// in 5 ms, the stock list in 150 ms, bulk import at most 1.2 times the same rows through SQLite's C
// API alone, into the same tables with the same checks.
#include <benchmark/benchmark.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <chrono>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <memory>
#include <stdexcept>
#include <string>
#include <vector>

#include "wetout/joblog/log.hpp"

namespace {

using namespace wetout;
using namespace wetout::joblog;
namespace fs = std::filesystem;

constexpr int movements = 1'000'000;
constexpr int takings = 3;  // of a use: resin, hardener, cloth
constexpr int uses_of_a_board = 60;
constexpr int materials = 40;
constexpr int uses_between_receipts = 50;
constexpr std::int64_t tin = 5'000'000;

Instant moment(int n) {
  return std::chrono::sys_days(std::chrono::year(2020) / 1 / 1) + std::chrono::minutes(5 * n);
}

EntryHead head(int n) {
  return {.token = fmt::format("bench:{}", n),
          .at = moment(n),
          .on = std::chrono::floor<std::chrono::days>(moment(n)),
          .recorded = moment(n)};
}

Material material(int n) {
  return {fmt::format("material-{}", n), fmt::format("Material {}", n), MaterialUnit::milligram};
}

// Entry `n` of the shop: mostly uses by boards one after another, between them what is bought.
NewEntry entry(int n) {
  if (n % uses_between_receipts == 0) {
    const int of = n / uses_between_receipts;
    return NewReceipt{head(n),
                      "USD",
                      {{.material = material(of % materials),
                        .quantity = tin,
                        .cost_minor = 9'000 + of % 977,
                        .lot = fmt::format("lot-{}", of)}}};
  }
  NewUse use{head(n), fmt::format("board-{}", n / uses_of_a_board), "bottom-lam/wet", {}};
  for (int i = 0; i < takings; ++i) {
    use.takings.push_back({material((n * 7 + i * 13) % materials), 1'000 + n * 31 % 60'000});
  }
  return use;
}

constexpr int entries_of(int lines) { return lines / takings; }

struct Raw {
  explicit Raw(const fs::path& path) {
    check(sqlite3_open(path.c_str(), &db));
    run("PRAGMA foreign_keys = ON; PRAGMA recursive_triggers = ON; PRAGMA synchronous = FULL;"
        "PRAGMA cache_size = -65536");
  }
  ~Raw() { sqlite3_close(db); }
  Raw(const Raw&) = delete;
  Raw& operator=(const Raw&) = delete;
  void check(int code) const {
    if (code != SQLITE_OK) throw std::runtime_error(sqlite3_errmsg(db));
  }
  void run(const std::string& sql) const {
    check(sqlite3_exec(db, sql.c_str(), nullptr, nullptr, nullptr));
  }
  sqlite3* db = nullptr;
};

struct Folder {
  Folder() {
    std::string name = (fs::temp_directory_path() / "wetout-ledger-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no folder for the benchmark");
    path = name;
  }
  ~Folder() {
    std::error_code ignored;
    fs::remove_all(path, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  fs::path path;
};

Log open(const fs::path& path) { return Log::open(path, {.access = Access::write}); }

void add_jobs(const fs::path& path, int entries) {
  const Raw raw(path);
  raw.run("BEGIN");
  for (int n = 0; n <= entries / uses_of_a_board; ++n) {
    raw.run(
        fmt::format("INSERT INTO job(slug, name, created) VALUES('board-{0}', 'Board {0}', 0)", n));
  }
  raw.run("COMMIT");
}

void import(Log& log, int entries) {
  const auto done = log.together([&]() -> base::Result<void> {
    for (int n = 0; n < entries; ++n) {
      const auto booked = log.book(entry(n));
      if (!booked) return tl::unexpected(booked.error());
    }
    return {};
  });
  if (!done) throw std::runtime_error(done.error().front().message);
}

// One log for every question below.
const fs::path& large_log() {
  static const Folder folder;
  static const fs::path path = [] {
    const fs::path made = folder.path / "large.db";
    Log log = open(made);
    add_jobs(made, entries_of(movements));
    import(log, entries_of(movements));
    return made;
  }();
  return path;
}

void board_cost(benchmark::State& state) {
  const Log log = Log::open(large_log(), {});
  int n = 0;
  for (auto _ : state) {
    n = (n + 977) % (entries_of(movements) / uses_of_a_board);
    const auto cost = log.job_cost(fmt::format("board-{}", n));
    if (!cost || cost->goods.empty()) state.SkipWithError("a board without cost");
  }
}
BENCHMARK(board_cost)->Unit(benchmark::kMillisecond);

void one_material(benchmark::State& state) {
  const Log log = Log::open(large_log(), {});
  int n = 0;
  for (auto _ : state) {
    const auto stock = log.stock_of(fmt::format("material-{}", ++n % materials));
    if (!stock || stock->lots.empty()) state.SkipWithError("nothing of it");
  }
}
BENCHMARK(one_material)->Unit(benchmark::kMillisecond);

void whole_stock(benchmark::State& state) {
  const Log log = Log::open(large_log(), {});
  for (auto _ : state) {
    if (log.stock().size() != materials) state.SkipWithError("not all materials");
  }
}
BENCHMARK(whole_stock)->Unit(benchmark::kMillisecond);

void totals_of_boards(benchmark::State& state) {
  const Log log = Log::open(large_log(), {});
  for (auto _ : state) benchmark::DoNotOptimize(log.job_totals());
}
BENCHMARK(totals_of_boards)->Unit(benchmark::kMillisecond);

void one_use(benchmark::State& state) {
  Log log = open(large_log());
  int n = entries_of(movements);
  for (auto _ : state) {
    NewUse use{head(++n), "board-0", "hotcoat/wet", {{material(n % materials), 1'000}}};
    use.head.token += fmt::format(":{}", state.range(0));
    if (!log.book(use)) state.SkipWithError("not booked");
  }
}
BENCHMARK(one_use)->Arg(1)->Unit(benchmark::kMillisecond);

constexpr int imported = 100'000;

// Rows of a table as they stand in another log of the same schema, entry by entry.
struct Rows {
  Rows(const Raw& from, const Raw& to, const std::string& table, int count,
       const std::string& order)
      : columns(count), db(to.db) {
    from.check(sqlite3_prepare_v2(from.db, ("SELECT * FROM " + table + order).c_str(), -1, &read,
                                  nullptr));
    std::string places = "?";
    for (int i = 1; i < columns; ++i) places += ", ?";
    to.check(sqlite3_prepare_v2(to.db, ("INSERT INTO " + table + " VALUES(" + places + ")").c_str(),
                                -1, &write, nullptr));
    next();
  }
  ~Rows() {
    sqlite3_finalize(read);
    sqlite3_finalize(write);
  }
  Rows(const Rows&) = delete;
  Rows& operator=(const Rows&) = delete;
  void next() { has_row = sqlite3_step(read) == SQLITE_ROW; }
  std::int64_t key() const { return sqlite3_column_int64(read, 0); }
  void copy() {
    for (int i = 0; i < columns; ++i) {
      const auto value = sqlite3_column_type(read, i);
      if (value == SQLITE_INTEGER) {
        sqlite3_bind_int64(write, i + 1, sqlite3_column_int64(read, i));
      } else if (value == SQLITE_NULL) {
        sqlite3_bind_null(write, i + 1);
      } else {
        sqlite3_bind_text(write, i + 1, reinterpret_cast<const char*>(sqlite3_column_text(read, i)),
                          -1, SQLITE_TRANSIENT);
      }
    }
    if (sqlite3_step(write) != SQLITE_DONE) throw std::runtime_error(sqlite3_errmsg(db));
    sqlite3_reset(write);
    next();
  }
  int columns;
  sqlite3* db;
  sqlite3_stmt* read = nullptr;
  sqlite3_stmt* write = nullptr;
  bool has_row = false;
};

// What a bulk import writes, and the same rows through the C API; both logs are on the same disk.
void bulk_import(benchmark::State& state) {
  const bool is_raw = state.range(0) == 1;
  const Folder folder;
  const fs::path model = folder.path / "model.db";
  {
    Log log = open(model);
    add_jobs(model, entries_of(imported));
    import(log, entries_of(imported));
  }
  for (auto _ : state) {
    state.PauseTiming();
    const fs::path path = folder.path / "fresh.db";
    for (const char* tail : {"", "-wal", "-shm"}) fs::remove(path.string() + tail);
    auto log = std::make_unique<Log>(open(path));
    add_jobs(path, entries_of(imported));
    if (is_raw) log.reset();
    state.ResumeTiming();
    if (!is_raw) {
      import(*log, entries_of(imported));
      continue;
    }
    const Raw from(model);
    const Raw to(path);
    to.run("PRAGMA journal_mode = WAL; BEGIN IMMEDIATE; INSERT INTO currency VALUES(1, 'USD')");
    Rows goods(from, to, "material", 4, "");
    Rows lots(from, to, "lot", 7, "");
    Rows entries(from, to, "entry", 9, " ORDER BY id");
    Rows lines(from, to, "movement", 9, " ORDER BY entry, line");
    while (goods.has_row) goods.copy();
    while (lots.has_row) lots.copy();
    while (entries.has_row) {
      const std::int64_t number = entries.key();
      entries.copy();
      while (lines.has_row && lines.key() == number) lines.copy();
    }
    to.run("COMMIT");
  }
}
BENCHMARK(bulk_import)
    ->ArgName("raw")
    ->Arg(0)
    ->Arg(1)
    ->Unit(benchmark::kMillisecond)
    ->Iterations(5);

}  // namespace

BENCHMARK_MAIN();
