#include "section.hpp"

#include <cmath>

namespace wetout::board {
namespace {

// Below this the rail is square to within 1e-9 of the section's size.
constexpr double square_below = 1e-9;

}  // namespace

SectionPoint section_point(double e, double near) {
  if (near <= 0.0 || e < square_below) return {near, 1.0, 0.0, 0.0};
  const double n = 2.0 / e;
  const double log_near = std::log(near);
  const double w = std::exp(n * log_near);  // near^n
  const double log_rest = std::log1p(-w);   // log far^n
  SectionPoint p;
  p.near = near;
  p.far = std::exp(log_rest / n);
  p.slope = -w / (1.0 - w) * p.far / near;
  p.by_e = p.far * 0.5 * n * (w * log_near / (1.0 - w) + log_rest / n);
  return p;
}

double section_gap(double e, double near) {
  if (near <= 0.0 || e < square_below) return 0.0;
  return -std::expm1(0.5 * e * std::log1p(-std::pow(near, 2.0 / e)));
}

double section_split(double e) { return std::exp2(-0.5 * e); }

double section_area(double e) {
  const double g = std::tgamma(1.0 + 0.5 * e);
  return g * g / std::tgamma(1.0 + e);
}

HalfQuarter half_quarter(double e) {
  HalfQuarter half;
  half.split = section_split(e);
  for (std::size_t i = 0; i < rule_size; ++i) {
    const SectionPoint p = section_point(e, half.split * gauss_kronrod().at[i]);
    half.near[i] = p.near;
    half.far[i] = p.far;
    half.slope[i] = p.slope;
    half.by_e[i] = p.by_e;
  }
  return half;
}

}  // namespace wetout::board
