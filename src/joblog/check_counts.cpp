// Rows that belong together and are not all there, or that no wetout would have written so.
#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Statement.h>

#include <string>

#include "joblog/inspect.hpp"

namespace wetout::joblog {

void find(std::vector<Finding>& findings, SQLite::Database& db, const char* code,
          const char* query) {
  SQLite::Statement rows(db, query);
  while (rows.executeStep()) findings.push_back({code, rows.getColumn(0).getString()});
}

void check_revisions(std::vector<Finding>& findings, SQLite::Database& db) {
  find(findings, db, "revisions",
       "SELECT 'job ' || slug || ' has ' || count(*) || ' plans, the last is ' || max(revision)"
       " FROM plan JOIN job ON job.id = job"
       " GROUP BY job HAVING count(*) <> max(revision) OR min(revision) <> 1");
}

void check_inputs(std::vector<Finding>& findings, SQLite::Database& db) {
  find(findings, db, "inputs",
       "SELECT 'plan ' || revision || ' of job ' || slug || ' has ' || n || ' of its ' || inputs ||"
       "   ' inputs' FROM"
       " (SELECT job, revision, inputs,"
       "    (SELECT count(*) FROM plan_input WHERE plan = plan.id) AS n FROM plan)"
       " JOIN job ON job.id = job WHERE n <> inputs");
}

void check_schedules(std::vector<Finding>& findings, SQLite::Database& db) {
  find(findings, db, "schedules",
       "SELECT 'there are ' || n || ' schedules, the last is ' || last FROM"
       " (SELECT count(*) AS n, ifnull(max(id), 0) AS last FROM schedule) WHERE n <> last");
  find(findings, db, "schedules",
       "SELECT 'schedule ' || id || ' has ' || n || ' of its ' || jobs || ' jobs' FROM"
       " (SELECT id, jobs, (SELECT count(*) FROM schedule_job WHERE schedule = schedule.id) AS n"
       "    FROM schedule) WHERE n <> jobs");
  find(findings, db, "schedules",
       "SELECT 'schedule ' || id || ' has ' || n || ' of its ' || steps || ' steps' FROM"
       " (SELECT id, steps, (SELECT count(*) FROM schedule_step WHERE schedule = schedule.id) AS n"
       "    FROM schedule) WHERE n <> steps");
}

void check_events(std::vector<Finding>& findings, SQLite::Database& db) {
  find(findings, db, "events",
       "SELECT 'there are ' || n || ' events, the last is ' || last FROM"
       " (SELECT count(*) AS n, ifnull(max(id), 0) AS last FROM event) WHERE n <> last");
  find(findings, db, "events",
       "SELECT 'event ' || event.id || ' takes back event ' || other.id || ', which it cannot'"
       " FROM event JOIN event AS other ON other.id = event.undoes"
       " WHERE other.kind = 'undo' OR other.job <> event.job");
}

void check_lessons(std::vector<Finding>& findings, SQLite::Database& db) {
  find(findings, db, "lessons",
       "SELECT 'there are ' || n || ' lessons, the last is ' || last FROM"
       " (SELECT count(*) AS n, ifnull(max(id), 0) AS last FROM lesson) WHERE n <> last");
  find(findings, db, "lessons",
       "SELECT 'lesson ' || id || ' changes nothing' FROM"
       " (SELECT id, counts, lag(counts, 1, 1) OVER (PARTITION BY event ORDER BY id) AS before"
       "    FROM lesson) WHERE counts = before");
}

}  // namespace wetout::joblog
