#include "sample.hpp"
#include "wetout/files/starter.hpp"

namespace wetout::files {
namespace {

ShopFile shop_of(const std::string& text) {
  auto shop = parse_shop(text, "shop.toml");
  EXPECT_TRUE(shop) << list(shop.error());
  return shop ? std::move(*shop) : ShopFile{};
}

TEST(Shop, ExampleFileIsReadAsItStands) {
  const ShopFile file = shop_of(input("shop.toml"));
  const laminate::Shop& shop = file.shop;
  EXPECT_EQ(file.time_zone, "America/Los_Angeles");
  EXPECT_EQ(file.units, units::System::us);
  EXPECT_EQ(shop.currency, "USD");
  EXPECT_EQ(shop.air, units::Temperature::celsius(22));
  EXPECT_EQ(shop.scale_step, units::grams(1));
  EXPECT_EQ(shop.cup, "quart");
  EXPECT_EQ(file.room.kind, climate::RoomKind::unheated);
  EXPECT_EQ(file.room.lag, units::hours(2.5));
  ASSERT_EQ(shop.cups.size(), 1U);
  EXPECT_EQ(shop.cups[0].holds, units::millilitres(900));
  EXPECT_EQ(shop.cups[0].diameter, units::millimetres(105));
  ASSERT_EQ(shop.materials.size(), 4U);
  EXPECT_EQ(shop.materials[0].name, "Laminating resin, part A");
  EXPECT_EQ(shop.materials[1].name, "slow-b");
  EXPECT_FALSE(shop.materials[3].density);
  ASSERT_EQ(shop.cloths.size(), 1U);
  EXPECT_EQ(shop.cloths[0].weight, units::ounces_per_square_yard(4));
  EXPECT_EQ(shop.cloths[0].width, units::inches(30));
  EXPECT_EQ(shop.losses.left_in_cup, units::grams(8));
  EXPECT_EQ(shop.losses.brush, units::grams(10));
  EXPECT_FALSE(shop.losses.margin);
  EXPECT_EQ(shop.pace.laminate, units::minutes_per_square_metre(7));
  EXPECT_TRUE(file.notices.empty());
}

TEST(Shop, HasAPaceForWorkByHand) {
  const auto shop = shop_of(with(input("shop.toml"), "[pace]", "[pace]\nstep = { sand = 1.5 }\n#"));
  EXPECT_EQ(shop.shop.step_pace.at("sand"), 1.5);
  EXPECT_EQ(shop.shop.step_pace.size(), 1U);
  EXPECT_EQ(
      only(shop_problems(with(input("shop.toml"), "[pace]", "[pace]\nstep = { sand = 0 }\n#"))).key,
      "pace.step.sand");
  EXPECT_EQ(
      only(shop_problems(with(input("shop.toml"), "[pace]", "[pace]\nstep = { wet = 2 }\n#"))).code,
      "key.unknown");
}

TEST(Shop, NamesItsWeatherRelativeToItself) {
  EXPECT_FALSE(shop_of(input("shop.toml")).weather);
  const auto named = [](const std::string& weather, const std::string& name) {
    const std::string line = "weather = \"" + weather + "\" #";
    auto shop = parse_shop(with(input("shop.toml"), "# weather ", line), name);
    EXPECT_TRUE(shop) << list(shop.error());
    return shop ? shop->weather.value_or("none").generic_string() : "";
  };
  EXPECT_EQ(named("forecast.csv", "shop.toml"), "forecast.csv");
  EXPECT_EQ(named("forecast.csv", "boards/shop.toml"), "boards/forecast.csv");
  EXPECT_EQ(named("../sky/week.json", "/home/you/shop.toml"), "/home/you/../sky/week.json");
  EXPECT_EQ(named("/var/week.json", "boards/shop.toml"), "/var/week.json");
}

TEST(Shop, PacksHoldOneThingAndItsPrice) {
  const laminate::Shop shop = shop_of(input("shop.toml")).shop;
  const laminate::Pack& gallon = shop.materials[0].packs.at(0);
  ASSERT_TRUE(gallon.volume);
  EXPECT_NEAR(units::in_litres(*gallon.volume), 3.785411784, 1e-12);
  EXPECT_FALSE(gallon.mass);
  EXPECT_EQ(gallon.price, (units::Money{4800, "USD"}));
  EXPECT_EQ(shop.materials[3].packs.at(0).pieces, 1);
  ASSERT_TRUE(shop.cloths[0].packs.at(0).length);
  EXPECT_NEAR(units::in_metres(*shop.cloths[0].packs[0].length), 9.144, 1e-12);
}

// The keys that stand behind a # in the example.
TEST(Shop, CommentedKeysAreReadToo) {
  std::string text = input("shop.toml");
  text = with(text, "# weather ", "weather ");
  text = with(text, "# heater ", "heater ");
  text = with(text, "# dehumidifier ", "dehumidifier ");
  text = with(text, "# sanding_room ", "sanding_room ");
  text = with(text, "# family ", "family ");
  text = with(text, "# pot_life_means ", "pot_life_means ");
  text = with(text,
              "# run_off = { laminate = \"6 g/m\", hotcoat = \"4 g/m\" }   uptake = { eps = "
              "\"60 g/m2\" }   margin = \"8 %\"   fibre_mass_fraction = 0.5",
              "run_off = { laminate = \"6 g/m\", hotcoat = \"4 g/m\" }\n"
              "uptake = { eps = \"60 g/m2\" }\nmargin = \"8 %\"\nfibre_mass_fraction = 0.5");
  text = with(text, "# film ", "film ");
  const ShopFile file = shop_of(text);
  const laminate::Losses& losses = file.shop.losses;
  EXPECT_EQ(losses.run_off_laminate, units::grams_per_metre(6));
  EXPECT_EQ(losses.run_off_hotcoat, units::grams_per_metre(4));
  EXPECT_EQ(losses.uptake_eps, units::grams_per_square_metre(60));
  EXPECT_FALSE(losses.uptake_pu);
  ASSERT_TRUE(losses.margin);
  EXPECT_NEAR(*losses.margin, 0.08, 1e-15);
  EXPECT_EQ(losses.fibre_mass_fraction, 0.5);
  EXPECT_EQ(losses.film_hotcoat, units::millimetres(0.18));
  EXPECT_EQ(losses.film_gloss, units::millimetres(0.10));
  EXPECT_EQ(file.shop.resins[0].family, "house");
}

TEST(Shop, FibreFractionMayBeAPercentage) {
  const auto read = [](const std::string& value) {
    return shop_of(shop_with("brush = \"10 g\"", "fibre_mass_fraction = " + value))
        .shop.losses.fibre_mass_fraction;
  };
  EXPECT_EQ(read("0.48"), 0.48);
  EXPECT_NEAR(read("\"48 %\"").value(), 0.48, 1e-15);
  EXPECT_EQ(only(shop_problems(shop_with("brush = \"10 g\"", "fibre_mass_fraction = 48"))).code,
            "value.range");
}

TEST(Shop, StarterFilesAreRightAsTheyStand) {
  const auto shop = parse_shop(std::string(starter_shop()), "shop.toml");
  EXPECT_TRUE(shop) << list(shop.error());
  const auto job = parse_job(std::string(starter_job()), "board.toml");
  EXPECT_TRUE(job) << list(job.error());
}

TEST(Shop, UnknownTimeZoneSuggestsOne) {
  const base::Problem p =
      only(shop_problems(shop_with("America/Los_Angeles", "America/Los_Angelos")));
  EXPECT_EQ(p.code, "zone.unknown");
  EXPECT_EQ(p.key, "shop.time_zone");
  EXPECT_EQ(p.line, 3);
  EXPECT_EQ(p.column, 14);
  EXPECT_EQ(p.hint, "did you mean \"America/Los_Angeles\"?");
}

TEST(Shop, NeedsZoneCurrencyAndAir) {
  const base::Problems problems = shop_problems("[shop]\n");
  ASSERT_EQ(problems.size(), 3U) << list(problems);
  for (const base::Problem& p : problems) EXPECT_EQ(p.code, "key.missing");
}

TEST(Shop, UnitsCupAndScaleStepMayBeLeftOut) {
  const ShopFile file =
      shop_of("[shop]\ntime_zone = \"UTC\"\ncurrency = \"eur\"\nair = \"20 C\"\n");
  EXPECT_EQ(file.shop.currency, "EUR");
  EXPECT_EQ(file.shop.scale_step, units::grams(1));
  EXPECT_EQ(file.units, units::System::us);
  EXPECT_EQ(file.shop.cup, "");
}

TEST(Shop, CupMustBeThere) {
  const base::Problem p =
      only(shop_problems(shop_with("cup        = \"quart\"", "cup        = \"qart\"")));
  EXPECT_EQ(p.code, "reference.cup");
  EXPECT_EQ(p.key, "shop.cup");
  EXPECT_EQ(p.line, 8);
  EXPECT_EQ(p.column, 14);
  EXPECT_EQ(p.hint, "did you mean \"quart\"?");
}

TEST(Money, OfAnotherCurrencyIsRefused) {
  const base::Problem p = only(shop_problems(shop_with("33.00 USD", "33.00 EUR")));
  EXPECT_EQ(p.code, "currency.other");
  EXPECT_EQ(p.key, "material[1].packs[0].price");
  EXPECT_EQ(p.line, 44);
  EXPECT_EQ(p.column, 39);
  EXPECT_EQ(only(shop_problems(shop_with("30 USD/h", "30 EUR/h"))).key, "costs.labour");
}

TEST(Money, NegativeIsRefused) {
  EXPECT_EQ(only(shop_problems(shop_with("33.00 USD", "-33.00 USD"))).code, "value.range");
}

TEST(Packs, BareOuncesAreAmbiguous) {
  const base::Problem p = only(shop_problems(shop_with("1/2 gal", "16 oz")));
  EXPECT_EQ(p.code, "unit.ambiguous");
  EXPECT_EQ(p.line, 44);
  EXPECT_EQ(p.column, 20);
}

TEST(Packs, HaveExactlyOneSize) {
  EXPECT_EQ(only(shop_problems(shop_with("pieces = 1, ", "pieces = 1, size = \"1 kg\", "))).code,
            "key.conflict");
  EXPECT_EQ(only(shop_problems(shop_with("pieces = 1, ", ""))).code, "key.missing");
  EXPECT_EQ(only(shop_problems(shop_with("size = \"1 gal\"", "size = \"0 gal\""))).code,
            "value.range");
  EXPECT_EQ(only(shop_problems(shop_with("size = \"1 gal\"", "size = 1"))).code, "unit.missing");
}

TEST(Packs, OfClothAreLengths) {
  const base::Problems problems = shop_problems(shop_with("length = \"10 yd\"", "size = \"1 kg\""));
  EXPECT_EQ(with_code(problems, "key.misplaced").key, "cloth[0].packs[0].size");
}

TEST(Cloth, FourOuncesAreReadAsPerSquareYard) {
  const ShopFile file = shop_of(shop_with("weight = \"4 oz/yd2\"", "weight = \"4 oz\""));
  EXPECT_EQ(file.shop.cloths[0].weight, units::ounces_per_square_yard(4));
}

TEST(Cloth, ZeroWidthAndWrongUnitsAreRefused) {
  EXPECT_EQ(only(shop_problems(shop_with("width = \"30 in\"", "width = \"0 in\""))).code,
            "value.range");
  EXPECT_EQ(only(shop_problems(shop_with("\"4 oz/yd2\"", "\"4 lb/ft3\""))).code, "unit.wrong");
}

TEST(Material, StyreneAndWeightAreRead) {
  const ShopFile file =
      shop_of(shop_with("id = \"white\"", "id = \"white\"\nstyrene = true\nweight = \"12 g\""));
  EXPECT_TRUE(file.shop.materials[2].styrene);
  EXPECT_EQ(file.shop.materials[2].weight, units::grams(12));
  EXPECT_FALSE(file.shop.materials[0].styrene);
}

TEST(Hours, AreCheckedThoughNotKept) {
  const std::tuple<const char*, const char*, const char*> cases[] = {
      {"mon = [\"18:00-22:00\"]", "mon = [\"22:00-18:00\"]", "span.bad"},
      {"mon = [\"18:00-22:00\"]", "mon = [\"18-22\"]", "span.bad"},
      {"mon = [\"18:00-22:00\"]", "mon = \"18:00-22:00\"", "type.wrong"},
      {"mon = [\"18:00-22:00\"]", "mon = [18]", "type.wrong"},
      {"mon = [\"18:00-22:00\"]", "monday = [\"18:00-22:00\"]", "key.unknown"},
      {"\"14:00-18:00\"]", "\"11:00-18:00\"]", "span.overlap"},
      {"\"2026-06-21\"", "\"2026-06-31\"", "date.bad"},
      {"2026-07-03/2026-07-05", "2026-07-05/2026-07-03", "date.bad"},
      {"hours = { sat = [\"08:00-18:00\"] }", "hours = { sat = [\"08:00-28:00\"] }", "span.bad"},
      {"count = 2", "count = 0", "value.range"},
      {"kind      = \"unheated\"", "kind      = \"cellar\"", "word.unknown"},
      {"lag       = \"2.5 h\"", "lag       = \"2.5 C\"", "unit.wrong"},
      {"# heater       = { kind = \"electric\", minimum = \"18 C\" }",
       "heater = { kind = \"gas\" }", "word.unknown"},
      {"# dehumidifier = { rh_max = \"55 %\" }", "dehumidifier = { rh_max = \"155 %\" }",
       "value.range"},
      {"# sanding_room = true", "sanding_room = \"yes\"", "type.wrong"},
      {"short_coat = \"60 USD\"", "short_coat = \"60\"", "unit.missing"},
  };
  for (const auto& [from, to, code] : cases) {
    const base::Problem p = only(shop_problems(shop_with(from, to)));
    EXPECT_EQ(p.code, code) << to;
    EXPECT_GT(p.line, 0) << to;
    EXPECT_GT(p.column, 0) << to;
  }
}

TEST(Hours, PointAtTheMemberOfTheList) {
  const base::Problem p = only(shop_problems(shop_with("\"14:00-18:00\"]", "\"14:00-12:00\"]")));
  EXPECT_EQ(p.key, "hours.sat");
  EXPECT_EQ(p.line, 20);
  EXPECT_EQ(p.column, 23);
  EXPECT_EQ(p.found, "\"14:00-12:00\"");
}

TEST(Hours, TakeBareDatesOfTomlToo) {
  EXPECT_TRUE(parse_shop(shop_with("\"2026-06-21\"", "2026-06-21"), "shop.toml"));
}

}  // namespace
}  // namespace wetout::files
