#include "schedule_sample.hpp"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <utility>

#include "schedule_sample_parts.hpp"

namespace wetout::report::sample {
namespace {

using schedule::Limit;
using schedule::State;
using std::chrono::hours;
using std::chrono::minutes;
using time::Instant;
using units::TempDelta;
using units::Temperature;

ScheduledJob job(const char* id, const char* name, int revision, Instant finish, Instant ride) {
  return {id,
          name,
          revision,
          climate::FoamKind::eps,
          units::minutes(11.9),
          Temperature::celsius(21.5),
          text(finish),
          text(ride)};
}

void add_board(ScheduleDocument& document, const std::string& id, const std::string& who) {
  Board board(document, id, who);
  using enum StepState;
  board.step(
      {"", "acclimatise", "Bring board, cloth and resin into the room", "", june(13, 14), 10},
      done);
  board.step({"", "spackle", "Spackle dents and torn foam",
              "water-based filler, flush; dries 4 h, then 120", june(13, 14, 10), 15},
             done);
  board.step({"bottom-lam", "prepare", "Prepare bottom lam",
              "blow off dust, lay out and cut cloth, tape the deck for cut laps", june(15, 18),
              25});
  board.wet({"bottom-lam", "wet", "Wet out bottom lam", "face first, then rails and laps",
             june(15, 18, 25), 20},
            slow,
            {slack("dew_margin", 4.1, 3.0, "K", june(16, 4, 10), 0.35, 1.1),
             slack("humidity", 0.64, 0.75, "share", june(16, 4, 10), 0.07, -1.9)});
  board.watch("bottom-lam", "bottom lam", june(15, 18, 45));
  board.optional({"bottom-lam", "trim", "Trim the laps of bottom lam",
                  "fresh blade, along the tape", june(15, 21), 15},
                 "laps", "trim");
  board.step({"bottom-lam", "feather", "Grind the laps of bottom lam to the line",
              "60-80 grit, feather the edge", june(17, 18), 25});
  board.step({"deck-lam", "flip", "Flip the board, deck up", "padded stands", june(17, 18, 25), 5});
  board.step({"deck-lam", "wash-laps", "Wash the lap band on the bottom",
              "clean water, abrasive pad, dry", june(17, 18, 30), 10});
  board.step({"deck-lam", "scuff-laps", "Scuff the lap band on the bottom",
              "80 grit, dull all over", june(17, 18, 40), 10});
  board.step({"deck-lam", "prepare", "Prepare deck lam", "dust off, lay out patch, inlay, cloth",
              june(17, 18, 50), 30});
  board.wet({"deck-lam", "wet", "Wet out deck lam", "patch and inlay first, then the full ply",
             june(17, 19, 20), 30},
            slow,
            {slack("dew_margin", 3.9, 3.0, "K", june(18, 4), 0.05, 0.85),
             slack("cold", 19.4, 16, "C", june(18, 4), 2.2, 3.4)},
            fixed);
  board.watch("deck-lam", "deck lam", june(17, 19, 50));
  board.step({"twin-boxes", "flip", "Flip the board, bottom up", "", june(19, 17), 5});
  board.step({"twin-boxes", "prepare", "Rout twin boxes", "template taped down, dust extraction",
              june(19, 17, 5), 40});
  board.wet({"twin-boxes", "wet", "Set twin boxes", "fill, press home, level, wipe",
             june(19, 18, 15), 15},
            quick, {slack("core_rise", 0.3, 1, "K", june(19, 19, 0), 0.7, 0.7)});
  board.watch("twin-boxes", "twin boxes", june(19, 18, 30));
  board.step({"twin-boxes", "sand", "Sand twin boxes flush", "80 grit", june(20, 14), 10});
  board.step({"bottom-hotcoat", "wash", "Wash the bottom", "clean water, abrasive pad, dry",
              june(20, 14, 10), 15});
  board.step({"bottom-hotcoat", "scuff", "Scuff the bottom", "80 grit, dull all over",
              june(20, 14, 25), 25});
  board.step({"bottom-hotcoat", "prepare", "Prepare bottom hotcoat", "dust, tape the rail line",
              june(20, 15), 15});
  board.wet({"bottom-hotcoat", "wet", "Pour bottom hotcoat", "one pour, brush out lengthwise",
             june(20, 15, 20), 10},
            slow,
            {slack("core_rise", 0.9, 2.0, "K", june(20, 17, 10), 1.1, 1.1),
             slack("humidity", 0.66, 0.75, "share", june(20, 15, 20), 0.02, 0.6)});
  board.watch("bottom-hotcoat", "bottom hotcoat", june(20, 15, 30));
  board.step({"deck-hotcoat", "flip", "Flip the board, deck up", "", june(22, 18), 5});
  board.step({"deck-hotcoat", "wash", "Wash the deck", "clean water, abrasive pad, dry",
              june(22, 18, 5), 15});
  board.step(
      {"deck-hotcoat", "scuff", "Scuff the deck", "80 grit, dull all over", june(22, 18, 20), 25});
  board.wet({"deck-hotcoat", "wet", "Pour deck hotcoat", "one pour, brush out lengthwise",
             june(22, 19, 15), 10},
            slow, {slack("dew_margin", 6.4, 3.0, "K", june(23, 5), 1.2, 3.4)});
  board.inside_window("bottom-hotcoat", "ground");
  board.watch("deck-hotcoat", "deck hotcoat", june(22, 19, 25));
  board.step({"bottom-hotcoat", "open", "Open twin boxes", "blade and 120 grit", june(24, 18), 10});
  board.step(
      {"bottom-hotcoat", "sand", "Sand the bottom", "80, 120, 150-220", june(24, 18, 10), 60});
  board.step({"deck-hotcoat", "sand", "Sand the deck", "80, 120, 150-220", june(24, 19, 10), 60});
  board.step({"", "spot", "Fill pinholes and sand-throughs", "a dab of mixed resin",
              june(24, 20, 40), 15});
  board.step({"", "weigh", "Weigh the board", "", june(24, 20, 55), 5});
}

}  // namespace

ScheduleDocument schedule() {
  ScheduleDocument document = schedule_header();
  document.jobs = {job("pico-5-4", "Pico 5-4", 2, june(24, 21), june(31, 16, 55))};
  add_hours(document, "you", 18);
  document.resources.push_back({"board:pico-5-4", "board", 1, {}});
  add_board(document, "pico-5-4", "you");
  add_windows(document, "pico-5-4");
  document.choices = {{"pico-5-4/bottom-lam/laps",
                       {"trim", "grind", "free"},
                       "grind",
                       "laps of bottom lam ground once sandable: its trim window closes at night"},
                      {"pico-5-4/deck-lam/ground",
                       {"window", "scuffed"},
                       "scuffed",
                       "lap band washed and scuffed instead of the recoat window of bottom lam"},
                      {"pico-5-4/deck-lam/nothing", {"one", "two"}, {}, ""}};
  document.finish = text(june(24, 21));
  document.ride_from = text(june(31, 16, 55));
  document.objective = ScheduleObjective{text(june(24, 18)), {1, 1, 0, 0, 1}, 7};
  document.optimal = true;
  document.bound = text(june(24, 18));
  document.gap = 0.0;
  document.alternatives = {{"deck lam on Fri 19 Jun instead",
                            text(june(24, 21)),
                            {text(june(24, 18)), {2, 1, 0, 0, 1}, 6},
                            {{"pico-5-4/deck-lam/wet", text(june(19, 18, 40))},
                             {"pico-5-4/twin-boxes/wet", text(june(20, 14, 40))}}},
                           {"with the most room to spare",
                            text(june(26, 20, 10)),
                            {text(june(26, 18)), {0, 0, 0, 1, 1}, 8},
                            {{"pico-5-4/deck-lam/wet", text(june(22, 19, 5))}}}};
  document.changed = {
      {"pico-5-4/deck-lam/wet", text(june(17, 18, 40)), text(june(17, 19, 20)), "fixed"},
      {"pico-5-4/bottom-lam/trim", text(june(15, 21, 40)), {}, "laps are ground instead"},
      {"pico-5-4/bottom-lam/feather", {}, text(june(17, 18)), "laps are ground instead"}};
  document.changed_since = 3;
  document.notices = {{.code = "weather.beyond",
                       .text = "some films are followed beyond the forecast, by its last day",
                       .subject = {},
                       .value = 104,
                       .limit = {},
                       .unit = "h"}};
  return document;
}

ScheduleDocument schedule_of_two() {
  ScheduleDocument document = schedule_header();
  document.made = text(june(13, 13, 30));
  document.number = 0;
  document.saved = false;
  document.prefer = "slack";
  document.jobs = {job("pico-5-4", "Pico 5-4", 2, june(24, 21), june(31, 16, 55)),
                   job("faial-9-0", "Faial 9-0", 1, june(22, 19, 30), june(30, 11))};
  document.resins.push_back(schedule_resin(quick, "A clear polyester", true));
  document.resins.back().id = "clear";
  document.resins.front().film->full_cure_tg.reset();
  add_hours(document, "ana", 18);
  add_hours(document, "ben", 17);
  add_board(document, "pico-5-4", "ana");
  for (TimelineStep& step : document.timeline) step.state = StepState::planned;
  Board other(document, "faial-9-0", "ben");
  other.step({"bottom-lam", "prepare", "Prepare bottom lam", "", june(15, 17, 40), 30});
  other.wet({"bottom-lam", "wet", "Wet out bottom lam", "", june(15, 18, 30), 40}, slow,
            {slack("window", 40, 0, "min", june(16, 14), 95, {}, "faial-9-0/bottom-lam/wet")});
  other.watch("bottom-lam", "bottom lam", june(15, 19, 10));
  other.step({"bottom-lam", "trim", "Trim the laps of bottom lam", "fresh blade, along the tape",
              june(16, 2), 15});
  document.steps.back().after.push_back(
      {"faial-9-0/bottom-lam/wet", "trim_until", "end", {}, units::minutes(0), {}, {}, true});
  other.wet({"deck-hotcoat", "wet", "Pour deck hotcoat", "", june(22, 19, 15), 15}, slow, {});
  std::stable_sort(document.timeline.begin(), document.timeline.end(),
                   [](const auto& a, const auto& b) { return a.start < b.start; });
  document.choices = {};
  document.finish = text(june(24, 21));
  document.ride_from = text(june(31, 16, 55));
  document.objective = ScheduleObjective{text(june(24, 18)), {0, 2, 0, 0, 1}, 11};
  document.bound = text(june(24, 18));
  document.gap = 0.046;
  document.bound_leaves_out = "people, clean and dusty hours of the room";
  document.stopped = "time";
  return document;
}

ScheduleDocument schedule_impossible() {
  ScheduleDocument document = schedule_header();
  document.made = text(june(13, 13, 30));
  document.number = 0;
  document.saved = false;
  document.jobs = {job("pico-5-4", "Pico 5-4", 2, june(24, 21), june(31))};
  document.jobs[0].finish.reset();
  document.jobs[0].ride_from.reset();
  add_hours(document, "you", 18);
  add_board(document, "pico-5-4", "you");
  document.timeline.clear();
  add_windows(document, "pico-5-4");
  document.impossible = Impossible{
      "deck hotcoat cannot be wet out before the weather ends: every evening from Wed 17 Jun on "
      "is too near the dew point, and Saturdays warm the core",
      "hours",
      "2026-06-15 18:00-22:45",
      "Work until 22:45 on Mon 15 Jun, 45 min longer",
      text(june(24, 21)),
      {{"heater", "18.5 C", "Hold the room at 18.5 C or more", text(june(24, 20, 40))},
       {"hardener", "quick", "Take quick instead of slow for deck hotcoat", text(june(24, 19))},
       {"until", "2026-07-04 00:00", "Look a week further", text(june(32, 19, 40))}}};
  return document;
}

ScheduleDocument schedule_bare() {
  ScheduleDocument document = schedule_header();
  document.number = 0;
  document.saved = false;
  document.jobs = {job("pico-5-4", "Pico 5-4", 0, june(24, 21), june(31))};
  document.jobs[0].finish.reset();
  document.jobs[0].ride_from.reset();
  for (ScheduleAir& air : document.weather.series) {
    air.dew_point.reset();
    air.room_dew_point.reset();
  }
  document.weather.place.clear();
  document.weather.gaps = {{text(june(14, 3)), text(june(14, 9)), "humidity"}};
  document.weather.room = {climate::RoomKind::heated, units::hours(2.5), Temperature::celsius(18),
                           climate::HeaterKind::electric, 0.6};
  Board board(document, "pico-5-4", "you");
  board.wet({"deck-lam", "wet", "Wet out deck lam", "", june(15, 18, 30), 20}, slow, {});
  document.steps.back().resin.reset();
  document.timeline.back().who.reset();
  document.timeline.back().room.reset();
  document.timeline.back().dew_margin.reset();
  document.timeline.back().core_change.reset();
  document.timeline.back().chance_limits_hold.reset();
  document.timeline.back().milestones.clear();
  document.steps.back().limits.clear();
  document.steps.back().room.reset();
  document.impossible = Impossible{"nothing fits, and no single change helps", {}, {}, {}, {}, {}};
  document.notices = {{.code = "schedule.time",
                       .text = "looked for no longer than was asked",
                       .subject = {},
                       .value = 2,
                       .limit = 2,
                       .unit = "min"}};
  document.assumptions.clear();
  document.cautions.clear();
  return document;
}

}  // namespace wetout::report::sample
