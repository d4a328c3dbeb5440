// Amounts as people say them.
#include <gtest/gtest.h>

#include "stock_goods.hpp"

namespace wetout::work {
namespace {

using joblog::MaterialUnit;

laminate::Pack pack_of(units::Mass mass) {
  laminate::Pack pack;
  pack.mass = mass;
  return pack;
}

Good resin() {
  return {.material = {"kelp-a", "Kelp A", MaterialUnit::milligram},
          .density = units::grams_per_millilitre(1.12),
          .width = std::nullopt,
          .packs = {pack_of(units::kilograms(5)), pack_of(units::kilograms(1))}};
}

Good paste() {
  return {.material = {"white", "White", MaterialUnit::milligram},
          .density = std::nullopt,
          .width = std::nullopt,
          .packs = {pack_of(units::grams(250))}};
}

Good cloth() {
  laminate::Pack roll;
  roll.length = units::metres(10);
  return {.material = {"e4", "E4", MaterialUnit::micrometre},
          .density = std::nullopt,
          .width = units::inches(30),
          .packs = {roll}};
}

Good box() {
  laminate::Pack pair;
  pair.pieces = 2;
  return {.material = {"box", "Box", MaterialUnit::piece},
          .density = std::nullopt,
          .width = std::nullopt,
          .packs = {pair}};
}

std::string read(std::string_view text, Good good, Least least = Least::something) {
  const auto amount = read_amount(text, good, least);
  if (amount) return std::to_string(*amount);
  EXPECT_EQ(amount.error().size(), 1U);
  EXPECT_EQ(amount.error().front().key, "AMOUNT");
  return amount.error().front().code;
}

TEST(StockAmount, IsAMassOrAVolume) {
  EXPECT_EQ(read("5 kg", resin()), "5000000");
  EXPECT_EQ(read("5kg", resin()), "5000000");
  EXPECT_EQ(read("1 l", resin()), "1120000");
  EXPECT_EQ(read("1 gal", resin()), "4239661");
  EXPECT_EQ(read("3 lb 4 oz", resin()), "1474175");
  EXPECT_EQ(read("8 oz", resin()), "unit.ambiguous");
  EXPECT_EQ(read("5", resin()), "unit.missing");
  EXPECT_EQ(read("5 m", resin()), "unit.wrong");
  EXPECT_EQ(read("1 l", paste()), "amount.density");
  EXPECT_EQ(read("250 g", paste()), "250000");
}

TEST(StockAmount, IsALengthOfCloth) {
  EXPECT_EQ(read("10 m", cloth()), "10000000");
  EXPECT_EQ(read("10 yd", cloth()), "9144000");
  EXPECT_EQ(read("32 ft 9 in", cloth()), "9982200");
  EXPECT_EQ(read("2 kg", cloth()), "unit.wrong");
  EXPECT_EQ(read("2", cloth()), "unit.missing");
}

TEST(StockAmount, IsANumberOfPieces) {
  for (const char* text : {"12", "12 pieces", "12pcs", " 12 pc "})
    EXPECT_EQ(read(text, box()), "12");
  EXPECT_EQ(read("1 piece", box()), "1");
  EXPECT_EQ(read("1.5", box()), "amount.pieces");
  EXPECT_EQ(read("2 kg", box()), "amount.pieces");
  EXPECT_EQ(read("two", box()), "amount.pieces");
  EXPECT_EQ(read("99999999999999999999", box()), "amount.pieces");
}

TEST(StockAmount, IsAsManyOfOne) {
  EXPECT_EQ(read("2 x 5 kg", resin()), "10000000");
  EXPECT_EQ(read("2x5kg", resin()), "10000000");
  EXPECT_EQ(read("3 \xc3\x97 10 yd", cloth()), "27432000");
  EXPECT_EQ(read("4 x 2", box()), "8");
  EXPECT_EQ(read("2 x", resin()), "number.bad");
  EXPECT_EQ(read("0 x 5 kg", resin()), "value.range");
  EXPECT_EQ(read("2 x 5", resin()), "unit.missing");
}

TEST(StockAmount, IsInPacksWhereThereIsOneKind) {
  EXPECT_EQ(read("2 packs", paste()), "500000");
  EXPECT_EQ(read("1 pack", cloth()), "10000000");
  EXPECT_EQ(read("3 packs", box()), "6");
  EXPECT_EQ(read("2 packs", resin()), "amount.pack");
  Good loose = box();
  loose.packs.clear();
  EXPECT_EQ(read("2 packs", loose), "amount.pack");
  // Packs that are sold otherwise than the log keeps it are none.
  Good other = box();
  other.packs = {pack_of(units::grams(250))};
  EXPECT_EQ(read("2 packs", other), "amount.pack");
}

TEST(StockAmount, IsNotBelowZeroNorNothing) {
  EXPECT_EQ(read("-5 g", resin()), "value.range");
  EXPECT_EQ(read("0 g", resin()), "value.range");
  EXPECT_EQ(read("0.0001 g", resin()), "value.range");
  EXPECT_EQ(read("0 g", resin(), Least::nothing), "0");
  EXPECT_EQ(read("0", box(), Least::nothing), "0");
  EXPECT_EQ(read("-1", box(), Least::nothing), "value.range");
  EXPECT_EQ(read("1e9 kg", resin()), "value.range");
  EXPECT_EQ(read("", resin()), "number.bad");
}

TEST(StockAmount, GivesAUnitToWhatHasNone) {
  const auto unit_after = [](std::string_view text) {
    Good good = paste();
    good.packs.clear();
    good.any_unit = true;
    const auto amount = read_amount(text, good, Least::something);
    return std::string(amount ? joblog::to_string(good.material.unit) : amount.error()[0].code);
  };
  EXPECT_EQ(unit_after("250 g"), "mg");
  EXPECT_EQ(unit_after("10 m"), "um");
  EXPECT_EQ(unit_after("12"), "piece");
  EXPECT_EQ(unit_after("2 x 250 g"), "mg");
  EXPECT_EQ(unit_after("nonsense"), "number.bad");
}

TEST(StockGoods, AreKeptAsTheShopFileTells) {
  laminate::Shop shop;
  laminate::Material liquid;
  liquid.id = "a";
  liquid.density = units::grams_per_millilitre(1.1);
  laminate::Material tape;
  tape.id = "tape";
  tape.packs = {cloth().packs.front()};
  laminate::Material plug;
  plug.id = "plug";
  plug.weight = units::grams(9);
  laminate::Material rags;
  rags.id = "rags";
  laminate::Cloth weave;
  weave.id = "e4";
  weave.width = units::inches(30);
  shop.materials = {liquid, tape, plug, rags};
  shop.cloths = {weave};
  const auto goods = goods_of(shop);
  ASSERT_EQ(goods.size(), 5U);
  EXPECT_EQ(goods[0].material.unit, MaterialUnit::milligram);
  EXPECT_EQ(goods[1].material.unit, MaterialUnit::micrometre);
  EXPECT_EQ(goods[2].material.unit, MaterialUnit::piece);
  EXPECT_TRUE(goods[3].any_unit);
  EXPECT_EQ(goods[4].material.unit, MaterialUnit::micrometre);
  EXPECT_EQ(goods[4].width, units::inches(30));
}

TEST(StockGoods, AreFoundByABeginning) {
  const std::vector<Good> goods = {resin(), paste(), cloth(), box()};
  EXPECT_EQ(good_meant("KELP", goods)->material.slug, "kelp-a");
  EXPECT_EQ(good_meant("bx", goods).error()[0].hint, "did you mean \"box\"?");
  EXPECT_EQ(good_meant("e", {cloth(), {.material = {"e6", "E6"}}}).error()[0].code,
            "material.ambiguous");
  EXPECT_EQ(good_meant("thinner", goods).error()[0].code, "material.unknown");
}

TEST(StockGoods, HavePacksByTheirRoundSizes) {
  laminate::Pack pack;
  pack.mass = units::kilograms(2.2);
  EXPECT_EQ(pack_text(pack), "2.2 kg");
  pack.mass = units::grams(250);
  EXPECT_EQ(pack_text(pack), "250 g");
  pack.mass = units::pounds(8);
  EXPECT_EQ(pack_text(pack), "8 lb");
  pack.mass.reset();
  pack.volume = units::us_fluid_ounces(64);
  EXPECT_EQ(pack_text(pack), "0.5 gal");
  pack.volume = units::litres(1);
  EXPECT_EQ(pack_text(pack), "1 l");
  pack.volume.reset();
  pack.length = units::feet(30);
  EXPECT_EQ(pack_text(pack), "10 yd");
  pack.length = units::metres(27.5);
  EXPECT_EQ(pack_text(pack), "27.5 m");
  pack.length.reset();
  pack.pieces = 1;
  EXPECT_EQ(pack_text(pack), "1 piece");
}

}  // namespace
}  // namespace wetout::work
