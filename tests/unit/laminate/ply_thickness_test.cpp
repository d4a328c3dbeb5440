#include <gtest/gtest.h>

#include "sample.hpp"

namespace wetout::laminate {
namespace {

units::Length thickness(double weight_kg_m2, double psi, double fibre_g_ml, double resin_g_ml) {
  PlanInput in = sample::input();
  in.shop.cloths[0].weight = units::grams_per_square_metre(weight_kg_m2 * 1000);
  in.shop.cloths[0].fibre_density = units::grams_per_millilitre(fibre_g_ml);
  in.shop.resins[0].cured_density = units::grams_per_millilitre(resin_g_ml);
  in.shop.resins[0].pot_life[0].time = {units::hours(9), units::hours(9)};
  in.shop.cups[0].holds = units::litres(5);
  in.shop.losses.fibre_mass_fraction = psi;
  const auto plan = make_plan(in);
  EXPECT_TRUE(plan) << sample::told(plan.error());
  return plan ? plan->plies[0].thickness : units::Length{};
}

// ISO 12215-5, ply thickness t = (w/3.072)(2.56/psi - 1.36) mm (formula from memory, the standard
// is not open); its constants are E-glass 2.56 and polyester 1.20 g/ml. Values computed from it, to
// the four digits of the table.
TEST(PlyThickness, EqualsIso12215ForItsDensities) {
  for (const auto& [w, psi, t_mm] : {std::tuple{0.3000, 0.30, 0.7005},
                                     {0.3000, 0.48, 0.3880},
                                     {0.2034, 0.50, 0.2490},
                                     {0.6000, 0.55, 0.6435}}) {
    EXPECT_NEAR(units::in_millimetres(thickness(w, psi, 2.56, 1.20)), t_mm, 0.5e-4);
    EXPECT_NEAR(units::in_millimetres(thickness(w, psi, 2.56, 1.20)),
                w / 3.072 * (2.56 / psi - 1.36), 1e-12);
  }
}

// The same in epoxy: 2.8 to 3.6 % thicker.
TEST(PlyThickness, EpoxyIsThicker) {
  EXPECT_NEAR(units::in_millimetres(thickness(0.2034, 0.50, 2.56, 1.15)), 0.2563, 0.5e-4);
  EXPECT_NEAR(units::in_millimetres(thickness(0.3000, 0.30, 2.54, 1.15)), 0.7268, 0.5e-4);
}

// Rule of mixtures (any composites text, e.g. Gibson 1994; from memory): laminate density by
// fibre mass fraction for 2.56 and 1.15 g/ml. Mass of ply over thickness must give it.
TEST(PlyThickness, GivesTheRuleOfMixturesDensity) {
  for (const auto& [psi, density] : {std::pair{0.30, 1.3776},
                                     {0.40, 1.4749},
                                     {0.45, 1.5290},
                                     {0.50, 1.5871},
                                     {0.55, 1.6498},
                                     {0.60, 1.7176}}) {
    const double w = 0.2034;  // kg/m2
    const double mass_per_area = w / psi;
    const double t_m = units::in_metres(thickness(w, psi, 2.56, 1.15));
    EXPECT_NEAR(mass_per_area / t_m * 1e-3, density, 0.5e-4);
  }
}

}  // namespace
}  // namespace wetout::laminate
