// Pieces of a roll that are kept.
#include <algorithm>

#include "joblog/draft.hpp"
#include "wetout/base/check.hpp"
#include "wetout/time/print.hpp"

namespace wetout::joblog {
namespace {

// A lot never gets the label of another, whatever became of that.
std::string free_label(const ShelfMaterial& material, Date on) {
  const std::string day = std::string(remnant) + time::print(on);
  std::string label = day;
  for (int n = 2; material.find(label) != nullptr; ++n) label = day + "-" + std::to_string(n);
  return label;
}

// The oldest roll that has so much, of those that are good.
ShelfLot* roll_with(std::int64_t quantity, const ShelfMaterial& material, Date on) {
  const auto found = std::find_if(material.lots.begin(), material.lots.end(), [&](const auto& lot) {
    return lot->balance.quantity >= quantity && !is_expired(*lot, on);
  });
  return found == material.lots.end() ? nullptr : found->get();
}

base::Problem no_roll(const Cut& cut) {
  return {.code = "lot.short",
          .message = "No piece can be kept: the log knows of no roll of \"" + cut.material.slug +
                     "\" that has so much.",
          .key = cut.material.slug,
          .found = cut.lot,
          .expected = "a roll that was received and is long enough",
          .hint = "Enter the purchase, or count what is there."};
}

}  // namespace

void cut(Draft& draft, const Cut& cut, Shelf& shelf, base::Problems& problems) {
  const std::string& slug = cut.material.slug;
  base::promise(cut.material.unit == MaterialUnit::micrometre && cut.width_um > 0,
                "a piece of a roll has a length and a width");
  ShelfMaterial* material = find_material(cut.material, shelf, problems);
  const bool is_off = is_in_range(cut.quantity, 1, "quantity", slug, problems);
  const bool is_long = is_in_range(cut.length, 1, "length", slug, problems);
  if (material == nullptr || !is_off || !is_long) return;
  ShelfLot* roll = cut.lot.empty() ? roll_with(cut.quantity, *material, draft.head.on)
                                   : find_lot(*material, cut.lot, problems);
  if (roll == nullptr && !cut.lot.empty()) return;
  if (roll == nullptr || roll->balance.quantity < cut.quantity) {
    problems.push_back(no_roll(cut));
    return;
  }
  const std::int64_t minor = cost_of_taking(roll->balance, cut.quantity);
  material->move(*roll, Account::stock, Account::adjustment, cut.quantity, minor);
  draft.lines.push_back({.source = Account::stock,
                         .target = Account::adjustment,
                         .material = material,
                         .lot = roll,
                         .quantity = cut.quantity,
                         .minor = minor});
  ShelfLot& piece = material->add({.label = free_label(*material, draft.head.on),
                                   .batch = roll->batch,
                                   .received = draft.head.at,
                                   .expires = roll->expires,
                                   .width_um = cut.width_um,
                                   .is_new = true});
  material->move(piece, Account::adjustment, Account::stock, cut.length, minor);
  draft.lines.push_back({.source = Account::adjustment,
                         .target = Account::stock,
                         .material = material,
                         .lot = &piece,
                         .quantity = cut.length,
                         .minor = minor});
}

}  // namespace wetout::joblog
