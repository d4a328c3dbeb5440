// The plan as text for a terminal: at most 80 columns, either unit system, made from the document.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "wetout/report/plan_document.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {

/// The whole plan: board, coats with cloth, resin and batches, totals, cautions, notices, and what
/// was assumed.
std::string plan_text(const PlanDocument& document, units::System system);

/// A mixing card for the bench: readable at arm's length, at most 24 lines of 80 columns. Pours
/// with running totals, use within (and "before 14:32 if mixed now" when `now_clock` is given as
/// minutes after midnight of the shop's wall clock), the next coat in file order, cautions.
struct CardOptions {
  std::optional<int> batch;  ///< one batch only; else all of the coat that fit, pointing on
  std::optional<int> now_clock;
};
base::Result<std::string> card_text(const PlanDocument& document, std::string_view coat,
                                    const CardOptions& options, units::System system);

/// What differs between two plans of one job, for `jobs diff`.
std::string plan_diff_text(const PlanDocument& was, const PlanDocument& now, units::System system);

}  // namespace wetout::report
