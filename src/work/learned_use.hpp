// Planning with what was learned.
#pragma once

#include <string>
#include <string_view>

#include "job_and_shop.hpp"
#include "learned.hpp"

namespace wetout::work {

/// From the log of the workshop; of a log that does not exist yet, nothing.
Learned learned_by(const Workshop& workshop);

/// The rates that records speak of, "key value" a line, as plans keep them.
std::string usable(const Learned& learned);

/// Puts them where the shop file says nothing itself, and notes in `both.learned` which.
void use_learned(JobAndShop& both, std::string_view text);

/// The margin of each coat at which a gram more would cost as much as it saves, where the shop file
/// says what running short costs and has prices, and three coats of its kind were weighed:
/// "margin.COAT share" a line. `plan` is of `both`.
std::string margins_for(const Learned& learned, const JobAndShop& both, const laminate::Plan& plan);

/// The plan with what records teach, noted in `both`; with the chance that each mix runs short
/// where they teach something. The one way from files to a new plan.
base::Result<laminate::Plan> plan_as_learned(const Workshop& workshop, JobAndShop& both,
                                             const MixingChoices& choices, const Learned& learned);

/// "uptake.eps 71.9 g/m2, brush 9.26 g"
std::string in_words(std::string_view text);

/// Of each coat but installs: the chance that its mix runs short, as the records have it. `both` is
/// what was planned with.
base::Notices chances_short(const Learned& learned, const JobAndShop& both,
                            const laminate::Plan& plan);

}  // namespace wetout::work
