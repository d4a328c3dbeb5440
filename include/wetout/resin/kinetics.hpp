// How fast a resin reacts and how far it can (docs/models/film.md).
//
//   d alpha/dt = k(T) (r + alpha^m) (1 - alpha)^n f
//
// kamal1973, with one activation energy for both terms; f is the vitrification factor.
#pragma once

#include <algorithm>
#include <cmath>

#include "wetout/units/temperature.hpp"

namespace wetout::resin {

/// Kamal and Sourour, with one activation energy. k is written from a reference temperature,
/// because A exp(-E/RT) overflows in limits.
struct Kinetics {
  double k_per_s = 0.0;  ///< of the autocatalytic term, at `reference`
  double r = 0.1;        ///< k1/k2; above 0, else nothing ever starts
  double m = 0.6;
  double n = 1.5;
  double energy_j_per_mol = 55e3;
  units::Temperature reference = units::Temperature::celsius(25);

  friend bool operator==(const Kinetics&, const Kinetics&) = default;
};

/// The glass transition by DiBenedetto (pascault1990), and where the reaction stops for it.
struct Glass {
  units::Temperature uncured = units::Temperature::celsius(-50);
  units::Temperature cured = units::Temperature::celsius(60);
  double lambda = 0.37;
  double delay_kelvin = 10.0;  ///< Tg above the film's temperature where the rate has halved
  double width_kelvin = 4.0;

  friend bool operator==(const Glass&, const Glass&) = default;
};

/// k at a temperature, 1/s.
double rate_constant(const Kinetics& kinetics, units::Temperature at);

/// (r + alpha^m) (1 - alpha)^n, for alpha from 0 to 1.
double chemical_rate(double conversion, double r, double m, double n);

/// 1/(1 + exp(x)), x clipped at 600: what is left of the rate (chern1987: x = C (alpha - alpha_c);
/// here x = (Tg - T - delay)/width).
inline double stopping_factor(double x) { return 1.0 / (1.0 + std::exp(std::min(x, 600.0))); }

units::Temperature glass_transition(const Glass& glass, double conversion);

/// The conversion at which Tg is `tg`: below 0 or above 1 where it never is.
double conversion_at(const Glass& glass, units::Temperature tg);

double vitrification_factor(const Glass& glass, double conversion, units::Temperature at);

/// Gel point of a mix of f- and g-functional parts, `ratio` of their groups (flory1941,
/// stockmayer1943): 1/sqrt(ratio (f-1)(g-1)).
double gel_point(double f, double g, double ratio);

}  // namespace wetout::resin
