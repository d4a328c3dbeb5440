#include "form.hpp"

#include <algorithm>
#include <cmath>

#include "profile.hpp"

namespace wetout::board {
namespace {

// More panels than this, but near the ends, gain nothing: 10 000 stations are then measured as a
// smooth shape.
constexpr std::size_t most_panels = 64;
constexpr std::size_t most_band_panels = 12;
constexpr double tip_share = 0.4, least_tip_panel = 1e-5;
// Stations closer than this share of the length count as one break.
constexpr double same_place = 1e-9;

Stations stations_of(const std::vector<At>& list) {
  Stations s;
  for (const At& at : list) {
    s.x.push_back(at.from_tail.si());
    s.y.push_back(at.value.si());
  }
  return s;
}

double tip_thickness(double x, double near_x, double near_y, double far_x, double far_y) {
  const double straight = near_y + (far_y - near_y) / (far_x - near_x) * (x - near_x);
  return std::clamp(straight, least_tip_share * near_y, near_y);
}

}  // namespace

Form::Form(const Spec& spec) : length_(spec.length.si()) {
  make_width(spec);
  make_thickness(spec);
  make_rocker(spec);
  make_rail(spec);
  make_breaks(spec);
  panels_ = make_panels(most_panels);
  few_panels_ = make_panels(most_band_panels);
}

Closure Form::closure(const End& end, double half_width) {
  Closure c;
  c.half_width = half_width;
  if (end.shape == EndShape::swallow) c.notch = end.depth.si();
  if (end.shape == EndShape::round || end.shape == EndShape::swallow) c.fold = 4;
  return c;
}

// As it was drawn; check() has seen that the knots are in order.
void Form::make_drawn_width(const Spec& spec) {
  const DrawnOutline& drawn = *spec.drawn;
  const std::vector<Knot>& knots = drawn.knots;
  const std::size_t count = knots.size() - 1;
  const auto jet = [&](std::size_t i, bool root, bool ahead) -> Jet {
    const double b = knots[i].half_width.si();
    const double slope = ahead ? knots[i].slope_ahead : knots[i].slope_behind;
    if (!root) return {b, slope, 0.0};
    if (i == 0 && b == 0.0) return {0.0, 2.0 * drawn.tail_radius.si(), 0.0};
    if (i == count && b == 0.0) return {0.0, -2.0 * drawn.nose_radius.si(), 0.0};
    return {b * b, 2.0 * b * slope, 0.0};
  };
  std::vector<Curve::Span> spans;
  for (std::size_t i = 0; i < count; ++i) {
    const bool root = i < drawn.tail_roots || i + drawn.nose_roots >= count;
    spans.push_back({i == 0 ? 0.0 : knots[i].from_tail.si(),
                     i + 1 == count ? length_ : knots[i + 1].from_tail.si(), jet(i, root, true),
                     jet(i + 1, root, false), root ? 2.0 : 1.0});
  }
  width_ = Curve::of_spans(spans);
  std::vector<double> half;
  for (const Knot& knot : knots) half.push_back(knot.half_width.si());
  const auto [first, last] = summit(half);
  wide_point_ = 0.5 * (knots[first].from_tail + knots[last].from_tail).si();
  tail_ = closure(spec.tail, half.front());
  nose_ = closure(spec.nose, half.back());
  if (drawn.tail_roots == 0 && spec.tail.shape == EndShape::round) tail_.fold = 1;
  if (drawn.nose_roots == 0 && spec.nose.shape == EndShape::round) nose_.fold = 1;
}

void Form::make_width(const Spec& spec) {
  if (spec.drawn) return make_drawn_width(spec);
  Stations s = stations_of(spec.width);
  s.x.front() = 0.0;
  s.x.back() = length_;
  for (double& y : s.y) y *= 0.5;
  auto [first, last] = summit(s.y);
  if (spec.wide_point) {
    // check() has seen that a station stands there, as wide as any to a millimetre.
    const auto at = std::min_element(s.x.begin(), s.x.end(), [&](double a, double b) {
      return std::abs(a - spec.wide_point->si()) < std::abs(b - spec.wide_point->si());
    });
    const auto named = static_cast<std::size_t>(at - s.x.begin());
    if (named < first || named > last) first = last = named;
  }
  wide_point_ = spec.wide_point ? spec.wide_point->si() : 0.5 * (s.x[first] + s.x[last]);
  width_ = rise_and_fall(s, first, last, spec.tail.shape == EndShape::round,
                         spec.nose.shape == EndShape::round);
  tail_ = closure(spec.tail, s.y.front());
  nose_ = closure(spec.nose, s.y.back());
}

void Form::make_thickness(const Spec& spec) {
  Stations s = stations_of(spec.thickness);
  const double near = same_place * length_;
  const bool tail_given = s.x.front() <= near;
  const bool nose_given = s.x.back() >= length_ - near;
  tip_thickness_assumed_ = !tail_given || !nose_given;
  if (s.x.size() == 1 && tip_thickness_assumed_) {
    thickness_ = Curve::constant(s.y[0]);
    return;
  }
  const std::size_t n = s.x.size();
  if (!nose_given) {
    s.y.push_back(tip_thickness(length_, s.x[n - 1], s.y[n - 1], s.x[n - 2], s.y[n - 2]));
    s.x.push_back(length_);
  }
  if (!tail_given) {
    s.y.insert(s.y.begin(), tip_thickness(0.0, s.x[0], s.y[0], s.x[1], s.y[1]));
    s.x.insert(s.x.begin(), 0.0);
  }
  s.x.front() = 0.0;
  s.x.back() = length_;
  bent_tail_ = spec.tail.shape == EndShape::round && s.y.front() == 0.0;
  bent_nose_ = spec.nose.shape == EndShape::round && s.y.back() == 0.0;
  const auto [first, last] = summit(s.y);
  thickness_ = rise_and_fall(s, first, last, bent_tail_, bent_nose_);
}

void Form::make_rocker(const Spec& spec) {
  if (spec.rocker.empty()) {
    rocker_ = Curve::constant(0.0);
    return;
  }
  Stations s = stations_of(spec.rocker);
  for (double& x : s.x) x = bent_x(std::clamp(x, 0.0, length_)).value;
  rocker_ = monotone(s, Beyond::straight);
}

void Form::make_rail(const Spec& spec) {
  Stations share, e;
  for (const RailAt& at : spec.rail) {
    share.x.push_back(at.from_tail.si());
    share.y.push_back(at.rail.apex_share);
    e.y.push_back(2.0 / at.rail.exponent);
  }
  e.x = share.x;
  rail_share_ = monotone(share, Beyond::level);
  rail_e_ = monotone(e, Beyond::level);
  if (rail_e_.is_constant()) constant_rail_ = whole_quarter(e.y.front());
}

void Form::make_breaks(const Spec& spec) {
  breaks_ = {0.0, length_};
  if (spec.drawn) {
    for (const Knot& knot : spec.drawn->knots) breaks_.push_back(knot.from_tail.si());
  }
  for (const At& at : spec.width) breaks_.push_back(at.from_tail.si());
  for (const At& at : spec.thickness) breaks_.push_back(at.from_tail.si());
  for (const At& at : spec.rocker) breaks_.push_back(at.from_tail.si());
  for (const RailAt& at : spec.rail) breaks_.push_back(at.from_tail.si());
  if (tail_.notch > 0.0) {
    breaks_.push_back(tail_.notch);
    // Where the notch leaves the rail half of the section.
    double low = 0.0;
    double high = tail_.notch;
    for (int i = 0; i < 60; ++i) {
      const double x = 0.5 * (low + high);
      (notch(x) > section_split(rail_e(x)) * half_width(x) ? low : high) = x;
    }
    notch_leaves_rail_ = low;
    breaks_.push_back(low);
  }
  std::sort(breaks_.begin(), breaks_.end());
  std::vector<double> kept = {0.0};
  for (const double x : breaks_) {
    if (x - kept.back() > same_place * length_ && x < length_ * (1.0 - same_place))
      kept.push_back(x);
  }
  kept.push_back(length_);
  breaks_ = std::move(kept);
}

std::vector<Panel> Form::make_panels(std::size_t most) const {
  std::vector<double> ends = breaks_;
  if (ends.size() > most + 1) {
    const double usual = length_ / static_cast<double>(most);
    // Toward an end the outline may turn ever more: panels there are shares of the way to it.
    const auto least = [&](double x) {
      const double near = std::min(x, length_ - x);
      return std::min(usual, std::max(tip_share * near, least_tip_panel * length_));
    };
    ends = {0.0};
    for (const double x : breaks_) {
      const bool is_corner = tail_.notch > 0.0 && (x == tail_.notch || x == notch_leaves_rail_);
      if (is_corner || (x - ends.back() >= least(x) && length_ - x >= least(x))) ends.push_back(x);
    }
    ends.push_back(length_);
  }
  if (ends.size() == 2) ends.insert(ends.begin() + 1, 0.5 * length_);
  std::vector<Panel> panels;
  for (std::size_t i = 0; i + 1 < ends.size(); ++i) {
    const double width = ends[i + 1] - ends[i];
    if (i + 2 == ends.size()) {
      panels.push_back({.origin = ends[i + 1], .reach = -width, .power = nose_.fold});
    } else {
      panels.push_back({.origin = ends[i], .reach = width, .power = i == 0 ? tail_.fold : 1});
    }
  }
  return panels;
}

std::vector<Panel> Form::part_of(const std::vector<Panel>& panels, double from, double to) {
  std::vector<Panel> parts;
  for (const Panel& whole : panels) {
    Panel part = whole;
    const double low = std::max(from, std::min(whole.x(0.0), whole.x(1.0)));
    const double high = std::min(to, std::max(whole.x(0.0), whole.x(1.0)));
    if (high <= low) continue;
    part.from = std::min(whole.u(low), whole.u(high));
    part.to = std::max(whole.u(low), whole.u(high));
    if (part.to > part.from) parts.push_back(part);
  }
  return parts;
}

// An abscissa in which the tips of an ellipse are smooth: a rocker that follows a thickness closing
// like a root does so too. Equal to x at mid-length and at ends that do not close so.
Jet Form::bent_x(double x) const {
  const double half = 0.5 * length_;
  const double from_middle = x - half;
  if (!(from_middle < 0.0 ? bent_tail_ : bent_nose_)) return {x, 1.0, 0.0};
  const double rest = x * (length_ - x) / (half * half);
  const double value =
      half + half * std::atan2(from_middle / half, std::sqrt(std::fmax(0.0, rest)));
  return {value, 1.0 / std::sqrt(rest), 0.0};
}

Jet Form::rocker_jet(double x) const {
  if (!bent_tail_ && !bent_nose_) return rocker_.at(x);
  if (rocker_.is_constant()) return rocker_.at(x);
  const Jet bent = bent_x(x);
  Jet jet = rocker_.at(bent.value);
  jet.slope *= bent.slope;
  return jet;
}

Frame Form::frame(double x, const Jet& width) const {
  const Jet thick = thickness_.at(x);
  const Jet rocker = rocker_jet(x);
  const Jet share = rail_share_.at(x);
  const Jet e = rail_e_.at(x);
  const double below = share.value * thick.value;
  const double below_slope = share.slope * thick.value + share.value * thick.slope;
  return {.half_width = width.value,
          .half_width_slope = width.slope,
          .apex = rocker.value + below,
          .apex_slope = rocker.slope + below_slope,
          .deck = {thick.value - below, thick.slope - below_slope},
          .bottom = {below, below_slope},
          .e = e.value,
          .e_slope = e.slope};
}

}  // namespace wetout::board
