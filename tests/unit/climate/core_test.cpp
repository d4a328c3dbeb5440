#include "wetout/climate/core.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <limits>
#include <vector>

#include "air_samples.hpp"

namespace wetout::climate {
namespace {

using std::chrono::seconds;
using time::History;
using time::Instant;

double lag_s(double thickness_m, const Foam& foam, double film = 8.0) {
  return units::in_seconds(core_lag(units::metres(thickness_m), foam, film).value());
}

TEST(CoreLag, OfSurfboardsIsMinutes) {
  for (const FoamKind kind : {FoamKind::eps, FoamKind::xps, FoamKind::pu}) {
    EXPECT_GT(lag_s(0.03, usual_foam(kind)), 60.0);
    EXPECT_LT(lag_s(0.08, usual_foam(kind)), 3600.0);
  }
}

// zeta tan zeta = Bi has known roots: zeta = pi/4 for Bi = pi/4; tables print 0.8603 for Bi = 1
// and 1.4289 for Bi = 10 [carslaw1959].
TEST(CoreLag, MeetsKnownRootsOfTheSlab) {
  const Foam foam = usual_foam(FoamKind::eps);
  const double k = foam.conductivity_w_per_m_k;
  const double diffusivity =
      k / (units::in_kilograms_per_cubic_metre(foam.density) * foam.heat_capacity_j_per_kg_k);
  constexpr double half = 0.03;
  const auto zeta = [&](double biot) {
    return half / std::sqrt(diffusivity * lag_s(2 * half, foam, biot * k / half));
  };
  constexpr double quarter = 0.78539816339744831;
  EXPECT_NEAR(zeta(quarter), quarter, 1e-12);
  EXPECT_NEAR(zeta(1), 0.8603, 5e-5);
  EXPECT_NEAR(zeta(10), 1.4289, 5e-5);
  EXPECT_NEAR(zeta(1e9), 2 * quarter, 1e-8) << "faces at the air's temperature";
}

TEST(CoreLag, OfAThinSlabIsTheLumpedOne) {
  const Foam foam = usual_foam(FoamKind::xps);
  constexpr double thickness = 1e-6, film = 8;
  const double lumped = units::in_kilograms_per_cubic_metre(foam.density) *
                        foam.heat_capacity_j_per_kg_k * thickness / (2 * film);
  EXPECT_NEAR(lag_s(thickness, foam, film) / lumped, 1.0, 1e-4);
}

/// The slab itself: finite volumes over its half, small steps; mean temperature at `until_s` after
/// a step of the air from 0 to 1.
double slab_mean(double thickness_m, const Foam& foam, double film, double until_s) {
  constexpr int cells = 60;
  const double dx = 0.5 * thickness_m / cells;
  const double c =
      units::in_kilograms_per_cubic_metre(foam.density) * foam.heat_capacity_j_per_kg_k * dx;
  const double k = foam.conductivity_w_per_m_k / dx;
  const double face = 1.0 / (1.0 / film + 0.5 / k);
  const double step = 0.2 * c / k;
  std::vector<double> t(cells, 0.0);
  for (double s = 0; s < until_s; s += step) {
    std::vector<double> flow(cells + 1, 0.0);  // the middle is a mirror
    for (std::size_t i = 1; i < cells; ++i) flow[i] = k * (t[i] - t[i - 1]);
    flow[cells] = face * (1.0 - t[cells - 1]);
    for (std::size_t i = 0; i < cells; ++i) t[i] += step / c * (flow[i + 1] - flow[i]);
  }
  double sum = 0;
  for (const double value : t) sum += value;
  return sum / cells;
}

// One lag is a model of the slab's mean; how far it goes is on the model page.
TEST(CoreLag, FollowsTheConductionOfTheSlab) {
  for (const FoamKind kind : {FoamKind::eps, FoamKind::xps, FoamKind::pu}) {
    const Foam foam = usual_foam(kind);
    for (const double thickness : {0.03, 0.06, 0.08}) {
      const double tau = lag_s(thickness, foam);
      double worst = 0;
      for (const double lags : {0.25, 0.5, 1.0, 2.0, 3.0}) {
        const double slab = slab_mean(thickness, foam, 8.0, lags * tau);
        worst = std::max(worst, std::abs(slab - (1 - std::exp(-lags))));
      }
      EXPECT_LT(worst, 0.10) << thickness;
      // The slowest mode decides in the end: what is left shrinks by 1/e in one lag.
      const double left2 = 1 - slab_mean(thickness, foam, 8.0, 2 * tau);
      const double left3 = 1 - slab_mean(thickness, foam, 8.0, 3 * tau);
      EXPECT_NEAR(left2 / left3, std::exp(1.0), 0.01) << thickness;
    }
  }
}

// Behind a ramp the slab's mean trails by L^2/(12 a) + density cp L/(2 film), all modes together.
TEST(CoreLag, BehindSlowAirIsAtMostFifteenPercentMoreThanTheSlabs) {
  for (const FoamKind kind : {FoamKind::eps, FoamKind::xps, FoamKind::pu}) {
    const Foam foam = usual_foam(kind);
    const double heat =
        units::in_kilograms_per_cubic_metre(foam.density) * foam.heat_capacity_j_per_kg_k;
    for (const double l : {0.03, 0.06, 0.08}) {
      const double exact = heat * l * l / (12 * foam.conductivity_w_per_m_k) + heat * l / (2 * 8.0);
      EXPECT_GE(lag_s(l, foam), exact) << l;
      EXPECT_LE(lag_s(l, foam), 1.15 * exact) << l;
    }
  }
}

RC_GTEST_PROP(CoreLag, GrowsWithThicknessAndDensityAndFallsWithTheFilm, ()) {
  Foam foam = usual_foam(*rc::gen::element(FoamKind::eps, FoamKind::xps, FoamKind::pu));
  const double thickness = between(0.005, 0.2), film = between(3, 30);
  const double lag = lag_s(thickness, foam, film);
  RC_ASSERT(lag_s(1.1 * thickness, foam, film) > lag);
  RC_ASSERT(lag_s(thickness, foam, 1.1 * film) < lag);
  foam.density = 1.1 * foam.density;
  RC_ASSERT(lag_s(thickness, foam, film) > lag);
}

std::string code_of(double thickness_m, const Foam& foam, double film) {
  const auto result = core_lag(units::metres(thickness_m), foam, film);
  return result ? "none" : result.error().front().code;
}

TEST(CoreLag, RefusesWhatCannotBe) {
  const Foam foam = usual_foam(FoamKind::pu);
  EXPECT_EQ(code_of(0, foam, 8), "core.thickness");
  EXPECT_EQ(code_of(1.01, foam, 8), "core.thickness");
  EXPECT_EQ(code_of(std::numeric_limits<double>::quiet_NaN(), foam, 8), "core.thickness");
  EXPECT_EQ(code_of(0.06, foam, 0), "core.film");
  EXPECT_EQ(code_of(0.06, Foam{}, 8), "core.foam");
}

TEST(Core, FollowsTheRoomLateAndDamped) {
  const History room = hourly_air(3, 20, 5, 11);
  const Lagged core = core_course(room, units::minutes(10));
  const History samples = core.sampled();
  double most = 0;
  for (int s = 0; s <= 3 * 86400; s += 300) {
    most = std::max(most, std::abs(samples.at_seconds(s) - room.at_seconds(s)));
  }
  // 10 minutes behind air that moves by a few kelvin an hour.
  EXPECT_GT(most, 0.1);
  EXPECT_LT(most, 1.0);
}

TEST(Surface, IsTheLowerOfRoomAndCore) {
  const History room = course({{0, 290}, {3600, 294}, {7200, 288}});
  const History core = course({{0, 291}, {7200, 292}});
  const History low = surface(room, core);
  EXPECT_EQ(low.at_seconds(0), 290);
  EXPECT_NEAR(low.at_seconds(3600), 291.5, 1e-9);
  EXPECT_EQ(low.at_seconds(7200), 288);
}

}  // namespace
}  // namespace wetout::climate
