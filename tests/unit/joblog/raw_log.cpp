#include "raw_log.hpp"

#include <SQLiteCpp/Exception.h>

#include "ledger_samples.hpp"
#include "record_samples.hpp"

namespace wetout::joblog::testing {
namespace {

void replace_all(std::string& sql, const std::string& word, const std::string& by) {
  for (std::size_t at = 0; (at = sql.find(word, at)) != std::string::npos; at += by.size()) {
    sql.replace(at, word.size(), by);
  }
}

}  // namespace

RawLog::RawLog() {
  make_log(folder_ / "log.db", 3);
  {
    Log log = Log::open(folder_ / "log.db", writing());
    log.save_plan(sample_plan(1, "egret"));
    (void)log.save_schedule(sample_schedule(1, {{"sandpiper", 2}, {"egret", 1}})).value();
    NewSchedule second = sample_schedule(2, {{"sandpiper", 3}});
    second.steps.pop_back();
    (void)log.save_schedule(second).value();
    NewEvents events = sample_events(1);
    events.events.erase(events.events.begin() + 1);
    (void)log.record_events(events).value();
    (void)log.undo_event({.token = "undo-2", .number = 2, .recorded = events.recorded}).value();
    (void)log.set_lesson(1, false, Instant{}).value();
    (void)log.set_lesson(1, true, Instant{}).value();
    events = sample_events(2, "egret");
    events.events = {
        {.token = "egret-note", .kind = EventKind::note, .facts = {.note = "a ding in the tail"}}};
    (void)log.record_events(events).value();
    book(log, receipt("r-1", {{mass("slow-a"), 1'000'000, 4800, "L1"},
                              {length("e4"), 9'144'000, 6500, "L2", "", {}, 762'000}}));
    book(log, use("u-1", "sandpiper", "bottom-lam/wet",
                  {{mass("slow-a"), 200'000}, {length("e4"), 2'000'000}}));
    book(log, labour("l-1", "sandpiper", 60, 1500));
    book(log, reversal("undo-l-1", 3));
    book(log, waste("w-1", {{mass("slow-a"), 10'000}}));
  }
  db_ = std::make_unique<SQLite::Database>(folder_ / "log.db", SQLite::OPEN_READWRITE);
  db_->exec("PRAGMA foreign_keys = ON");
}

int RawLog::run(std::string sql) {
  replace_all(sql, "X32", "CAST('0123456789abcdef0123456789abcdef' AS BLOB)");
  replace_all(sql, "EVENT",
              "token, job, step, at, recorded, kind, milestone, mass_mg, part_a_mg, part_b_mg,"
              " air_mk, rh_ppm, note, undoes");
  try {
    db_->exec(sql);
    return SQLITE_OK;
  } catch (const SQLite::Exception& error) {
    message_ = error.what();
    return error.getExtendedErrorCode();
  }
}

const char* const loose_rows =
    "INSERT INTO job(id, slug, name, created) VALUES(3, 'empty', 'Empty', 5);"
    "INSERT INTO document(sha256, body) VALUES(X32, CAST('loose' AS BLOB));"
    "INSERT INTO plan SELECT 5, 2, 2, made, program, input_key, format, result, 2 FROM plan"
    "  WHERE id = 1;"
    "INSERT INTO plan_input SELECT 5, role, name, format, document FROM plan_input"
    "  WHERE plan = 1 AND role = 'job';"
    "INSERT INTO schedule SELECT 3, made, program, input_key, format, result, 2, weather,"
    "  weather_name, weather_format, 2, 2 FROM schedule WHERE id = 1;"
    "INSERT INTO schedule_job VALUES(3, 1, 3);"
    "INSERT INTO schedule_step VALUES(3, 1, 'weigh', 5, 6, 'planned');"
    "INSERT INTO material VALUES(3, 'loose', 'Loose', 'um');"
    "INSERT INTO lot VALUES(3, 3, 'L1', NULL, 5, NULL, NULL), (4, 3, 'L2', NULL, 5, NULL, NULL);"
    "INSERT INTO entry SELECT 6, 'open', kind, at, day, recorded, NULL, NULL, NULL FROM entry"
    "  WHERE id = 2;"
    "INSERT INTO movement VALUES(6, 1, 'stock', 'board', 1, 1, NULL, 5, 0);";

}  // namespace wetout::joblog::testing
