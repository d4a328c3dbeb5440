#include "wetout/climate/core.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "shown_number.hpp"
#include "wetout/base/check.hpp"

namespace wetout::climate {
namespace {

constexpr units::Length thickest = units::metres(1);

/// The root of zeta tan zeta = biot between 0 and pi/2.
double first_eigenvalue(double biot) {
  // zeta sin zeta - biot cos zeta rises all the way and has no pole.
  const auto miss = [&](double z) { return z * std::sin(z) - biot * std::cos(z); };
  double low = 0.0, high = std::numbers::pi / 2;
  double z = std::min(std::sqrt(biot), std::numbers::pi / 2 * biot / (1.0 + biot));
  for (int i = 0; i < 100; ++i) {
    const double f = miss(z);
    (f < 0.0 ? low : high) = z;
    const double slope = (1.0 + biot) * std::sin(z) + z * std::cos(z);
    const double newton = z - f / slope;
    const double next = newton > low && newton < high ? newton : 0.5 * (low + high);
    const bool there = std::abs(next - z) <= 1e-15 * z;
    z = next;
    if (there) break;
  }
  return z;
}

}  // namespace

Foam usual_foam(FoamKind kind, const ClimateDefaults& d) {
  const auto of = [](double density, double k, double cp) {
    return Foam{units::kilograms_per_cubic_metre(density), k, cp};
  };
  switch (kind) {
    case FoamKind::eps:
      return of(d.eps_density.value, d.eps_conductivity.value, d.eps_heat_capacity.value);
    case FoamKind::xps:
      return of(d.xps_density.value, d.xps_conductivity.value, d.xps_heat_capacity.value);
    case FoamKind::pu:
      return of(d.pu_density.value, d.pu_conductivity.value, d.pu_heat_capacity.value);
  }
  base::broken_promise("a foam is EPS, XPS or PU");
}

base::Result<units::Duration> core_lag(units::Length thickness, const Foam& foam,
                                       double film_w_per_m2_k) {
  // Comparisons are written so that a NaN is refused.
  base::Problems problems;
  if (!(thickness > units::Length{} && thickness <= thickest)) {
    problems.push_back({.code = "core.thickness",
                        .message = "a core is more than 0 and at most 1 m thick",
                        .found = shown_number(units::in_millimetres(thickness), 1) + " mm",
                        .expected = "a thickness, e.g. \"60 mm\""});
  }
  const double density = units::in_kilograms_per_cubic_metre(foam.density);
  const double k = foam.conductivity_w_per_m_k, cp = foam.heat_capacity_j_per_kg_k;
  if (!(density > 0.0 && k > 0.0 && cp > 0.0)) {
    problems.push_back({.code = "core.foam",
                        .message = "density, conductivity and heat capacity of foam are above 0",
                        .expected = "e.g. 16 kg/m3, 0.036 W/(m K), 1450 J/(kg K)"});
  }
  if (!(film_w_per_m2_k > 0.0)) {
    problems.push_back({.code = "core.film",
                        .message = "the film coefficient between air and foam is above 0",
                        .expected = "e.g. 8 W/(m2 K)"});
  }
  if (!problems.empty()) return base::fail(std::move(problems));

  const double half_m = 0.5 * units::in_metres(thickness);
  const double zeta = first_eigenvalue(film_w_per_m2_k * half_m / k);
  const double diffusivity = k / (density * cp);
  return units::seconds(half_m * half_m / (diffusivity * zeta * zeta));
}

time::History surface(const time::History& room_air_kelvin, const time::History& core_kelvin) {
  return lower_of(room_air_kelvin, core_kelvin);
}

}  // namespace wetout::climate
