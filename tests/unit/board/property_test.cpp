// What must hold for any board.
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "boards.hpp"

namespace wetout::board {
namespace {

using units::inches;
using units::Length;

double between(double low, double high) {
  return low + (high - low) * *rc::gen::inRange(0, 1001) / 1000.0;
}

// From a small wide board to a longboard, any ends.
MeasuringPoints any_points() {
  MeasuringPoints p;
  p.length = between(60, 120);
  p.wide = between(17, 25);
  p.wide_offset = between(-4, 5);
  p.nose12 = p.wide * between(0.5, 0.85);
  p.tail12 = p.wide * between(0.6, 0.85);
  p.tail_shape =
      *rc::gen::element(EndShape::round, EndShape::point, EndShape::square, EndShape::swallow);
  p.nose_shape = *rc::gen::element(EndShape::round, EndShape::point);
  const bool cut = p.tail_shape == EndShape::square || p.tail_shape == EndShape::swallow;
  p.tail = cut ? p.tail12 * between(0.25, 0.75) : 0.0;
  p.notch = p.tail_shape == EndShape::swallow ? between(1, 7) : 0.0;
  p.thick_centre = between(2.1, 3.4);
  p.thick_nose12 = p.thick_centre * between(0.45, 0.75);
  p.thick_tail12 = p.thick_centre * between(0.45, 0.75);
  p.rocker_nose = between(2.5, 6);
  p.rocker_nose12 = p.rocker_nose * between(0.3, 0.5);
  p.rocker_tail = between(1, 3);
  p.rocker_tail12 = p.rocker_tail * between(0.3, 0.5);
  p.apex_share = between(0.2, 0.5);
  p.exponent = *rc::gen::element(2.0, 2.5, 3.2, 6.0, std::numeric_limits<double>::infinity());
  return p;
}

RC_GTEST_PROP(AnyBoard, HasSensibleAreasWithSmallErrors, ()) {
  const MeasuringPoints p = any_points();
  const Hull hull = hull_of(spec_of(p));
  const Surfaces s = hull.surfaces();
  RC_ASSERT(s.deck.area > s.planform.area);
  RC_ASSERT(s.bottom.area > s.planform.area);
  RC_ASSERT(s.deck.area < s.planform.area * 1.5);
  RC_ASSERT(s.planform.area.si() < 0.0254 * 0.0254 * p.length * p.wide);
  RC_ASSERT(s.deck_length >= hull.length());
  // To the tolerance promised.
  RC_ASSERT(s.planform.error.si() < 1e-4 * s.planform.area.si());
  RC_ASSERT(s.deck.error.si() < 1e-4 * s.deck.area.si());
  RC_ASSERT(s.bottom.error.si() < 1e-4 * s.bottom.area.si());
  RC_ASSERT(s.volume.si() < s.planform.area.si() * 0.0254 * p.thick_centre);
}

RC_GTEST_PROP(AnyBoard, HasFourTimesTheAreaAtTwiceTheSize, ()) {
  const Spec spec = spec_of(any_points());
  const double k = between(0.5, 3.0);
  const Hull small = hull_of(spec);
  const Hull large = hull_of(scaled(spec, k));
  const Surfaces a = small.surfaces();
  const Surfaces b = large.surfaces();
  const auto same = [&](double x, double y, double share) {
    RC_ASSERT(std::abs(x / y - 1.0) < share);
  };
  same(b.planform.area.si(), k * k * a.planform.area.si(), 1e-10);
  same(b.deck.area.si(), k * k * a.deck.area.si(), 1e-10);
  same(b.bottom.area.si(), k * k * a.bottom.area.si(), 1e-10);
  same(b.volume.si(), k * k * k * a.volume.si(), 1e-10);
  same(b.perimeter.si(), k * a.perimeter.si(), 1e-10);
  // Walks stop where a branch changes by bisection: nearly the same places.
  same(whole_band(large, Face::deck, k * 0.05), k * k * whole_band(small, Face::deck, 0.05), 1e-6);
}

// Any one width. Volume is left out: as with a batten, a wider tail pulls the curve in a hair
// farther up, where the board is thicker.
RC_GTEST_PROP(AnyBoard, IsNeverSmallerForMoreWidth, ()) {
  MeasuringPoints p = any_points();
  const Surfaces a = hull_of(spec_of(p)).surfaces();
  switch (*rc::gen::inRange(0, 4)) {
    case 0:
      p.wide *= between(1.0, 1.1);
      break;
    case 1:
      p.nose12 = std::min(0.95 * p.wide, p.nose12 * between(1.0, 1.1));
      break;
    case 2:
      p.tail12 = std::min(0.95 * p.wide, p.tail12 * between(1.0, 1.1));
      break;
    default:
      // Between wider prongs lies a wider notch.
      RC_PRE(p.tail_shape != EndShape::swallow);
      p.tail = std::min(0.95 * p.tail12, p.tail * between(1.0, 1.1));
      break;
  }
  const Hull wider = hull_of(spec_of(p));
  const Surfaces b = wider.surfaces();
  const double rounding = 1.0 - 1e-6;
  RC_ASSERT(b.planform.area.si() >= a.planform.area.si() * rounding);
  RC_ASSERT(b.deck.area.si() >= a.deck.area.si() * rounding);
  RC_ASSERT(b.bottom.area.si() >= a.bottom.area.si() * rounding);
}

RC_GTEST_PROP(AnyBoard, GrowsWithAllItsWidths, ()) {
  MeasuringPoints p = any_points();
  const Surfaces a = hull_of(spec_of(p)).surfaces();
  const double band = whole_band(hull_of(spec_of(p)), Face::bottom, 0.05);
  const double k = between(1.001, 1.2);
  for (double* width : {&p.tail, &p.tail12, &p.wide, &p.nose12}) *width *= k;
  const Hull wider = hull_of(spec_of(p));
  const Surfaces b = wider.surfaces();
  RC_ASSERT(std::abs(b.planform.area.si() / (k * a.planform.area.si()) - 1.0) < 1e-9);
  RC_ASSERT(std::abs(b.volume.si() / (k * a.volume.si()) - 1.0) < 1e-9);
  RC_ASSERT(b.deck.area > a.deck.area);
  RC_ASSERT(b.bottom.area > a.bottom.area);
  RC_ASSERT(b.perimeter > a.perimeter);
  RC_ASSERT(whole_band(wider, Face::bottom, 0.05) > band * (1.0 - 1e-6));
}

RC_GTEST_PROP(AnyBoard, IsNeverLessCoveredByMoreLap, ()) {
  const MeasuringPoints p = any_points();
  const Hull hull = hull_of(spec_of(p));
  const Face face = *rc::gen::element(Face::deck, Face::bottom);
  const double low = between(0.01, 0.1);
  const double high = low + between(0.0, 0.05);
  const double a = whole_band(hull, face, low);
  const double b = whole_band(hull, face, high);
  const Surfaces s = hull.surfaces();
  RC_ASSERT(b >= a * (1.0 - 1e-6));
  RC_ASSERT(b <= (face == Face::deck ? s.deck : s.bottom).area.si() * (1.0 + 1e-5));
  const Measured band = hull.band_area(face, units::metres(low), Length{}, hull.length()).value();
  // For rails that have names the estimate stayed below 2e-4 on 18 000 random boards; on one other
  // it was 2.005e-4, so there is room. Rails between full and square are harder to follow.
  RC_ASSERT(band.error.si() < (p.exponent > 4.0 ? 2e-3 : 3e-4) * band.area.si());
}

RC_GTEST_PROP(AnyBoard, HasPatchesThatGrowIntoTheFace, ()) {
  const Hull hull = hull_of(spec_of(any_points()));
  const Face face = *rc::gen::element(Face::deck, Face::bottom);
  const Length a = hull.length() * between(0.0, 0.6);
  const Length b = a + hull.length() * between(0.1, 0.4);
  double last = 0.0;
  for (const double width : {2.0, 8.0, 14.0, 20.0, 60.0}) {
    const double patch = hull.patch_area({face, a, b, inches(width)}).area.si();
    RC_ASSERT(patch >= last * (1.0 - 1e-7));
    RC_ASSERT(patch <= 0.0254 * width * hull.surface_length(face, a, b).si() * 1.25);
    last = patch;
  }
  RC_ASSERT(last <= hull.patch_area({face, a, b, std::nullopt}).area.si() * (1.0 + 1e-9));
  // Lengthwise parts add up to the face, walls of cut ends included.
  const auto part = [&](Length from, Length to) {
    return hull.patch_area({face, from, to, std::nullopt}).area.si();
  };
  const Surfaces s = hull.surfaces();
  const double whole = (face == Face::deck ? s.deck : s.bottom).area.si();
  RC_ASSERT(std::abs(part(Length{}, a) + part(a, b) + part(b, hull.length()) - whole) <
            2e-5 * whole);
}

// A strip along each rail and a patch between them make the face.
RC_GTEST_PROP(AnyBoard, IsItsMiddleAndItsRails, ()) {
  MeasuringPoints p = any_points();
  p.tail_shape = EndShape::round;
  p.tail = p.notch = 0.0;
  const Hull hull = hull_of(spec_of(p));
  const Length a = hull.length() * 0.3;
  const Length b = hull.length() * 0.7;
  const double reach = between(0.02, 0.1);
  const double whole = hull.patch_area({Face::deck, a, b, std::nullopt}).area.si();
  const double rails = area(hull.band_area(Face::deck, units::metres(reach), a, b));
  // Between the narrowest and the widest middle that is left.
  const Length widest = hull.max_girth(Face::deck, a, b) - units::metres(2.0 * reach);
  const Length narrowest =
      std::min(hull.girth(Face::deck, a), hull.girth(Face::deck, b)) - units::metres(2.0 * reach);
  RC_ASSERT(rails + hull.patch_area({Face::deck, a, b, widest}).area.si() >= whole * 0.999);
  RC_ASSERT(rails + hull.patch_area({Face::deck, a, b, narrowest}).area.si() <= whole * 1.001);
}

}  // namespace
}  // namespace wetout::board
