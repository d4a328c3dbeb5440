#include <cmath>
#include <cstdint>
#include <map>
#include <string>

#include "lookup.hpp"
#include "parts_of_plan.hpp"
#include "wetout/laminate/cost.hpp"

namespace wetout::laminate {
namespace {

using units::Milligrams;

class Shelf {
 public:
  explicit Shelf(const Shop& shop) : shop_(shop) {}

  void take(const std::string& id, double amount, std::string_view unit) {
    for (MaterialTotal& total : totals_) {
      if (total.material == id) {
        total.amount += amount;
        return;
      }
    }
    totals_.push_back({id, amount, std::string(unit), std::nullopt});
  }

  std::vector<MaterialTotal> priced() {
    for (MaterialTotal& total : totals_) {
      if (const Cloth* cloth = find(shop_.cloths, total.material); cloth && total.unit == "m") {
        total.cost = cost_of(cloth->packs, std::nullopt, total.amount, total.unit);
      } else {
        const Material& material = get(shop_.materials, total.material);
        total.cost = cost_of(material.packs, material.density, total.amount, total.unit);
      }
    }
    return std::move(totals_);
  }

 private:
  const Shop& shop_;
  std::vector<MaterialTotal> totals_;
};

ResinTotal& resin_total(std::vector<ResinTotal>& totals, const std::string& id) {
  for (ResinTotal& total : totals) {
    if (total.resin == id) return total;
  }
  return totals.emplace_back(ResinTotal{.resin = id,
                                        .part_a = {},
                                        .part_b = {},
                                        .part_a_volume = {},
                                        .part_b_volume = {},
                                        .mix = {}});
}

// Core, cloth, resin that stays, inserts, less what is sanded off.
std::optional<Milligrams> finished_weight(const PlanInput& input, const Totals& totals,
                                          const std::optional<Milligrams>& core_weight,
                                          base::Notices& notices) {
  Milligrams inserts;
  for (const CoatSpec& coat : input.coats) {
    if (!coat.install) continue;
    const Material& part = get(input.shop.materials, coat.install->part);
    if (part.weight) {
      inserts += Milligrams::nearest(*part.weight) * coat.install->count;
    } else {
      notices.push_back(
          {.code = "weight.part_unknown",
           .text = "no weight is given for \"" + part.id + "\": it is not in the finished weight",
           .subject = coat.id});
    }
  }
  if (!core_weight) {
    notices.push_back({.code = "weight.core_unknown",
                       .text = "neither foam_density nor core_weight is given: no finished weight",
                       .subject = "board"});
    return std::nullopt;
  }
  return *core_weight + totals.fibre + totals.kept + inserts - totals.sanded;
}

}  // namespace

Totals totals_of(const PlanInput& input, const std::vector<CoatNeed>& coats,
                 const std::vector<PlyNeed>& plies, const std::optional<Milligrams>& core_weight,
                 base::Notices& notices) {
  Totals totals;
  Shelf shelf(input.shop);
  for (const CoatNeed& coat : coats) {
    totals.mix += coat.mix;
    totals.fibre += coat.fibre;
    totals.kept += coat.kept;
    totals.losses += coat.losses;
    totals.margin += coat.margin;
    totals.trimmed += coat.trimmed;
    totals.sanded += coat.sanded;
    const resin::Product& product = get(input.shop.resins, coat.resin);
    ResinTotal& resin = resin_total(totals.by_resin, coat.resin);
    for (const Batch& batch : coat.batches) {
      resin.part_a += batch.part_a;
      resin.part_b += batch.part_b;
      resin.part_a_volume += batch.part_a_volume;
      resin.part_b_volume += batch.part_b_volume;
      resin.mix += batch.mix;
      shelf.take(product.part_a, batch.part_a.in_grams(), "g");
      shelf.take(product.part_b, batch.part_b.in_grams(), "g");
      for (const AdditiveAmount& additive : batch.additives) {
        shelf.take(additive.material, additive.mass.in_grams(), "g");
      }
    }
  }
  for (const PlyNeed& ply : plies) {
    shelf.take(ply.cloth, units::in_metres(ply.cut_length), "m");
  }
  for (const CoatSpec& coat : input.coats) {
    if (coat.install) {
      shelf.take(coat.install->part, static_cast<double>(coat.install->count), "piece");
    }
  }
  totals.materials = shelf.priced();
  for (const MaterialTotal& material : totals.materials) {
    if (!material.cost) {
      notices.push_back(
          {.code = "cost.no_price",
           .text = "no pack of \"" + material.material + "\" has a price: it is not in the cost",
           .subject = material.material});
      continue;
    }
    if (!totals.cost) totals.cost = units::Money{0, material.cost->currency};
    totals.cost->minor += material.cost->minor;
  }
  totals.finished_weight = finished_weight(input, totals, core_weight, notices);
  return totals;
}

}  // namespace wetout::laminate
