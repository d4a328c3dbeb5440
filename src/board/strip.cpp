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

// f(point, near, far, slope, by_e) over [low, high] of `near`.
template <class F>
Estimate over(double e, double low, double high, F&& f) {
  const Rule<rule_size>& rule = gauss_kronrod();
  Estimate sum;
  if (high <= low) return sum;
  for (std::size_t i = 0; i < rule_size; ++i) {
    const SectionPoint p = section_point(e, low + (high - low) * rule.at[i]);
    const double value = f(p);
    sum += {value * rule.fine[i], value * rule.coarse[i]};
  }
  return sum * (high - low);
}

double girth_over(const Frame& frame, Face face, double low, double high, bool rail) {
  const double along = rail ? frame.side(face).height : frame.half_width;
  const double across = rail ? frame.half_width : frame.side(face).height;
  return over(frame.e, low, high,
              [&](const SectionPoint& p) { return std::hypot(along, across * p.slope); })
      .fine;
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

Estimate face_strip(const Frame& frame, Face face, const HalfQuarter& half) {
  const Rule<rule_size>& rule = gauss_kronrod();
  const Side& side = frame.side(face);
  const double sign = sign_of(face);
  Estimate sum;
  for (std::size_t i = 0; i < rule_size; ++i) {
    const double value =
        flat_element(frame, side, sign, half.near[i], half.far[i], half.slope[i], half.by_e[i]) +
        rail_element(frame, side, sign, half.near[i], half.far[i], half.slope[i], half.by_e[i]);
    sum += {value * rule.fine[i], value * rule.coarse[i]};
  }
  return sum * half.split;
}

Place place_at(double e, double c) {
  if (c <= section_split(e)) return {false, c};
  return {true, c < 1.0 ? section_point(e, c).far : 0.0};
}

Estimate face_strip_outside(const Frame& frame, Face face, Place inner) {
  const Side& side = frame.side(face);
  const double sign = sign_of(face);
  const double split = section_split(frame.e);
  Estimate sum;
  if (!inner.rail) {
    sum = over(frame.e, inner.near, split, [&](const SectionPoint& p) {
      return flat_element(frame, side, sign, p.near, p.far, p.slope, p.by_e);
    });
  }
  sum += over(frame.e, 0.0, inner.rail ? inner.near : split, [&](const SectionPoint& p) {
    return rail_element(frame, side, sign, p.near, p.far, p.slope, p.by_e);
  });
  return sum;
}

Estimate girth_quarter(const Frame& frame, Face face, const HalfQuarter& half) {
  const Rule<rule_size>& rule = gauss_kronrod();
  const double b = frame.half_width;
  const double h = frame.side(face).height;
  Estimate sum;
  for (std::size_t i = 0; i < rule_size; ++i) {
    const double m = half.slope[i] * half.slope[i];
    const double value = std::sqrt(b * b + h * h * m) + std::sqrt(h * h + b * b * m);
    sum += {value * rule.fine[i], value * rule.coarse[i]};
  }
  return sum * half.split;
}

Place place_at_girth(const Frame& frame, Face face, double length) {
  const double split = section_split(frame.e);
  const double flat = girth_over(frame, face, 0.0, split, false);
  if (length <= flat) return {false, reach_on_half(frame, face, split, length, false)};
  const double rest = flat + girth_over(frame, face, 0.0, split, true) - length;
  return {true, rest > 0.0 ? reach_on_half(frame, face, split, rest, true) : 0.0};
}

Estimate quarter_outside(double e, double inner) {
  const Place place = place_at(e, inner);
  const double split = section_split(e);
  Estimate sum;
  if (!place.rail) sum = over(e, inner, split, [](const SectionPoint& p) { return p.far; });
  const double start = std::max(inner, split);
  sum += over(e, 0.0, place.rail ? place.near : split,
              [&](const SectionPoint& p) { return p.far - start; });
  return sum;
}

}  // namespace wetout::board
