// What the film and cup models need and a data sheet does not print (docs/models/film.md, cup.md).
// Temperatures are in celsius, differences in kelvin.
#pragma once

#include "wetout/base/cited.hpp"

namespace wetout::resin {

struct CureDefaults {
  using S = base::Standing;
  using Value = base::Default<double>;

  // The reaction
  Value order_m{"cure.m", 0.6, 0.30, 0.70, {"", "published 0.30 to 0.70", S::assumed}};
  Value order_n{"cure.n", 1.5, 1.29, 1.62, {"", "published 1.29 to 1.62", S::assumed}};
  Value start_rate{
      "cure.r", 0.10, 0.064, 0.144, {"", "k1/k2 at 25 C, published 0.064 to 0.144", S::assumed}};
  Value energy_spread{
      "cure.energy_spread", 6.0, 3.0, 10.0, {"", "sd of the energy before a sheet", S::assumed}};
  Value pair_rounding{"cure.pair_rounding",
                      0.15,
                      0.05,
                      0.30,
                      {"", "sd of the logarithm of two printed times' quotient", S::assumed}};
  Value gel_conversion{"cure.gel_conversion",
                       0.57735,
                       0.55,
                       0.65,
                       {"stockmayer1943", "diepoxide and diamine, 1/sqrt 3", S::standard}};

  // The pot life's lever
  Value lever_start_rate{
      "cure.lever.r", 2.5, 1.5, 4.0, {"", "factor on k1/k2 for one step of the lever", S::assumed}};
  Value lever_heat{"cure.lever.heat",
                   0.10,
                   0.0,
                   0.20,
                   {"", "logarithm of the heat for one step of the lever", S::assumed}};

  // Heat
  Value heat_per_epoxide{"cure.heat_per_epoxide",
                         103.5,
                         100.0,
                         107.0,
                         {"horie1970", "100 to 107 kJ per epoxide equivalent", S::memory}};
  Value epoxide_weight{
      "cure.epoxide_weight", 190.0, 180.0, 200.0, {"", "of part A, g/eq", S::assumed}};
  Value epoxide_share{
      "cure.epoxide_share", 0.95, 0.85, 1.0, {"", "of part A; the rest is diluent", S::assumed}};
  Value heat_capacity{
      "cure.heat_capacity", 1900.0, 1700.0, 2100.0, {"", "of the liquid mix", S::memory}};
  Value conductivity{"cure.conductivity", 0.2, 0.15, 0.25, {"", "of the mix", S::memory}};
  Value density{"cure.density",
                1.10,
                1.05,
                1.18,
                {"", "of the liquid mix, where the parts' are not given", S::memory}};

  // The glass
  Value tg_uncured{
      "cure.tg_uncured", -50.0, -60.0, -40.0, {"", "published -57 in one set", S::assumed}};
  Value tg_lambda{
      "cure.tg_lambda", 0.37, 0.30, 0.50, {"", "published 0.369 in one set", S::assumed}};
  Value tg_cured{
      "cure.tg_cured", 60.0, 50.0, 80.0, {"", "where the sheet prints no Tg", S::assumed}};
  Value stop_delay{"cure.stop_delay",
                   10.0,
                   5.0,
                   20.0,
                   {"", "Tg above the film where its rate has halved", S::assumed}};
  Value stop_width{"cure.stop_width", 4.0, 2.0, 8.0, {"", "not tested on data", S::assumed}};

  // What a sheet does not print about a film
  Value sandable_above{"film.sandable_above",
                       5.0,
                       0.0,
                       10.0,
                       {"", "Tg above the film's temperature to be sanded", S::assumed}};
  Value full_cure_below{"film.full_cure_below",
                        10.0,
                        5.0,
                        15.0,
                        {"", "Tg below that of the sheet's full cure, at most", S::assumed}};
  Value patience{
      "film.patience", 3.0, 2.0, 4.0, {"", "times the clock, then it is not reached", S::assumed}};
  Value trim_below{"film.trim_below",
                   10.0,
                   0.0,
                   20.0,
                   {"", "trimmed until Tg is this far below the film's temperature", S::assumed}};
  Value recoat_longest{
      "film.recoat_longest", 72.0, 48.0, 96.0, {"", "unless the sheet prints longer", S::assumed}};

  // Polyester
  Value firm_gel{"polyester.firm_gel",
                 1.5,
                 1.2,
                 2.0,
                 {"", "times gel, until the next coat of laminating resin holds", S::assumed}};
  Value dose_power{"polyester.dose_power",
                   1.0,
                   0.7,
                   1.3,
                   {"", "gel time by dose where a sheet prints one dose", S::assumed}};

  // The warm box
  Value box_polystyrene{
      "box.polystyrene", 50.0, 45.0, 55.0, {"", "hottest box for EPS and XPS", S::assumed}};
  Value box_polyurethane{
      "box.polyurethane", 60.0, 55.0, 65.0, {"", "hottest box for PU", S::assumed}};
  Value box_above_tg{"box.above_tg", 15.0, 5.0, 20.0, {"", "never above Tg by more", S::assumed}};
  Value box_ramp{"box.ramp", 10.0, 5.0, 20.0, {"", "no faster than this in an hour", S::assumed}};

  // The cup
  Value cooling_side{"cup.cooling.side", 10.0, 5.0, 15.0, {"", "still air", S::assumed}};
  Value cooling_top{"cup.cooling.top", 10.0, 5.0, 15.0, {"", "still air", S::assumed}};
  Value cooling_base{"cup.cooling.base", 8.0, 3.0, 15.0, {"", "on a bench", S::assumed}};
  Value usable_rise{"cup.usable_rise",
                    20.0,
                    10.0,
                    30.0,
                    {"", "the middle has warmed by its own heat", S::assumed}};
  Value usable_share{
      "cup.usable_share", 1.0 / 3.0, 0.2, 0.5, {"", "of gel conversion", S::assumed}};
  Value runs_away{
      "cup.runs_away", 200.0, 180.0, 220.0, {"", "hotter is said as running away", S::assumed}};
  Value sheet_mass{"cup.sheet_mass",
                   150.0,
                   100.0,
                   200.0,
                   {"", "of a pot life printed without its mass", S::assumed}};
};

/// Calls f(default, unit word) for each value.
template <class D, class F>
void visit(D& defaults, F&& f) requires requires {
  defaults.order_m;
}
{
  f(defaults.order_m, "");
  f(defaults.order_n, "");
  f(defaults.start_rate, "");
  f(defaults.energy_spread, "kJ/mol");
  f(defaults.pair_rounding, "");
  f(defaults.gel_conversion, "share");
  f(defaults.lever_start_rate, "times");
  f(defaults.lever_heat, "");
  f(defaults.heat_per_epoxide, "kJ/mol");
  f(defaults.epoxide_weight, "g/mol");
  f(defaults.epoxide_share, "share");
  f(defaults.heat_capacity, "J/(kg K)");
  f(defaults.conductivity, "W/(m K)");
  f(defaults.density, "g/ml");
  f(defaults.tg_uncured, "C");
  f(defaults.tg_lambda, "");
  f(defaults.tg_cured, "C");
  f(defaults.stop_delay, "K");
  f(defaults.stop_width, "K");
  f(defaults.sandable_above, "K");
  f(defaults.full_cure_below, "K");
  f(defaults.patience, "times");
  f(defaults.trim_below, "K");
  f(defaults.recoat_longest, "h");
  f(defaults.firm_gel, "times");
  f(defaults.dose_power, "");
  f(defaults.box_polystyrene, "C");
  f(defaults.box_polyurethane, "C");
  f(defaults.box_above_tg, "K");
  f(defaults.box_ramp, "K/h");
  f(defaults.cooling_side, "W/(m2 K)");
  f(defaults.cooling_top, "W/(m2 K)");
  f(defaults.cooling_base, "W/(m2 K)");
  f(defaults.usable_rise, "K");
  f(defaults.usable_share, "share");
  f(defaults.runs_away, "C");
  f(defaults.sheet_mass, "g");
}

}  // namespace wetout::resin
