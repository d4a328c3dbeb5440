// Every trigger and every constraint is attacked from a second connection, which does not set what
// wetout's own connections set.
#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <gtest/gtest.h>
#include <sqlite3.h>

#include <set>
#include <string>
#include <vector>

#include "raw_log.hpp"
#include "wetout/joblog/care.hpp"

namespace wetout::joblog {
namespace {

using testing::Attack;
using testing::BadRow;
using testing::loose_rows;
using Raw = testing::RawLog;

template <class Row>
std::vector<Row> all_of(std::initializer_list<std::span<const Row>> parts) {
  std::vector<Row> all;
  for (const auto& part : parts) all.insert(all.end(), part.begin(), part.end());
  return all;
}

const std::vector<Attack> attacks = all_of(
    {testing::attacks_on_plans(), testing::attacks_on_records(), testing::attacks_on_ledger()});
const std::vector<BadRow> bad_rows = all_of(
    {testing::bad_rows_of_plans(), testing::bad_rows_of_records(), testing::bad_rows_of_ledger()});

class Triggers : public ::testing::TestWithParam<Attack> {};

TEST_P(Triggers, Hold) {
  Raw raw;
  ASSERT_EQ(raw.run(loose_rows), SQLITE_OK) << raw.message();
  const Attack& attack = GetParam();
  EXPECT_EQ(raw.run(attack.sql), SQLITE_CONSTRAINT_TRIGGER) << raw.message();
  raw.db().exec("PRAGMA recursive_triggers = ON");
  EXPECT_EQ(raw.run(attack.sql), SQLITE_CONSTRAINT_TRIGGER) << raw.message();
}

// Otherwise the attack proves nothing about the trigger.
TEST_P(Triggers, AreWhatStopsTheAttack) {
  Raw raw;
  ASSERT_EQ(raw.run(loose_rows), SQLITE_OK) << raw.message();
  const Attack& attack = GetParam();
  ASSERT_EQ(raw.run(std::string("DROP TRIGGER ") + attack.trigger), SQLITE_OK) << raw.message();
  if (attack.also != nullptr) {
    ASSERT_EQ(raw.run(attack.sql), SQLITE_CONSTRAINT_TRIGGER) << raw.message();
    raw.db().exec(std::string("DROP TRIGGER ") + attack.also);
  }
  // Another trigger or a key may still be in the way; foreign keys are off where a parent would go.
  raw.db().exec("PRAGMA foreign_keys = OFF");
  const int code = raw.run(attack.sql);
  if (std::string(attack.name) == "UpsertsADocument") {
    EXPECT_EQ(raw.message(), "append-only");  // then its update meets document_no_update
  } else {
    EXPECT_EQ(code, SQLITE_OK) << raw.message();
  }
}

INSTANTIATE_TEST_SUITE_P(All, Triggers, ::testing::ValuesIn(attacks),
                         [](const auto& run) { return std::string(run.param.name); });

TEST(Schema, HasAnAttackForEveryTrigger) {
  Raw raw;
  std::set<std::string> attacked;
  for (const Attack& attack : attacks) attacked.insert(attack.trigger);
  SQLite::Statement rows(raw.db(),
                         "SELECT name FROM sqlite_schema WHERE type = 'trigger'"
                         // It keeps nothing out: it writes the sums.
                         " AND name <> 'movement_adds_up'");
  int triggers = 0;
  for (; rows.executeStep(); ++triggers) {
    EXPECT_EQ(attacked.count(rows.getColumn(0).getString()), 1U) << rows.getColumn(0).getString();
  }
  EXPECT_EQ(triggers, static_cast<int>(attacked.size()));
}

TEST(Schema, HasThreeTriggersForEveryAppendOnlyTable) {
  Raw raw;
  for (const char* table :
       {"document", "plan", "plan_input", "schedule", "schedule_job", "schedule_step", "event",
        "lesson", "currency", "material", "lot", "entry", "movement", "lot_sum"}) {
    for (const char* kind : {"_no_update", "_no_delete", "_no_replace"}) {
      SQLite::Statement rows(raw.db(),
                             "SELECT count(*) FROM sqlite_schema WHERE type = 'trigger' AND"
                             " tbl_name = ?1 AND name = ?1 || ?2");
      rows.bind(1, table);
      rows.bind(2, kind);
      rows.executeStep();
      EXPECT_EQ(rows.getColumn(0).getInt(), 1) << table << kind;
    }
  }
}

TEST(Schema, HasOnlyStrictTables) {
  Raw raw;
  SQLite::Statement rows(raw.db(),
                         "SELECT name, strict FROM pragma_table_list"
                         " WHERE schema = 'main' AND name NOT LIKE 'sqlite_%'");
  int tables = 0;
  for (; rows.executeStep(); ++tables) {
    EXPECT_EQ(rows.getColumn(1).getInt(), 1) << rows.getColumn(0).getString();
  }
  EXPECT_EQ(tables, 15);
}

class Constraints : public ::testing::TestWithParam<BadRow> {};

TEST_P(Constraints, RefuseABadRow) {
  Raw raw;
  raw.db().exec("BEGIN");
  EXPECT_EQ(raw.run(GetParam().sql), GetParam().code) << raw.message();
}

INSTANTIATE_TEST_SUITE_P(All, Constraints, ::testing::ValuesIn(bad_rows),
                         [](const auto& run) { return std::string(run.param.name); });

// The unspoilt rows go through: what is refused above is refused for the spoilt column.
TEST(Constraints, AllowAGoodRow) {
  Raw raw;
  EXPECT_EQ(raw.run("INSERT INTO job VALUES(9, 'heron-2', 'x', 1, NULL);"
                    "INSERT INTO document(sha256, body) VALUES("  // sha256sum of one zero byte
                    "  x'6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d', x'00');"
                    "INSERT INTO plan SELECT 9, job, 4, made, program, input_key, format, result, 1"
                    "  FROM plan WHERE id = 3;"
                    "INSERT INTO plan_input SELECT 9, role, name, format, document FROM plan_input"
                    "  WHERE plan = 3 AND role = 'job';"
                    "INSERT INTO schedule SELECT 3, made, program, input_key, format, result, 1,"
                    "  weather, weather_name, weather_format, 1, 1 FROM schedule WHERE id = 1;"
                    "INSERT INTO schedule_job VALUES(3, 1, 3);"
                    "INSERT INTO schedule_step VALUES(3, 1, 'weigh', 5, 5, 'planned');"
                    "INSERT INTO schedule SELECT 4, made, program, input_key, format, result, NULL,"
                    "  NULL, NULL, NULL, 1, 0 FROM schedule WHERE id = 1;"
                    "INSERT INTO schedule_job VALUES(4, 2, 1);"
                    "INSERT INTO event(id, token, job, step, at, recorded, kind, mass_mg,"
                    "  part_a_mg, part_b_mg) VALUES"
                    "  (5, 'a', 1, 'bottom-lam/wet', 5, 6, 'mixed', 9, 6, 3),"
                    "  (6, 'b', 1, 'bottom-lam/wet', 5, 6, 'mixed', 9, NULL, NULL),"
                    "  (7, 'c', 1, 'bottom-lam/wet', 5, 6, 'left', 0, NULL, NULL),"
                    "  (8, 'd', 1, 'bottom-lam/wet', 5, 6, 'done', NULL, NULL, NULL);"
                    "INSERT INTO event(id, token, job, step, at, recorded, kind, milestone, air_mk,"
                    "  rh_ppm, note, undoes) VALUES"
                    "  (9, 'e', 1, 'bottom-lam/wet', 7, 6, 'milestone', 'gel', NULL, NULL, NULL,"
                    "   NULL),"
                    "  (10, 'f', 1, NULL, 5, 6, 'conditions', NULL, 293000, 1000000, NULL, NULL),"
                    "  (11, 'g', 1, NULL, 5, 6, 'undo', NULL, NULL, NULL, 'mistyped', 9);"
                    "UPDATE job SET slug = 'red-heron', name = 'y', archived = 7 WHERE id = 9"),
            SQLITE_OK)
      << raw.message();
  EXPECT_TRUE(joblog::check(raw.path()).empty());
}

// Backstops behind the triggers: what a trigger refuses first, the keys would refuse as well.
TEST(Constraints, HoldWithoutTheTriggers) {
  Raw raw;
  for (const char* name : {"plan_is_next", "plan_no_replace", "job_no_replace",
                           "job_no_replace_by_update", "document_no_replace", "schedule_is_next",
                           "schedule_no_replace", "event_is_next", "event_no_replace"}) {
    raw.db().exec(std::string("DROP TRIGGER ") + name);
  }
  EXPECT_EQ(raw.run("INSERT INTO plan SELECT 9, job, 0, made, program, input_key, format, result, 0"
                    " FROM plan WHERE id = 3"),
            testing::check);
  EXPECT_EQ(raw.run("INSERT INTO plan SELECT 9, NULL, 4, made, program, input_key, format, result,"
                    " 0 FROM plan WHERE id = 3"),
            testing::not_null);
  EXPECT_EQ(raw.run("INSERT INTO plan SELECT 9, job, 3, made, program, input_key, format, result, 0"
                    " FROM plan WHERE id = 3"),
            SQLITE_CONSTRAINT_UNIQUE);
  EXPECT_EQ(raw.run("INSERT INTO job VALUES(9, 'egret', 'x', 1, NULL)"), SQLITE_CONSTRAINT_UNIQUE);
  EXPECT_EQ(raw.run("UPDATE job SET slug = 'egret' WHERE id = 1"), SQLITE_CONSTRAINT_UNIQUE);
  EXPECT_EQ(raw.run("INSERT INTO document SELECT NULL, sha256, body FROM document"),
            SQLITE_CONSTRAINT_UNIQUE);
  EXPECT_EQ(raw.run("INSERT INTO schedule SELECT 0, made, program, input_key, format, result, NULL,"
                    " NULL, NULL, NULL, 1, 1 FROM schedule WHERE id = 1"),
            testing::check);
  EXPECT_EQ(raw.run("INSERT INTO event(id, token, job, at, recorded, kind, note)"
                    " VALUES(0, 'new', 1, 5, 6, 'note', 'x')"),
            testing::check);
  EXPECT_EQ(raw.run("INSERT INTO event(id, token, job, at, recorded, kind, note)"
                    " VALUES(5, 'undo-2', 1, 5, 6, 'note', 'x')"),
            SQLITE_CONSTRAINT_UNIQUE);
  EXPECT_EQ(raw.run("INSERT INTO event(id, token, job, at, recorded, kind, undoes)"
                    " VALUES(5, 'new', 1, 5, 6, 'undo', 2)"),
            SQLITE_CONSTRAINT_UNIQUE);
}

}  // namespace
}  // namespace wetout::joblog
