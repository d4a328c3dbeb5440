#include "rail_line.hpp"

#include <algorithm>
#include <cmath>

namespace wetout::board {
namespace {

constexpr double within = 5e-8;       // metres, seen at some places: 1e-7 between them
constexpr double just_behind = 1e-9;  // of an interval
constexpr double upright = 1e3;       // a slope taken for square to the centre line, where y is 0
constexpr int most_halvings = 30;

struct Place {
  double x, y, slope;
};

class Cubics {
 public:
  explicit Cubics(const Form& form) : form_(form) {}

  std::vector<Cubic> run() {
    const std::vector<double>& breaks = form_.breaks();
    for (std::size_t i = 0; i + 1 < breaks.size(); ++i) {
      const bool last = i + 2 == breaks.size();
      follow(seen(breaks[i], breaks[i]),
             seen(breaks[i + 1],
                  last ? breaks[i + 1] : breaks[i + 1] - just_behind * (breaks[i + 1] - breaks[i])),
             0);
    }
    return std::move(line_);
  }

 private:
  // `from`: where the slope is read; at a corner it is another one on each side.
  [[nodiscard]] Place seen(double x, double from) const {
    Place place{x, form_.half_width(x), form_.outline(from).slope};
    const bool is_tip =
        (x <= 0.0 && form_.tail().fold > 1) || (x >= form_.length() && form_.nose().fold > 1);
    if (is_tip && place.y < 1e-9 && std::abs(place.slope) > upright)
      place.slope = std::copysign(HUGE_VAL, place.slope);
    return place;
  }

  // A cubic y(x) where the line runs along the board, x(y) where it is steep: at a round tip y(x)
  // rises like a root, x(y) like a parabola.
  static Cubic between(const Place& a, const Place& b) {
    const Vec from{a.x, a.y}, to{b.x, b.y};
    const bool steep = std::abs(a.slope) > 1.0 || std::abs(b.slope) > 1.0;
    if (steep && a.slope * b.slope > 0.0 && a.y != b.y) {
      const double third = (b.y - a.y) / 3.0;
      return {
          {from, from + third * Vec{1.0 / a.slope, 1.0}, to - third * Vec{1.0 / b.slope, 1.0}, to}};
    }
    const double third = (b.x - a.x) / 3.0;
    const auto finite = [](double slope) { return std::isfinite(slope) ? slope : 0.0; };
    return {{from, from + third * Vec{1.0, finite(a.slope)}, to - third * Vec{1.0, finite(b.slope)},
             to}};
  }

  [[nodiscard]] bool is_near(const Cubic& cubic) const {
    for (const double t : {0.1, 0.25, 0.4, 0.5, 0.6, 0.75, 0.9}) {
      const Vec p = cubic.at(t);
      const Vec along = cubic.derivative(t);
      const double off = std::abs(p.y - form_.half_width(p.x));
      // Square to the line.
      if (!(off * std::abs(along.x) <= within * length(along))) return false;
    }
    return true;
  }

  void follow(const Place& a, const Place& b, int depth) {
    const Cubic cubic = between(a, b);
    if (depth >= most_halvings || is_near(cubic)) {
      line_.push_back(cubic);
      return;
    }
    const double x = 0.5 * (a.x + b.x);
    const Place middle = seen(x, x);
    follow(a, middle, depth + 1);
    follow(middle, b, depth + 1);
  }

  const Form& form_;
  std::vector<Cubic> line_;
};

// Of an arc that leaves along `tangent`: the chord stands at half of what it turns by.
double bulge_of(Vec tangent, Vec chord) {
  return std::tan(0.5 * std::atan2(cross(tangent, chord), dot(tangent, chord)));
}

double off_arc(Vec from, Vec to, double bulge, Vec p) {
  const Vec chord = to - from;
  const double size = length(chord);
  if (std::abs(bulge) < 1e-9) return std::abs(cross(chord, p - from)) / size;
  const double up = (1.0 - bulge * bulge) / (4.0 * bulge);
  const Vec centre = from + 0.5 * chord + up * Vec{-chord.y, chord.x};
  const double radius = size * (1.0 + bulge * bulge) / (4.0 * std::abs(bulge));
  return std::abs(length(p - centre) - radius);
}

Vec tangent_at(const Cubic& cubic, double t) {
  Vec along = cubic.derivative(t);
  if (length(along) == 0.0) along = cubic.p[3] - cubic.p[0];
  return 1.0 / length(along) * along;
}

void follow(const Cubic& cubic, int depth, std::vector<ArcStart>& arcs) {
  const Vec from = cubic.p[0], to = cubic.p[3], v = to - from;
  if (length(v) == 0.0) return;
  const Vec t0 = tangent_at(cubic, 0.0), t1 = tangent_at(cubic, 1.0);
  // As far along one tangent as back along the other: (v - d t)^2 = 4 d^2, t = t0 + t1.
  const double a = 2.0 * (1.0 - dot(t0, t1)), b = dot(v, t0 + t1), c = dot(v, v);
  const double root = std::sqrt(b * b + a * c);
  const double d = b + root > 0.0 ? c / (b + root) : 0.0;
  const Vec joint = 0.5 * (from + to + d * (t0 - t1));
  const double first = bulge_of(t0, joint - from);
  const double second = -bulge_of(-1.0 * t1, joint - to);
  bool good = d > 0.0;
  for (const double t : {0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875}) {
    const Vec p = cubic.at(t);
    good =
        good && std::min(off_arc(from, joint, first, p), off_arc(joint, to, second, p)) <= within;
  }
  if (good || depth >= most_halvings) {
    arcs.push_back({from, good ? first : 0.0});
    if (good) arcs.push_back({joint, second});
    return;
  }
  follow(cubic.part(0.0, 0.5), depth + 1, arcs);
  follow(cubic.part(0.5, 1.0), depth + 1, arcs);
}

}  // namespace

std::vector<Cubic> rail_cubics(const Form& form) { return Cubics(form).run(); }

std::vector<ArcStart> arcs_along(const std::vector<Cubic>& line) {
  std::vector<ArcStart> arcs;
  for (const Cubic& cubic : line) follow(cubic, 0, arcs);
  if (!line.empty()) arcs.push_back({line.back().p[3], 0.0});
  return arcs;
}

}  // namespace wetout::board
