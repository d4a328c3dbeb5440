// The scheme against theory: Frank-Kamenetskii, Semenov, the adiabatic limit, its order.
#include "wetout/resin/reacting_body.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "wetout/resin/defaults.hpp"

namespace wetout::resin {
namespace {

using units::Temperature;

constexpr double r_gas = gas_constant_j_per_mol_k.value;
constexpr double air_k = 298.15;

// Zeroth order without consumption, activation temperature E/R = T/epsilon: heat(T) per second is
// `kelvin_per_s` at the air's temperature.
Reactant without_consumption(double epsilon, double kelvin_per_s) {
  constexpr double endless = 1e9;  // K; conversion stays below 1e-6
  Kinetics kinetics;
  kinetics.r = 1.0;
  kinetics.m = 0.0;
  kinetics.n = 0.0;
  kinetics.energy_j_per_mol = r_gas * air_k / epsilon;
  kinetics.reference = Temperature::kelvin(air_k);
  kinetics.k_per_s = kelvin_per_s / endless / 2.0;  // r + a^0 = 2
  return {ConversionCurve(1.0, 0.0, 0.0), kinetics, endless};
}

const Chain whole{{1.0}, {0.0, 0.0}};  // the other direction: one insulated cell

// Whether it runs away: 5 times RT^2/E above the air.
bool runs_away(Shape shape, double delta, double epsilon, std::size_t cells) {
  constexpr double radius = 0.02, conductivity = 0.2, capacity = 2e6;
  const double scale = epsilon * air_k;  // RT^2/E
  const double watts = delta * scale * conductivity / (radius * radius);
  const Reactant reactant = without_consumption(epsilon, watts / capacity);
  ReactingBody body(reactant,
                    from_middle(shape, radius, cells, conductivity, capacity, fixed_at_air), whole,
                    Temperature::kelvin(air_k), Temperature::kelvin(air_k));
  const double diffusion = radius * radius * capacity / conductivity;
  double dt = diffusion / 2000.0, last = 0.0;
  for (double time = 0.0; time < 200.0 * diffusion; time += dt) {
    body.step(dt);
    const double rise = body.own_rise_kelvin() / scale;
    if (rise > 5.0) return true;
    const double speed = (rise - last) / (dt / diffusion);
    if (time > diffusion && speed < 1e-4) return false;
    last = rise;
    dt = diffusion * std::min(0.01, 0.02 / std::max(1.0, speed));
  }
  return false;
}

double critical_delta(Shape shape, double around, double epsilon, std::size_t cells) {
  double low = 0.97 * around, high = 1.03 * around;
  EXPECT_FALSE(runs_away(shape, low, epsilon, cells));
  EXPECT_TRUE(runs_away(shape, high, epsilon, cells));
  while (high / low > 1.0005) {
    const double middle = std::sqrt(low * high);
    (runs_away(shape, middle, epsilon, cells) ? high : low) = middle;
  }
  return std::sqrt(low * high);
}

// frankkamenetskii1955: 0.8784577, 2, 3.321992 for large E; to first order in epsilon = RT/E they
// grow by 1.07 epsilon.
TEST(FrankKamenetskii, SlabCylinderAndSphere) {
  constexpr double epsilon = 1e-3;
  const double grown = 1.0 + 1.07 * epsilon;
  EXPECT_NEAR(critical_delta(Shape::slab, 0.8784577, epsilon, 40) / (0.8784577 * grown), 1.0,
              0.005);
  EXPECT_NEAR(critical_delta(Shape::cylinder, 2.0, epsilon, 40) / (2.0 * grown), 1.0, 0.005);
  EXPECT_NEAR(critical_delta(Shape::sphere, 3.321992, epsilon, 40) / (3.321992 * grown), 1.0,
              0.005);
}

// williams1985: a stirred body runs away when psi = q V E/(h S R T0^2) is above 1/e; with
// Arrhenius itself the tangent of heat made and lost is exact.
TEST(Semenov, StirredCup) {
  constexpr double epsilon = 1e-3;
  const double activation = air_k / epsilon;
  const double tangent = activation / 2.0 * (1.0 - std::sqrt(1.0 - 4.0 * air_k / activation));
  // heat(T)/heat(air) there over (T - air) in units of RT^2/E
  const double exact =
      (tangent - air_k) / (epsilon * air_k) / std::exp(activation * (1.0 / air_k - 1.0 / tangent));
  EXPECT_NEAR(exact, std::exp(-1.0) * (1.0 + epsilon), 1e-5);
  const auto goes = [&](double psi) {
    const double loses_per_s = 1e-3;
    const Reactant reactant = without_consumption(epsilon, psi * epsilon * air_k * loses_per_s);
    ReactingBody body(reactant, Chain{{1.0}, {0.0, loses_per_s}}, whole, Temperature::kelvin(air_k),
                      Temperature::kelvin(air_k));
    for (int i = 0; i < 20000; ++i) {
      body.step(10.0);
      if (body.own_rise_kelvin() > 5.0 * epsilon * air_k) return true;
    }
    return false;
  };
  EXPECT_FALSE(goes(exact * 0.998));
  EXPECT_TRUE(goes(exact * 1.002));
}

Reactant epoxy(double energy = 55e3) {
  Kinetics kinetics;
  kinetics.energy_j_per_mol = energy;
  kinetics.k_per_s = 2e-4;
  return {ConversionCurve(kinetics.r, kinetics.m, kinetics.n), kinetics, 450e3 / 1900.0};
}

ReactingBody cup_of(const Reactant& reactant, double h, double start_c) {
  return {reactant, from_middle(Shape::cylinder, 0.028, 8, 0.2, 2.09e6, h),
          across(0.056, 12, 0.2, 2.09e6, h, h), Temperature::celsius(25),
          Temperature::celsius(start_c)};
}

TEST(ReactingBody, AdiabaticEndsAtFullRise) {
  const Reactant reactant = epoxy();
  ReactingBody body = cup_of(reactant, insulated, 25);
  double dt = 20.0;
  while (body.mean_conversion() < 0.9999) {
    if (body.step(dt) > 2.0) {
      body.undo();
      dt *= 0.7;
    } else {
      dt *= 1.2;
    }
  }
  // Temperature and conversion lie on one line all the way.
  EXPECT_NEAR(body.mean_kelvin(), 298.15 + 450e3 / 1900.0 * body.mean_conversion(), 1e-9);
  for (int i = 0; i < 2000; ++i) body.step(1.0);
  EXPECT_NEAR(body.middle_kelvin(), 298.15 + 450e3 / 1900.0, 0.01);
}

TEST(ReactingBody, InertCoolsToTheAirAsTheSeriesSays) {
  Reactant inert = epoxy();
  inert.kinetics.k_per_s = 1e-30;
  // A long cylinder in a bath, middle: sum of 2/(b J1(b)) exp(-b^2 Fo); carslaw1959, 7.6.
  ReactingBody body(inert, from_middle(Shape::cylinder, 0.03, 64, 0.2, 2e6, fixed_at_air), whole,
                    Temperature::celsius(25), Temperature::celsius(45));
  const double fo = 0.3, time = fo * 0.03 * 0.03 * 2e6 / 0.2;
  for (int i = 0; i < 600; ++i) body.step(time / 600.0);
  double sum = 0.0;
  for (const double b : {2.404825557695773, 5.520078110286311, 8.653727912911013}) {
    sum += 2.0 / (b * std::cyl_bessel_j(1, b)) * std::exp(-b * b * fo);
  }
  EXPECT_NEAR((body.middle_kelvin() - 298.15) / 20.0, sum, 5e-4);
}

// Strang splitting with alternating directions: second order, until the runaway.
TEST(ReactingBody, HalvingTheStepQuartersTheError) {
  const Reactant reactant = epoxy();
  const auto middle_after = [&](double dt) {
    ReactingBody body = cup_of(reactant, 10.0, 25);
    for (double t = 0.0; t < 799.0; t += dt) body.step(dt);
    return body.middle_kelvin();
  };
  const double a = middle_after(40), b = middle_after(20), c = middle_after(10),
               d = middle_after(5);
  EXPECT_GT(std::abs(a - b), 1e-5);
  EXPECT_NEAR((a - b) / (b - c), 4.0, 0.8);
  EXPECT_NEAR((b - c) / (c - d), 4.0, 0.4);
}

TEST(ReactingBody, HeatMadeIsStoredOrLost) {
  const Reactant reactant = epoxy();
  for (const double start : {15.0, 25.0, 40.0}) {
    ReactingBody body = cup_of(reactant, 10.0, start);
    double dt = 10.0;
    while (body.mean_conversion() < 0.99) {
      if (body.step(dt) > 2.0) {
        body.undo();
        dt *= 0.7;
      } else {
        dt = std::min(60.0, dt * 1.3);
      }
    }
    const double made = reactant.full_rise_kelvin * body.mean_conversion();
    EXPECT_NEAR((body.stored_kelvin() + body.lost_kelvin()) / made, 1.0, 1e-3);
  }
}

TEST(ReactingBody, UndoTakesBackExactly) {
  const Reactant reactant = epoxy();
  ReactingBody body = cup_of(reactant, 10.0, 30);
  body.step(30.0);
  const double middle = body.middle_kelvin(), lost = body.lost_kelvin();
  body.step(30.0);
  body.undo();
  EXPECT_EQ(body.middle_kelvin(), middle);
  EXPECT_EQ(body.lost_kelvin(), lost);
}

}  // namespace
}  // namespace wetout::resin
