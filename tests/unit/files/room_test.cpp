#include "sample.hpp"

namespace wetout::files {
namespace {

using climate::HeaterKind;
using climate::RoomKind;

constexpr const char* unheated = "kind      = \"unheated\"";
constexpr const char* lag = "lag       = \"2.5 h\"";

/// The example shop with another table [room].
std::string shop_in(const std::string& room) { return with(shop_with(unheated, room), lag, ""); }

ShopFile shop_of(const std::string& text) {
  auto shop = parse_shop(text, "shop.toml");
  EXPECT_TRUE(shop) << list(shop.error());
  return shop ? std::move(*shop) : ShopFile{};
}

TEST(Room, IsReadWithAllItsKeys) {
  const ShopFile file =
      shop_of(shop_in("kind = \"heated\"\n"
                      "lag = \"1 h 30 min\"\n"
                      "heater = { kind = \"electric\", minimum = \"64 F\" }\n"
                      "dehumidifier = { rh_max = \"55 %\" }\n"
                      "sanding_room = true"));
  EXPECT_EQ(file.room.kind, RoomKind::heated);
  EXPECT_EQ(file.room.lag, units::hours(1.5));
  ASSERT_TRUE(file.room.heater);
  EXPECT_EQ(file.room.heater->kind, HeaterKind::electric);
  EXPECT_EQ(file.room.heater->minimum, units::Temperature::fahrenheit(64));
  ASSERT_TRUE(file.room.humidity_max);
  EXPECT_NEAR(*file.room.humidity_max, 0.55, 1e-15);
  EXPECT_TRUE(file.room.sanding_room);
  EXPECT_TRUE(file.notices.empty());
}

TEST(Room, KnowsThreeHeaters) {
  const std::pair<const char*, HeaterKind> kinds[] = {{"electric", HeaterKind::electric},
                                                      {"vented", HeaterKind::vented},
                                                      {"unvented gas", HeaterKind::unvented_gas}};
  for (const auto& [word, kind] : kinds) {
    const ShopFile file = shop_of(shop_in("kind = \"heated\"\nheater = { kind = \"" +
                                          std::string(word) + "\", minimum = \"18 C\" }"));
    ASSERT_TRUE(file.room.heater) << word;
    EXPECT_EQ(file.room.heater->kind, kind) << word;
    EXPECT_FALSE(file.room.lag) << "the default's";
  }
}

TEST(Room, LeftOutIsUnheated) {
  const ShopFile file =
      shop_of("[shop]\ntime_zone = \"UTC\"\ncurrency = \"eur\"\nair = \"20 C\"\n");
  EXPECT_EQ(file.room.kind, RoomKind::unheated);
  EXPECT_FALSE(file.room.lag);
  EXPECT_FALSE(file.room.heater);
  EXPECT_FALSE(file.room.sanding_room);
}

TEST(Room, HeatedNeedsItsHeaterAndMinimum) {
  const base::Problem heater = only(shop_problems(shop_in("kind = \"heated\"")));
  EXPECT_EQ(heater.code, "key.missing");
  EXPECT_EQ(heater.key, "room.heater");
  EXPECT_EQ(heater.expected, "{ kind = \"electric\", minimum = \"18 C\" }");
  const base::Problem minimum =
      only(shop_problems(shop_in("kind = \"heated\"\nheater = { kind = \"vented\" }")));
  EXPECT_EQ(minimum.code, "key.missing");
  EXPECT_EQ(minimum.key, "room.heater.minimum");
}

TEST(Room, NeedsItsKind) {
  const base::Problem p = only(shop_problems(shop_in("sanding_room = true")));
  EXPECT_EQ(p.code, "key.missing");
  EXPECT_EQ(p.key, "room.kind");
}

TEST(Room, SaysWhatItDoesNotUse) {
  const ShopFile off =
      shop_of(shop_in("kind = \"unheated\"\nheater = { kind = \"electric\", minimum = \"18 C\" }"));
  ASSERT_EQ(off.notices.size(), 1U);
  EXPECT_EQ(off.notices[0].code, "room.unused");
  EXPECT_EQ(off.notices[0].text, "the room's heater is not used: its kind is not \"heated\"");
  const ShopFile out =
      shop_of(shop_in("kind = \"outdoors\"\nlag = \"2 h\"\n"
                      "heater = { kind = \"electric\" }\n"
                      "dehumidifier = { rh_max = \"55 %\" }"));
  EXPECT_EQ(out.notices.size(), 3U);
  for (const base::Notice& notice : out.notices) EXPECT_EQ(notice.code, "room.unused");
}

TEST(Room, PointsAtWhatIsWrong) {
  const std::tuple<const char*, const char*, const char*> cases[] = {
      {"kind = \"cellar\"", "word.unknown", "room.kind"},
      {"kind = \"unheated\"\nlag = 2.5", "unit.missing", "room.lag"},
      {"kind = \"unheated\"\nlag = \"8 days\"", "value.range", "room.lag"},
      {"kind = \"unheated\"\nlag = \"-1 h\"", "value.range", "room.lag"},
      {"kind = \"heated\"\nheater = { kind = \"gas\", minimum = \"18 C\" }", "word.unknown",
       "room.heater.kind"},
      {"kind = \"heated\"\nheater = { kind = \"vented\", minimum = \"80 C\" }", "value.range",
       "room.heater.minimum"},
      {"kind = \"heated\"\nheater = \"18 C\"", "type.wrong", "room.heater"},
      {"kind = \"unheated\"\ndehumidifier = { rh_max = \"0 %\" }", "value.range",
       "room.dehumidifier.rh_max"},
      {"kind = \"unheated\"\ndehumidifier = { rh = \"50 %\" }", "key.unknown",
       "room.dehumidifier.rh"},
      {"kind = \"unheated\"\nsanding_room = \"yes\"", "type.wrong", "room.sanding_room"},
      {"kind = \"unheated\"\nheating = true", "key.unknown", "room.heating"},
  };
  for (const auto& [text, code, key] : cases) {
    const base::Problems problems = shop_problems(shop_in(text));
    const base::Problem p = with_code(problems, code);
    EXPECT_EQ(p.key, key) << text;
    EXPECT_GT(p.line, 0) << text;
    EXPECT_GT(p.column, 0) << text;
  }
}

}  // namespace
}  // namespace wetout::files
