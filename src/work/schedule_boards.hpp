// The boards that are to be scheduled: their plans, out of the log or made from files now.
#pragma once

#include <string>
#include <vector>

#include "job_and_shop.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/schedule/steps.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

struct BoardToSchedule {
  std::string job;
  int revision = 0;  ///< of the plan
  JobAndShop files;
  MixingChoices choices;
  schedule::BoardWork work;
};

/// What a board's steps are made from.
schedule::BoardWork board_work(std::string job, const JobAndShop& files, laminate::Plan plan);

/// In the order named. A file is planned, and its plan saved unless it is a dry run; a job of the
/// log keeps the shop file of its last plan, with a word through the sink when it has changed
/// since. Problems: those of plan(); "job.unknown", "job.ambiguous", "schedule.job_twice",
/// "schedule.shops_differ".
base::Result<std::vector<BoardToSchedule>> boards_to_schedule(const Workshop& workshop,
                                                              const std::vector<std::string>& jobs);

}  // namespace wetout::work
