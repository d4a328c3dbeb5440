#include "sheets.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace wetout::report {
namespace {

constexpr PaperSize letter{215.9, 279.4};

// Half of an ellipse as long and wide as a board, in millimetres.
std::vector<PlanePoint> half_board(double length, double half_width) {
  std::vector<PlanePoint> shape;
  for (int i = 0; i <= 200; ++i) {
    const double t = i * 3.14159265358979 / 200.0;
    shape.push_back({half_width * std::sin(t), length / 2.0 * (1.0 - std::cos(t))});
  }
  return shape;
}

Box extent_of(const std::vector<PlanePoint>& shape) {
  Box box{shape[0].x, shape[0].y, 0, 0};
  for (const PlanePoint& p : shape) {
    box.width = std::max(box.width, p.x - box.x);
    box.height = std::max(box.height, p.y - box.y);
  }
  return box;
}

bool holds(const Box& box, const PlanePoint& p) {
  return p.x >= box.x && p.x <= box.x + box.width && p.y >= box.y && p.y <= box.y + box.height;
}

TEST(SheetsOver, OneSheetHoldsWhatFits) {
  const auto shape = half_board(200, 150);
  const Sheets sheets = sheets_over(extent_of(shape), shape, letter);
  ASSERT_EQ(sheets.list.size(), 1U);
  EXPECT_EQ(sheets.list[0].name(), "1A");
  EXPECT_DOUBLE_EQ(sheets.list[0].window.width, 215.9 - 20.0);
}

// Common practice, no source: a board of 6 to 7 ft takes some 10 to 20 letter sheets. Half of one
// takes 10 to 18 (by the boards of this range, computed).
TEST(SheetsOver, HalfABoardTakesTenToEighteenLetters) {
  for (const double feet : {6.0, 6.5, 7.0}) {
    for (const double inches : {19.0, 21.0, 23.0}) {
      const auto shape = half_board(feet * 304.8, inches * 12.7);
      const std::size_t count = sheets_over(extent_of(shape), shape, letter).list.size();
      EXPECT_GE(count, 10U) << feet << " ft, " << inches << " in";
      EXPECT_LE(count, 18U) << feet << " ft, " << inches << " in";
    }
  }
}

RC_GTEST_PROP(SheetsOver, LeaveNothingOut, ()) {
  const auto shape = half_board(*rc::gen::inRange(100, 3000), *rc::gen::inRange(20, 600));
  const Box extent = extent_of(shape);
  const PaperSize paper{*rc::gen::inRange(1000, 9000) / 10.0, *rc::gen::inRange(1000, 9000) / 10.0};
  const Sheets sheets = sheets_over(extent, shape, paper);
  std::set<std::string> names;
  for (const Sheet& sheet : sheets.list) {
    names.insert(sheet.name());
    RC_ASSERT(std::abs(sheet.window.width - (sheets.paper.width - 20.0)) < 1e-9);
    // Neighbours are sheet by sheet 10 mm less than a sheet apart.
    const double across = (sheet.window.x - sheets.list[0].window.x) / (sheet.window.width - 10.0);
    RC_ASSERT(std::abs(across - std::round(across)) < 1e-6);
  }
  RC_ASSERT(names.size() == sheets.list.size());
  for (std::size_t i = 0; i < shape.size(); ++i) {
    for (const double share : {0.0, 0.3, 0.7, 1.0}) {
      // The outline, and what lies between it and the centre line.
      const PlanePoint p{shape[i].x * share, shape[i].y};
      RC_ASSERT(std::any_of(sheets.list.begin(), sheets.list.end(),
                            [&](const Sheet& sheet) { return holds(sheet.window, p); }));
    }
  }
}

}  // namespace
}  // namespace wetout::report
