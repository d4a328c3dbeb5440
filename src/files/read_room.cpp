// [room]: what follows the weather, and how far it is held.
#include <optional>
#include <string>
#include <utility>

#include "shop_parts.hpp"

namespace wetout::files {
namespace {

using climate::HeaterKind;
using climate::RoomKind;

constexpr Word<RoomKind> room_kinds[] = {{"outdoors", RoomKind::outdoors},
                                         {"unheated", RoomKind::unheated},
                                         {"heated", RoomKind::heated}};
constexpr Word<HeaterKind> heater_kinds[] = {{"electric", HeaterKind::electric},
                                             {"vented", HeaterKind::vented},
                                             {"unvented gas", HeaterKind::unvented_gas}};
constexpr std::string_view heater_example = R"({ kind = "electric", minimum = "18 C" })";

std::optional<climate::Heater> heater_of(Fields& room, Must must) {
  auto fields = room.subtable("heater", heater_example, must);
  if (!fields) return std::nullopt;
  const auto kind = fields->choice("kind", heater_kinds, Must::be_there);
  const auto minimum = fields->quantity("minimum", measures::air, must);
  fields->done();
  if (!kind || !minimum) return std::nullopt;
  return climate::Heater{*kind, *minimum};
}

std::optional<double> humidity_max_of(Fields& room) {
  auto fields = room.subtable("dehumidifier", R"({ rh_max = "55 %" })");
  if (!fields) return std::nullopt;
  const auto share = fields->quantity("rh_max", measures::humidity, Must::be_there);
  fields->done();
  return share;
}

}  // namespace

void read_room(Fields& root, ShopFile& shop) {
  auto fields = root.subtable("room", "[room]");
  if (!fields) return;
  climate::Room& room = shop.room;
  if (const auto kind = fields->choice("kind", room_kinds, Must::be_there)) room.kind = *kind;
  const bool heated = room.kind == RoomKind::heated;
  room.lag = fields->quantity("lag", measures::lag);
  room.heater = heater_of(*fields, heated ? Must::be_there : Must::not_be_there);
  room.humidity_max = humidity_max_of(*fields);
  room.sanding_room = fields->flag("sanding_room").value_or(false);

  // Somebody who moves out for the summer need not take the lines of the garage away.
  const auto unused = [&](std::string_view key, std::string text) {
    if (!fields->has(key)) return;
    shop.notices.push_back({.code = "room.unused", .text = std::move(text)});
  };
  if (!heated) unused("heater", "the room's heater is not used: its kind is not \"heated\"");
  if (room.kind == RoomKind::outdoors) {
    unused("lag", "the room's lag is not used: its kind is \"outdoors\"");
    unused("dehumidifier", "the room's dehumidifier is not used: its kind is \"outdoors\"");
  }
  fields->done();
}

}  // namespace wetout::files
