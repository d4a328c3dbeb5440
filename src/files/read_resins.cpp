// [[resin]]: chemistry, parts, limits. Times are in read_sheet.cpp.
#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "shop_parts.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/resin/ratio.hpp"
#include "wetout/resin/speed.hpp"

namespace wetout::files {
namespace {

using resin::By;
using resin::Chemistry;
using resin::PotLifeMeans;
using resin::Product;

constexpr Word<Chemistry> chemistries[] = {{"epoxy", Chemistry::epoxy},
                                           {"polyester", Chemistry::polyester}};
constexpr Word<PotLifeMeans> meanings[] = {{"gel", PotLifeMeans::gel},
                                           {"usable", PotLifeMeans::usable}};
constexpr Word<By> by_words[] = {{"mass", By::mass}, {"volume", By::volume}};

constexpr std::string_view parts_example = R"(parts = { by = "volume", a = 2, b = 1 })";
constexpr std::string_view catalyst_example =
    R"([ { air = "25 C", dose = "1.5 %", gel = "15-20 min" } ])";
constexpr std::string_view dose_example = R"({ low = "1 %", high = "2 %" })";

// Between these the two ratios of a sheet may be rounding; beyond, one of them is a slip.
constexpr double differ_notice = 0.03;
constexpr double differ_error = 0.08;

// Of liquid parts, fillers included.
constexpr units::Density thinnest_part = units::grams_per_millilitre(0.7);
constexpr units::Density heaviest_part = units::grams_per_millilitre(2.0);

/// The density of a part, which pours need to be said in millilitres. A material without one is
/// told so once, however many resins use it.
std::optional<units::Density> part(Fields& fields, std::string_view key, std::string& id,
                                   std::vector<Fields>& materials, const ShopFile& shop,
                                   std::vector<std::string>& told) {
  const auto wanted = fields.text(key, key == "part_a" ? "resin-a" : "slow-b", Must::be_there);
  if (!wanted) return std::nullopt;
  id = *wanted;
  const auto& known = shop.shop.materials;
  const auto found = std::find_if(known.begin(), known.end(),
                                  [&](const laminate::Material& one) { return one.id == id; });
  if (found == known.end()) {
    std::vector<std::string> ids;
    for (const laminate::Material& one : known) ids.push_back(one.id);
    fields.wrong_value(
        key, {.code = "reference.material",
              .message = "there is no [[material]] with the id \"" + base::shown(id) + "\"",
              .expected = listed(ids, "the id of a [[material]]"),
              .hint = did_you_mean(id, ids)});
    return std::nullopt;
  }
  Fields& material = materials[static_cast<std::size_t>(found - known.begin())];
  const bool said = std::find(told.begin(), told.end(), id) != told.end();
  if (!found->density && !material.has("density") && !said) {
    told.push_back(id);
    material.wrong_table({.code = "key.missing",
                          .message = "a part of a resin needs its density: it is measured out in "
                                     "millilitres too",
                          .key = material.path_of("density"),
                          .expected = "density = \"1.13 g/ml\", from the data sheet"});
  }
  if (found->density && !said &&
      (*found->density < thinnest_part || *found->density > heaviest_part)) {
    told.push_back(id);
    material.wrong_value("density", {.code = "value.range",
                                     .message = "no liquid resin or hardener weighs that",
                                     .expected = "0.7 to 2 g/ml, e.g. \"1.13 g/ml\""});
  }
  return found->density;
}

void polyester(Fields& fields, Product& product) {
  product.styrene = true;
  product.waxed = fields.flag("waxed").value_or(false);
  for (Fields& line : fields.subtables("catalyst", catalyst_example)) {
    const auto air = line.quantity("air", measures::sheet_air, Must::be_there);
    const auto dose = line.quantity("dose", measures::dose, Must::be_there);
    const auto gel = line.quantity("gel", measures::pot_life_time, Must::be_there);
    line.done();
    if (air && dose && gel) product.catalyst.push_back({*air, *dose, *gel});
  }
  if (auto dose = fields.subtable("dose", dose_example)) {
    product.dose_low = dose->quantity("low", measures::dose, Must::be_there);
    product.dose_high = dose->quantity("high", measures::dose, Must::be_there);
    if (product.dose_low && product.dose_high && *product.dose_low > *product.dose_high) {
      dose->wrong_value("high",
                        {.code = "value.range",
                         .message = "the highest dose is below the lowest",
                         .expected = "low first, then high, e.g. " + std::string(dose_example)});
    }
    dose->done();
  }
  fields.misplaced("speed", "the speed of a polyester is set by its catalyst",
                   "the times of its table as they came out, with catalyst and dose");
  fields.misplaced("parts", "a polyester has no parts but a dose of catalyst",
                   "dose and catalyst, e.g. dose = " + std::string(dose_example));
}

void epoxy(Fields& fields, Product& product) {
  product.speed = fields.number("speed", 0.25, true, 4, "0.25 to 4", "1.1");
  for (const std::string_view key : {"catalyst", "dose", "waxed"}) {
    fields.misplaced(key, "an epoxy has no \"" + std::string(key) + "\"",
                     "chemistry = \"polyester\", or parts instead");
  }
}

void limits(Fields& fields, Product& product) {
  product.lowest_air = fields.quantity("lowest_air", measures::sheet_air);
  product.highest_air = fields.quantity("highest_air", measures::sheet_air);
  if (product.lowest_air && product.highest_air && *product.lowest_air >= *product.highest_air) {
    fields.wrong_value("highest_air", {.code = "value.range",
                                       .message = "the highest air is not above the lowest",
                                       .expected = "a temperature above lowest_air"});
  }
  product.humidity_limit = fields.quantity("humidity_limit", measures::humidity);
  product.tg = fields.quantity("tg", measures::glass_point);
  product.cured_density = fields.quantity("cured_density", measures::cured_density);
  if (auto family = fields.text("family", "house")) product.family = std::move(*family);
  if (const auto means = fields.choice("pot_life_means", meanings)) product.pot_life_means = *means;
  product.light_cured = fields.flag("light_cured").value_or(false);
}

struct Told {
  std::vector<Fields> materials;
  std::vector<std::string> no_density;
};

Product read_resin(Fields& fields, ShopFile& shop, Told& told) {
  Product product;
  Named named = read_named(fields, "slow");
  product.id = std::move(named.id);
  product.name = std::move(named.name);
  const auto chemistry = fields.choice("chemistry", chemistries, Must::be_there);
  if (chemistry) product.chemistry = *chemistry;
  const auto density_a =
      part(fields, "part_a", product.part_a, told.materials, shop, told.no_density);
  const auto density_b =
      part(fields, "part_b", product.part_b, told.materials, shop, told.no_density);
  if (density_a) product.density_a = *density_a;
  if (density_b) product.density_b = *density_b;
  if (!product.part_a.empty() && product.part_a == product.part_b) {
    fields.wrong_value("part_b", {.code = "resin.same_parts",
                                  .message = "part A and part B are the same material",
                                  .expected = "the id of the hardener"});
  }
  limits(fields, product);
  read_sheet(fields, product);
  if (!chemistry) {
    for (const std::string_view key : {"parts", "catalyst", "dose", "waxed", "speed"})
      fields.know(key);
  } else if (*chemistry == Chemistry::polyester) {
    polyester(fields, product);
  } else {
    read_parts(fields, product, shop);
    epoxy(fields, product);
  }
  const bool timeless = product.pot_life.empty() && product.gel.empty() &&
                        product.tack_free.empty() && product.handle.empty() &&
                        product.sand.empty() && product.full_cure.empty() && product.trim.empty() &&
                        product.recoat.empty() && product.catalyst.empty();
  const bool tried = std::any_of(std::begin(sheet_keys), std::end(sheet_keys),
                                 [&](std::string_view key) { return fields.has(key); });
  if (timeless && !tried && !fields.has("catalyst")) {
    fields.wrong_table({.code = "resin.no_time",
                        .message = "this resin has no time from its data sheet",
                        .key = fields.path_of("pot_life"),
                        .expected = "at least one, e.g. pot_life = [ { mass = \"150 g\", air = "
                                    "\"25 C\", time = \"25-30 min\" } ]"});
  }
  fields.done();
  const std::optional<double> speed = product.speed;
  return speed ? resin::at_speed(std::move(product), *speed) : product;
}

}  // namespace

void read_parts(Fields& fields, Product& product, ShopFile& shop) {
  const toml::node* node = fields.find("parts");
  if (node == nullptr) {
    fields.missing("parts", std::string(parts_example));
    return;
  }
  std::vector<Fields> tables;
  if (const toml::table* one = node->as_table()) {
    tables.emplace_back(fields.document(), *one, fields.path_of("parts"));
  } else {
    tables = fields.subtables("parts", parts_example);
  }
  if (node->is_array() && node->as_array()->empty()) {
    fields.wrong_value("parts", {.code = "key.missing",
                                 .message = "there are no parts in this list",
                                 .expected = std::string(parts_example)});
  }
  for (Fields& parts : tables) {
    const auto by = parts.choice("by", by_words, Must::be_there);
    const auto a =
        parts.number("a", 0, false, 1000, "more than 0 and at most 1000", "2", Must::be_there);
    const auto b =
        parts.number("b", 0, false, 1000, "more than 0 and at most 1000", "1", Must::be_there);
    const auto tolerance = parts.quantity("tolerance", measures::tolerance);
    parts.done();
    if (tolerance && product.tolerance && *tolerance != *product.tolerance) {
      parts.wrong_value("tolerance", {.code = "key.conflict",
                                      .message = "the other parts have another tolerance",
                                      .expected = "one tolerance, of part B"});
    }
    if (tolerance) product.tolerance = tolerance;
    if (!by || !a || !b) continue;
    std::optional<resin::Parts>& place = *by == By::mass ? product.by_mass : product.by_volume;
    if (place) {
      parts.wrong_value("by", {.code = "key.conflict",
                               .message = "these parts are given twice",
                               .expected = "once by mass and once by volume, or only one of them"});
      continue;
    }
    place = resin::Parts{*by, *a, *b};
  }
  const bool dense = product.density_a > units::Density{} && product.density_b > units::Density{};
  if (!product.by_mass || !product.by_volume || !dense) return;
  const double clash = std::abs(resin::parts_clash(product));
  if (clash > differ_error) {
    fields.wrong_value(
        "parts", {.code = "resin.parts_clash",
                  .message = "parts by volume and by mass are " + units::print_percent(clash) +
                             " apart with these densities",
                  .expected = "at most " + units::print_percent(differ_error) + " apart",
                  .hint = "one of the ratios or densities is not what the sheet prints, or "
                          "A and B are exchanged"});
  } else if (clash > differ_notice) {
    shop.notices.push_back({.code = "resin.parts_differ",
                            .text = "parts by volume and by mass do not quite agree with the "
                                    "densities; the scale goes by mass",
                            .subject = product.id,
                            .value = clash,
                            .limit = differ_notice,
                            .unit = "share"});
  }
}

void read_resins(Fields& root, ShopFile& shop) {
  Told told;
  // The same tables in the same order as read_goods() has read, without its complaints.
  if (const toml::array* materials = root.table()["material"].as_array()) {
    for (std::size_t i = 0; i < materials->size(); ++i) {
      const toml::table* table = (*materials)[i].as_table();
      if (table == nullptr) continue;
      told.materials.emplace_back(root.document(), *table, "material[" + std::to_string(i) + "]");
    }
  }
  Ids ids("resin");
  for (Fields& fields : root.subtables("resin", "[[resin]]")) {
    if (fields.document().full()) return;
    shop.shop.resins.push_back(read_resin(fields, shop, told));
    ids.add(fields, shop.shop.resins.back().id);
  }
}

}  // namespace wetout::files
