#include "joblog/shelf.hpp"

#include <SQLiteCpp/Column.h>

#include <algorithm>
#include <limits>
#include <tuple>

#include "joblog/ledger_words.hpp"
#include "joblog/log_impl.hpp"
#include "wetout/base/check.hpp"

namespace wetout::joblog {
namespace {

bool is_older(const std::unique_ptr<ShelfLot>& a, const std::unique_ptr<ShelfLot>& b) {
  return std::tie(a->received, a->label) < std::tie(b->received, b->label);
}

// Line by line, in the order they were booked.
void replay(SQLite::Statement& lines, ShelfLot& lot) {
  lot.balance = {};
  lines.reset();
  lines.bind(1, lot.id);
  while (lines.executeStep()) {
    apply(lot.balance, read_account(lines.getColumn(0)), read_account(lines.getColumn(1)),
          lines.getColumn(2).getInt64(), lines.getColumn(3).getInt64());
  }
}

// From sums alone, as most lots can be: received once, before anything was taken, never counted.
// False where it cannot.
bool sum_up(SQLite::Statement& sums, ShelfLot& lot) {
  constexpr std::int64_t never = std::numeric_limits<std::int64_t>::max();
  bool is_plain = true;
  std::int64_t receipt = never;
  std::int64_t first_other = never;
  sums.reset();
  sums.bind(1, lot.id);
  while (sums.executeStep()) {
    const Account source = read_account(sums.getColumn(0));
    const Account target = read_account(sums.getColumn(1));
    const std::int64_t quantity = sums.getColumn(3).getInt64();
    const std::int64_t minor = sums.getColumn(4).getInt64();
    const std::int64_t first = sums.getColumn(5).getInt64();
    const bool is_coming = target == Account::stock;
    if (source == Account::supplier) {
      is_plain = is_plain && sums.getColumn(2).getInt64() == 1;
      receipt = first;
      lot.balance.basis_quantity = quantity;
      lot.balance.basis_minor = minor;
    } else {
      is_plain = is_plain && target != Account::supplier && source != Account::adjustment &&
                 target != Account::adjustment;
      first_other = std::min(first_other, first);
    }
    if (source == Account::supplier || target == Account::supplier) {
      lot.bought += is_coming ? quantity : -quantity;
    }
    lot.balance.quantity += is_coming ? quantity : -quantity;
    lot.balance.minor += is_coming ? minor : -minor;
  }
  return is_plain && receipt <= first_other && receipt != never;
}

}  // namespace

ShelfLot* ShelfMaterial::find(std::string_view label) const {
  const auto lot = by_label.find(label);
  return lot == by_label.end() ? nullptr : lot->second;
}

ShelfLot* ShelfMaterial::find(std::int64_t lot_id) const {
  const auto lot =
      std::find_if(lots.begin(), lots.end(), [&](const auto& one) { return one->id == lot_id; });
  return lot == lots.end() ? nullptr : lot->get();
}

ShelfLot& ShelfMaterial::add(ShelfLot lot) {
  auto kept = std::make_unique<ShelfLot>(std::move(lot));
  const auto place = std::upper_bound(lots.begin(), lots.end(), kept, is_older);
  first_open = std::min(first_open, static_cast<std::size_t>(place - lots.begin()));
  ShelfLot& added = **lots.insert(place, std::move(kept));
  by_label.emplace(added.label, &added);
  return added;
}

void ShelfMaterial::receive_again(ShelfLot& lot, Instant received) {
  lot.received = received;
  std::sort(lots.begin(), lots.end(), is_older);
  first_open = 0;
}

void ShelfMaterial::move(ShelfLot& lot, Account source, Account target, std::int64_t amount,
                         std::int64_t minor) {
  apply(lot.balance, source, target, amount, minor);
  const bool is_coming = target == Account::stock;
  quantity += is_coming ? amount : -amount;
  if (source == Account::supplier || target == Account::supplier) {
    lot.bought += is_coming ? amount : -amount;
  }
  // A lot that was just added stands behind it already.
  if (is_coming && source != Account::supplier) first_open = 0;
}

ShelfMaterial& Shelf::material(const Material& wanted) {
  const auto known = materials_.find(wanted.slug);
  if (known != materials_.end()) return known->second;
  SQLite::Statement row(db_, "SELECT id, name, unit FROM material WHERE slug = ?1");
  bind_text(row, 1, wanted.slug);
  if (!row.executeStep()) return keep({.material = wanted});
  return keep(
      {.id = row.getColumn(0).getInt64(),
       .material = {wanted.slug, row.getColumn(1).getString(), read_unit(row.getColumn(2))}});
}

ShelfMaterial& Shelf::material_of(std::int64_t lot) {
  SQLite::Statement row(db_,
                        "SELECT material.id, slug, name, unit FROM lot"
                        " JOIN material ON material.id = lot.material WHERE lot.id = ?1");
  row.bind(1, lot);
  base::promise(row.executeStep(), "the lot is there");
  const auto known = materials_.find(row.getColumn(1).getString());
  if (known != materials_.end()) return known->second;
  return keep({.id = row.getColumn(0).getInt64(),
               .material = {row.getColumn(1).getString(), row.getColumn(2).getString(),
                            read_unit(row.getColumn(3))}});
}

ShelfMaterial& Shelf::keep(ShelfMaterial material) {
  if (material.id != 0) read_lots(material);
  std::string slug = material.material.slug;
  return materials_.emplace(std::move(slug), std::move(material)).first->second;
}

void Shelf::read_lots(ShelfMaterial& material) {
  SQLite::Statement rows(db_,
                         "SELECT id, label, batch, received, expires, width_um FROM lot"
                         " WHERE material = ?1 ORDER BY received, label");
  SQLite::Statement sums(db_,
                         "SELECT source, target, lines, quantity, minor, first FROM lot_sum"
                         " WHERE lot = ?1");
  SQLite::Statement lines(db_,
                          "SELECT source, target, quantity, minor FROM movement WHERE lot = ?1"
                          " ORDER BY entry, line");
  rows.bind(1, material.id);
  while (rows.executeStep()) {
    auto lot =
        std::make_unique<ShelfLot>(ShelfLot{.id = rows.getColumn(0).getInt64(),
                                            .label = rows.getColumn(1).getString(),
                                            .batch = rows.getColumn(2).getString(),
                                            .received = to_instant(rows.getColumn(3).getInt64()),
                                            .expires = read_date(rows.getColumn(4)),
                                            .width_um = read_number(rows.getColumn(5))});
    if (!sum_up(sums, *lot)) replay(lines, *lot);
    material.quantity += lot->balance.quantity;
    material.by_label.emplace(lot->label, lot.get());
    material.lots.push_back(std::move(lot));
  }
}

}  // namespace wetout::joblog
