// What a data sheet leaves out. Each value can be moved for a what-if, so they travel as data.
#pragma once

#include "wetout/base/cited.hpp"
#include "wetout/resin/cure_defaults.hpp"
#include "wetout/units/quantity.hpp"

namespace wetout::resin {

/// Exact since 2019: the product of the Boltzmann and Avogadro constants.
inline constexpr base::Cited<double> gas_constant_j_per_mol_k{
    8.314462618, {"codata2018", "R", base::Standing::standard}};

struct Defaults {
  using S = base::Standing;
  base::Default<double> energy_kj_mol{
      "resin.energy",
      55.0,
      45.0,
      65.0,
      {"", "middle of published room-temperature amine cures, 44 to 63", S::assumed}};
  base::Default<double> pot_life_share{
      "resin.pot_life_share",
      0.5,
      0.3,
      0.7,
      {"", "of a polyester's gel time, for spreading", S::assumed}};
  base::Default<double> tack_free_of_gel{
      "resin.tack_free_of_gel", 1.75, 1.3, 2.5, {"", "tack-free over gel of a film", S::assumed}};
  base::Default<double> ratio_tolerance{
      "resin.ratio_tolerance",
      0.02,
      0.005,
      0.05,
      {"", "share of part B where the sheet prints none", S::assumed}};
  base::Default<double> dose_tolerance{
      "polyester.dose_tolerance",
      0.10,
      0.05,
      0.20,
      {"", "share of the catalyst, as far as the sheet's range has room", S::assumed}};
  base::Default<units::Density> cured_density{
      "resin.cured_density",
      units::grams_per_millilitre(1.15),
      units::grams_per_millilitre(1.10),
      units::grams_per_millilitre(1.20),
      {"", "unfilled laminating epoxy, room-temperature cure", S::memory}};
  base::Default<double> raise_limit{
      "pour.raise_limit",
      2.0,
      1.2,
      4.0,
      {"", "a small batch is raised to at most this many times its need", S::assumed}};
  /// Of film and cup; visited by themselves.
  CureDefaults cure;
};

/// Calls f(default, unit word) for each value.
template <class D, class F>
void visit(D& defaults, F&& f) requires requires {
  defaults.energy_kj_mol;
}
{
  f(defaults.energy_kj_mol, "kJ/mol");
  f(defaults.pot_life_share, "share");
  f(defaults.tack_free_of_gel, "times");
  f(defaults.ratio_tolerance, "share");
  f(defaults.dose_tolerance, "share");
  f(defaults.cured_density, "g/ml");
  f(defaults.raise_limit, "times");
}

}  // namespace wetout::resin
