// What is bought and what is poured into.
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "shop_parts.hpp"
#include "wetout/base/shown.hpp"

namespace wetout::files {
namespace {

enum class Goods { material, cloth };

constexpr std::string_view liquid_packs = R"([ { size = "1 gal", price = "48.00 USD" } ])";
constexpr std::string_view roll_packs = R"([ { length = "10 yd", price = "65.00 USD" } ])";

std::optional<units::MassOrVolume> read_size(Fields& pack) {
  const toml::node* node = pack.find("size");
  if (node == nullptr) return std::nullopt;
  const auto* text = node->as_string();
  if (text == nullptr) {
    pack.wrong_value("size", {.code = node->is_number() ? "unit.missing" : "type.wrong",
                              .message = node->is_number() ? "this number has no unit"
                                                           : "this is not the size of a pack",
                              .expected = "a mass or a volume with its unit, e.g. \"1 gal\""});
    return std::nullopt;
  }
  base::Result<units::MassOrVolume> value = units::read_mass_or_volume(text->get());
  if (!value) {
    for (base::Problem& problem : value.error()) pack.wrong_value("size", std::move(problem));
    return std::nullopt;
  }
  const double si = value->is_volume ? value->volume.si() : value->mass.si();
  if (si <= 0 || si > 10000) {
    pack.wrong_value("size", {.code = "value.range",
                              .message = "\"size\" must be more than 0, and what someone can carry",
                              .expected = "a mass or a volume, more than 0, e.g. \"1 gal\""});
    return std::nullopt;
  }
  return *value;
}

std::vector<laminate::Pack> read_packs(Fields& fields, const std::string& currency, Goods goods) {
  std::vector<laminate::Pack> packs;
  for (Fields& pack :
       fields.subtables("packs", goods == Goods::cloth ? roll_packs : liquid_packs)) {
    laminate::Pack out;
    if (goods == Goods::cloth) {
      for (const std::string_view key : {"size", "pieces"}) {
        pack.misplaced(key, "cloth is bought by length", R"(length = "10 yd")");
      }
      out.length = pack.quantity("length", measures::roll_length, Must::be_there);
    } else {
      if (const auto size = read_size(pack)) {
        if (size->is_volume) {
          out.volume = size->volume;
        } else {
          out.mass = size->mass;
        }
      }
      out.pieces = pack.whole("pieces", 1, 1000000, "1");
      out.length = pack.quantity("length", measures::roll_length);
      const int sizes = int{pack.has("size")} + int{pack.has("pieces")} + int{pack.has("length")};
      if (sizes == 0) {
        pack.missing("size", "size = \"1 gal\", pieces = 1 or length = \"10 yd\"");
      } else if (sizes > 1) {
        pack.wrong_table({.code = "key.conflict",
                          .message = "a pack has one size only",
                          .expected = "one of size, pieces and length"});
      }
    }
    out.price = read_in_currency(pack, "price", measures::price, currency);
    pack.done();
    packs.push_back(std::move(out));
  }
  return packs;
}

void read_cups(Fields& root, laminate::Shop& shop) {
  Ids ids("cup");
  for (Fields& fields : root.subtables("cup", "[[cup]]")) {
    resin::Cup cup;
    cup.id = read_named(fields, "quart").id;
    if (auto holds = fields.quantity("holds", measures::cup_volume, Must::be_there)) {
      cup.holds = *holds;
    }
    if (auto diameter = fields.quantity("diameter", measures::cup_diameter, Must::be_there)) {
      cup.diameter = *diameter;
    }
    fields.done();
    ids.add(fields, cup.id);
    shop.cups.push_back(std::move(cup));
  }

  const toml::node* node = root.find("shop");
  if (node == nullptr || !node->is_table()) return;  // said by read_shop_table()
  Fields table(root.document(), *node->as_table(), "shop");
  const auto cup = table.text("cup", "quart");
  if (!cup) return;
  if (ids.has(*cup)) {
    shop.cup = *cup;
    return;
  }
  std::vector<std::string> known;
  for (const resin::Cup& one : shop.cups) known.push_back(one.id);
  table.wrong_value("cup",
                    {.code = "reference.cup",
                     .message = "there is no [[cup]] with the id \"" + base::shown(*cup) + "\"",
                     .expected = listed(known, "the id of a [[cup]]"),
                     .hint = did_you_mean(*cup, known)});
}

void read_materials(Fields& root, laminate::Shop& shop, Ids& ids) {
  for (Fields& fields : root.subtables("material", "[[material]]")) {
    laminate::Material material;
    Named named = read_named(fields, "resin-a");
    material.id = std::move(named.id);
    material.name = std::move(named.name);
    material.density = fields.quantity("density", measures::density);
    material.weight = fields.quantity("weight", measures::small_mass);
    material.styrene = fields.flag("styrene").value_or(false);
    material.packs = read_packs(fields, shop.currency, Goods::material);
    fields.done();
    ids.add(fields, material.id);
    shop.materials.push_back(std::move(material));
  }
}

void read_cloths(Fields& root, laminate::Shop& shop, Ids& ids) {
  for (Fields& fields : root.subtables("cloth", "[[cloth]]")) {
    laminate::Cloth cloth;
    Named named = read_named(fields, "4 oz plain");
    cloth.id = std::move(named.id);
    cloth.name = std::move(named.name);
    if (const auto weight = fields.quantity("weight", measures::cloth_weight, Must::be_there)) {
      cloth.weight = *weight;
    }
    if (const auto width = fields.quantity("width", measures::roll_width, Must::be_there)) {
      cloth.width = *width;
    }
    cloth.fibre_density = fields.quantity("density", measures::fibre_density);
    cloth.packs = read_packs(fields, shop.currency, Goods::cloth);
    fields.done();
    ids.add(fields, cloth.id);
    shop.cloths.push_back(std::move(cloth));
  }
}

}  // namespace

void read_goods(Fields& root, ShopFile& shop) {
  read_cups(root, shop.shop);
  // Both are bought and kept in one stock list.
  Ids bought("material or cloth");
  read_materials(root, shop.shop, bought);
  read_cloths(root, shop.shop, bought);
}

}  // namespace wetout::files
