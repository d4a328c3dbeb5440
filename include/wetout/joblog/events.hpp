// What was recorded of the work on a board, fact by fact.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/joblog/moment.hpp"
#include "wetout/units/milligrams.hpp"

namespace wetout::joblog {

enum class EventKind {
  mixed,       ///< resin was mixed: mass, mostly with its parts
  left,        ///< left over in the cup: mass
  spilled,     ///< lost otherwise: mass
  started,     ///< the step began
  done,        ///< the step is finished
  milestone,   ///< a film has come so far
  conditions,  ///< air temperature, humidity, or both
  note,
  undo,  ///< takes an earlier event back
};
/// "mixed", "left" ...: the words of the log.
std::string_view to_string(EventKind kind);

/// Facts besides kind, time and step. Which of them go with which kind: a mass with mixed, left and
/// spilled; parts (both or neither, together not above the mass) with mixed only; a milestone with
/// milestone; air or humidity or both with conditions; a note with note, and with any other.
struct Facts {
  std::optional<units::Milligrams> mass = {};  ///< not negative; of mixed, above zero
  std::optional<units::Milligrams> part_a = {};
  std::optional<units::Milligrams> part_b = {};
  std::string milestone = {};  ///< "gel", "tack_free" ...; empty: none
  std::optional<std::int64_t> air_millikelvin = {};
  std::optional<std::int64_t> humidity_ppm = {};  ///< of saturation, 0 to 1 000 000
  std::string note = {};                          ///< empty: none
  friend bool operator==(const Facts&, const Facts&) = default;
};

struct NewEvent {
  /// Unique in the log, made by whoever records. Sent a second time it is the same event again.
  std::string token = {};
  EventKind kind = EventKind::note;  ///< not undo
  /// As schedule::to_string writes it: "bottom-lam/wet". Empty only with conditions and note.
  std::string step = {};
  Instant at = {};  ///< when it happened
  Facts facts = {};
};

/// Several facts of one job, kept all or none.
struct NewEvents {
  std::string job_slug = {};  ///< base::is_slug
  /// The name under which to begin the job when the log does not know it; without it an unknown
  /// job is a Problem.
  std::optional<std::string> begin_as = {};
  Instant recorded = {};
  std::vector<NewEvent> events = {};  ///< at least one; tokens differ
};

/// Takes one event back.
struct NewUndo {
  std::string token = {};
  std::int64_t number = 0;  ///< of the event to take back
  Instant recorded = {};
  std::string note = {};  ///< why; empty: none
};

struct EventRow {
  std::int64_t number = 0;  ///< 1, 2, 3 ... in the whole log
  std::string token = {};
  std::string job_slug = {};
  EventKind kind = EventKind::note;
  std::string step = {};  ///< empty: of the whole job; of an undo: as of what it takes back
  Instant at = {};
  Instant recorded = {};
  Facts facts = {};
  std::optional<std::int64_t> undoes = {};     ///< of an undo: what it takes back
  std::optional<std::int64_t> undone_by = {};  ///< the undo that took it back
  bool counts = true;                          ///< for what is learned; see Log::set_lesson
};

struct RecordedEvent {
  EventRow row = {};
  bool already = false;  ///< its token was there before: nothing was added
};

/// Whether an event counts for what is learned.
struct Lesson {
  EventRow row = {};     ///< as it is now
  bool already = false;  ///< it was so before: nothing was added
};
struct RecordedEvents {
  std::vector<RecordedEvent> events = {};  ///< in the order given
  bool began = false;                      ///< the job is new
  bool brought_back = false;               ///< the job was archived and is not any more
};

struct RecordedUndo {
  RecordedEvent undo = {};
  EventRow undone = {};  ///< what was taken back
};

}  // namespace wetout::joblog
