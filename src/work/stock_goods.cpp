#include "stock_goods.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "wetout/base/words.hpp"
#include "wetout/units/milligrams.hpp"
#include "wetout/units/print.hpp"

namespace wetout::work {
namespace {

using joblog::MaterialUnit;

constexpr double micrometres_of_a_metre = 1e6;

std::optional<MaterialUnit> unit_of(const laminate::Pack& pack) {
  if (pack.mass || pack.volume) return MaterialUnit::milligram;
  if (pack.length) return MaterialUnit::micrometre;
  if (pack.pieces) return MaterialUnit::piece;
  return std::nullopt;
}

Good good_of(const laminate::Material& material) {
  Good good{.material = {material.id, material.name, MaterialUnit::milligram},
            .density = material.density,
            .packs = material.packs};
  if (material.density) return good;
  const auto sold = material.packs.empty() ? std::nullopt : unit_of(material.packs.front());
  if (sold) {
    good.material.unit = *sold;
  } else if (material.weight) {
    good.material.unit = MaterialUnit::piece;
  } else {
    good.any_unit = true;
  }
  return good;
}

std::string listed(const std::vector<std::string>& words) {
  constexpr std::size_t most = 12;
  std::string list;
  for (std::size_t i = 0; i < std::min(words.size(), most); ++i) {
    list += (i == 0 ? "" : ", ") + words[i];
  }
  return words.size() > most ? list + " ..." : list;
}

std::int64_t micrometres(units::Length length) {
  return std::llround(units::in_metres(length) * micrometres_of_a_metre);
}

}  // namespace

std::vector<Good> goods_of(const laminate::Shop& shop) {
  std::vector<Good> goods;
  for (const laminate::Material& material : shop.materials) goods.push_back(good_of(material));
  for (const laminate::Cloth& cloth : shop.cloths) {
    goods.push_back({.material = {cloth.id, cloth.name, MaterialUnit::micrometre},
                     .width = cloth.width,
                     .packs = cloth.packs});
  }
  return goods;
}

Good as_kept(Good good, const joblog::Material& kept) {
  if (good.any_unit) good.material.unit = kept.unit;
  good.any_unit = false;
  return good;
}

base::Result<Good> good_meant(std::string_view typed, const std::vector<Good>& goods) {
  std::vector<std::string> ids;
  for (const Good& good : goods) ids.push_back(good.material.slug);
  const std::vector<std::size_t> found = base::matches(typed, ids);
  if (found.size() == 1) return goods[found.front()];
  std::vector<std::string> choices;
  for (const std::size_t i : found) choices.push_back(ids[i]);
  if (!found.empty()) {
    return base::fail({.code = "material.ambiguous",
                       .message = "several materials begin so",
                       .key = "MATERIAL",
                       .found = std::string(typed),
                       .expected = "one of: " + listed(choices),
                       .hint = "type more of the name"});
  }
  const auto near = base::nearest(base::slug(typed), ids);
  return base::fail({.code = "material.unknown",
                     .message = "the shop file has no material or cloth of this name",
                     .key = "MATERIAL",
                     .found = std::string(typed),
                     .expected = ids.empty() ? "a [[material]] or [[cloth]] of the shop file"
                                             : "one of: " + listed(ids),
                     .hint = near ? "did you mean \"" + *near + "\"?" : ""});
}

std::optional<std::int64_t> holds(const laminate::Pack& pack, const Good& good) {
  switch (good.material.unit) {
    case MaterialUnit::milligram:
      if (pack.mass) return units::Milligrams::nearest(*pack.mass).count();
      if (pack.volume && good.density) {
        return units::Milligrams::nearest(*good.density * *pack.volume).count();
      }
      return std::nullopt;
    case MaterialUnit::micrometre:
      if (pack.length) return micrometres(*pack.length);
      return std::nullopt;
    case MaterialUnit::piece:
      return pack.pieces;
  }
  return std::nullopt;
}

std::string pack_text(const laminate::Pack& pack) {
  struct Unit {
    double value;
    const char* name;
  };
  std::vector<Unit> units;
  if (pack.mass) {
    const units::Mass mass = *pack.mass;
    const Unit kilograms{units::in_kilograms(mass), " kg"};
    units = {kilograms,
             {units::in_grams(mass), " g"},
             {units::in_pounds(mass), " lb"},
             {units::in_ounces(mass), " oz"}};
    // Below a kilogram people say grams.
    if (kilograms.value < 1.0) std::swap(units[0], units[1]);
  } else if (pack.volume) {
    const double litres = units::in_litres(*pack.volume);
    const double ounces = units::in_us_fluid_ounces(*pack.volume);
    constexpr double ounces_of_a_quart = 32.0, ounces_of_a_gallon = 128.0;
    units = {{litres, " l"},
             {litres * 1e3, " ml"},
             {ounces / ounces_of_a_gallon, " gal"},
             {ounces / ounces_of_a_quart, " qt"},
             {ounces, " fl oz"}};
    if (litres < 1.0) std::swap(units[0], units[1]);
  } else if (pack.length) {
    constexpr double feet_of_a_yard = 3.0;
    const double feet = units::in_feet(*pack.length);
    units = {{units::in_metres(*pack.length), " m"}, {feet / feet_of_a_yard, " yd"}, {feet, " ft"}};
  } else {
    const std::int64_t pieces = pack.pieces.value_or(0);
    return std::to_string(pieces) + (pieces == 1 ? " piece" : " pieces");
  }
  // A round number has at most two decimals.
  const auto round = std::find_if(units.begin(), units.end(), [](const Unit& unit) {
    const double hundredths = unit.value * 100.0;
    return unit.value >= 0.01 && std::abs(hundredths - std::round(hundredths)) < 1e-9 * hundredths;
  });
  const Unit& best = round == units.end() ? units.front() : *round;
  constexpr int decimals = 3;
  return units::print_number(best.value, decimals) + best.name;
}

}  // namespace wetout::work
