// Outlines out of drawings: areas against an own flattening in GEOS, and what is refused.
#include "wetout/board/read_outline.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <numbers>

#include "boards.hpp"
#include "wetout/board/hull.hpp"

namespace wetout::board {
namespace {

using units::Length;
using units::metres;
using units::millimetres;

constexpr double pi = std::numbers::pi;

OutlineRequest asked(double length_m, EndShape tail = EndShape::round,
                     EndShape nose = EndShape::round) {
  OutlineRequest request;
  request.length = metres(length_m);
  request.tail_end.shape = tail;
  request.nose_end.shape = nose;
  return request;
}

std::string svg(
    const std::string& inside,
    const std::string& size = "width=\"600mm\" height=\"2000mm\" viewBox=\"0 0 600 2000\"") {
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" " + size + ">" + inside + "</svg>";
}

ReadOutline read(const std::string& text, const OutlineRequest& request) {
  auto outline = read_outline(text, "board.svg", request);
  if (!outline)
    throw std::runtime_error(outline.error().front().code + " " + outline.error().front().message);
  return *outline;
}

std::string code_of(const std::string& text, const OutlineRequest& request) {
  const auto outline = read_outline(text, "board.svg", request);
  return outline ? "" : outline.error().front().code;
}

// Planform of the hull that the outline makes, in m2.
double area_of(const ReadOutline& outline, const OutlineRequest& request) {
  Spec spec = flat(ellipsoid(request.length.si() / 2.0, 0.25, 0.05, 3), 0.05, 0.5);
  spec.length = request.length;
  spec.tail = request.tail_end;
  spec.nose = request.nose_end;
  spec.width = outline.width;
  spec.wide_point.reset();
  spec.drawn = outline.drawn;
  spec.thickness = {{Length{}, millimetres(50)}, {request.length, millimetres(50)}};
  return hull_of(spec).surfaces().planform.area.si();
}

// The same board drawn in every way that SVG has: an ellipse, pi a b.
TEST(ReadOutline, OfAnEllipseHasItsAreaHoweverItIsDrawn) {
  const std::string half_top = "M300 50 A 250 950 0 0 1 300 1950";
  const std::pair<const char*, std::string> ways[] = {
      {"ellipse", "<ellipse cx=\"300\" cy=\"1000\" rx=\"250\" ry=\"950\"/>"},
      {"arcs", "<path d=\"M300,50A250,950,0,0,1,300,1950A250,950,0,0,1,300,50Z\"/>"},
      {"relative arcs, flags without spaces",
       "<path d=\"m300 50a250 950 0 01 0 1900 250 950 0 010-1900z\"/>"},
      {"half with its centre line", "<path d=\"" + half_top + " L 300 50 Z\"/>"},
      {"half open", "<path d=\"" + half_top + "\"/>"},
      {"other half open, from the tail", "<path d=\"M300 1950 A 250 950 0 0 1 300 50\"/>"},
      {"two pieces",
       "<path d=\"" + half_top + "\"/><path d=\"M300.3 50 A 250 950 0 0 0 300 1950.2\"/>"},
      {"circle, stretched",
       "<g transform=\"translate(300 1000) scale(250 950)\"><circle r=\"1\"/></g>"},
      {"turned",
       "<g transform=\"rotate(90 300 1000)\"><ellipse cx=\"300\" cy=\"1000\" rx=\"950\" "
       "ry=\"250\"/></g>"},
      {"nested",
       "<svg x=\"10\" y=\"5\" width=\"600\" height=\"2000\" viewBox=\"0 0 300 1000\"><ellipse "
       "cx=\"150\" cy=\"500\" rx=\"125\" ry=\"475\"/></svg>"},
      {"rounded rectangle",
       "<rect x=\"50\" y=\"50\" width=\"500\" height=\"1900\" rx=\"250\" ry=\"950\"/>"},
  };
  const OutlineRequest request = asked(1.9);
  for (const auto& [name, inside] : ways) {
    const ReadOutline outline = read(svg(inside), request);
    // Pieces that join to half a millimetre only are as good as that.
    const double good = std::string(name) == "two pieces" ? 5e-4 : 1e-6;
    EXPECT_NEAR(area_of(outline, request) / (pi * 0.95 * 0.25), 1.0, good) << name;
    EXPECT_NEAR(units::in_millimetres(outline.drawn_length), 1900.0, 1.0) << name;
    EXPECT_LT(outline.asymmetry, millimetres(0.5)) << name;
    EXPECT_EQ(outline.is_half, std::string(name).find("half") != std::string::npos) << name;
  }
}

// A board of straight lines, by hand: 100 + (300 + 500)/2 ... trapezia, in m2.
TEST(ReadOutline, OfStraightLinesIsExact) {
  const std::string d = "250,0 300,500 250,1800 50,1800 0,500 50,0";
  const OutlineRequest request = asked(1.8, EndShape::square, EndShape::square);
  const double area = 0.5 * (0.2 + 0.3) * 0.5 + 0.5 * (0.3 + 0.2) * 1.3;
  for (const std::string& inside :
       std::vector<std::string>{"<polygon points=\"" + d + "\"/>",
                                "<path d=\"M250 0L300 500 250 1800H50L0 500 50 0Z\"/>",
                                "<path d=\"m250 0l50 500-50 1300h-200l-50-1300 50-500z\"/>"}) {
    const ReadOutline outline = read(svg(inside), request);
    EXPECT_NEAR(area_of(outline, request), area, 1e-7) << inside;
    EXPECT_NEAR(units::in_metres(outline.width.front().value), 0.2, 1e-9);
    EXPECT_NEAR(units::in_metres(outline.wide_point), 1.3, 1e-6);
  }
}

// Curves of every kind, against the integral of the same half-width by the trapezium rule.
TEST(ReadOutline, OfCubicsAndQuadraticsHasTheirArea) {
  const OutlineRequest request = asked(1.8, EndShape::square, EndShape::point);
  // From the nose down the right side; S and T go on smoothly.
  const std::string cubic = "M300 100 C 420 300 520 600 520 1000 S 480 1700 420 1900 H 180";
  const std::string whole =
      svg("<path d=\"" + cubic + " C 120 1700 80 1400 80 1000 S 180 300 300 100 Z\"/>");
  const ReadOutline outline = read(whole, request);
  const auto bezier = [](double t, double a, double b, double c, double d) {
    const double s = 1 - t;
    return s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d;
  };
  double twice = 0.0;
  const auto integrate = [&](double ax, double bx, double cx, double dx, double ay, double by,
                             double cy, double dy) {
    constexpr int many = 100'000;
    for (int i = 0; i < many; ++i) {
      const double t = static_cast<double>(i) / many, u = static_cast<double>(i + 1) / many;
      const double x0 = bezier(t, ax, bx, cx, dx), x1 = bezier(u, ax, bx, cx, dx);
      twice += (x0 - 300 + x1 - 300) * (bezier(u, ay, by, cy, dy) - bezier(t, ay, by, cy, dy));
    }
  };
  integrate(300, 420, 520, 520, 100, 300, 600, 1000);
  integrate(520, 520, 480, 420, 1000, 1400, 1700, 1900);
  EXPECT_NEAR(area_of(outline, request), twice * 1e-6, 1e-6 * twice * 1e-6);
  // A quadratic is the cubic with its handles at two thirds.
  const ReadOutline quadratic =
      read(svg("<path d=\"M300 100 Q 520 400 520 1000 T 420 1900 H 300\"/>"), request);
  EXPECT_GT(area_of(quadratic, request), 0.5);
}

TEST(ReadOutline, GoesByTheLengthOfTheBoardAndSaysWhenTheDrawingHasAnother) {
  const std::string ellipse = "<ellipse cx=\"300\" cy=\"1000\" rx=\"250\" ry=\"950\"/>";
  const ReadOutline longer = read(svg(ellipse), asked(2.0));
  EXPECT_NEAR(area_of(longer, asked(2.0)), pi * 1.0 * 0.25 / 0.95, 1e-6);
  ASSERT_EQ(longer.notices.size(), 1U);
  EXPECT_EQ(longer.notices[0].code, "outline.scaled");
  EXPECT_NEAR(*longer.notices[0].value, 1.9, 1e-9);
  // Pixels are no length.
  EXPECT_TRUE(read(svg(ellipse, "width=\"600\" height=\"2000\""), asked(2.0)).notices.empty());
}

TEST(ReadOutline, LiesAcrossThePageWhereItIsSaid) {
  // Wider toward the nose, which is on the left.
  const std::string d = "<polygon points=\"0,150 0,250 600,300 1800,260 1800,140 600,100\"/>";
  OutlineRequest request = asked(1.8, EndShape::square, EndShape::square);
  EXPECT_EQ(code_of(svg(d), request), "outline.nose");
  request.nose = Toward::left;
  EXPECT_NEAR(units::in_metres(read(svg(d), request).wide_point), 1.2, 1e-6);
  request.nose = Toward::right;
  EXPECT_NEAR(units::in_metres(read(svg(d), request).wide_point), 0.6, 1e-6);
}

TEST(ReadOutline, AsksWhichOfSeveral) {
  const std::string two =
      svg("<ellipse id=\"board\" cx=\"300\" cy=\"1000\" rx=\"250\" ry=\"950\"/><rect id=\"frame\" "
          "width=\"600\" height=\"2000\"/>");
  const auto which = read_outline(two, "board.svg", asked(1.9));
  ASSERT_FALSE(which);
  EXPECT_EQ(which.error().front().code, "outline.which");
  EXPECT_NE(which.error().front().expected.find("board, frame"), std::string::npos);
  OutlineRequest request = asked(1.9);
  request.id = "board";
  EXPECT_NEAR(area_of(read(two, request), request), pi * 0.95 * 0.25, 1e-6);
  request.id = "bord";
  EXPECT_EQ(code_of(two, request), "outline.id");
}

TEST(ReadOutline, SaysWhatIsNoOutline) {
  const OutlineRequest round = asked(1.9);
  const std::pair<const char*, std::string> cases[] = {
      {"outline.not_drawing", "not a drawing"},
      {"outline.not_svg", "<html/>"},
      {"outline.nothing", svg("<text>board</text>")},
      {"outline.nothing", svg("<path d=\"M5 5\"/>")},
      {"outline.open", svg("<path d=\"M300 50L500 900\"/><path d=\"M480 1000L300 1950\"/>")},
      {"outline.path", svg("<path d=\"M300 50 C 10 20\"/>")},
      {"outline.path", svg("<path d=\"M300 50 L nan 5\"/>")},
      {"outline.path", svg("<path d=\"L300 50\"/>")},
      {"outline.path", svg("<path d=\"M1e999 0L0 0\"/>")},
      {"outline.path", svg("<polygon points=\"0,0 5\"/>")},
      {"outline.number", svg("<circle r=\"4 apples\"/>")},
      {"outline.transform", svg("<g transform=\"turn(4)\"><circle r=\"4\"/></g>")},
      {"outline.doubles_back",
       svg("<path d=\"M300 50 L500 1200 L400 900 L450 1950 L150 1950 L200 900 L100 1200Z\"/>")},
      {"outline.uneven", svg("<path d=\"M300 50 L600 900 L300 1950 L100 1000 Z\"/>")},
      {"outline.end", svg("<polygon points=\"250,0 300,500 250,1800 50,1800 0,500 50,0\"/>")},
      {"outline.entities", "<!DOCTYPE svg [<!ENTITY a \"aaaa\">]>" + svg("<path d=\"M0 0\"/>")},
  };
  for (const auto& [code, text] : cases) EXPECT_EQ(code_of(text, round), code) << text;
  EXPECT_EQ(code_of(svg("<ellipse cx=\"300\" cy=\"1000\" rx=\"250\" ry=\"950\"/>"),
                    asked(1.9, EndShape::square)),
            "outline.end");
}

TEST(ReadOutline, RefusesWhatIsTooMuch) {
  EXPECT_EQ(code_of(std::string(std::size_t{17} << 20U, ' '), asked(1.9)), "outline.too_large");
  std::string deep;
  for (int i = 0; i < 200'000; ++i) deep += "<g>";
  for (int i = 0; i < 200'000; ++i) deep += "</g>";
  EXPECT_EQ(code_of(svg(deep), asked(1.9)), "outline.too_deep");
}

// Some thousand drawings with a few characters changed, left out or said twice: refused, or an
// outline that a hull can be made of; never anything else.
RC_GTEST_PROP(ReadOutline, TakesOrRefusesWhateverIsDamaged, ()) {
  static const std::string whole =
      svg("<g transform=\"translate(300 1000) rotate(180) scale(1,-1)\"><path id=\"a\" "
          "d=\"M0-950C140-950 250-500 "
          "250 0S140 950 0 950Q-250 700-250 0T0-950Z\"/></g><polyline points=\"1,2 3,4\"/>");
  for (int n = 0; n < 60; ++n) {
    std::string text = whole;
    for (int i = *rc::gen::inRange(1, 5); i > 0; --i) {
      const auto at = static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(text.size())));
      switch (*rc::gen::inRange(0, 3)) {
        case 0:
          text[at] = *rc::gen::element('0', '9', '-', '.', 'e', ' ', 'Z', 'A', 'z', '"', '<', '\0',
                                       '\xff', '7');
          break;
        case 1:
          text.erase(at, static_cast<std::size_t>(*rc::gen::inRange(1, 8)));
          break;
        default:
          text.insert(at, text.substr(at, 12));
      }
      if (text.empty()) text = "x";
    }
    const OutlineRequest request = asked(1.9);
    const auto outline = read_outline(text, "board.svg", request);
    if (!outline) {
      RC_ASSERT(!outline.error().front().code.empty() && !outline.error().front().message.empty());
      continue;
    }
    RC_ASSERT(outline->drawn.knots.size() >= 2U && outline->drawn.knots.size() < 20'000U);
    double last = -1.0;
    for (const Knot& knot : outline->drawn.knots) {
      RC_ASSERT(knot.from_tail.si() > last && std::isfinite(knot.half_width.si()) &&
                knot.half_width.si() >= 0.0);
      RC_ASSERT(std::isfinite(knot.slope_ahead) && std::isfinite(knot.slope_behind));
      last = knot.from_tail.si();
    }
  }
}

TEST(ReadOutline, TellsOfSidesAndNotchesThatDiffer) {
  OutlineRequest request = asked(1.9, EndShape::swallow, EndShape::point);
  request.tail_end.depth = millimetres(100);
  const std::string fish =
      "<path d=\"M300 50 L 500 900 L 420 1950 L 300 1820 L 180 1950 L 104 900 Z\"/>";
  const ReadOutline outline = read(svg(fish), request);
  ASSERT_EQ(outline.notices.size(), 2U);
  EXPECT_EQ(outline.notices[0].code, "outline.uneven");
  EXPECT_NEAR(*outline.notices[0].value, 4.0, 0.1);
  EXPECT_EQ(outline.notices[1].code, "outline.notch");
  EXPECT_NEAR(*outline.notices[1].value, 130.0, 1e-6);
  EXPECT_NEAR(units::in_metres(outline.width.front().value), 0.24, 1e-9);
}

// --- DXF: entities written by hand after the published reference

std::string pairs(std::initializer_list<std::pair<int, std::string>> list) {
  std::string text;
  for (const auto& [code, value] : list) text += std::to_string(code) + "\n" + value + "\n";
  return text;
}
std::string dxf(const std::string& entities, int units = 4, const std::string& blocks = "") {
  return pairs({{0, "SECTION"},
                {2, "HEADER"},
                {9, "$ACADVER"},
                {1, "AC1015"},
                {9, "$INSUNITS"},
                {70, std::to_string(units)},
                {0, "ENDSEC"}}) +
         pairs({{0, "SECTION"}, {2, "BLOCKS"}}) + blocks + pairs({{0, "ENDSEC"}}) +
         pairs({{0, "SECTION"}, {2, "ENTITIES"}}) + entities + pairs({{0, "ENDSEC"}, {0, "EOF"}});
}
std::string line(double x1, double y1, double x2, double y2, const std::string& layer = "0") {
  return pairs({{0, "LINE"},
                {8, layer},
                {10, fmt::format("{}", x1)},
                {20, fmt::format("{}", y1)},
                {11, fmt::format("{}", x2)},
                {21, fmt::format("{}", y2)}});
}

// A stadium of 1.9 m with round ends of 0.25 m, up the page: its sides straight, its ends half
// circles.
const double stadium = pi * 0.0625 + 0.5 * 1.4;

TEST(ReadOutline, OfDxfReadsEveryEntity) {
  const OutlineRequest request = asked(1.9);
  const std::string sides = line(250, 0, 250, 1400) + line(-250, 1400, -250, 0);
  const auto arc = [](double y, double from, double to) {
    return pairs({{0, "ARC"},
                  {8, "0"},
                  {10, "0"},
                  {20, fmt::format("{}", y)},
                  {40, "250"},
                  {50, fmt::format("{}", from)},
                  {51, fmt::format("{}", to)}});
  };
  const std::string bulged = pairs({{0, "LWPOLYLINE"},
                                    {8, "rail"},
                                    {100, "AcDbPolyline"},
                                    {90, "4"},
                                    {70, "1"},
                                    {10, "250"},
                                    {20, "0"},
                                    {10, "250"},
                                    {20, "1400"},
                                    {42, "1"},
                                    {10, "-250"},
                                    {20, "1400"},
                                    {10, "-250"},
                                    {20, "0"},
                                    {42, "1"}});
  const auto vertex = [](double x, double y, double bulge) {
    return pairs({{0, "VERTEX"},
                  {8, "0"},
                  {10, fmt::format("{}", x)},
                  {20, fmt::format("{}", y)},
                  {42, fmt::format("{}", bulge)}});
  };
  const std::string old = pairs({{0, "POLYLINE"}, {8, "0"}, {66, "1"}, {70, "1"}}) +
                          vertex(250, 0, 0) + vertex(250, 1400, 1) + vertex(-250, 1400, 0) +
                          vertex(-250, 0, 1) + pairs({{0, "SEQEND"}});
  const std::string block =
      pairs({{0, "BLOCK"}, {8, "0"}, {2, "END"}, {70, "0"}, {10, "100"}, {20, "0"}, {3, "END"}}) +
      pairs({{0, "ARC"}, {8, "0"}, {10, "100"}, {20, "0"}, {40, "125"}, {50, "0"}, {51, "180"}}) +
      pairs({{0, "ENDBLK"}});
  const auto insert = [](double y, double angle) {
    return pairs({{0, "INSERT"},
                  {8, "0"},
                  {2, "END"},
                  {10, "0"},
                  {20, fmt::format("{}", y)},
                  {41, "2"},
                  {42, "2"},
                  {50, fmt::format("{}", angle)}});
  };
  const auto half_ellipse = [](double y, double from, double to) {
    return pairs({{0, "ELLIPSE"},
                  {8, "0"},
                  {10, "0"},
                  {20, fmt::format("{}", y)},
                  {11, "250"},
                  {21, "0"},
                  {40, "1"},
                  {41, fmt::format("{}", from)},
                  {42, fmt::format("{}", to)}});
  };
  const std::pair<const char*, std::string> ways[] = {
      {"lines and arcs", dxf(sides + arc(1400, 0, 180) + arc(0, 180, 360))},
      {"lines and ellipses", dxf(sides + half_ellipse(1400, 0, pi) + half_ellipse(0, pi, 2 * pi))},
      {"polyline with bulges", dxf(bulged)},
      {"polyline of vertices", dxf(old)},
      {"blocks", dxf(sides + insert(1400, 0) + insert(0, 180), 4, block)},
  };
  for (const auto& [name, text] : ways) {
    const ReadOutline outline = read(text, request);
    EXPECT_NEAR(area_of(outline, request), stadium, 1e-6 * stadium) << name;
    EXPECT_NEAR(units::in_millimetres(outline.drawn_length), 1900.0, 1e-6) << name;
    EXPECT_TRUE(outline.notices.empty()) << name;
  }
  // In inches it is a giant, and said to be.
  EXPECT_EQ(read(dxf(bulged, 1), request).notices.front().code, "outline.scaled");
  EXPECT_TRUE(read(dxf(bulged, 0), request).notices.empty());
}

// A circle as a rational quadratic spline (Piegl and Tiller, 7.5): nine points, weights 1 and
// 1/sqrt 2.
TEST(ReadOutline, OfDxfFollowsSplines) {
  std::string spline =
      pairs({{0, "SPLINE"}, {8, "0"}, {70, "13"}, {71, "2"}, {72, "12"}, {73, "9"}, {74, "0"}});
  for (const double knot : {0., 0., 0., 1., 1., 2., 2., 3., 3., 4., 4., 4.})
    spline += pairs({{40, fmt::format("{}", knot)}});
  const double w = std::sqrt(0.5);
  const double points[9][3] = {{1, 0, 1},   {1, 1, w},  {0, 1, 1},  {-1, 1, w}, {-1, 0, 1},
                               {-1, -1, w}, {0, -1, 1}, {1, -1, w}, {1, 0, 1}};
  for (const auto& p : points) spline += pairs({{41, fmt::format("{}", p[2])}});
  for (const auto& p : points)
    spline += pairs(
        {{10, fmt::format("{}", 250 * p[0])}, {20, fmt::format("{}", 950 * p[1])}, {30, "0"}});
  const OutlineRequest request = asked(1.9);
  EXPECT_NEAR(area_of(read(dxf(spline), request), request), pi * 0.95 * 0.25, 3e-6);
}

TEST(ReadOutline, OfDxfGoesByLayers) {
  OutlineRequest request = asked(1.8, EndShape::square, EndShape::square);
  const std::string box = line(-200, 0, 200, 0, "rail") + line(200, 0, 250, 900, "rail") +
                          line(250, 900, 200, 1800, "rail") + line(200, 1800, -200, 1800, "rail") +
                          line(-200, 1800, -250, 900, "rail") + line(-250, 900, -200, 0, "rail");
  const std::string marks = line(-300, 300, 300, 300, "marks");
  EXPECT_EQ(code_of(dxf(box + marks), request), "outline.open");
  request.id = "rail";
  EXPECT_NEAR(area_of(read(dxf(box + marks), request), request), 0.45 * 1.8, 1e-7);
}

// Published check values: half a circle has bulge 1, a quarter 0.414213562.
TEST(ReadOutline, OfDxfTakesBulgesForWhatTheyAre) {
  const OutlineRequest request = asked(2.0);
  std::string circle = pairs({{0, "LWPOLYLINE"}, {8, "0"}, {90, "4"}, {70, "1"}});
  for (const auto& [x, y] :
       {std::pair{1000, 0}, std::pair{0, 1000}, std::pair{-1000, 0}, std::pair{0, -1000}}) {
    circle += pairs({{10, std::to_string(x)}, {20, std::to_string(y)}, {42, "0.414213562373095"}});
  }
  const auto outline = read_outline(dxf(circle), "board.dxf", request);
  ASSERT_TRUE(outline) << outline.error().front().message;
  EXPECT_NEAR(units::in_metres(outline->width[outline->width.size() / 2].value), 2.0, 0.1);
  double widest = 0.0;
  for (const At& at : outline->width) widest = std::max(widest, units::in_metres(at.value));
  EXPECT_NEAR(widest, 2.0, 1e-9);
}

TEST(ReadOutline, SaysWhatIsNoDxf) {
  const OutlineRequest request = asked(1.9);
  EXPECT_EQ(code_of("AutoCAD Binary DXF\r\n\x1a", request), "outline.not_dxf");
  EXPECT_EQ(code_of(dxf(""), request), "outline.nothing");
  // A block that holds itself.
  const std::string block = pairs({{0, "BLOCK"}, {8, "0"}, {2, "A"}, {10, "0"}, {20, "0"}}) +
                            pairs({{0, "INSERT"}, {8, "0"}, {2, "A"}, {10, "0"}, {20, "0"}}) +
                            pairs({{0, "ENDBLK"}});
  EXPECT_EQ(code_of(dxf(pairs({{0, "INSERT"}, {8, "0"}, {2, "A"}, {10, "0"}, {20, "0"}}), 4, block),
                    request),
            "outline.too_deep");
}

}  // namespace
}  // namespace wetout::board
