#include "wetout/resin/fill_heat.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "sheets.hpp"
#include "wetout/resin/calibrate.hpp"

namespace wetout::resin {
namespace {

using sheets::c;

const Cure& medium() {
  static const Cure cure = calibrate(sheets::medium(), {})->cure;
  return cure;
}
FillHeat fill(double gap_mm, double air = 25, double resin = 25, FillSurroundings foam = {}) {
  return fill_heat(medium(), units::millimetres(gap_mm), foam, c(air), c(resin));
}

// Another route: explicit steps on an even grid of a quarter millimetre.
double explicit_peak_kelvin(const Cure& cure, double gap, const FillSurroundings& foam,
                            double air) {
  constexpr double dx = 2.5e-4;
  const auto resin_cells = static_cast<std::size_t>(std::lround(gap / dx));
  const std::size_t cells = resin_cells + static_cast<std::size_t>(std::lround(0.05 / dx));
  std::vector<double> t(cells, air), a(resin_cells, 0.0), next(cells);
  const Kinetics& k = cure.kinetics;
  const double resin_capacity = cure.bulk.heat_capacity_j_per_kg_k * cure.bulk.density.si();
  const auto conductivity = [&](std::size_t i) {
    return i < resin_cells ? cure.bulk.conductivity_w_per_m_k : foam.conductivity_w_per_m_k;
  };
  const auto between = [&](std::size_t i) {
    return 2.0 / (dx / conductivity(i) + dx / conductivity(i + 1));
  };
  double box = air;  // the wall of the box, one temperature
  const double dt = 0.4 * dx * dx * foam.capacity_j_per_m3_k / foam.conductivity_w_per_m_k;
  double peak = air;
  for (double time = 0.0; time < 4 * 3600.0; time += dt) {
    for (std::size_t i = 0; i < cells; ++i) {
      double flux = 0.0;
      const double to_wall = 2.0 * conductivity(i) / dx;
      if (i > 0) flux += between(i - 1) * (t[i - 1] - t[i]);
      if (i == 0 && foam.box_heat_j_per_m2_k > 0.0) {
        flux += to_wall * (box - t[i]);
      } else if (i == 0 && foam.box_loss_w_per_m2_k > 0.0) {
        flux += (air - t[i]) / (1.0 / foam.box_loss_w_per_m2_k + 1.0 / to_wall);
      }
      flux += i + 1 < cells ? between(i) * (t[i + 1] - t[i]) : 10.0 * (air - t[i]);
      double warmer = flux / dx / (i < resin_cells ? resin_capacity : foam.capacity_j_per_m3_k);
      if (i < resin_cells) {
        const double rate =
            rate_constant(k, units::Temperature::kelvin(t[i])) * chemical_rate(a[i], k.r, k.m, k.n);
        a[i] = std::min(1.0, a[i] + dt * rate);
        warmer += cure.bulk.heat_j_per_kg / cure.bulk.heat_capacity_j_per_kg_k * rate;
      }
      next[i] = t[i] + dt * warmer;
    }
    if (foam.box_heat_j_per_m2_k > 0.0) {
      box += dt / foam.box_heat_j_per_m2_k *
             (2.0 * conductivity(0) / dx * (t[0] - box) + foam.box_loss_w_per_m2_k * (air - box));
    }
    t.swap(next);
    const double hottest = *std::max_element(t.begin(), t.begin() + static_cast<long>(resin_cells));
    peak = std::max(peak, hottest);
    if (hottest < peak - 3.0 && a[0] > 0.5) break;
  }
  return peak;
}

TEST(FillHeat, MeetsExplicitStepsOnAFineGrid) {
  for (const double gap_mm : {3.0, 6.0, 12.0}) {
    const double expected = explicit_peak_kelvin(medium(), gap_mm * 1e-3, {}, 298.15);
    EXPECT_NEAR(fill(gap_mm).peak.in_kelvin(), expected, 1.0) << gap_mm;
    FillSurroundings with_box;
    with_box.box_loss_w_per_m2_k = 5.0;
    EXPECT_NEAR(fill(gap_mm, 25, 25, with_box).peak.in_kelvin(),
                explicit_peak_kelvin(medium(), gap_mm * 1e-3, with_box, 298.15), 1.0)
        << gap_mm;
    with_box.box_heat_j_per_m2_k = 4e3;
    EXPECT_NEAR(fill(gap_mm, 25, 25, with_box).peak.in_kelvin(),
                explicit_peak_kelvin(medium(), gap_mm * 1e-3, with_box, 298.15), 1.0)
        << gap_mm;
  }
}

TEST(FillHeat, BoxThatCarriesHeatAwayKeepsAThinFillCool) {
  FillSurroundings with_box;
  double last = fill(3).peak.in_celsius();
  for (const double loss : {1.0, 2.0, 5.0, 10.0}) {
    with_box.box_loss_w_per_m2_k = loss;
    const double peak = fill(3, 25, 25, with_box).peak.in_celsius();
    EXPECT_LT(peak, last);
    last = peak;
  }
}

TEST(FillHeat, WiderWarmerAndBetterInsulatedAreHotter) {
  double last = 0.0;
  for (const double gap : {1.0, 2.0, 4.0, 8.0, 16.0, 30.0}) {
    const double peak = fill(gap).peak.in_celsius();
    EXPECT_GT(peak, last);
    // A hot front can carry heat ahead of itself: a little above the full rise.
    EXPECT_LT(peak, 28.0 + medium().bulk.heat_j_per_kg / medium().bulk.heat_capacity_j_per_kg_k);
    last = peak;
  }
  EXPECT_GT(fill(4, 30, 30).peak, fill(4, 25, 25).peak);
  FillSurroundings dense;
  dense.conductivity_w_per_m_k = 0.05;
  dense.capacity_j_per_m3_k = 80e3;
  EXPECT_LT(fill(4, 25, 25, dense).peak, fill(4).peak);
}

TEST(FillHeat, FoamIsCoolerThanTheFill) {
  for (const double gap : {2.0, 8.0}) {
    const FillHeat heat = fill(gap);
    EXPECT_LT(heat.foam_peak, heat.peak);
    EXPECT_GT(heat.foam_peak, c(25));
    EXPECT_GT(heat.peak_at.si(), 0.0);
  }
}

}  // namespace
}  // namespace wetout::resin
