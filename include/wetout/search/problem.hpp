// What is to be timed: operations, what must lie between them, what they need.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "wetout/search/bits.hpp"

namespace wetout::search {

/// A slot for every start 0 .. horizon-1 of the operation that the table belongs to. Times may lie
/// beyond the horizon; they need not rise with the start. Magnitudes stay below 2^28.
struct Table {
  std::vector<Slot> at = {};
};

/// A Slot is an offset, the same for every start; a Table holds absolute slots.
using Map = std::variant<Slot, Table>;

/// Something that happens once an operation has been started: tack-free, handle, end of wet-out.
/// Never before its start.
struct Event {
  std::string name = {};
  Map at = Slot{0};
};

inline constexpr int at_start = -1;  ///< the start itself
inline constexpr int at_end = -2;    ///< the end of the attended part

/// An event of an operation: `event` is at_start, at_end or an index into Operation::events.
struct EventRef {
  int op = -1;
  int event = at_start;
};

/// One option of a group; group -1 means "always". What has a `when` exists only when that option
/// is chosen.
struct Option {
  int group = -1;
  int option = -1;
  friend bool operator==(const Option&, const Option&) = default;
};

/// Exactly one of `options` is chosen when the group itself exists.
struct Group {
  std::string id = {};
  int options = 2;
  Option when = {};  ///< of a group that comes before this one
};

inline constexpr std::uint8_t not_tight = 255;

/// How tight an operation is for each start, one item of the count of tight limits: 0 is tightest.
struct Tightness {
  std::vector<std::uint8_t> level = {};  ///< one per start
};

struct Operation {
  std::string id = {};
  Map attended = Slot{0};  ///< end of the attended part
  Bits allowed = {};       ///< starts; size 0 allows all
  int calendar = -1;       ///< the attended part lies within one span of it
  std::vector<Event> events = {};
  std::vector<Tightness> tightness = {};
  Option when = {};
};

/// `to` is at least `min` and at most `max` after `from`. An offset counts from the event `from`; a
/// table gives the absolute slot for each start of the operation of `from`.
struct Lag {
  EventRef from = {};
  EventRef to = {};
  std::optional<Map> min = {};
  std::optional<Map> max = {};
  Slot scale = 0;  ///< above 0: what is left before `max` is an item of the count of tight limits
  Option when = {};
};

/// The starts of `b` that go with each start of `a`, where no interval says it. Called once per
/// start; the answer has the size of the horizon.
struct Relation {
  int a = -1;
  int b = -1;
  std::function<Bits(Slot)> allowed = {};
  Option when = {};
};

/// Spans [first, second), in order, not touching.
struct Calendar {
  std::vector<std::pair<Slot, Slot>> spans = {};
};

/// So many of a resource are not to be had in [from, until).
struct Away {
  Slot from = 0;
  Slot until = 0;
  int amount = 1;
};

/// `count` of them exist, fewer while some are away; only within one span of `calendar` at a time
/// (-1: always) can they be held. With some away the problem must be a chain, or parts that are.
struct Resource {
  std::string id = {};
  int count = 1;
  int calendar = -1;
  std::vector<Away> away = {};
};

/// `amount` of a resource from one event up to (not including) another. Nothing is held when `to`
/// is not after `from`.
struct Hold {
  int resource = -1;
  int amount = 1;
  EventRef from = {};
  EventRef to = {};
  Option when = {};
};

/// A room is in `mode` from one event until `after` slots past another. Different modes of one room
/// never overlap.
struct RoomMode {
  int room = 0;
  int mode = 0;
  EventRef from = {};
  EventRef to = {};
  Slot after = 0;
  Option when = {};
};

/// An operation starts at one of the slots 0 .. horizon-1.
struct Problem {
  Slot horizon = 0;
  std::vector<Operation> ops = {};
  std::vector<Lag> lags = {};
  std::vector<Relation> relations = {};
  std::vector<Group> groups = {};
  std::vector<Calendar> calendars = {};
  std::vector<Resource> resources = {};
  std::vector<Hold> holds = {};
  std::vector<RoomMode> modes = {};
};

/// Throws std::logic_error naming what is malformed: an index out of range, a table of another size
/// than the horizon, an event before its start, spans out of order.
void check(const Problem& problem);

}  // namespace wetout::search
