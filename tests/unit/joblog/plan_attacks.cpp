// What is tried on jobs, documents and plans.
#include "raw_log.hpp"

namespace wetout::joblog::testing {
namespace {

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

}  // namespace

std::span<const Attack> attacks_on_plans() { return attacks; }
std::span<const BadRow> bad_rows_of_plans() { return bad_rows; }

}  // namespace wetout::joblog::testing
