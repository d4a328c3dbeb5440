#include "wetout/files/shop_file.hpp"

#include <array>
#include <utility>

#include "shop_parts.hpp"
#include "text_file.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::files {
namespace {

constexpr auto homes = std::to_array<Home>({
    {"time_zone", "[shop]"},
    {"currency", "[shop]"},
    {"scale_step", "[shop]"},
    {"weather", "[shop]"},
    {"lag", "[room]"},
    {"heater", "[room]"},
    {"dehumidifier", "[room]"},
    {"sanding_room", "[room]"},
    {"holds", "[[cup]]"},
    {"diameter", "[[cup]]"},
    {"packs", "[[material]] and [[cloth]]"},
    {"styrene", "[[material]]"},
    {"chemistry", "[[resin]]"},
    {"part_a", "[[resin]]"},
    {"part_b", "[[resin]]"},
    {"parts", "[[resin]]"},
    {"tolerance", R"(parts = { by = "volume", a = 2, b = 1, tolerance = "3 %" })"},
    {"pot_life", "[[resin]]"},
    {"gel", "[[resin]]"},
    {"tack_free", "[[resin]]"},
    {"recoat", "[[resin]]"},
    {"full_cure", "[[resin]]"},
    {"cured_density", "[[resin]]"},
    {"humidity_limit", "[[resin]]"},
    {"lowest_air", "[[resin]]"},
    {"highest_air", "[[resin]]"},
    {"left_in_cup", "[losses]"},
    {"brush", "[losses]"},
    {"run_off", "[losses]"},
    {"uptake", "[losses]"},
    {"margin", "[losses]"},
    {"fibre_mass_fraction", "[losses]"},
    {"film", "[losses]"},
    {"spread", "[pace]"},
    {"labour", "[costs]"},
    {"short_coat", "[costs]"},
    {"board", "the job file"},
    {"coat", "the job file"},
});

constexpr Word<units::System> systems[] = {{"us", units::System::us},
                                           {"metric", units::System::metric}};

// Readers of texts that are words, not numbers: a bare number there is no missing unit.
std::optional<std::string> zone_of(Fields& fields) {
  const auto name = fields.text("time_zone", "America/Los_Angeles", Must::be_there);
  if (!name) return std::nullopt;
  const base::Result<time::Zone> zone = time::Zone::named(*name);
  if (zone) return zone->name();
  for (base::Problem problem : zone.error()) fields.wrong_value("time_zone", std::move(problem));
  return std::nullopt;
}

std::optional<std::string> currency_of(Fields& fields) {
  const auto text = fields.text("currency", "USD", Must::be_there);
  if (!text) return std::nullopt;
  base::Result<std::string> currency = units::read_currency(*text);
  if (currency) return std::move(*currency);
  for (base::Problem& problem : currency.error()) {
    fields.wrong_value("currency", std::move(problem));
  }
  return std::nullopt;
}

}  // namespace

void read_shop_table(Fields& root, ShopFile& shop) {
  auto fields = root.subtable("shop", "[shop]", Must::be_there);
  if (!fields) return;
  if (auto zone = zone_of(*fields)) shop.time_zone = std::move(*zone);
  if (auto currency = currency_of(*fields)) shop.shop.currency = std::move(*currency);
  if (const auto system = fields->choice("units", systems)) shop.units = *system;
  if (const auto air = fields->quantity("air", measures::air, Must::be_there)) shop.shop.air = *air;
  if (const auto step = fields->quantity("scale_step", measures::scale_step)) {
    shop.shop.scale_step = *step;
  }
  fields->know("cup");  // a reference, followed with the cups
  if (const auto weather = fields->text("weather", "forecast.json")) {
    shop.weather = std::filesystem::path(shop.source.name).parent_path() / *weather;
  }
  fields->done();
}

base::Result<ShopFile> parse_shop(std::string text, std::string name) {
  ShopFile shop;
  shop.source = {std::move(name),
                 std::move(text),
                 {"shop", "room", "hours", "person", "resource", "cup", "material", "cloth",
                  "resin", "losses", "pace", "costs"}};
  base::Result<Document> document = Document::parse(shop.source.text, shop.source.name);
  if (!document) return base::fail(std::move(document.error()));
  document->set_homes(homes);

  Fields root(*document, document->root(), "");
  if (root.has("board") && !root.has("shop")) {
    return base::fail({.code = "file.other_kind",
                       .message = "this is a job file, not a shop file",
                       .file = shop.source.name,
                       .expected = "a shop file, with a table [shop]",
                       .hint = "name the shop file with --shop"});
  }
  read_shop_table(root, shop);
  read_room(root, shop);
  read_hours(root, shop);
  read_goods(root, shop);
  read_resins(root, shop);
  read_losses(root, shop.shop.losses);
  read_pace(root, shop.shop);
  read_costs(root, shop);
  root.done();
  if (!document->faultless()) return base::fail(document->take_problems());
  return shop;
}

base::Result<ShopFile> read_shop(const std::filesystem::path& path) {
  base::Result<std::string> text = read_text(path);
  if (!text) return base::fail(std::move(text.error()));
  return parse_shop(std::move(*text), path.string());
}

}  // namespace wetout::files
