#include "medial.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace wetout::board {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();

// By the tip of an ellipse the nearest circles touch everywhere at once: a tie is no partner.
constexpr double tie = 1e-4;

// Radius of the circle about start + radius * inward through `start` and `other`.
double radius(Vec start, Vec inward, Vec other) {
  const Vec to = other - start;
  const double ahead = dot(inward, to);
  return ahead > 0.0 ? dot(to, to) / (2.0 * ahead) : never;
}

// Smallest radius over x in [low, high], where it has one minimum, by golden sections.
template <class F>
double least_between(double low, double high, int steps, F&& radius_at) {
  constexpr double golden = 0.6180339887498949;
  double left = high - golden * (high - low);
  double right = low + golden * (high - low);
  double at_left = radius_at(left);
  double at_right = radius_at(right);
  for (int i = 0; i < steps; ++i) {
    if (at_left < at_right) {
      high = right;
      right = left;
      at_right = at_left;
      left = high - golden * (high - low);
      at_left = radius_at(left);
    } else {
      low = left;
      left = right;
      at_left = at_right;
      right = low + golden * (high - low);
      at_right = radius_at(right);
    }
  }
  return std::min(at_left, at_right);
}

}  // namespace

Medial::Medial(const Form& form) : form_(form) {
  const std::vector<Panel> panels = form.panels(0.0, form.length());
  const int per_panel = std::max(4, static_cast<int>(96 / panels.size()));
  for (const Panel& panel : panels) {
    for (int i = 0; i <= per_panel; ++i) {
      const double x = panel.x(static_cast<double>(i) / per_panel);
      samples_.push_back({x, form.half_width(x)});
    }
  }
  std::sort(samples_.begin(), samples_.end(), [](Vec a, Vec b) { return a.x < b.x; });
}

Medial::End Medial::end(Edge edge, Vec start, Vec inward, double limit) const {
  End best{limit, 0};
  const auto offer = [&](double distance, int partner) {
    if (distance < best.distance) best = {std::fmax(0.0, distance), partner};
  };
  const Closure& tail = form_.tail();
  const Closure& nose = form_.nose();
  if (tail.cut() && edge != Edge::tail_cut && inward.x < 1.0) {
    const double t = start.x / (1.0 - inward.x);
    if (std::abs(start.y + t * inward.y) <= tail.half_width) offer(t, 1);
  }
  if (nose.cut() && edge != Edge::nose_cut && inward.x > -1.0) {
    const double t = (form_.length() - start.x) / (1.0 + inward.x);
    if (std::abs(start.y + t * inward.y) <= nose.half_width) offer(t, 2);
  }
  if (tail.notch > 0.0 && edge != Edge::notch && edge != Edge::notch_corner) {
    const double side = std::hypot(tail.notch, tail.half_width);
    const Vec normal{tail.half_width / side, tail.notch / side};
    const Vec corner{tail.notch, 0.0};
    const double rate = 1.0 - dot(inward, normal);
    const double t = rate > 0.0 ? dot(start - corner, normal) / rate : never;
    const double foot = start.x + t * (inward.x - normal.x);
    if (foot <= tail.notch) {
      if (foot >= 0.0) offer(t, 3);
    } else {
      offer(radius(start, inward, corner), 4);
    }
  }
  if (edge == Edge::rail) {
    rail_to_rail(start, inward, best);
  } else {
    rail_from_cut(start, inward, best);
  }
  return best;
}

// Another place of the rail itself: only where it bends as sharply as a corner.
void Medial::rail_to_rail(Vec start, Vec inward, End& end) const {
  // The touching circle has a radius of at most end.distance, so the place is within twice that.
  const double window = 2.0 * end.distance;
  auto it = std::lower_bound(samples_.begin(), samples_.end(), start.x - window,
                             [](Vec a, double x) { return a.x < x; });
  if (it != samples_.begin()) --it;
  const double too_near = 1e-6 * form_.length();
  const auto at = [&](Vec other) {
    const Vec to = other - start;
    if (dot(to, to) <= too_near * too_near) return never;
    return radius(start, inward, other);
  };
  auto best = samples_.end();
  double least = end.distance * (1.0 - tie);
  for (; it != samples_.end(); ++it) {
    if (const double r = at(*it); r < least) {
      least = r;
      best = it;
    }
    if (it->x > start.x + window) break;
  }
  if (best == samples_.end()) return;
  const double low = best == samples_.begin() ? best->x : std::prev(best)->x;
  const double high = std::next(best) == samples_.end() ? best->x : std::next(best)->x;
  const double refined = least_between(low, high, 20, [&](double x) {
    return at({x, form_.half_width(x)});
  });
  end = {std::min(least, refined), 5};
}

// The rail as seen from a straight cut.
void Medial::rail_from_cut(Vec start, Vec inward, End& end) const {
  const auto at = [&](double x) { return radius(start, inward, {x, form_.half_width(x)}); };
  // Any place of the rail is a bound: these two set the scale close to a corner.
  const double gap = std::fmax(0.0, form_.half_width(start.x) - start.y);
  const double bound = std::min({end.distance, at(start.x), at(start.x + gap * inward.x)});
  if (bound < end.distance) end = {bound, 5};
  const Vec centre = start + inward * bound;
  const double low = std::max(0.0, centre.x - bound);
  const double high = std::min(form_.length(), centre.x + bound);
  // The outline rises to one wide point and falls, so that it is lowest at an end of the window.
  const double lowest = std::min(form_.half_width(low), form_.half_width(high));
  if (centre.y + bound < lowest) return;
  constexpr int places = 8;
  int best = 0;
  double least = never;
  for (int i = 0; i <= places; ++i) {
    const double r = at(low + (high - low) * i / places);
    if (r < least) {
      least = r;
      best = i;
    }
  }
  const double step = (high - low) / places;
  const double refined = least_between(low + step * std::max(0, best - 1),
                                       low + step * std::min(places, best + 1), 10, at);
  least = std::min(least, refined);
  if (least < end.distance) end = {least, 5};
}

}  // namespace wetout::board
