// An entry worked out against the shelf, before it is written.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "joblog/shelf.hpp"

namespace wetout::joblog {

struct DraftLine {
  Account source = Account::supplier;
  Account target = Account::stock;
  ShelfMaterial* material = nullptr;  ///< null: work
  ShelfLot* lot = nullptr;            ///< null: work
  std::optional<std::int64_t> job = {};
  std::string job_slug = {};
  std::string step = {};
  std::int64_t quantity = 0;
  std::int64_t minor = 0;
  bool expired = false;
  std::int64_t overdrawn = 0;
};

struct Draft {
  EntryKind kind = EntryKind::receive;
  EntryHead head = {};
  std::optional<std::int64_t> undoes = {};
  std::string currency = {};  ///< empty: no money in it
  std::vector<DraftLine> lines = {};
  std::vector<Shortage> shortages = {};
};

/// The job of an entry: its id, or nothing for one that is still to begin.
struct DraftJob {
  std::optional<std::int64_t> id = {};
  std::string slug = {};
  std::string step = {};
};

/// What is wrong goes to `problems`; the shelf is then no longer good. They throw
/// SQLite::Exception, and std::logic_error where what ledger.hpp asks for is not so.
Draft draft(const NewReceipt& receipt, Shelf& shelf, base::Problems& problems);
Draft draft(const NewUse& use, const DraftJob& job, Shelf& shelf, base::Problems& problems);
Draft draft(const NewWaste& waste, Shelf& shelf, base::Problems& problems);
Draft draft(const NewCount& count, Shelf& shelf, base::Problems& problems);
Draft draft(const NewLabour& labour, const DraftJob& job, base::Problems& problems);
/// `undone` is in the log, not an undo, and not undone.
Draft draft(const NewReversal& reversal, const EntryRow& undone, SQLite::Database& db,
            Shelf& shelf);

// Parts of them.

/// Takes goods from the shelf: the oldest lot that has some first, expired ones after the others,
/// what nobody has from the last; or all from the lot that is named.
void take(Draft& draft, const DraftLine& like, const Taking& taking, Shelf& shelf,
          base::Problems& problems);
/// With which the labels of kept pieces begin.
inline constexpr std::string_view remnant = "remnant ";
/// Takes a piece of a roll into a lot of its own.
void cut(Draft& draft, const Cut& cut, Shelf& shelf, base::Problems& problems);
/// The lot was past its last good day then.
bool is_expired(const ShelfLot& lot, Date on);
/// What of an entry's takings the shelf did not have.
void note_shortages(Draft& draft);
/// Takes the cost that is left of lots of the draft that came to nothing to adjustment.
void settle(Draft& draft);
/// The material as the shelf has it, after a look at its unit; null with a problem.
ShelfMaterial* find_material(const Material& material, Shelf& shelf, base::Problems& problems);
/// The lot of that label, or a problem.
ShelfLot* find_lot(const ShelfMaterial& material, const std::string& label,
                   base::Problems& problems);
/// The youngest lot; one of unknown origin is made where there is none.
ShelfLot& last_lot(ShelfMaterial& material, Instant at);
/// True when the amount lies between `least` and most_of_a_line; else a problem.
bool is_in_range(std::int64_t amount, std::int64_t least, const std::string& what,
                 const std::string& of, base::Problems& problems);

}  // namespace wetout::joblog
