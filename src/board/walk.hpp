// Walking from the outline inward over a face until a length of cloth is used up.
//
// The walk goes square to the outline in the plan; its length is taken over the surface. Around it
// the band between two neighbouring walks has the area dA = (1 - k d) sqrt(1 + |grad z|^2) dd ds,
// s along the outline, d the distance in the plan, k the outline's curvature.
#pragma once

#include <array>

#include "chebyshev.hpp"
#include "form.hpp"
#include "medial.hpp"
#include "quadrature.hpp"
#include "section.hpp"

namespace wetout::board {

class Walk {
 public:
  Walk(const Form& form, Face face, double reach);

  /// Area per length of board covered by the walk from the rail at x.
  [[nodiscard]] Probe from_rail(double x) const;
  /// Area per length of a straight cut, over its wall of height `wall`, then inward.
  [[nodiscard]] Probe from_cut(Edge edge, Vec start, Vec inward, double wall) const;
  /// Around the notch's inner corner: area per radian.
  [[nodiscard]] Probe from_corner(Vec start, Vec inward, double wall) const;

 private:
  struct Ray {
    Vec start, inward;
    double curvature;
    Medial::End end;
  };
  // Part of a walk at Chebyshev points: rates by the running parameter.
  struct Part {
    ChebValues distance{}, length_rate{}, area_rate{};
  };
  struct Tally;

  /// Where a ray crosses an s of the section, and the shape there.
  struct Crossing {
    double distance = 0.0;
    Jet width{};
    SectionPoint point{};
  };
  [[nodiscard]] double inside(double x) const;
  void cross(const Ray& ray, Crossing& at) const;
  void cross_changing(const Ray& ray, Crossing& at) const;
  // What a rail that is the same all along has at the points of [0, top] of s.
  struct Table {
    double top = 1.0;
    std::array<SectionPoint, cheb_size> points{};
  };
  [[nodiscard]] static Table table(double e, double share);
  [[nodiscard]] Part rail_half(const Ray& ray, bool low) const;
  [[nodiscard]] Part inland(const Ray& ray, double from, double to, bool fan) const;

  const Form& form_;
  Face face_;
  double sign_;
  double reach_;
  Medial medial_;
  // The whole rail half of a section, and its lower part for short laps.
  Table whole_, low_;
};

}  // namespace wetout::board
