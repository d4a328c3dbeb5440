// When to start each step of one or several boards, and all that is needed to check it: from this
// document alone another program can work out every film again and find each rule kept
// (docs/formats/schedule.md; tests/checker does).
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/climate/guard.hpp"
#include "wetout/climate/room.hpp"
#include "wetout/climate/weather.hpp"
#include "wetout/laminate/plan.hpp"
#include "wetout/report/weather_document.hpp"
#include "wetout/schedule/limits.hpp"
#include "wetout/time/zone.hpp"
#include "wetout/units/print.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::report {

inline constexpr std::string_view schedule_format = "wetout.schedule/1";

// Times are RFC 3339 in the shop's zone.

struct ScheduledJob {
  std::string id;
  std::string name;  ///< of the board
  int revision = 0;  ///< of the plan
  climate::FoamKind foam = climate::FoamKind::eps;
  units::Duration core_lag;              ///< behind the room's air
  units::Temperature core_at_start;      ///< at the first point of the weather
  std::optional<std::string> finish;     ///< end of the last attended step
  std::optional<std::string> ride_from;  ///< every film fully cured
};

struct Horizon {
  std::string from, until;
  units::Duration step;  ///< of the grid of starts, which begins at `from`
};

/// Straight between points. `room`, `room_dew_point`: as computed, unguarded.
struct ScheduleAir {
  std::string time;
  units::Temperature air;                       ///< outdoors
  std::optional<units::Temperature> dew_point;  ///< outdoors
  units::Temperature room;
  std::optional<units::Temperature> room_dew_point;
};

struct ScheduleWeather {
  std::string source;  ///< the file
  std::string sha256;  ///< of its bytes
  climate::WeatherKind kind = climate::WeatherKind::table;
  std::string place;
  bool placed = false;      ///< a past or typical year, on the dates around
  std::string known_until;  ///< beyond it the last 24 h repeat
  WeatherGuard guard;
  WeatherRoom room;
  bool sanding_room = false;
  std::vector<ScheduleAir> series;  ///< from the first known point to the last that was used
  std::vector<UnknownSpan> gaps;
};

struct TimeSpan {
  std::string from, to;  ///< `to` not included
};
/// One for each person.
struct ScheduleCalendar {
  std::string id;
  std::vector<TimeSpan> spans;  ///< over the horizon
};

/// kind: "person", "stand", "rack", "board" (one thing at a time is done to a board).
struct ScheduleResource {
  std::string id;
  std::string kind;
  int count = 1;
  std::optional<std::string> calendar;
};

/// An equivalent age at a temperature.
struct ClockLine {
  std::string name;  ///< a milestone's word
  units::Temperature at;
  units::Duration hours;
};
/// Rate constants and glass of docs/models/film.md.
struct FilmConstants {
  double k_per_s = 0.0, r = 0.0, m = 0.0, n = 0.0;
  units::Temperature reference;
  double gel_conversion = 0.0;
  units::Temperature tg_uncured, tg_cured;
  double lambda = 0.0;
  double delay_kelvin = 0.0, width_kelvin = 0.0;
  double trim_below_kelvin = 0.0, sandable_above_kelvin = 0.0;
  std::optional<units::Temperature> full_cure_tg;
  double patience = 0.0;
};
/// Polyester: gel times of a film at the dose that was taken.
struct GelLine {
  units::Temperature at;
  units::Duration gel;
};
struct ScheduleResin {
  std::string id;
  std::string name;
  double energy_kj_mol = 0.0;
  std::vector<ClockLine> milestones;
  std::optional<units::Duration> recoat_longest;
  std::optional<FilmConstants> film;  ///< epoxy
  std::vector<GelLine> gel;           ///< polyester
};

/// What a step holds: `amount` of a resource from its start until an event of its own: "start",
/// "end", a milestone's word; or until the start of another step ("job/coat/step").
struct StepUse {
  std::string id;
  int amount = 1;
  std::string until;
};
/// Of a film, gel, tack_free, handle, recoat_from, sandable, full_cure count from the end of its
/// wet; trim_until and recoat_until from its start, when the first batch is mixed.
/// `event` of step `id` comes before the start ("start") or the end ("end") of this step, as `of`
/// says, by at least `min_lag` and at most `max_lag`. `group`, `option`: only where that option is
/// chosen. `tight`: what is left before the greatest lag counts as slack. `good_film`: instead of a
/// lag, the film of `id` must not have been in the notice band.
struct StepAfter {
  std::string id;
  std::string event;  ///< "start", "end", a milestone's word
  std::string of;     ///< "start", "end"
  std::optional<units::Duration> min_lag, max_lag;
  std::optional<std::string> group, option;
  bool tight = false;
  bool good_film = false;
};
/// Kept from `from` until `until`, events of this step; `before` so long earlier than `from`.
struct StepLimit {
  schedule::Limit name = schedule::Limit::cold;
  std::string unit;  ///< "C", "K", "share"
  std::optional<double> min, max;
  std::string from, until;
  units::Duration before;
};
/// "clean" from the start until tack-free, "dusty" from start to end and a while after.
struct StepRoom {
  std::string mode;
  std::string until;  ///< an event of this step
  units::Duration after;
};

struct ScheduleStep {
  std::string id;  ///< "job/coat/step" or "job/step"
  std::string job;
  std::optional<std::string> coat;
  std::string step;                  ///< word, with its detail: "watch-30"
  std::optional<std::string> face;   ///< of the coat
  std::optional<std::string> resin;  ///< of a wet
  std::string title;                 ///< for people: "Wet out bottom lam"
  std::string how;                   ///< grits, what to look for; may be empty
  units::Duration attended;
  bool optional = false;  ///< takes place only under an option
  std::optional<std::string> group, option;
  std::vector<StepUse> resources;
  std::vector<StepAfter> after;
  std::vector<StepLimit> limits;
  std::optional<StepRoom> room;
};

/// Exactly one option of each group.
struct ScheduleChoice {
  std::string group;  ///< "job/coat/laps", "job/coat/ground", ...
  std::vector<std::string> options;
  std::optional<std::string> chosen;
  std::string text;  ///< for people, of what was chosen: "sanded instead of the window"
};

struct ResourceUse {
  std::string id;
  std::string from, to;
};
struct FilmMilestone {
  std::string name;
  std::string time;
  bool beyond_forecast = false;
};
/// `value` is the forecast's, at its worst; `slack` is left with the forecast moved the bad way.
/// For a window: minutes.
struct StepSlack {
  std::string limit;  ///< a Limit's word, or "window" with the step it follows in `of`
  std::string of;
  double value = 0.0;
  double bound = 0.0;
  std::string unit;  ///< "C", "K", "share", "min"
  std::string time;  ///< when it is worst
  double slack = 0.0;
  std::optional<double> breaks_at_kelvin;  ///< schedule::Tested
  /// Of a window: that it is still open then, 0 to 1 (schedule::WindowOdds).
  std::optional<double> chance = {};
};

enum class StepState { planned, fixed, done };
std::string_view to_string(StepState state);

struct TimelineStep {
  std::string id;
  StepState state = StepState::planned;
  std::string start, attended_until;
  std::string end;  ///< of a wet: tack-free; else as attended_until
  std::optional<std::string> who;
  std::optional<units::Temperature> room;  ///< at the start
  std::optional<units::TempDelta> dew_margin;
  std::optional<units::TempDelta> core_change;  ///< highest rise until gel
  std::vector<ResourceUse> uses;
  std::vector<FilmMilestone> milestones;  ///< of a wet, in order of time
  std::vector<StepSlack> slack;
  /// Of a wet that is still to come: the chance that the weather keeps its limits, 0 to 1
  /// (schedule::WeatherOdds).
  std::optional<double> chance_limits_hold;
};

/// Of a choice of starts: schedules are compared by these, in the order the caller preferred.
struct ScheduleObjective {
  std::string finish;      ///< start of the working span with the end of the last step
  std::vector<int> tight;  ///< items by tenths of their scale, 0 to 4
  int visits = 0;
};

/// Starts of a coat's wet: good, notice, refuse. `reason` in words: "too cold", "outside working
/// hours", "before bottom lam can be recoated".
struct CoatWindow {
  std::string job, coat, step;
  std::string from, to;
  schedule::State ok = schedule::State::good;
  std::optional<std::string> limit;  ///< a Limit's word, "hours", "order", "later"; null where good
  std::string reason;
};

struct StepStart {
  std::string id;
  std::string start;
};
struct Alternative {
  std::string what;  ///< for people: "bottom lam on Sat 13 Jun instead"
  std::string finish;
  ScheduleObjective objective;
  std::vector<StepStart> starts;
};

struct ChangedStep {
  std::string id;
  std::optional<std::string> was, now;
  std::string why;
};

/// change: "hours", "heater", "hardener", "until". `finish`: with it.
struct SmallestChange {
  std::string change;
  std::string value;  ///< for people and to be typed: "2026-06-15 18:00-22:45", "18.5 C", "quick"
  std::string text;   ///< a sentence
  std::string finish;
};

/// Nothing fits: why, and the smallest single change that makes it fit; null where none does.
struct Impossible {
  std::string why;                                         ///< for people
  std::optional<std::string> change, value, text, finish;  ///< of the smallest, as SmallestChange
  std::vector<SmallestChange> others;                      ///< the smallest of each other kind
};

struct ScheduleDocument {
  std::string program;  ///< "wetout 0.1.0"
  std::string made;     ///< RFC 3339 with offset
  int number = 0;       ///< in the log; 0 when not saved
  bool saved = false;
  std::string prefer;  ///< "finish", "slack", "visits"
  std::vector<ScheduledJob> jobs;
  Horizon horizon;
  ScheduleWeather weather;
  std::vector<ScheduleCalendar> calendars;
  std::vector<ScheduleResource> resources;
  std::vector<ScheduleResin> resins;
  std::vector<ScheduleStep> steps;  ///< all that may take place, in the order of the work
  std::vector<ScheduleChoice> choices;
  std::vector<TimelineStep> timeline;  ///< in order of start; empty when nothing fits
  std::optional<std::string> finish, ride_from;
  std::optional<ScheduleObjective> objective;
  bool optimal = false;
  std::optional<std::string> bound;    ///< no schedule of this model finishes in an earlier span
  std::optional<double> gap;           ///< of the total finish hours of several boards
  std::string bound_leaves_out;        ///< empty when proved
  std::optional<std::string> stopped;  ///< "interrupted", "time"
  std::vector<CoatWindow> windows;
  std::vector<Alternative> alternatives;
  std::vector<ChangedStep> changed;
  std::optional<int> changed_since;  ///< number of the schedule compared with
  std::optional<Impossible> impossible;
  std::vector<laminate::Assumption> assumptions;
  std::vector<laminate::Caution> cautions;
  base::Notices notices;
};

/// One line; docs/formats/schedule.schema.json.
std::string to_json(const ScheduleDocument& document);
/// Reads what to_json wrote; problems as for read_plan().
base::Result<ScheduleDocument> read_schedule(std::string_view json);

/// Days, hours worked, steps, cure bars, temperature and dew-point margin, 80 columns. Clock times
/// as on a wall of `zone`.
std::string to_text(const ScheduleDocument& document, units::System system, const time::Zone& zone);

}  // namespace wetout::report
