#include "walk.hpp"

#include <algorithm>
#include <cmath>

namespace wetout::board {
namespace {

enum Branch { reached, on_wall, met_outline };

// A lap that ends well below the top of the rail half is walked over this share of it.
constexpr double low_share = 0.5;

// Steps along x up to this share of the way to the nearer tip leave the outline's parabola within
// 1e-6 of its half-width.
constexpr double near_enough = 0.01;

double root_sum(double a, double b) { return std::sqrt(a * a + b * b); }
double root_sum(double a, double b, double c) { return std::sqrt(a * a + b * b + c * c); }

}  // namespace

// Newton may step to a tip or past it, where slopes are infinite.
double Walk::inside(double x) const {
  constexpr double least = 1e-12;  // of the length: far below what any area can see
  return std::clamp(x, least * form_.length(), (1.0 - least) * form_.length());
}

// What is walked and covered so far.
struct Walk::Tally {
  double reach;
  double length = 0.0, area = 0.0;
  double error = 0.0;  ///< of the area, from what two orders less would change

  /// Goes on to t = `end` at most; false when the reach is used up before.
  bool add(const Part& part, double end) {
    const auto length_to = integral(part.length_rate);
    const auto area_to = integral(part.area_rate);
    const double left = reach - length;
    const double whole = length_to.at(end);
    const bool goes_on = whole <= left;
    const double t = goes_on ? end : std::min(end, where(length_to, std::fmax(0.0, left)));
    length += goes_on ? whole : left;
    area += area_to.at(t);
    // An error in the length moves the stop, and the area by the mean area per length.
    const double rate = area_to.at(1.0) / length_to.at(1.0);
    error += std::abs(area_to.tail(t) - (goes_on ? 0.0 : rate * length_to.tail(t)));
    return goes_on;
  }
  [[nodiscard]] Estimate covered() const { return {area, area - error}; }
};

Walk::Walk(const Form& form, Face face, double reach)
    : form_(form), face_(face), sign_(sign_of(face)), reach_(reach), medial_(form) {
  if (!form.constant_rail()) return;
  whole_ = table(form.rail_e(0.0), 1.0);
  low_ = table(form.rail_e(0.0), low_share);
}

Walk::Table Walk::table(double e, double share) {
  Table t;
  t.top = share * section_split(e);
  for (std::size_t i = 0; i < cheb_size; ++i) {
    const double s = t.top * cheb_points()[i];
    t.points[i] = section_point(e, s);
  }
  return t;
}

// The residual y - c b(x) falls along the ray and is convex: Newton is safe. The outline is looked
// up once where a parabola will do for the rest of the way.
void Walk::cross(const Ray& ray, Crossing& at) const {
  const SectionPoint& p = at.point;
  const double gap = 1.0 - p.far;
  for (int i = 0; i < 40; ++i) {
    const double x = inside(ray.start.x + at.distance * ray.inward.x);
    const Jet w = form_.outline(x);
    const double start = at.distance;
    double xi = 0.0;
    for (int k = 0; k < 3; ++k) {
      at.width = {w.value + xi * (w.slope + 0.5 * xi * w.bend), w.slope + xi * w.bend, w.bend};
      const double residual =
          (ray.start.y - at.width.value) + gap * at.width.value + at.distance * ray.inward.y;
      const double fall = -ray.inward.y + p.far * at.width.slope * ray.inward.x;
      at.distance += residual / fall;
      xi = (at.distance - start) * ray.inward.x;
      if (!(std::abs(xi) <= near_enough * std::min(x, form_.length() - x))) break;
    }
    at.distance = std::fmax(0.0, at.distance);
    if (std::abs(xi) <= near_enough * std::min(x, form_.length() - x)) {
      at.width.value = w.value + xi * (w.slope + 0.5 * xi * w.bend);
      at.width.slope = w.slope + xi * w.bend;
      return;
    }
  }
}

// The same where the rail changes along the board, and c with it.
void Walk::cross_changing(const Ray& ray, Crossing& at) const {
  for (int i = 0; i < 40; ++i) {
    const double x = inside(ray.start.x + at.distance * ray.inward.x);
    const Frame f = form_.frame(x);
    at.point = section_point(f.e, at.point.near);
    at.width = {f.half_width, f.half_width_slope, 0.0};
    const SectionPoint& p = at.point;
    const double residual =
        (ray.start.y - f.half_width) + (1.0 - p.far) * f.half_width + at.distance * ray.inward.y;
    const double c_x = p.by_e * f.e_slope;
    const double fall =
        -ray.inward.y + (p.far * f.half_width_slope + f.half_width * c_x) * ray.inward.x;
    const double next = std::fmax(0.0, at.distance + residual / fall);
    const double step = std::abs(next - at.distance);
    at.distance = next;
    // What is left is of the order of the step's square.
    if (step < 1e-6 * form_.length()) return;
  }
}

// Near the apex the face is upright: s is the parameter.
Walk::Part Walk::rail_half(const Ray& ray, bool low) const {
  Part part;
  const bool constant = form_.constant_rail().has_value();
  const Table& ready = low ? low_ : whole_;
  const double e = form_.rail_e(ray.start.x);
  const double top = constant ? ready.top : (low ? low_share : 1.0) * section_split(e);
  const double slope = -ray.inward.x / ray.inward.y;
  const double q = -1.0 / ray.inward.y;
  double bow = 1.0;  // distance over that to a straight outline's crossing
  for (std::size_t i = 0; i < cheb_size; ++i) {
    Crossing at;
    const double s = top * cheb_points()[i];
    at.point = constant ? ready.points[i] : section_point(e, s);
    const double straight =
        (1.0 - at.point.far) * ray.start.y * q / (1.0 + at.point.far * slope * slope);
    at.distance = straight * bow;
    if (constant) {
      cross(ray, at);
    } else {
      cross_changing(ray, at);
    }
    if (straight > 0.0) bow = at.distance / straight;
    const Frame f = form_.frame(inside(ray.start.x + at.distance * ray.inward.x), at.width);
    const Side& side = f.side(face_);
    const SectionPoint& p = at.point;
    const double c_x = -p.far * f.half_width_slope / f.half_width;
    const double c_e = p.by_e * f.e_slope;
    const double fall = -(ray.inward.y / f.half_width + c_x * ray.inward.x);
    const double turn = fall + c_e * ray.inward.x;
    const double d_s = -p.slope / turn;
    const double tilt = (f.apex_slope + sign_ * side.height_slope * p.near) * d_s;
    const double rise = sign_ * side.height;
    const double z_x = tilt + rise * (c_e - c_x) / turn;
    const double z_y = -rise / (f.half_width * turn);
    const double z_s = tilt * ray.inward.x + rise;
    part.distance[i] = at.distance;
    part.length_rate[i] = top * root_sum(d_s, z_s);
    part.area_rate[i] =
        top * root_sum(d_s, z_x, z_y) * std::fmax(0.0, 1.0 - ray.curvature * at.distance);
  }
  return part;
}

// Farther in, the root of the distance: a blunt tip rises like a root.
Walk::Part Walk::inland(const Ray& ray, double from, double to, bool fan) const {
  Part part;
  const double first = std::sqrt(from);
  const double width = std::sqrt(to) - first;
  for (std::size_t i = 0; i < cheb_size; ++i) {
    const double root = first + width * cheb_points()[i];
    const double d = root * root;
    const double rate = 2.0 * root * width;
    const Vec at = ray.start + ray.inward * d;
    const Frame f = form_.frame(inside(at.x));
    const Side& side = f.side(face_);
    const double c = std::clamp(at.y / f.half_width, 0.0, 1.0 - 1e-12);
    const SectionPoint p = section_point(f.e, c);
    const double c_x = -c * f.half_width_slope / f.half_width;
    const double z_x = f.apex_slope + sign_ * (side.height_slope * p.far +
                                               side.height * (p.slope * c_x + p.by_e * f.e_slope));
    const double z_y = sign_ * side.height * p.slope / f.half_width;
    const double z_d = z_x * ray.inward.x + z_y * ray.inward.y;
    part.distance[i] = d;
    part.length_rate[i] = rate * root_sum(1.0, z_d);
    part.area_rate[i] =
        rate * root_sum(1.0, z_x, z_y) * (fan ? d : std::fmax(0.0, 1.0 - ray.curvature * d));
  }
  return part;
}

Probe Walk::from_rail(double x) const {
  const Jet b = form_.outline(x);
  const double q = root_sum(1.0, b.slope);
  Ray ray{{x, b.value}, {b.slope / q, -1.0 / q}, -b.bend / (q * q * q), {}};
  // On the centre line the other side of the board is as near.
  ray.end = medial_.end(Edge::rail, ray.start, ray.inward, std::min(reach_, b.value * q));
  const double limit = ray.end.distance;
  // The way over the surface is longer than its rise, but for the little that the apex falls.
  const double rise = form_.frame(x, b).side(face_).height * section_split(form_.rail_e(x));
  if (reach_ < 0.9 * low_share * rise) {
    Tally tally{reach_};
    const Part rail = rail_half(ray, true);
    if (rail.distance.back() <= limit && !tally.add(rail, 1.0))
      return {tally.covered() * q, reached};
  }
  Tally tally{reach_};
  const Part rail = rail_half(ray, false);
  const double from = rail.distance.back();
  bool went = tally.add(rail, from > limit ? where(through(rail.distance), limit) : 1.0);
  if (went && from <= limit) {
    const double to = std::min(limit, from + std::fmax(0.0, reach_ - tally.length));
    went = tally.add(inland(ray, from, to, false), 1.0) && to == limit;
  }
  return {tally.covered() * q, went ? met_outline + ray.end.partner : reached};
}

Probe Walk::from_cut(Edge edge, Vec start, Vec inward, double wall) const {
  if (wall >= reach_) return {{reach_, reach_}, on_wall};
  const Ray ray{start, inward, 0.0, medial_.end(edge, start, inward, reach_ - wall)};
  Tally tally{reach_ - wall};
  const bool went = tally.add(inland(ray, 0.0, ray.end.distance, false), 1.0);
  tally.area += wall;
  return {tally.covered(), went ? met_outline + ray.end.partner : reached};
}

Probe Walk::from_corner(Vec start, Vec inward, double wall) const {
  if (wall >= reach_) return {{}, on_wall};
  const Ray ray{start, inward, 0.0, medial_.end(Edge::notch_corner, start, inward, reach_ - wall)};
  Tally tally{reach_ - wall};
  const bool went = tally.add(inland(ray, 0.0, ray.end.distance, true), 1.0);
  return {tally.covered(), went ? met_outline + ray.end.partner : reached};
}

}  // namespace wetout::board
