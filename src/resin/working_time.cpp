#include "wetout/resin/working_time.hpp"

#include <cmath>
#include <vector>

namespace wetout::resin {
namespace {

// Of several lines the one printed nearest to the resin's temperature, then to the mass.
const SheetTime* nearest_line(const std::vector<SheetTime>& lines, const Situation& situation) {
  const auto distance = [&](const SheetTime& line) {
    const double kelvin = std::abs((line.air - situation.resin).in_kelvin());
    const double mass = line.mass ? std::abs(std::log(line.mass->si() / situation.mass.si())) : 0.0;
    return kelvin + 1e-3 * mass;  // the mass only decides between equal temperatures
  };
  const SheetTime* best = nullptr;
  for (const SheetTime& line : lines) {
    if (best == nullptr || distance(line) < distance(*best)) best = &line;
  }
  return best;
}

}  // namespace

double arrhenius_factor(double energy_kj_mol, units::Temperature from, units::Temperature to) {
  const double e_over_r = energy_kj_mol * 1e3 / gas_constant_j_per_mol_k.value;
  return std::exp(e_over_r * (1.0 / to.in_kelvin() - 1.0 / from.in_kelvin()));
}

units::Temperature temperature_for_factor(double energy_kj_mol, units::Temperature from,
                                          double factor) {
  const double e_over_r = energy_kj_mol * 1e3 / gas_constant_j_per_mol_k.value;
  return units::Temperature::kelvin(1.0 / (1.0 / from.in_kelvin() + std::log(factor) / e_over_r));
}

base::Result<WorkingTime> SheetWorkingTimes::of(const Product& product,
                                                const Situation& situation) const {
  WorkingTime answer;
  const SheetTime* line = nearest_line(product.pot_life, situation);
  double share = 1.0;  // of the line's own time
  if (line != nullptr) {
    if (line->mass && situation.mass > *line->mass) {
      answer.notices.push_back({.code = "cup.above_sheet_mass",
                                .text = "the batch is larger than the mass the pot life is printed "
                                        "for: it goes off sooner if it stays in the cup",
                                .subject = "",
                                .value = units::in_grams(situation.mass),
                                .limit = units::in_grams(*line->mass),
                                .unit = "g"});
    }
  } else if (line = nearest_line(product.gel, situation); line != nullptr) {
    share = defaults_.pot_life_of_film_gel.value;
  } else if (line = nearest_line(product.tack_free, situation); line != nullptr) {
    share = defaults_.pot_life_of_film_gel.value / defaults_.tack_free_of_gel.value;
  } else {
    return base::fail({.code = "resin.no_time",
                       .message = "the data sheet of \"" + product.id +
                                  "\" has no line that says how long a cup lasts",
                       .key = "pot_life",
                       .found = "neither pot_life nor gel nor tack_free",
                       .expected = "pot_life = [ { mass = \"150 g\", air = \"25 C\", time = "
                                   "\"25-30 min\" } ]",
                       .hint = "copy the pot life from the data sheet into the shop file"});
  }
  if (product.pot_life.empty()) {
    answer.notices.push_back({.code = "resin.pot_life_guessed",
                              .text =
                                  "the sheet prints no pot life: it was guessed from the film's "
                                  "times",
                              .subject = product.id,
                              .value = std::nullopt,
                              .limit = std::nullopt,
                              .unit = ""});
  }
  answer.use_within = line->time.low *
                      (share * defaults_.pot_life_share.value *
                       arrhenius_factor(defaults_.energy_kj_mol.value, line->air, situation.resin));
  return answer;
}

}  // namespace wetout::resin
