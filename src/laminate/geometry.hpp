// Areas of one hull, each measured once however often a plan asks.
#pragma once

#include <map>
#include <optional>
#include <tuple>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/board/hull.hpp"
#include "wetout/laminate/coat.hpp"

namespace wetout::laminate {

/// A part of one face: all of it, a patch, or the band within reach of the apex.
struct Region {
  board::Face face = board::Face::deck;
  units::Length from, to;
  std::optional<units::Length> width;  ///< centred patch
  std::optional<units::Length> reach;  ///< band along the apex
};

class Geometry {
 public:
  explicit Geometry(const board::Hull& hull) : hull_(hull), surfaces_(hull.surfaces()) {}

  [[nodiscard]] const board::Hull& hull() const { return hull_; }
  [[nodiscard]] const board::Surfaces& surfaces() const { return surfaces_; }
  [[nodiscard]] units::Area face_area(board::Face face) const {
    return (face == board::Face::deck ? surfaces_.deck : surfaces_.bottom).area;
  }
  [[nodiscard]] bool is_whole(const Region& region) const;
  /// Problem "board.lap_too_wide" for a band that meets itself.
  [[nodiscard]] base::Result<units::Area> area(const Region& region) const;
  /// Area common to two regions of one face; bands and patches are taken as nested about the centre
  /// line, which real boards' are.
  [[nodiscard]] base::Result<units::Area> common(const Region& a, const Region& b) const;
  [[nodiscard]] units::Length max_girth(board::Face face, units::Length from,
                                        units::Length to) const;
  [[nodiscard]] units::Length surface_length(board::Face face, units::Length from,
                                             units::Length to) const;
  [[nodiscard]] units::Length edge_length(units::Length from, units::Length to) const;
  /// Flat cloth past the apex, see board::Hull::strip_area.
  [[nodiscard]] units::Area strip_area(units::Length reach, units::Length from,
                                       units::Length to) const;

 private:
  // What is measured, its face, from, to, and a width or reach, all SI.
  using Key = std::tuple<int, int, double, double, double>;
  template <class Measure>
  double once(const Key& key, const Measure& measure) const {
    const auto it = measured_.find(key);
    if (it != measured_.end()) return it->second;
    return measured_.emplace(key, measure()).first->second;
  }
  const board::Hull& hull_;
  board::Surfaces surfaces_;
  mutable std::map<Key, double> measured_;
};

/// What of a face is wet already, and how much more a region wets.
class Wetted {
 public:
  explicit Wetted(const Geometry& geometry) : geometry_(geometry) {}
  /// Area of `region` that was dry; it is wet from now on. The sum over regions that end with the
  /// whole face is the face.
  base::Result<units::Area> wet(const Region& region);
  [[nodiscard]] units::Area area(board::Face face) const {
    return face == board::Face::deck ? deck_ : bottom_;
  }

 private:
  const Geometry& geometry_;
  std::vector<Region> regions_;
  units::Area deck_, bottom_;
};

}  // namespace wetout::laminate
