// A second, slow route to the areas: the hull as a fine net of triangles, its shape taken from
// width, thickness and rocker alone, and for bands the nearest place of the outline searched for
// every triangle and the way to it measured in short chords.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

#include "boards.hpp"

namespace wetout::board {
namespace {

using units::Length;
using units::metres;

struct Point3 {
  double x, y, z;
};

double triangle(const Point3& a, const Point3& b, const Point3& c) {
  const double ux = b.x - a.x, uy = b.y - a.y, uz = b.z - a.z;
  const double vx = c.x - a.x, vy = c.y - a.y, vz = c.z - a.z;
  return 0.5 * std::hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx);
}

// Share of a triangle where a linear function with these values at its corners is above zero.
double share_above(std::array<double, 3> f) {
  std::sort(f.begin(), f.end());
  if (f[0] >= 0.0) return 1.0;
  if (f[2] <= 0.0) return 0.0;
  if (f[1] <= 0.0) return f[2] * f[2] / ((f[2] - f[0]) * (f[2] - f[1]));
  return 1.0 - f[0] * f[0] / ((f[0] - f[1]) * (f[0] - f[2]));
}

class Net {
 public:
  Net(const MeasuringPoints& points, Face face) : points_(points), face_(face) {
    const Spec spec = spec_of(points);
    hull_.emplace(hull_of(spec));
    length_ = hull_->length().si();
    for (const Hull::Point& p : hull_->outline(metres(5e-5))) {
      outline_.push_back({p.x.si(), p.y.si()});
    }
    build();
  }

  double area() const {
    return 2.0 * (wall(1e9) + covered([](const Point3&) { return 1.0; }));
  }

  /// `reach` over the surface from the apex.
  double band(double reach) const {
    return 2.0 * (wall(reach) + covered([&](const Point3& p) {
                    const auto [start, distance] = nearest(p.x, p.y, 1.2 * reach);
                    // No way over the surface is shorter than that in the plan.
                    return distance < 1.2 * reach ? reach - way(start, {p.x, p.y}) : -reach;
                  }));
  }

 private:
  struct Plan {
    double x, y;
  };

  double half_width(double x) const { return 0.5 * hull_->width(metres(x)).si(); }
  double apex(double x) const {
    return hull_->rocker(metres(x)).si() + points_.apex_share * hull_->thickness(metres(x)).si();
  }
  double height(double x) const {
    const double t = hull_->thickness(metres(x)).si();
    return face_ == Face::deck ? (1.0 - points_.apex_share) * t : points_.apex_share * t;
  }
  double share(double c) const {
    const double n = points_.exponent;
    return std::pow(std::max(0.0, 1.0 - std::pow(std::clamp(c, 0.0, 1.0), n)), 1.0 / n);
  }
  double z(double x, double y) const {
    return apex(x) + (face_ == Face::deck ? 1.0 : -1.0) * height(x) * share(y / half_width(x));
  }
  double notch(double x) const {
    const double depth = 0.0254 * points_.notch;
    return x < depth ? 0.5 * 0.0254 * points_.tail * (1.0 - x / depth) : 0.0;
  }

  void build() {
    constexpr int along = 300;
    constexpr int across = 48;
    const double sign = face_ == Face::deck ? 1.0 : -1.0;
    std::vector<Point3> row;
    for (int i = 0; i <= along; ++i) {
      const double x = 0.5 * length_ * (1.0 - std::cos(std::numbers::pi * i / along));
      const double b = half_width(x);
      const double inner = b > 0.0 ? std::min(1.0, notch(x) / b) : 0.0;
      // Angles that are even between the notch, or the centre line, and the apex.
      const double last = std::acos(std::pow(inner, 0.5 * points_.exponent));
      row.clear();
      for (int k = 0; k <= across; ++k) {
        const double angle = last * k / across;
        const double c = std::pow(std::cos(angle), 2.0 / points_.exponent);
        const double s = std::pow(std::sin(angle), 2.0 / points_.exponent);
        row.push_back({x, b * c, apex(x) + sign * height(x) * s});
      }
      rows_.push_back(row);
    }
  }

  // Area where `inside` of a place on the face is above zero.
  template <class F>
  double covered(F&& inside) const {
    double sum = 0.0;
    std::vector<double> before, here;
    for (std::size_t i = 0; i < rows_.size(); ++i) {
      here.clear();
      for (const Point3& p : rows_[i]) here.push_back(inside(p));
      for (std::size_t k = 0; i > 0 && k + 1 < here.size(); ++k) {
        const std::vector<Point3>& a = rows_[i - 1];
        const std::vector<Point3>& b = rows_[i];
        sum += triangle(a[k], b[k], b[k + 1]) * share_above({before[k], here[k], here[k + 1]});
        sum += triangle(a[k], b[k + 1], a[k + 1]) *
               share_above({before[k], here[k + 1], before[k + 1]});
      }
      std::swap(before, here);
    }
    return sum;
  }

  // Walls of a tail block or a notch, one side, up to `most` high.
  double wall(double most) const {
    constexpr int steps = 20000;
    const double half = 0.5 * 0.0254 * points_.tail;
    const double depth = 0.0254 * points_.notch;
    const double edge = std::hypot(depth, half);
    double sum = 0.0;
    for (int i = 0; i < steps; ++i) {
      const double t = (i + 0.5) / steps;
      const double x = depth * (1.0 - t);
      const double y = half * t;
      sum += std::min(most, height(x) * share(y / half_width(x))) * edge / steps;
    }
    return sum;
  }

  // Of what lies within `reach`; farther off anything will do.
  std::pair<Plan, double> nearest(double x, double y, double reach) const {
    Plan best{0.0, 0.0};
    double least = 1e9;
    for (std::size_t i = 0; i < outline_.size(); ++i) {
      const Plan a = outline_[i];
      const Plan b = outline_[(i + 1) % outline_.size()];
      if (std::max(a.x, b.x) < x - reach || std::min(a.x, b.x) > x + reach) continue;
      const double ux = b.x - a.x, uy = b.y - a.y;
      const double t =
          std::clamp(((x - a.x) * ux + (y - a.y) * uy) / (ux * ux + uy * uy), 0.0, 1.0);
      const double dx = x - a.x - t * ux, dy = y - a.y - t * uy;
      if (const double square = dx * dx + dy * dy; square < least) {
        least = square;
        best = {a.x + t * ux, a.y + t * uy};
      }
    }
    return {best, std::sqrt(least)};
  }

  double way(Plan from, Plan to) const {
    constexpr int steps = 24;
    Point3 last{from.x, from.y, apex(from.x)};
    double sum = 0.0;
    for (int k = 0; k <= steps; ++k) {
      // Close together where the rail stands upright; the first step goes up a wall, if there is
      // one.
      const double share_of_way = std::pow(1.0 * k / steps, 2.5);
      const double x = from.x + share_of_way * (to.x - from.x);
      const double y = from.y + share_of_way * (to.y - from.y);
      const Point3 here{x, y, z(x, y)};
      sum += std::hypot(here.x - last.x, here.y - last.y, here.z - last.z);
      last = here;
    }
    return sum;
  }

  MeasuringPoints points_;
  Face face_;
  std::optional<Hull> hull_;
  double length_ = 0.0;
  std::vector<Plan> outline_;
  std::vector<std::vector<Point3>> rows_;
};

class Mesh : public testing::TestWithParam<int> {};

TEST_P(Mesh, AgreesInFacesAndBands) {
  const Named& board = shapes()[static_cast<std::size_t>(GetParam())];
  const Hull hull = hull_of(spec_of(board.points));
  const Surfaces s = hull.surfaces();
  for (const Face face : {Face::deck, Face::bottom}) {
    const Net net(board.points, face);
    const double whole = (face == Face::deck ? s.deck : s.bottom).area.si();
    EXPECT_NEAR(net.area() / whole, 1.0, 1e-4) << board.name;
    const double reach = face == Face::deck ? 0.0508 : 0.09;
    EXPECT_NEAR(net.band(reach) / whole_band(hull, face, reach), 1.0, 5e-4) << board.name;
  }
}

// The example board, a pointed nose, a swallow tail, a gun with two points, a round pin.
INSTANTIATE_TEST_SUITE_P(Shapes, Mesh, testing::Values(0, 1, 2, 4, 5));

}  // namespace
}  // namespace wetout::board
