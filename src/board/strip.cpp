#include "strip.hpp"

#include <algorithm>
#include <cmath>

namespace wetout::board {
namespace {

// |P_x x P_t| for P = (x, b c, apex + sign h s), with t = c on the flat half and t = s on the rail
// half; written once for both, out of the derivatives by t and by x.
double element(double y_x, double z_x, double y_t, double z_t) {
  const double along = y_x * z_t - z_x * y_t;
  return std::sqrt(along * along + z_t * z_t + y_t * y_t);
}

double flat_element(const Frame& f, const Side& side, double sign, double c, double s, double slope,
                    double by_e) {
  const double z_x = f.apex_slope + sign * (side.height_slope * s + side.height * by_e * f.e_slope);
  return element(f.half_width_slope * c, z_x, f.half_width, sign * side.height * slope);
}

double rail_element(const Frame& f, const Side& side, double sign, double s, double c, double slope,
                    double by_e) {
  const double y_x = f.half_width_slope * c + f.half_width * by_e * f.e_slope;
  const double z_x = f.apex_slope + sign * side.height_slope * s;
  return element(y_x, z_x, f.half_width * slope, sign * side.height);
}

// Of f over [low, high] of `near`.
template <class F>
double over(double e, double low, double high, F&& f) {
  const Rule<rule_size>& rule = gauss_kronrod();
  double sum = 0.0;
  for (std::size_t i = 0; i < rule_size; ++i)
    sum += rule.fine[i] * f(section_point(e, low + (high - low) * rule.at[i]));
  return sum * (high - low);
}

double girth_over(const Frame& frame, Face face, double low, double high, bool rail) {
  const double along = rail ? frame.side(face).height : frame.half_width;
  const double across = rail ? frame.half_width : frame.side(face).height;
  return over(frame.e, low, high,
              [&](const SectionPoint& p) { return std::hypot(along, across * p.slope); });
}

// Where the length over [from 0 to] reaches `length`: Newton, the integrand being positive.
double reach_on_half(const Frame& frame, Face face, double split, double length, bool rail) {
  double near = 0.0;
  double done = 0.0;
  const double along = rail ? frame.side(face).height : frame.half_width;
  const double across = rail ? frame.half_width : frame.side(face).height;
  for (int i = 0; i < 12; ++i) {
    const double rate = std::hypot(along, across * section_point(frame.e, near).slope);
    const double next = std::clamp(near + (length - done) / rate, 0.0, split);
    const double step = girth_over(frame, face, std::min(near, next), std::max(near, next), rail);
    done += next < near ? -step : step;
    if (std::abs(next - near) < 1e-12) return next;
    near = next;
  }
  return near;
}

}  // namespace

Estimate face_strip(const Frame& frame, Face face, const Quarter& quarter) {
  const Rule<rule_size>& rule = gauss_kronrod();
  const Side& side = frame.side(face);
  const double sign = sign_of(face);
  const HalfQuarter& flat = quarter.flat;
  const HalfQuarter& rail = quarter.rail;
  Estimate sum;
  for (std::size_t i = 0; i < rule_size; ++i) {
    const double value = flat.width * flat_element(frame, side, sign, flat.near[i], flat.far[i],
                                                   flat.slope[i], flat.by_e[i]) +
                         rail.width * rail_element(frame, side, sign, rail.near[i], rail.far[i],
                                                   rail.slope[i], rail.by_e[i]);
    sum += {value * rule.fine[i], value * rule.coarse[i]};
  }
  return sum;
}

Estimate girth_strip(const Frame& frame, Face face, const Quarter& quarter) {
  const Rule<rule_size>& rule = gauss_kronrod();
  const double b = frame.half_width;
  const double h = frame.side(face).height;
  Estimate sum;
  for (std::size_t i = 0; i < rule_size; ++i) {
    const double value = quarter.flat.width * std::hypot(b, h * quarter.flat.slope[i]) +
                         quarter.rail.width * std::hypot(h, b * quarter.rail.slope[i]);
    sum += {value * rule.fine[i], value * rule.coarse[i]};
  }
  return sum;
}

Place place_at_girth(const Frame& frame, Face face, double length) {
  const double split = section_split(frame.e);
  const double flat = girth_over(frame, face, 0.0, split, false);
  if (length <= flat) return {false, reach_on_half(frame, face, split, length, false)};
  const double rest = flat + girth_over(frame, face, 0.0, split, true) - length;
  return {true, rest > 0.0 ? reach_on_half(frame, face, split, rest, true) : 0.0};
}

}  // namespace wetout::board
