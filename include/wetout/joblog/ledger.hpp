// What is booked: goods and their cost going from one place to another, and work.
//
// Quantities are whole units of the material: milligrams, micrometres of length on the roll (at the
// lot's width), pieces. Money is whole minor units (cents) of the one currency of the log.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/joblog/moment.hpp"
#include "wetout/units/money.hpp"

namespace wetout::joblog {

using Date = std::chrono::year_month_day;

/// The largest quantity and the largest sum of money of one line: a thousand tonnes, a thousand
/// kilometres, ten thousand million dollars.
inline constexpr std::int64_t most_of_a_line = 1'000'000'000'000;

enum class MaterialUnit {
  milligram,   ///< "mg"
  micrometre,  ///< "um"
  piece,       ///< "piece"
};
/// The words of the log.
std::string_view to_string(MaterialUnit unit);

/// Everything that is bought and used up. The log keeps the slug and the unit for good, and the
/// name that was given last.
struct Material {
  std::string slug = {};  ///< base::is_slug
  std::string name = {};  ///< not empty
  MaterialUnit unit = MaterialUnit::milligram;
  friend bool operator==(const Material&, const Material&) = default;
};

/// Where goods and their cost lie. Goods pass through stock; work goes from labour to a board.
enum class Account { supplier, stock, board, waste, adjustment, labour };
/// "supplier", "stock" ...: the words of the log.
std::string_view to_string(Account account);

enum class EntryKind {
  receive,  ///< bought: from the supplier into stock
  use,      ///< from stock into a board
  waste,    ///< from stock, lost
  count,    ///< what is really there: the difference to or from adjustment
  labour,   ///< work on a board, in minutes
  undo,     ///< takes an earlier entry back
};
/// "receive", "use" ...: the words of the log.
std::string_view to_string(EntryKind kind);

/// What every entry says besides its goods.
struct EntryHead {
  /// Unique in the log, made by whoever books. Sent a second time it is the same entry again.
  std::string token = {};
  Instant at = {};  ///< when it happened
  /// The day of `at` on the shop's calendar. Months, the labels that are made, and what has expired
  /// go by it.
  Date on = {};
  Instant recorded = {};
  /// The recorded event that it came from; must be in the log.
  std::optional<std::int64_t> event = {};
  std::string note = {};  ///< empty: none
};

/// One container or roll that came in: a lot, with its own cost.
struct Received {
  Material material = {};
  std::int64_t quantity = 0;    ///< above zero
  std::int64_t cost_minor = 0;  ///< not negative
  /// What it is called, unique in its material, up to 64 characters; empty: the day makes one,
  /// "2026-06-13", then "2026-06-13-2".
  std::string lot = {};
  std::string batch = {};  ///< the maker's; empty: none
  /// The last day on which it is good.
  std::optional<Date> expires = {};
  std::optional<std::int64_t> width_um = {};  ///< of a roll
};

struct NewReceipt {
  EntryHead head = {};
  std::string currency = {};         ///< ISO 4217; empty only when nothing costs anything
  std::vector<Received> parts = {};  ///< at least one; those of a kit get shares by split_price()
};

/// Shares of a price in proportion to weights, to the last minor unit: each is the exact share
/// rounded down, and what is left goes one by one to the largest remainders, the first of equals
/// first. The price is not negative, nor is a weight; not all weights are zero.
std::vector<std::int64_t> split_price(std::int64_t minor, const std::vector<std::int64_t>& weights);

struct Taking {
  Material material = {};
  std::int64_t quantity = 0;  ///< above zero
  /// From this lot and no other, whatever it has; empty: the oldest first (see Log::book).
  std::string lot = {};
};

struct NewUse {
  EntryHead head = {};
  std::string job_slug = {};
  std::string step = {};             ///< as events name it: "bottom-lam/wet"; empty: of no step
  std::vector<Taking> takings = {};  ///< at least one
};

struct NewWaste {
  EntryHead head = {};
  std::vector<Taking> takings = {};  ///< at least one
};

struct Counted {
  Material material = {};
  std::int64_t quantity = 0;  ///< that is really there, not negative
  std::string lot = {};       ///< of this lot alone; empty: of all lots together
};

/// A piece of a roll that becomes a lot of its own, "remnant 2026-06-13", at the cost of what the
/// roll gives for it.
struct Cut {
  Material material = {};
  std::int64_t quantity = 0;  ///< off the roll, above zero
  std::string lot = {};       ///< of this roll; empty: of the oldest that has so much and is good
  std::int64_t length = 0;    ///< of the piece, above zero
  std::int64_t width_um = 0;  ///< of the piece, above zero
};

struct NewCount {
  EntryHead head = {};
  std::vector<Counted> counts = {};  ///< at least one; a material, or a lot of it, once
  std::vector<Cut> cuts = {};        ///< or at least one of these, and no counts
};

struct NewLabour {
  EntryHead head = {};
  std::string job_slug = {};
  std::string step = {};  ///< empty: of no step
  std::int64_t minutes = 0;
  std::int64_t cost_minor = 0;  ///< minutes and cost not negative, not both zero
  std::string currency = {};    ///< empty only when it costs nothing
};

/// Takes one entry back by a new one with its movements turned round, dated as the old one is: its
/// month reads as if it had never been.
struct NewReversal {
  std::string token = {};
  std::int64_t number = 0;  ///< of the entry to take back
  Instant recorded = {};
  std::optional<std::int64_t> event = {};  ///< the recorded event that it came from
  std::string note = {};                   ///< why; empty: none
};

using NewEntry = std::variant<NewReceipt, NewUse, NewWaste, NewCount, NewLabour, NewReversal>;

/// One line of an entry.
struct MovementRow {
  Account source = Account::supplier;
  Account target = Account::stock;
  std::string material = {};  ///< slug; empty: work
  std::string lot = {};       ///< label; empty: work
  std::string job_slug = {};  ///< empty: no board in it
  std::string step = {};      ///< empty: none
  std::int64_t quantity = 0;  ///< units of the material; of work, minutes
  std::int64_t minor = 0;     ///< what it costs
  /// Of a taking: the lot was past its date, as the log describes it now.
  bool expired = false;
  /// Of a taking: how much of it the lot did not have.
  std::int64_t overdrawn = 0;
  friend bool operator==(const MovementRow&, const MovementRow&) = default;
};

struct EntryRow {
  std::int64_t number = 0;  ///< 1, 2, 3 ... in the whole log
  std::string token = {};
  EntryKind kind = EntryKind::receive;
  Instant at = {};
  Date on = {};
  Instant recorded = {};
  std::optional<std::int64_t> event = {};
  std::optional<std::int64_t> undoes = {};     ///< of an undo: what it takes back
  std::optional<std::int64_t> undone_by = {};  ///< the undo that took it back
  std::string note = {};
  std::vector<MovementRow> lines = {};  ///< `expired` and `overdrawn` are not filled in
};

/// More was taken than the log knows to be there: a purchase is not in it, or a count is due.
struct Shortage {
  std::string material = {};  ///< slug
  std::int64_t quantity = 0;  ///< of what was taken in this entry, how much all lots did not have
  friend bool operator==(const Shortage&, const Shortage&) = default;
};

struct Booked {
  std::int64_t number = 0;
  bool already = false;                  ///< its token was there before: nothing was added
  std::vector<MovementRow> lines = {};   ///< one for each lot, in the order taken
  std::vector<Shortage> shortages = {};  ///< of takings, one for each material
};

}  // namespace wetout::joblog
