// Every trigger and every constraint is attacked from a second connection, which does not set what
// wetout's own connections set.
#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Exception.h>
#include <SQLiteCpp/Statement.h>
#include <gtest/gtest.h>
#include <sqlite3.h>

#include <ostream>
#include <set>
#include <string>

#include "support.hpp"
#include "wetout/joblog/care.hpp"

namespace wetout::joblog {
namespace {

using testing::make_log;
using testing::TempFolder;

constexpr const char* x32 = "CAST('0123456789abcdef0123456789abcdef' AS BLOB)";

// The log of an attack holds one job with three plans of three inputs each, and job 2.
class Raw {
 public:
  Raw() {
    make_log(folder_ / "log.db", 3);
    Log::open(folder_ / "log.db", testing::writing()).save_plan(testing::sample_plan(1, "egret"));
    db_ = std::make_unique<SQLite::Database>(folder_ / "log.db", SQLite::OPEN_READWRITE);
    db_->exec("PRAGMA foreign_keys = ON");
  }
  SQLite::Database& db() { return *db_; }
  std::filesystem::path path() const { return folder_ / "log.db"; }

  /// SQLite's extended code, 0 when the statement went through.
  int run(std::string sql) {
    for (std::size_t at = 0; (at = sql.find("X32", at)) != std::string::npos;) {
      sql.replace(at, 3, x32);
    }
    try {
      db_->exec(sql);
      return SQLITE_OK;
    } catch (const SQLite::Exception& error) {
      message_ = error.what();
      return error.getExtendedErrorCode();
    }
  }
  const std::string& message() const { return message_; }

 private:
  TempFolder folder_;
  std::unique_ptr<SQLite::Database> db_;
  std::string message_;
};

struct Attack {
  const char* name;
  const char* trigger;
  const char* sql;
};
void PrintTo(const Attack& attack, std::ostream* out) { *out << attack.name; }

const Attack attacks[] = {
    {"DeletesAJob", "job_no_delete", "DELETE FROM job WHERE id = 3"},
    {"ReplacesAJobBySlug", "job_no_replace",
     "INSERT OR REPLACE INTO job(slug, name, created) VALUES('empty', 'x', 1)"},
    {"ReplacesAJobById", "job_no_replace",
     "INSERT OR REPLACE INTO job(id, slug, name, created) VALUES(1, 'other', 'x', 1)"},
    {"ReplacesAJobByRowid", "job_no_replace",
     "REPLACE INTO job(rowid, slug, name, created) VALUES(1, 'other', 'x', 1)"},
    {"MovesTheBeginningOfAJob", "job_keeps", "UPDATE job SET created = 0 WHERE id = 1"},
    {"ChangesTheIdOfAJob", "job_keeps", "UPDATE job SET id = 77 WHERE id = 3"},
    {"ReplacesAJobByRenaming", "job_no_replace_by_update",
     "UPDATE OR REPLACE job SET slug = 'empty' WHERE id = 1"},

    {"ChangesADocument", "document_no_update", "UPDATE document SET body = CAST('x' AS BLOB)"},
    {"DeletesADocument", "document_no_delete", "DELETE FROM document WHERE sha256 = X32"},
    {"ReplacesADocument", "document_no_replace",
     "INSERT OR REPLACE INTO document SELECT NULL, sha256, CAST('x' AS BLOB) FROM document"},
    {"ReplacesADocumentById", "document_no_replace",
     "INSERT OR REPLACE INTO document SELECT id, zeroblob(32), body FROM document WHERE sha256 = "
     "X32"},
    {"UpsertsADocument", "document_no_replace",
     "INSERT INTO document(sha256, body) VALUES(X32, CAST('x' AS BLOB)) ON CONFLICT DO UPDATE SET "
     "body = "
     "excluded.body"},

    {"ChangesAPlan", "plan_no_update", "UPDATE plan SET made = 0"},
    {"RenumbersAPlan", "plan_no_update", "UPDATE OR REPLACE plan SET revision = 9 WHERE id = 3"},
    {"DeletesAPlan", "plan_no_delete", "DELETE FROM plan WHERE id = 5"},
    {"ReplacesAPlanById", "plan_no_replace",
     "INSERT OR REPLACE INTO plan SELECT id, job, 4, 0, program, input_key, format, result, inputs"
     " FROM plan WHERE id = 3"},
    {"SkipsARevision", "plan_is_next",
     "INSERT INTO plan SELECT NULL, job, 9, made, program, input_key, format, result, inputs FROM"
     " plan WHERE id = 3"},
    {"BeginsWithRevisionTwo", "plan_is_next",
     "INSERT INTO plan SELECT NULL, 3, 2, made, program, input_key, format, result, inputs FROM"
     " plan WHERE id = 3"},

    {"ChangesAnInput", "plan_input_no_update", "UPDATE plan_input SET format = 'x'"},
    {"DeletesAnInput", "plan_input_no_delete", "DELETE FROM plan_input WHERE plan = 1"},
    {"ReplacesAnInput", "plan_input_no_replace",
     "INSERT OR REPLACE INTO plan_input SELECT plan, role, name, 'x', document FROM plan_input"
     " WHERE plan = 5"},
    {"AddsAnInputAfterwards", "plan_input_late",
     "INSERT INTO plan_input SELECT plan, 'learned', name, format, document FROM plan_input"
     " WHERE plan = 1 AND role = 'job'"},
};

// Besides: a job without plans, a document nobody refers to, and a plan with an input still to
// come, so that nothing but the trigger stands in the way of its attack.
constexpr const char* loose_rows =
    "INSERT INTO job(id, slug, name, created) VALUES(3, 'empty', 'Empty', 5);"
    "INSERT INTO document(sha256, body) VALUES(X32, CAST('loose' AS BLOB));"
    "INSERT INTO plan SELECT 5, 2, 2, made, program, input_key, format, result, 2 FROM plan"
    "  WHERE id = 1;"
    "INSERT INTO plan_input SELECT 5, role, name, format, document FROM plan_input"
    "  WHERE plan = 1 AND role = 'job';";

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
  SQLite::Statement rows(raw.db(), "SELECT name FROM sqlite_schema WHERE type = 'trigger'");
  int triggers = 0;
  for (; rows.executeStep(); ++triggers) {
    EXPECT_EQ(attacked.count(rows.getColumn(0).getString()), 1U) << rows.getColumn(0).getString();
  }
  EXPECT_EQ(triggers, static_cast<int>(attacked.size()));
}

TEST(Schema, HasThreeTriggersForEveryAppendOnlyTable) {
  Raw raw;
  for (const char* table : {"document", "plan", "plan_input"}) {
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
  EXPECT_EQ(tables, 4);
}

struct BadRow {
  const char* name;
  int code;
  const char* sql;
};
void PrintTo(const BadRow& row, std::ostream* out) { *out << row.name; }

constexpr int check = SQLITE_CONSTRAINT_CHECK;
constexpr int not_null = SQLITE_CONSTRAINT_NOTNULL;
constexpr int datatype = SQLITE_CONSTRAINT_DATATYPE;
constexpr int foreign = SQLITE_CONSTRAINT_FOREIGNKEY;
constexpr int trigger = SQLITE_CONSTRAINT_TRIGGER;

// The fourth plan of job 1, with one column spoilt: id, revision, made, program, key, format,
// result, inputs.
#define PLAN(values) "INSERT INTO plan SELECT " values " FROM plan WHERE id = 3"
#define INPUT(values)                                                                        \
  "INSERT INTO plan SELECT 9, job, 4, made, program, input_key, format, result, 1 FROM plan" \
  " WHERE id = 3;"                                                                           \
  "INSERT INTO plan_input SELECT " values " FROM plan_input WHERE plan = 3 AND role = 'job'"

const BadRow bad_rows[] = {
    {"SlugInCapitals", check, "INSERT INTO job VALUES(9, 'Heron', 'x', 1, NULL)"},
    {"SlugEmpty", check, "INSERT INTO job VALUES(9, '', 'x', 1, NULL)"},
    {"SlugWithASpace", check, "INSERT INTO job VALUES(9, 'a b', 'x', 1, NULL)"},
    {"SlugWithAnUmlaut", check, "INSERT INTO job VALUES(9, 'ä', 'x', 1, NULL)"},
    {"SlugBeginningWithAHyphen", check, "INSERT INTO job VALUES(9, '-a', 'x', 1, NULL)"},
    {"SlugEndingWithAHyphen", check, "INSERT INTO job VALUES(9, 'a-', 'x', 1, NULL)"},
    {"SlugWithTwoHyphens", check, "INSERT INTO job VALUES(9, 'a--b', 'x', 1, NULL)"},
    {"SlugOf65", check, "INSERT INTO job VALUES(9, printf('%.65c', 'a'), 'x', 1, NULL)"},
    {"SlugNull", not_null, "INSERT INTO job VALUES(9, NULL, 'x', 1, NULL)"},
    {"SlugBlob", datatype, "INSERT INTO job VALUES(9, CAST('a' AS BLOB), 'x', 1, NULL)"},
    {"JobNameEmpty", check, "INSERT INTO job VALUES(9, 'a', '', 1, NULL)"},
    {"JobNameNull", not_null, "INSERT INTO job VALUES(9, 'a', NULL, 1, NULL)"},
    {"JobCreatedNull", not_null, "INSERT INTO job VALUES(9, 'a', 'x', NULL, NULL)"},
    {"JobCreatedText", datatype, "INSERT INTO job VALUES(9, 'a', 'x', 'today', NULL)"},
    {"JobArchivedText", datatype, "INSERT INTO job VALUES(9, 'a', 'x', 1, 'yes')"},
    {"JobIdMinusOne", check, "INSERT INTO job VALUES(-1, 'a', 'x', 1, NULL)"},
    {"JobSlugTakenByRenaming", trigger, "UPDATE job SET slug = 'egret' WHERE id = 1"},
    {"JobRenamedToNothing", check, "UPDATE job SET slug = '' WHERE id = 1"},

    {"DigestTooShort", check,
     "INSERT INTO document(sha256, body) VALUES(CAST('abc' AS BLOB), x'00')"},
    {"DigestText", datatype,
     "INSERT INTO document(sha256, body) VALUES(printf('%.32c', 'a'), x'00')"},
    {"DocumentIdMinusOne", check, "INSERT INTO document VALUES(-1, X32, x'00')"},
    {"DigestNull", not_null, "INSERT INTO document(sha256, body) VALUES(NULL, x'00')"},
    {"BodyNull", not_null, "INSERT INTO document(sha256, body) VALUES(X32, NULL)"},
    {"BodyText", datatype, "INSERT INTO document(sha256, body) VALUES(X32, 'text')"},

    {"PlanIdMinusOne", check, PLAN("-1, job, 4, made, program, input_key, format, result, inputs")},
    {"PlanOfNoJob", foreign, PLAN("9, 99, 1, made, program, input_key, format, result, inputs")},
    {"PlanJobNull", trigger, PLAN("9, NULL, 4, made, program, input_key, format, result, 0")},
    {"PlanRevisionZero", trigger,
     PLAN("9, job, 0, made, program, input_key, format, result, inputs")},
    {"PlanRevisionAgain", trigger,
     PLAN("9, job, 3, made, program, input_key, format, result, inputs")},
    {"PlanMadeNull", not_null, PLAN("9, job, 4, NULL, program, input_key, format, result, 0")},
    {"PlanMadeText", datatype, PLAN("9, job, 4, 'now', program, input_key, format, result, 0")},
    {"PlanProgramEmpty", check, PLAN("9, job, 4, made, '', input_key, format, result, inputs")},
    {"PlanProgramNull", not_null, PLAN("9, job, 4, made, NULL, input_key, format, result, 0")},
    {"PlanKeyTooShort", check, PLAN("9, job, 4, made, program, x'00', format, result, inputs")},
    {"PlanKeyNull", not_null, PLAN("9, job, 4, made, program, NULL, format, result, inputs")},
    {"PlanFormatEmpty", check, PLAN("9, job, 4, made, program, input_key, '', result, inputs")},
    {"PlanFormatNull", not_null, PLAN("9, job, 4, made, program, input_key, NULL, result, 0")},
    {"PlanResultNowhere", foreign, PLAN("9, job, 4, made, program, input_key, format, X32, 0")},
    {"PlanResultNull", not_null, PLAN("9, job, 4, made, program, input_key, format, NULL, 0")},
    {"PlanInputsNegative", check, PLAN("9, job, 4, made, program, input_key, format, result, -1")},
    {"PlanInputsNull", not_null, PLAN("9, job, 4, made, program, input_key, format, result, NULL")},

    {"InputOfNoPlan", foreign,
     "INSERT INTO plan_input SELECT 99, role, name, format, document FROM plan_input"
     " WHERE plan = 1 AND role = 'job'"},
    {"InputPlanNull", not_null, INPUT("NULL, role, name, format, document")},
    {"InputRoleUnknown", check, INPUT("9, 'weather', name, format, document")},
    {"InputRoleNull", not_null, INPUT("9, NULL, name, format, document")},
    {"InputNameNull", not_null, INPUT("9, role, NULL, format, document")},
    {"InputNameBlob", datatype, INPUT("9, role, x'00', format, document")},
    {"InputFormatEmpty", check, INPUT("9, role, name, '', document")},
    {"InputFormatNull", not_null, INPUT("9, role, name, NULL, document")},
    {"InputDocumentNowhere", foreign, INPUT("9, role, name, format, X32")},
    {"InputDocumentNull", not_null, INPUT("9, role, name, format, NULL")},
};
#undef PLAN
#undef INPUT

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
                    "UPDATE job SET slug = 'red-heron', name = 'y', archived = 7 WHERE id = 9"),
            SQLITE_OK)
      << raw.message();
  EXPECT_TRUE(joblog::check(raw.path()).empty());
}

// Backstops behind the triggers: what a trigger refuses first, the keys would refuse as well.
TEST(Constraints, HoldWithoutTheTriggers) {
  Raw raw;
  for (const char* name : {"plan_is_next", "plan_no_replace", "job_no_replace",
                           "job_no_replace_by_update", "document_no_replace"}) {
    raw.db().exec(std::string("DROP TRIGGER ") + name);
  }
  EXPECT_EQ(raw.run("INSERT INTO plan SELECT 9, job, 0, made, program, input_key, format, result, 0"
                    " FROM plan WHERE id = 3"),
            check);
  EXPECT_EQ(raw.run("INSERT INTO plan SELECT 9, NULL, 4, made, program, input_key, format, result,"
                    " 0 FROM plan WHERE id = 3"),
            not_null);
  EXPECT_EQ(raw.run("INSERT INTO plan SELECT 9, job, 3, made, program, input_key, format, result, 0"
                    " FROM plan WHERE id = 3"),
            SQLITE_CONSTRAINT_UNIQUE);
  EXPECT_EQ(raw.run("INSERT INTO job VALUES(9, 'egret', 'x', 1, NULL)"), SQLITE_CONSTRAINT_UNIQUE);
  EXPECT_EQ(raw.run("UPDATE job SET slug = 'egret' WHERE id = 1"), SQLITE_CONSTRAINT_UNIQUE);
  EXPECT_EQ(raw.run("INSERT INTO document SELECT NULL, sha256, body FROM document"),
            SQLITE_CONSTRAINT_UNIQUE);
}

}  // namespace
}  // namespace wetout::joblog
