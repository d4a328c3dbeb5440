#include "section.hpp"

#include <cmath>

namespace wetout::board {
namespace {

// Below this the rail is square to within 1e-9 of the section's size.
constexpr double square_below = 1e-9;

HalfQuarter half_quarter(double e, double from, double to) {
  HalfQuarter half{.from = from, .width = to - from};
  for (std::size_t i = 0; i < rule_size; ++i) {
    const SectionPoint p = section_point(e, from + half.width * gauss_kronrod().at[i]);
    half.near[i] = p.near;
    half.far[i] = p.far;
    half.slope[i] = p.slope;
    half.by_e[i] = p.by_e;
  }
  return half;
}

}  // namespace

SectionPoint section_point(double e, double near) {
  if (near <= 0.0 || e < square_below) return {near, 1.0, 0.0, 0.0};
  const double n = 2.0 / e;
  const double log_near = std::log(near);
  const double w = std::exp(n * log_near);    // near^n
  const double log_rest = std::log(1.0 - w);  // log far^n
  SectionPoint p;
  p.near = near;
  p.far = std::exp(log_rest / n);
  p.slope = -w / (1.0 - w) * p.far / near;
  p.by_e = p.far * 0.5 * n * (w * log_near / (1.0 - w) + log_rest / n);
  return p;
}

double section_split(double e) { return std::exp2(-0.5 * e); }

double section_area(double e) {
  const double g = std::tgamma(1.0 + 0.5 * e);
  return g * g / std::tgamma(1.0 + e);
}

Place place_at(double e, double c) {
  if (c <= section_split(e)) return {false, c};
  return {true, c < 1.0 ? section_point(e, c).far : 0.0};
}

Quarter whole_quarter(double e) {
  const HalfQuarter half = half_quarter(e, 0.0, section_split(e));
  return {half, half, half.width};
}

Quarter quarter_outside(double e, Place inner) {
  const double split = section_split(e);
  Quarter quarter;
  if (!inner.rail) quarter.flat = half_quarter(e, inner.near, split);
  quarter.rail = half_quarter(e, 0.0, inner.rail ? inner.near : split);
  quarter.rail_stop = section_point(e, quarter.rail.width).far;
  return quarter;
}

// Under the flat half s over c; what is left lies between its end and the rail half, c over s.
Estimate Quarter::area() const {
  const Rule<rule_size>& rule = gauss_kronrod();
  Estimate sum;
  for (std::size_t i = 0; i < rule_size; ++i) {
    const double value = flat.width * flat.far[i] + rail.width * (rail.far[i] - rail_stop);
    sum += {value * rule.fine[i], value * rule.coarse[i]};
  }
  return sum;
}

}  // namespace wetout::board
