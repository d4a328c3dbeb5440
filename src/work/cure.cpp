#include "wetout/work/cure.hpp"

#include <algorithm>
#include <utility>

#include "cure_answer.hpp"
#include "one_resin.hpp"
#include "room_air.hpp"
#include "wetout/files/answer_store.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

struct Around {
  time::History history;
  std::optional<units::Temperature> constant;
  std::optional<RoomHistory> weather;
};

base::Result<Around> air_around(const OneResin& resin, const CureRequest& request,
                                std::optional<time::Instant> start) {
  if (request.weather) {
    auto room = room_air(resin, *request.weather, start);
    if (!room) return tl::unexpected(room.error());
    time::History history = room->air_kelvin;
    return Around{std::move(history), std::nullopt, std::move(*room)};
  }
  const units::Temperature air = request.air.value_or(resin.shop.shop.air);
  if (auto problems = senseless_air(air, "cure.beyond_sense"); !problems.empty()) {
    return base::fail(std::move(problems));
  }
  return Around{time::History::constant(air.in_kelvin()), air, std::nullopt};
}

// What the weather has to say comes first: everything else follows from it.
void add(RoomHistory room, report::CureDocument& document) {
  document.weather = std::move(room.about);
  const bool comes_to_its_end =
      std::any_of(document.milestones.begin(), document.milestones.end(),
                  [](const report::CureMilestone& m) { return m.beyond_air || !m.reached; });
  if (!comes_to_its_end) {
    std::erase_if(room.notices, [](const base::Notice& notice) {
      return notice.code == "weather.repeated" || notice.code == "weather.beyond_sense";
    });
  }
  document.notices.insert(document.notices.begin(), room.notices.begin(), room.notices.end());
  document.assumptions.insert(document.assumptions.end(), room.assumptions.begin(),
                              room.assumptions.end());
}

}  // namespace

base::Result<CureAnswer> cure(const Workshop& workshop, const CureRequest& request) {
  const auto resin = find_resin(workshop, request.resin);
  if (!resin) return tl::unexpected(resin.error());
  std::optional<time::Instant> start;
  if (request.start) {
    auto named = request.start(resin->zone);
    if (!named) return tl::unexpected(named.error());
    start = *named;
  }
  auto around = air_around(*resin, request, start);
  if (!around) return tl::unexpected(around.error());
  files::AnswerStore cache(workshop.cache);
  const bool by_weather = around->weather.has_value();
  auto document = cure_answer(
      {.product = resin->product(),
       .air_kelvin = around->history,
       .start = start.value_or(resin->now),
       .start_named = start || by_weather,
       .known_until = by_weather ? std::optional(around->weather->known_until) : std::nullopt,
       .warm_box = request.warm_box,
       .zone = resin->zone},
      {}, &cache);
  if (!document) return base::fail(in_sheet(document.error(), *resin));
  document->air = around->constant;
  if (by_weather) add(std::move(*around->weather), *document);
  document->program = program();
  document->made = time::rfc3339(resin->now, resin->zone);
  return CureAnswer{std::move(*document), resin->shop.units, resin->zone};
}

}  // namespace wetout::work
