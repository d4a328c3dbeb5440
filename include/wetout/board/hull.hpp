// The curved hull of a board and what can be measured on it.
//
// x runs from the tail (0) to the nose (L), y from the centre line to the right, z up; the origin
// of z is the straight bar the rocker was measured from. A cross-section is four superellipse
// quarters joined at the apex of the rail. Model, symbols, range: docs/models/board.md.
#pragma once

#include <array>
#include <memory>
#include <optional>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/board/spec.hpp"
#include "wetout/units/quantity.hpp"

namespace wetout::board {

enum class Face { deck, bottom };

/// An area with the estimated absolute error of its quadrature (difference of two orders).
struct Measured {
  units::Area area;
  units::Area error;
};

struct Surfaces {
  Measured planform;
  Measured deck;  ///< of the curved hull, apex to apex, half of cut ends (tail block) above apex
  Measured bottom;
  units::Length perimeter;  ///< of the outline at the apex, the ends' cuts included
  units::Volume volume;
  units::Length deck_length;  ///< along the centre line, over the curve
  units::Length bottom_length;
};

/// Part of a face: from `from_tail` to `to`, `width` wide and centred (measured along the surface),
/// or to the apex when there is no width.
struct Patch {
  Face face = Face::deck;
  units::Length from_tail;
  units::Length to;
  std::optional<units::Length> width;
};

class Hull {
 public:
  /// Checks the measures and builds the hull. Refused, each with a code "board.*", key relative to
  /// the spec and the reason: zero, negative or non-finite sizes, thickness above width, stations
  /// out of order or outside the board, widths that do not grow to one wide point and then
  /// shrink, a wide point beyond a measuring point, a notch that does not fit, a rail share outside
  /// (0, 1), an exponent below 2.
  static base::Result<Hull> make(const Spec& spec);

  Hull(const Hull&);
  Hull(Hull&&) noexcept;
  Hull& operator=(const Hull&);
  Hull& operator=(Hull&&) noexcept;
  ~Hull();

  [[nodiscard]] units::Length length() const;
  /// Thickness at a tip was not given and has been extrapolated.
  [[nodiscard]] bool tip_thickness_assumed() const;

  [[nodiscard]] units::Length width(units::Length x) const;      ///< apex to apex
  [[nodiscard]] units::Length thickness(units::Length x) const;  ///< at the centre line
  [[nodiscard]] units::Length rocker(units::Length x) const;
  [[nodiscard]] units::Length wide_point() const;
  [[nodiscard]] units::Length max_width() const;
  /// Over the surface, apex to apex.
  [[nodiscard]] units::Length girth(Face face, units::Length x) const;
  /// Widest girth within [from, to]; where it is found does not matter to cutting.
  [[nodiscard]] units::Length max_girth(Face face, units::Length from, units::Length to) const;
  /// Over the surface along the centre line.
  [[nodiscard]] units::Length surface_length(Face face, units::Length from, units::Length to) const;
  /// Length of the outline (both rails) between two places, cut ends included where they lie
  /// within.
  [[nodiscard]] units::Length edge_length(units::Length from, units::Length to) const;

  /// Everything about the whole board, to a relative 1e-4 or better (see Measured::error).
  [[nodiscard]] Surfaces surfaces() const;
  /// Hull surface covered by the patch.
  [[nodiscard]] Measured patch_area(const Patch& patch) const;
  /// Hull surface of `face` within `reach` of the apex, measured along the surface square to the
  /// outline, between two places along the length. Refused ("board.lap_too_wide") when the band
  /// would meet itself across the middle at the board's widest place.
  [[nodiscard]] base::Result<Measured> band_area(Face face, units::Length reach, units::Length from,
                                                 units::Length to) const;
  /// Flat cloth past the apex: a strip `reach` wide along the outline, darted at the ends, so never
  /// less than band_area.
  [[nodiscard]] units::Area strip_area(units::Length reach, units::Length from,
                                       units::Length to) const;
  /// The outline at the apex as a closed polygon, tail first, counter-clockwise, for drawings and
  /// checks; the largest gap to the true curve is at most `tolerance`.
  struct Point {
    units::Length x, y;
  };
  [[nodiscard]] std::vector<Point> outline(units::Length tolerance) const;
  /// The rail on the side of y above 0 from tail to nose, each piece from where the one before
  /// ended, within 1e-7 m of the outline at the apex. The cuts of ends and the notch are not in it.
  struct Bezier {
    std::array<Point, 4> p;
  };
  [[nodiscard]] std::vector<Bezier> rail_beziers() const;
  /// The same as arcs, within 2e-7 m; the last point ends them.
  struct Bulge {
    Point at;
    double bulge;  ///< tangent of a quarter of what the arc to the next one turns by, x to y
  };
  [[nodiscard]] std::vector<Bulge> rail_arcs() const;
  /// Depth of the swallow's; else zero.
  [[nodiscard]] units::Length notch() const;

 private:
  struct Model;
  explicit Hull(std::unique_ptr<Model> model);
  std::unique_ptr<Model> model_;
};

/// Foam plus stringer, or the weight on the scale. Nothing when the spec does not say.
std::optional<units::Mass> core_mass(const Spec& spec, units::Volume volume);

}  // namespace wetout::board
