// A plan as a drawing: deck and bottom to scale, with plies, laps and measures.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "wetout/board/hull.hpp"
#include "wetout/report/plan_document.hpp"
#include "wetout/units/print.hpp"
#include "wetout/units/quantity.hpp"

namespace wetout::report {

/// What a plan does not hold of the board itself.
struct DrawnBoard {
  std::vector<board::Hull::Point> outline;  ///< board::Hull::outline
  struct Across {
    std::string place;  ///< "12 in from the nose"
    units::Length from_tail, width;
  };
  std::vector<Across> across;  ///< from nose to tail
};

/// The bytes that every drawing of a plan begins with.
inline constexpr std::string_view plan_drawing_begins = "<!-- wetout: drawing of a plan -->";

enum class DrawnFor {
  paper,  ///< a file of its own, at 1:10 when it is printed as it is
  page,   ///< inside a page that has its title, as wide as there is room
};

/// One SVG [svg2] without anything from outside, at 1:10 when it is printed as it is, the nose up,
/// both faces seen from their own side. Outline within the tolerance it was given with; a lap is
/// drawn as wide as it is over the surface, so a little wide where the rail turns away. Lines,
/// hatching and numbers tell things apart, colour does not. Every text of the plan is escaped.
std::string plan_drawing(const PlanDocument& document, const DrawnBoard& board,
                         units::System system, DrawnFor use = DrawnFor::paper);

}  // namespace wetout::report
