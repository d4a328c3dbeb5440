// Which step somebody means: "bottom lam", "deck-lam/trim", "weigh".
#pragma once

#include <string>
#include <string_view>

#include "record_job.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/laminate/plan.hpp"
#include "wetout/schedule/step_word.hpp"

namespace wetout::work {

/// Coats and words are matched as base::matches does. Coats are those of the job's plan; of a job
/// without one, any name is a coat. Before the coat the job may stand. Problems: "coat.unknown",
/// "coat.ambiguous", "step.unknown", "step.ambiguous".
base::Result<schedule::StepName> step_meant(const JobOfRecord& job, std::string_view typed);

/// The coat of a step in the job's plan; null without a plan, and for a step of the whole board.
const laminate::CoatNeed* coat_of(const JobOfRecord& job, const schedule::StepName& step);

}  // namespace wetout::work
