// What is written as a drawing is read again as the same board.
#include "wetout/report/outline_file.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "../board/boards.hpp"
#include "wetout/board/read_outline.hpp"

namespace wetout::report {
namespace {

using board::EndShape;
using board::Face;
using board::Hull;
using board::hull_of;
using board::Spec;
using units::Length;
using units::millimetres;

Spec read_again(const Spec& spec, const std::string& bytes, const std::string& name) {
  board::OutlineRequest request;
  request.length = spec.length;
  request.tail_end = spec.tail;
  request.nose_end = spec.nose;
  const auto outline = board::read_outline(bytes, name, request);
  if (!outline) throw std::runtime_error(outline.error().front().message);
  EXPECT_TRUE(outline->notices.empty()) << outline->notices.front().text;
  EXPECT_FALSE(outline->is_half);
  EXPECT_NEAR(outline->drawn_length.si(), spec.length.si(), 1e-8);
  Spec again = spec;
  again.drawn = outline->drawn;
  again.width = outline->width;
  again.wide_point.reset();
  return again;
}

void expect_same(const Spec& spec, const Spec& again, const std::string& what) {
  const Hull one = hull_of(spec), other = hull_of(again);
  const board::Surfaces a = one.surfaces(), b = other.surfaces();
  const auto near = [&](double x, double y, double share, const char* of) {
    EXPECT_NEAR(y / x, 1.0, share) << what << ": " << of;
  };
  near(a.planform.area.si(), b.planform.area.si(), 1e-6, "planform");
  near(a.perimeter.si(), b.perimeter.si(), 2e-5, "perimeter");
  near(a.deck.area.si(), b.deck.area.si(), 1e-6 + 2.0 * a.deck.error.si() / a.deck.area.si(),
       "deck");
  near(a.volume.si(), b.volume.si(), 1e-5, "volume");
  for (const Face face : {Face::deck, Face::bottom}) {
    for (const double lap : {0.025, 0.05, 0.08}) {
      const auto band = [&](const Hull& hull) {
        return hull.band_area(face, units::metres(lap), Length{}, hull.length())->area.si();
      };
      // Bands are integrated to some 1e-4, and arcs bend in steps.
      near(band(one), band(other), 3e-4, "lap");
    }
  }
  EXPECT_NEAR(one.strip_area(units::metres(0.05), Length{}, one.length()).si(),
              other.strip_area(units::metres(0.05), Length{}, other.length()).si(), 1e-5)
      << what;
  for (double share = 0.01; share < 1.0; share += 0.01) {
    EXPECT_NEAR(one.width(spec.length * share).si(), other.width(spec.length * share).si(), 2e-6)
        << what << " " << share;
  }
}

TEST(OutlineFile, IsReadAgainAsTheSameBoard) {
  for (const board::Named& named : board::shapes()) {
    const Spec spec = spec_of(named.points);
    const Hull hull = hull_of(spec);
    const std::string svg = outline_svg(hull), dxf = outline_dxf(hull);
    EXPECT_LT(svg.size(), 60'000U) << named.name;
    EXPECT_LT(dxf.size(), 400'000U) << named.name;
    const Spec again = read_again(spec, svg, "board.svg");
    expect_same(spec, again, named.name + " by SVG");
    expect_same(spec, read_again(spec, dxf, "board.dxf"), named.name + " by DXF");
    // And what is written of that once more.
    expect_same(again, read_again(again, outline_svg(hull_of(again)), "again.svg"),
                named.name + " twice");
  }
}

TEST(OutlineFile, OfAnEllipsoidIsAnEllipse) {
  const Spec spec = board::ellipsoid(0.95, 0.25, 0.05, 41);
  const Hull hull = hull_of(spec);
  for (const Hull::Bezier& piece : hull.rail_beziers()) {
    for (const Hull::Point& p : {piece.p[0], piece.p[3]}) {
      EXPECT_NEAR(std::pow((p.x.si() - 0.95) / 0.95, 2) + std::pow(p.y.si() / 0.25, 2), 1.0, 1e-6);
    }
  }
  // Radius of curvature at the tip: b2/a. An arc from the tip turns by its length over it.
  const auto arcs = hull.rail_arcs();
  const double chord = std::hypot(arcs[1].at.x.si(), arcs[1].at.y.si());
  const double turn = 4.0 * std::atan(std::abs(arcs[0].bulge));
  EXPECT_NEAR(0.5 * chord / std::sin(0.5 * turn), 0.25 * 0.25 / 0.95, 2e-3 * 0.25 * 0.25 / 0.95);
}

TEST(OutlineFile, OfASlabIsItsCorners) {
  const Hull hull = hull_of(board::slab(1.8, 0.5, 0.05, 0.5, 0.1));
  const std::string svg = outline_svg(hull);
  EXPECT_NE(svg.find("width=\"500mm\" height=\"1800mm\""), std::string::npos) << svg;
  EXPECT_NE(svg.find("L250 1700"), std::string::npos) << "the notch: " << svg;
  EXPECT_EQ(hull.notch(), millimetres(100));
  for (const Hull::Bulge& one : hull.rail_arcs()) EXPECT_EQ(one.bulge, 0.0);
}

}  // namespace
}  // namespace wetout::report
