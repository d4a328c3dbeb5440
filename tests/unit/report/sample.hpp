// Documents to print and to read back: a 6 ft 4 in board with six coats, patches, five boxes and
// a pigment. Numbers are of the right size; balances hold; nothing here is a model's answer.
#pragma once

#include "wetout/report/check_document.hpp"
#include "wetout/report/cloth_document.hpp"
#include "wetout/report/jobs_document.hpp"
#include "wetout/report/log_document.hpp"
#include "wetout/report/mix_document.hpp"
#include "wetout/report/new_document.hpp"
#include "wetout/report/plan_document.hpp"

namespace wetout::report::sample {

PlanDocument plan();
/// The second revision: warmer, one coat more, one fewer, another loss.
PlanDocument changed_plan();
/// Everything that may be unknown is unknown.
PlanDocument bare_plan();
/// `count` coats like those of plan(), for speed.
PlanDocument long_plan(std::size_t count);

MixDocument free_mix();
base::Problems problems();
CheckDocument check();
JobsDocument jobs();
LogDocument log();
NewDocument fresh();
/// Two boards: one roll, proved, and a remnant of another; a joined ply.
ClothDocument cloth();

}  // namespace wetout::report::sample
