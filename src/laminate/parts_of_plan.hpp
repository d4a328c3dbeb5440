// The pieces make_plan joins once needs and batches are known.
#pragma once

#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/laminate/make_plan.hpp"
#include "wetout/laminate/plan.hpp"

namespace wetout::laminate {

/// Sums, materials to take off the shelf, cost of what has a price, finished weight.
Totals totals_of(const PlanInput& input, const std::vector<CoatNeed>& coats,
                 const std::vector<PlyNeed>& plies,
                 const std::optional<units::Milligrams>& core_weight, base::Notices& notices);

/// The usual cautions, at the step they concern.
std::vector<Caution> cautions_of(const PlanInput& input);

/// Air, humidity and family: what is true of a coat before any number.
void notices_of(const PlanInput& input, base::Notices& notices);

/// Colder than the models were checked for.
void edge_notice(units::Temperature air, units::Temperature resin_temp, base::Notices& notices);
/// Colder or warmer than the data sheet allows; subject: the resin.
void sheet_range_notices(const resin::Product& product, units::Temperature air,
                         units::Temperature resin_temp, base::Notices& notices);

}  // namespace wetout::laminate
