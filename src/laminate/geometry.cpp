#include "geometry.hpp"

#include <algorithm>

namespace wetout::laminate {

using units::Area;
using units::Length;

namespace {

enum Kind { patch_kind, band_kind, girth_kind, length_kind, edge_kind, strip_kind };

}  // namespace

bool Geometry::is_whole(const Region& region) const {
  return !region.width && !region.reach && region.from <= Length{} && region.to >= hull_.length();
}

base::Result<Area> Geometry::area(const Region& region) const {
  if (region.to <= region.from) return Area{};
  if (is_whole(region)) return face_area(region.face);
  const double extent = region.reach   ? region.reach->si()
                        : region.width ? region.width->si()
                                       : -1.0;
  const Key key{region.reach ? band_kind : patch_kind, static_cast<int>(region.face),
                region.from.si(), region.to.si(), extent};
  if (const auto it = measured_.find(key); it != measured_.end()) return Area::from_si(it->second);
  Area area;
  if (region.reach) {
    if (*region.reach <= Length{}) return Area{};
    const auto band = hull_.band_area(region.face, *region.reach, region.from, region.to);
    if (!band) return tl::unexpected(band.error());
    area = band->area;
  } else {
    area = hull_.patch_area({region.face, region.from, region.to, region.width}).area;
  }
  measured_.emplace(key, area.si());
  return area;
}

base::Result<Area> Geometry::common(const Region& a, const Region& b) const {
  if (a.face != b.face) return Area{};
  Region both;
  both.face = a.face;
  both.from = std::max(a.from, b.from);
  both.to = std::min(a.to, b.to);
  if (both.to <= both.from) return Area{};
  if (a.reach && b.reach) {
    both.reach = std::min(*a.reach, *b.reach);
    return area(both);
  }
  if (a.reach || b.reach) {
    const Region& band = a.reach ? a : b;
    const Region& patch = a.reach ? b : a;
    if (patch.width) {
      // What of the band the patch reaches into: the patch and the band less the whole face.
      Region strip = both;
      strip.reach = band.reach;
      Region middle = both;
      middle.width = patch.width;
      const auto in_band = area(strip);
      if (!in_band) return in_band;
      const auto in_patch = area(middle);
      const auto in_face = area(both);
      return std::max(Area{}, *in_band + *in_patch - *in_face);
    }
    both.reach = band.reach;
    return area(both);
  }
  if (a.width && b.width) {
    both.width = std::min(*a.width, *b.width);
  } else {
    both.width = a.width ? a.width : b.width;
  }
  return area(both);
}

Length Geometry::max_girth(board::Face face, Length from, Length to) const {
  return Length::from_si(once({girth_kind, static_cast<int>(face), from.si(), to.si(), 0.0},
                              [&] { return hull_.max_girth(face, from, to).si(); }));
}

Length Geometry::surface_length(board::Face face, Length from, Length to) const {
  return Length::from_si(once({length_kind, static_cast<int>(face), from.si(), to.si(), 0.0},
                              [&] { return hull_.surface_length(face, from, to).si(); }));
}

Length Geometry::edge_length(Length from, Length to) const {
  return Length::from_si(once({edge_kind, 0, from.si(), to.si(), 0.0},
                              [&] { return hull_.edge_length(from, to).si(); }));
}

Area Geometry::strip_area(Length reach, Length from, Length to) const {
  return Area::from_si(once({strip_kind, 0, from.si(), to.si(), reach.si()},
                            [&] { return hull_.strip_area(reach, from, to).si(); }));
}

base::Result<Area> Wetted::wet(const Region& region) {
  Area& face = region.face == board::Face::deck ? deck_ : bottom_;
  const Area dry = std::max(Area{}, geometry_.face_area(region.face) - face);
  Area fresh = dry;
  if (!geometry_.is_whole(region)) {
    const auto whole = geometry_.area(region);
    if (!whole) return whole;
    fresh = *whole;
    for (const Region& earlier : regions_) {
      const auto shared = geometry_.common(earlier, region);
      if (!shared) return shared;
      fresh -= *shared;
    }
    fresh = std::clamp(fresh, Area{}, dry);
  }
  regions_.push_back(region);
  face += fresh;
  return fresh;
}

}  // namespace wetout::laminate
