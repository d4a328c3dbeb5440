// From boards, weather, room and hours to a setting. Pure: no files, no clock.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/climate/core.hpp"
#include "wetout/climate/defaults.hpp"
#include "wetout/climate/guard.hpp"
#include "wetout/climate/room.hpp"
#include "wetout/climate/weather.hpp"
#include "wetout/resin/answer_cache.hpp"
#include "wetout/resin/defaults.hpp"
#include "wetout/schedule/setting.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::schedule {

struct BoardAsked {
  BoardWork work;
  std::vector<Fact> facts = {};
  std::vector<FixedStart> fixed = {};
};

struct Asked {
  std::vector<BoardAsked> boards;
  laminate::Shop shop;
  climate::Weather weather;  ///< on the dates it is asked of, from well before `from`
  time::Instant issued;      ///< since when the forecast's lead counts
  climate::Guard guard = climate::Guard::normal;
  climate::Room room;
  time::Zone zone;
  std::vector<Person> people;
  std::vector<SharedThing> shared;
  time::Instant from, until;  ///< of starts and attended work; on the grid, inside the weather
  /// Air that was read off in the room, in kelvin, in order: where films are that were made.
  std::vector<time::HistoryPoint> recorded_air = {};
  Prefer prefer = Prefer::finish;
};

struct Assumed {
  StepDefaults steps;
  LimitDefaults limits;
  climate::ClimateDefaults climate;
  resin::Defaults resin;
};

/// What a board's core is, from the plan: its mean thickness.
struct CoreOf {
  climate::FoamKind foam = climate::FoamKind::eps;
  units::Length thickness;
  units::Duration lag;
};
CoreOf core_of(const laminate::BoardSummary& board, const climate::ClimateDefaults& defaults);

struct SetUp {
  Setting setting;
  std::vector<Conditions> conditions;  ///< of each board
  std::vector<CoreOf> cores;           ///< of each board
  /// From here on the last day of the weather repeats.
  time::Instant known_until;
  time::Instant air_until;  ///< the last point of the air of films
  base::Notices notices;
};

/// Problems: those of steps_of(), put_facts(), FilmSource::of(), conditions().
base::Result<SetUp> set_up(const Asked& asked, const Assumed& assumed, resin::AnswerCache* cache);

/// The hours of real days, of each person.
std::vector<PersonSpans> people_of(const Asked& asked);

}  // namespace wetout::schedule
