// [losses], [pace], [costs]: what the shop knows of itself.
#include <optional>

#include "shop_parts.hpp"
#include "wetout/schedule/step_word.hpp"

namespace wetout::files {
namespace {

/// 0.5 or "50 %": the one share that people write either way.
std::optional<double> fibre_fraction(Fields& fields) {
  const toml::node* node = fields.find("fibre_mass_fraction");
  if (node == nullptr) return std::nullopt;
  if (node->is_string()) return fields.quantity("fibre_mass_fraction", measures::fibre_fraction);
  return fields.number("fibre_mass_fraction", 0.10, true, 0.90, "from 0.1 to 0.9", "0.5");
}

}  // namespace

void read_losses(Fields& root, laminate::Losses& losses) {
  auto fields = root.subtable("losses", "[losses]");
  if (!fields) return;
  losses.left_in_cup = fields->quantity("left_in_cup", measures::small_mass);
  losses.brush = fields->quantity("brush", measures::small_mass);
  if (auto run_off = fields->subtable("run_off", R"({ laminate = "6 g/m", hotcoat = "4 g/m" })")) {
    losses.run_off_laminate = run_off->quantity("laminate", measures::run_off);
    losses.run_off_hotcoat = run_off->quantity("hotcoat", measures::run_off);
    run_off->done();
  }
  if (auto uptake = fields->subtable("uptake", R"({ eps = "60 g/m2" })")) {
    losses.uptake_eps = uptake->quantity("eps", measures::uptake);
    losses.uptake_xps = uptake->quantity("xps", measures::uptake);
    losses.uptake_pu = uptake->quantity("pu", measures::uptake);
    uptake->done();
  }
  losses.margin = fields->quantity("margin", measures::any_share);
  losses.fibre_mass_fraction = fibre_fraction(*fields);
  if (auto film = fields->subtable("film", R"({ hotcoat = "0.18 mm", gloss = "0.10 mm" })")) {
    losses.film_hotcoat = film->quantity("hotcoat", measures::film);
    losses.film_gloss = film->quantity("gloss", measures::film);
    losses.film_seal = film->quantity("seal", measures::film);
    film->done();
  }
  fields->done();
}

void read_pace(Fields& root, laminate::Shop& shop) {
  laminate::Spreading& pace = shop.pace;
  auto fields = root.subtable("pace", "[pace]");
  if (!fields) return;
  if (auto spread = fields->subtable("spread", R"({ laminate = "7 min/m2" })")) {
    pace.laminate = spread->quantity("laminate", measures::pace);
    pace.hotcoat = spread->quantity("hotcoat", measures::pace);
    pace.gloss = spread->quantity("gloss", measures::pace);
    spread->done();
  }
  if (auto step = fields->subtable("step", "{ sand = 1.2, trim = 0.8 }")) {
    for (const schedule::StepWord word : schedule::step_words) {
      if (!has_own_pace(word)) continue;
      const std::string_view key = to_string(word);
      const auto times = step->number(key, 0.1, true, 10, "0.1 to 10", "1.2");
      if (times) shop.step_pace.emplace(key, *times);
    }
    step->done();
  }
  fields->done();
}

void read_costs(Fields& root, ShopFile& shop) {
  auto fields = root.subtable("costs", "[costs]");
  if (!fields) return;
  shop.labour = read_in_currency(*fields, "labour", measures::wage, shop.shop.currency);
  shop.short_coat = read_in_currency(*fields, "short_coat", measures::price, shop.shop.currency);
  fields->done();
}

}  // namespace wetout::files
