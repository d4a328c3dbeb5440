// What would keep a coat to one pour, where the join of two would show.
#pragma once

#include <set>
#include <string>

#include "cup_rules.hpp"
#include "wetout/base/notice.hpp"
#include "wetout/laminate/make_plan.hpp"

namespace wetout::laminate {

/// Each change tried by itself against the rules, in this order: a tray emptied at once, a slower
/// hardener of the shop, cooler resin, two people. `whole` is the coat in one batch, and `refused`
/// why that fails. Notices for coat `coat`; `assumed` gets the defaults the figures hang on.
base::Notices ways_to_one_pour(const PlanInput& input, const std::string& coat,
                               const Defaults& settings, const CupRules& rules, const Cupful& whole,
                               const Verdict& refused, std::set<std::string>& assumed);

}  // namespace wetout::laminate
