#include "band.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "walk.hpp"

namespace wetout::board {
namespace {

// Along a tail block or a cut nose, half of it.
Estimate cut_band(const Form& form, const Walk& walk, Face face, double reach, Edge edge) {
  const bool tail = edge == Edge::tail_cut;
  const Closure& end = tail ? form.tail() : form.nose();
  const double x = tail ? 0.0 : form.length();
  const Vec inward{tail ? 1.0 : -1.0, 0.0};
  const Frame frame = form.frame(x);
  const double height = frame.side(face).height;
  const double split = section_split(frame.e);
  const auto on_flat = [&](double c) -> Probe {
    const double s = section_point(frame.e, c).far;
    return walk.from_cut(edge, {x, end.half_width * c}, inward, height * s);
  };
  const auto on_rail = [&](double s) -> Probe {
    const SectionPoint p = section_point(frame.e, s);
    Probe probe = walk.from_cut(edge, {x, end.half_width * p.far}, inward, height * s);
    probe.value = probe.value * -p.slope;
    return probe;
  };
  // The corner's share of the cut is not farther from the corner than the reach.
  const double corner = std::max(0.0, 1.0 - reach / end.half_width);
  const Place place = place_at(frame.e, corner);
  Estimate sum;
  const auto piece = [&](double from, double to, const auto& probe) {
    if (to > from)
      sum += integrate_branches(small_gauss_kronrod(), {.origin = from, .reach = to - from}, probe);
  };
  piece(0.0, place.rail ? split : place.near, on_flat);
  piece(place.rail ? split : place.near, split, on_flat);
  piece(0.0, place.rail ? place.near : split, on_rail);
  piece(place.rail ? place.near : split, split, on_rail);
  return sum * end.half_width;
}

// Along one side of the notch and half of the fan about its inner corner.
Estimate notch_band(const Form& form, const Walk& walk, Face face, double from, double to) {
  const Closure& tail = form.tail();
  const double side = std::hypot(tail.notch, tail.half_width);
  const Vec inward{tail.half_width / side, tail.notch / side};
  const auto along = [&](double x) -> Probe {
    const double y = form.notch(x);
    const Frame frame = form.frame(x);
    const double c = std::min(y / frame.half_width, 1.0);
    const double s = c < 1.0 ? section_point(frame.e, c).far : 0.0;
    Probe probe = walk.from_cut(Edge::notch, {x, y}, inward, frame.side(face).height * s);
    probe.value = probe.value * (side / tail.notch);
    return probe;
  };
  Estimate sum;
  for (const Panel& panel : form.panels(from, std::min(to, tail.notch)))
    sum += integrate_branches(small_gauss_kronrod(), panel, along);
  if (from < tail.notch && tail.notch <= to) {
    const Vec corner{tail.notch, 0.0};
    const double wall = form.frame(tail.notch).side(face).height;
    const Panel angles{.origin = 0.0, .reach = std::atan2(inward.y, inward.x)};
    sum += integrate_branches(small_gauss_kronrod(), angles, [&](double angle) {
      return walk.from_corner(corner, {std::cos(angle), std::sin(angle)}, wall);
    });
  }
  return sum;
}

// How far from the tail (or from the nose) a ray of this length may meet the centre line or a cut
// end.
double busy_end(const Form& form, double reach, bool tail) {
  const double length = tail ? form.wide_point() : form.length() - form.wide_point();
  const auto half_width = [&](double from_end) {
    return form.half_width(tail ? from_end : form.length() - from_end);
  };
  double low = 0.0;
  double high = length;
  if (half_width(high) <= reach) return high;
  for (int i = 0; i < 30; ++i) {
    const double middle = 0.5 * (low + high);
    (half_width(middle) < reach ? low : high) = middle;
  }
  const Closure& end = tail ? form.tail() : form.nose();
  return std::max(high, end.half_width > 0.0 ? reach : 0.0);
}

// Near the ends rays end early. Where they cease to must not fall between two points of a long
// panel.
std::vector<Panel> broken_near_ends(const Form& form, double reach, double from, double to) {
  std::vector<double> ends = {from};
  const double tail = busy_end(form, reach, true);
  const double nose = form.length() - busy_end(form, reach, false);
  if (tail > from && tail < to) ends.push_back(tail);
  if (nose > ends.back() && nose < to) ends.push_back(nose);
  ends.push_back(to);
  std::vector<Panel> panels;
  for (std::size_t i = 0; i + 1 < ends.size(); ++i) {
    for (const Panel& panel : form.few_panels(ends[i], ends[i + 1])) panels.push_back(panel);
  }
  return panels;
}

// Part of the two ends' edges that lies between the places, both sides.
double ends_between(const Form& form, double from, double to) {
  double length = 0.0;
  if (from <= 0.0 && form.tail().cut()) length += 2.0 * form.tail().half_width;
  if (to >= form.length() && form.nose().cut()) length += 2.0 * form.nose().half_width;
  if (const double notch = form.tail().notch; notch > 0.0) {
    const double part = std::max(0.0, std::min(to, notch) - std::max(from, 0.0)) / notch;
    length += 2.0 * part * std::hypot(notch, form.tail().half_width);
  }
  return length;
}

}  // namespace

Estimate band_area(const Form& form, Face face, double reach, double from, double to) {
  Estimate sum;
  if (reach <= 0.0 || to <= from) return sum;
  const Walk walk(form, face, reach);
  for (const Panel& panel : broken_near_ends(form, reach, from, to)) {
    sum += integrate_branches(small_gauss_kronrod(), panel,
                              [&](double x) { return walk.from_rail(x); });
  }
  if (form.tail().cut() && from <= 0.0) sum += cut_band(form, walk, face, reach, Edge::tail_cut);
  if (form.nose().cut() && to >= form.length())
    sum += cut_band(form, walk, face, reach, Edge::nose_cut);
  if (form.tail().notch > 0.0 && from < form.tail().notch)
    sum += notch_band(form, walk, face, from, to);
  return sum * 2.0;
}

double edge_length(const Form& form, double from, double to) {
  double length = ends_between(form, from, to);
  for (const Panel& panel : form.panels(from, to)) {
    at_points(panel, [&](double x, double fine, double /*coarse*/) {
      length += 2.0 * fine * std::hypot(1.0, form.outline(x).slope);
    });
  }
  return length;
}

double apex_length(const Form& form, double from, double to) {
  double length = ends_between(form, from, to);
  for (const Panel& panel : form.panels(from, to)) {
    at_points(panel, [&](double x, double fine, double /*coarse*/) {
      const Frame f = form.frame(x);
      length += 2.0 * fine * std::hypot(1.0, f.half_width_slope, f.apex_slope);
    });
  }
  return length;
}

double turning(const Form& form, double from, double to) {
  constexpr double quarter = std::numbers::pi / 2.0;
  const double start = from <= 0.0 ? quarter : std::atan(form.outline(from).slope);
  const double stop = to >= form.length() ? -quarter : std::atan(form.outline(to).slope);
  return 2.0 * (start - stop);
}

}  // namespace wetout::board
