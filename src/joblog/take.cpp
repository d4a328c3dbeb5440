// Goods off the shelf, first in, first out.
#include <algorithm>
#include <map>

#include "joblog/draft.hpp"
#include "wetout/base/check.hpp"

namespace wetout::joblog {
namespace {

// A piece that was kept is narrower than the roll: it is taken by its name only.
bool is_piece(const ShelfLot& lot) { return lot.bought == 0 && lot.label.starts_with(remnant); }

/// Takes from lots and writes a line for each.
class Taker {
 public:
  Taker(Draft& draft, const DraftLine& like, ShelfMaterial& material)
      : draft_(draft), like_(like), material_(material), first_(draft.lines.size()) {}

  void take(ShelfLot& lot, std::int64_t quantity) {
    DraftLine& line = line_of(lot);
    const std::int64_t minor = cost_of_taking(lot.balance, quantity);
    const std::int64_t had = std::max<std::int64_t>(lot.balance.quantity, 0);
    line.quantity += quantity;
    line.minor += minor;
    line.overdrawn += std::max<std::int64_t>(quantity - had, 0);
    material_.move(lot, line.source, line.target, quantity, minor);
  }

  /// What is left of `quantity` after all lots have given that are expired, or are not.
  std::int64_t take_what_is_there(std::int64_t quantity, bool expired) {
    auto& lots = material_.lots;
    for (std::size_t i = material_.first_open; i < lots.size() && quantity > 0; ++i) {
      ShelfLot& lot = *lots[i];
      if (lot.balance.quantity > 0 && is_expired(lot, draft_.head.on) == expired &&
          !is_piece(lot)) {
        const std::int64_t part = std::min(quantity, lot.balance.quantity);
        take(lot, part);
        quantity -= part;
      }
      if (lot.balance.quantity <= 0 && i == material_.first_open) ++material_.first_open;
    }
    return quantity;
  }

  /// The last lot that is good, else the last.
  ShelfLot& last() {
    const auto good = std::find_if(
        material_.lots.rbegin(), material_.lots.rend(),
        [&](const auto& lot) { return !is_expired(*lot, draft_.head.on) && !is_piece(*lot); });
    return good == material_.lots.rend() ? last_lot(material_, draft_.head.at) : **good;
  }

 private:
  DraftLine& line_of(ShelfLot& lot) {
    for (std::size_t i = first_; i < draft_.lines.size(); ++i) {
      if (draft_.lines[i].lot == &lot) return draft_.lines[i];
    }
    DraftLine line = like_;
    line.material = &material_;
    line.lot = &lot;
    line.expired = is_expired(lot, draft_.head.on);
    return draft_.lines.emplace_back(std::move(line));
  }

  Draft& draft_;
  const DraftLine& like_;
  ShelfMaterial& material_;
  std::size_t first_;  // line of this taking
};

}  // namespace

bool is_expired(const ShelfLot& lot, Date on) {
  return lot.expires && std::chrono::sys_days(*lot.expires) < std::chrono::sys_days(on);
}

void take(Draft& draft, const DraftLine& like, const Taking& taking, Shelf& shelf,
          base::Problems& problems) {
  ShelfMaterial* material = find_material(taking.material, shelf, problems);
  if (!is_in_range(taking.quantity, 1, "quantity", taking.material.slug, problems)) return;
  if (material == nullptr) return;
  Taker taker(draft, like, *material);
  if (!taking.lot.empty()) {
    ShelfLot* lot = find_lot(*material, taking.lot, problems);
    if (lot != nullptr) taker.take(*lot, taking.quantity);
    return;
  }
  std::int64_t rest = taker.take_what_is_there(taking.quantity, false);
  if (rest > 0) rest = taker.take_what_is_there(rest, true);
  if (rest > 0) taker.take(taker.last(), rest);
}

void note_shortages(Draft& draft) {
  std::vector<ShelfMaterial*> materials;
  std::map<const ShelfMaterial*, std::int64_t> taken;
  for (const DraftLine& line : draft.lines) {
    if (taken[line.material] == 0) materials.push_back(line.material);
    taken[line.material] += line.quantity;
  }
  for (const ShelfMaterial* material : materials) {
    const std::int64_t missing = std::min(taken[material], -material->quantity);
    if (missing > 0) draft.shortages.push_back({material->material.slug, missing});
  }
}

void settle(Draft& draft) {
  const std::size_t lines = draft.lines.size();
  for (std::size_t i = 0; i < lines; ++i) {
    if (draft.lines[i].lot == nullptr) continue;
    DraftLine line;
    line.material = draft.lines[i].material;
    line.lot = draft.lines[i].lot;
    const std::int64_t rest = residue(line.lot->balance);
    if (rest == 0) continue;
    line.source = rest > 0 ? Account::stock : Account::adjustment;
    line.target = rest > 0 ? Account::adjustment : Account::stock;
    line.minor = rest > 0 ? rest : -rest;
    line.material->move(*line.lot, line.source, line.target, 0, line.minor);
    draft.lines.push_back(std::move(line));
  }
}

}  // namespace wetout::joblog
