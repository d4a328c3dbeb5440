#include "wetout/report/plan_drawing.hpp"

#include <gtest/gtest.h>

#include "sample.hpp"

namespace wetout::report {
namespace {

using units::inches;
using units::metres;
using units::System;

DrawnBoard diamond(units::Length length, double half_width = 0.25) {
  DrawnBoard board;
  board.outline = {{metres(0), metres(0)},
                   {0.5 * length, metres(half_width)},
                   {length, metres(0)},
                   {0.5 * length, metres(-half_width)}};
  board.across = {{"wide point", 0.5 * length, metres(2.0 * half_width)}};
  return board;
}

bool has(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

// 1:10 in millimetres, from the nose down.
TEST(PlanDrawing, IsToScale) {
  const PlanDocument document = sample::plan();
  const double length = units::in_metres(document.plan.board.length) * 100.0;
  const std::string svg = plan_drawing(document, diamond(document.plan.board.length), System::us);
  EXPECT_TRUE(has(svg, "0.000," + std::to_string(24.0 + length).substr(0, 6)))
      << svg.substr(0, 900);
  EXPECT_TRUE(has(svg, "25.000,"));
  EXPECT_TRUE(has(svg, "-25.000,"));
  // The bottom's laps of 2 in on the deck: of a stroke twice as wide the inner half is seen.
  EXPECT_TRUE(has(svg, "stroke-width=\"10.160\""));
  // The patch, 15 in wide from 14 in to 56 in.
  EXPECT_TRUE(has(svg, "width=\"38.10\" height=\"106.68\""));
  EXPECT_TRUE(has(svg, ">19 11/16 in<"));  // half a metre
}

TEST(PlanDrawing, WideBoardsHaveRoom) {
  const PlanDocument document = sample::plan();
  const auto drawn = [&](double half_width) {
    return plan_drawing(document, diamond(document.plan.board.length, half_width), System::us);
  };
  EXPECT_TRUE(has(drawn(0.25), "translate(62.00 0)") && has(drawn(0.25), "translate(138.00 0)"));
  const std::string wide = drawn(0.45);
  EXPECT_TRUE(has(wide, "translate(75.00 0)") && has(wide, "translate(177.00 0)"));
  EXPECT_TRUE(has(wide, "width=\"242mm\""));
}

TEST(PlanDrawing, TextsStayTexts) {
  PlanDocument document = sample::plan();
  document.plan.board.name = "<script>alert('x')</script> & \"co\"\x01\xff";
  document.plan.coats.front().name = "</svg>";
  const std::string svg =
      plan_drawing(document, diamond(document.plan.board.length), System::metric);
  EXPECT_FALSE(has(svg, "<script"));
  EXPECT_FALSE(has(svg, "\x01"));
  EXPECT_FALSE(has(svg, "\xff"));
  EXPECT_TRUE(has(svg, "&lt;script&gt;"));
  EXPECT_EQ(svg.find("</svg>"), svg.size() - std::string("</svg>\n").size());
  EXPECT_TRUE(svg.starts_with(plan_drawing_begins));
}

TEST(PlanDrawing, AsksForNothingFromOutside) {
  const PlanDocument document = sample::plan();
  std::string svg = plan_drawing(document, diamond(document.plan.board.length), System::us);
  const std::string name_space = "http://www.w3.org/2000/svg";
  svg.erase(svg.find(name_space), name_space.size());
  EXPECT_FALSE(has(svg, "http"));
}

}  // namespace
}  // namespace wetout::report
