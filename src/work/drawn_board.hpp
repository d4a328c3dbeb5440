// The board itself, for drawings of its plan.
#pragma once

#include "wetout/base/problem.hpp"
#include "wetout/board/spec.hpp"
#include "wetout/report/plan_drawing.hpp"

namespace wetout::work {

/// Outline to 0.1 mm, and the widths where the trade measures them: a foot (300 mm) from the ends,
/// at the wide point. Problems: those of board::Hull::make.
base::Result<report::DrawnBoard> drawn_board(const board::Spec& spec, units::System system);

}  // namespace wetout::work
