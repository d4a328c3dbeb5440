#include "joblog/event_rows.hpp"

#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Statement.h>
#include <sqlite3.h>

#include <array>
#include <string>

#include "joblog/log_impl.hpp"
#include "wetout/base/check.hpp"

namespace wetout::joblog {
namespace {

using units::Milligrams;

constexpr std::array all_kinds = {EventKind::mixed,      EventKind::left, EventKind::spilled,
                                  EventKind::started,    EventKind::done, EventKind::milestone,
                                  EventKind::conditions, EventKind::note, EventKind::undo};

EventKind read_kind(SQLite::Column column) {
  const std::string word = column.getString();
  for (const EventKind kind : all_kinds) {
    if (to_string(kind) == word) return kind;
  }
  throw SQLite::Exception("an event is of no known kind", SQLITE_CORRUPT);
}

std::optional<Milligrams> read_mass(SQLite::Column column) {
  if (column.isNull()) return std::nullopt;
  return Milligrams(column.getInt64());
}

// getString of NULL is empty.
constexpr const char* event_query =
    "SELECT event.id, event.token, slug, event.kind, event.step, event.at, event.recorded,"
    " event.mass_mg, event.part_a_mg, event.part_b_mg, event.milestone, event.air_mk,"
    " event.rh_ppm, event.note, event.undoes, later.id,"
    " ifnull((SELECT counts FROM lesson WHERE lesson.event = event.id ORDER BY lesson.id DESC "
    "LIMIT 1),"
    " 1) FROM event JOIN job ON job.id = event.job"
    " LEFT JOIN event AS later ON later.undoes = event.id ";

EventRow read_row(SQLite::Statement& row) {
  return {.number = row.getColumn(0).getInt64(),
          .token = row.getColumn(1).getString(),
          .job_slug = row.getColumn(2).getString(),
          .kind = read_kind(row.getColumn(3)),
          .step = row.getColumn(4).getString(),
          .at = to_instant(row.getColumn(5).getInt64()),
          .recorded = to_instant(row.getColumn(6).getInt64()),
          .facts = {.mass = read_mass(row.getColumn(7)),
                    .part_a = read_mass(row.getColumn(8)),
                    .part_b = read_mass(row.getColumn(9)),
                    .milestone = row.getColumn(10).getString(),
                    .air_millikelvin = read_number(row.getColumn(11)),
                    .humidity_ppm = read_number(row.getColumn(12)),
                    .note = row.getColumn(13).getString()},
          .undoes = read_number(row.getColumn(14)),
          .undone_by = read_number(row.getColumn(15)),
          .counts = row.getColumn(16).getInt() != 0};
}

void bind_mass(SQLite::Statement& statement, int at, const std::optional<Milligrams>& mass) {
  if (mass) statement.bind(at, mass->count());
}

void bind_number(SQLite::Statement& statement, int at, const std::optional<std::int64_t>& number) {
  if (number) statement.bind(at, *number);
}

// Empty is NULL.
void bind_word(SQLite::Statement& statement, int at, std::string_view word) {
  if (!word.empty()) bind_text(statement, at, word);
}

bool has_mass(EventKind kind) {
  return kind == EventKind::mixed || kind == EventKind::left || kind == EventKind::spilled;
}

}  // namespace

std::string_view to_string(EventKind kind) {
  switch (kind) {
    case EventKind::mixed:
      return "mixed";
    case EventKind::left:
      return "left";
    case EventKind::spilled:
      return "spilled";
    case EventKind::started:
      return "started";
    case EventKind::done:
      return "done";
    case EventKind::milestone:
      return "milestone";
    case EventKind::conditions:
      return "conditions";
    case EventKind::note:
      return "note";
    case EventKind::undo:
      return "undo";
  }
  base::broken_promise("kind of event outside its list");
}

void check_event(const NewEvent& event) {
  constexpr std::int64_t whole = 1'000'000;
  const Facts& facts = event.facts;
  const EventKind kind = event.kind;
  base::promise(!event.token.empty(), "an event has a token");
  base::promise(kind != EventKind::undo, "undo_event takes events back");
  base::promise(!event.step.empty() || kind == EventKind::conditions || kind == EventKind::note,
                "work is recorded of a step");
  base::promise(facts.mass.has_value() == has_mass(kind), "masses go with their kinds");
  base::promise(!facts.mass || *facts.mass >= Milligrams(kind == EventKind::mixed ? 1 : 0),
                "a mass is not negative, and of a mix above zero");
  base::promise(facts.part_a.has_value() == facts.part_b.has_value(), "both parts or neither");
  if (facts.part_a) {
    base::promise(kind == EventKind::mixed, "parts go with a mix");
    base::promise(*facts.part_a >= Milligrams() && *facts.part_b >= Milligrams() &&
                      *facts.part_a + *facts.part_b <= *facts.mass,
                  "parts are not above the mix");
  }
  base::promise(facts.milestone.empty() == (kind != EventKind::milestone),
                "a milestone goes with its kind");
  base::promise((facts.air_millikelvin || facts.humidity_ppm) == (kind == EventKind::conditions),
                "conditions go with their kind");
  base::promise(!facts.air_millikelvin || *facts.air_millikelvin > 0, "air is above 0 K");
  base::promise(!facts.humidity_ppm || (*facts.humidity_ppm >= 0 && *facts.humidity_ppm <= whole),
                "humidity lies between 0 and 1");
  base::promise(kind != EventKind::note || !facts.note.empty(), "a note says something");
}

bool says_the_same(const EventRow& a, const EventRow& b) {
  return a.token == b.token && a.job_slug == b.job_slug && a.kind == b.kind && a.step == b.step &&
         a.facts == b.facts && a.undoes == b.undoes;
}

std::int64_t next_event(SQLite::Database& db) {
  SQLite::Statement last(db, "SELECT 1 + ifnull(max(id), 0) FROM event");
  last.executeStep();
  return last.getColumn(0).getInt64();
}

void insert_event(SQLite::Database& db, std::int64_t job, const EventRow& row) {
  SQLite::Statement insert(
      db,
      "INSERT INTO event(id, token, job, step, at, recorded, kind, milestone, mass_mg, part_a_mg,"
      " part_b_mg, air_mk, rh_ppm, note, undoes)"
      " VALUES(?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15)");
  insert.bind(1, row.number);
  bind_text(insert, 2, row.token);
  insert.bind(3, job);
  bind_word(insert, 4, row.step);
  insert.bind(5, to_seconds(row.at));
  insert.bind(6, to_seconds(row.recorded));
  bind_text(insert, 7, to_string(row.kind));
  bind_word(insert, 8, row.facts.milestone);
  bind_mass(insert, 9, row.facts.mass);
  bind_mass(insert, 10, row.facts.part_a);
  bind_mass(insert, 11, row.facts.part_b);
  bind_number(insert, 12, row.facts.air_millikelvin);
  bind_number(insert, 13, row.facts.humidity_ppm);
  bind_word(insert, 14, row.facts.note);
  bind_number(insert, 15, row.undoes);
  insert.exec();
}

std::int64_t job_of_event(SQLite::Database& db, std::int64_t number) {
  SQLite::Statement row(db, "SELECT job FROM event WHERE id = ?1");
  row.bind(1, number);
  base::promise(row.executeStep(), "the event is there");
  return row.getColumn(0).getInt64();
}

std::optional<EventRow> read_event(SQLite::Database& db, std::int64_t number) {
  SQLite::Statement rows(db, std::string(event_query) + "WHERE event.id = ?1");
  rows.bind(1, number);
  if (!rows.executeStep()) return std::nullopt;
  return read_row(rows);
}

base::Problem unknown_event(std::int64_t number) {
  return {.code = "event.unknown",
          .message = "There is no event " + std::to_string(number) + " in the log.",
          .found = std::to_string(number),
          .expected = "the number of an event, as `wetout record JOB` lists them"};
}

std::optional<EventRow> find_event(SQLite::Database& db, std::string_view token) {
  SQLite::Statement rows(db, std::string(event_query) + "WHERE event.token = ?1");
  bind_text(rows, 1, token);
  if (!rows.executeStep()) return std::nullopt;
  return read_row(rows);
}

std::vector<EventRow> read_events(SQLite::Database& db, std::string_view slug) {
  SQLite::Statement rows(db, std::string(event_query) + "WHERE slug = ?1 ORDER BY event.id");
  bind_text(rows, 1, slug);
  std::vector<EventRow> events;
  while (rows.executeStep()) events.push_back(read_row(rows));
  return events;
}

}  // namespace wetout::joblog
