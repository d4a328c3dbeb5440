// Names for a shell to offer. Whatever is wrong with log or files: nothing is offered.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "wetout/work/workshop.hpp"

namespace wetout::work {

std::vector<std::string> job_names(const Workshop& workshop);
/// Of the job's last plan.
std::vector<std::string> coat_names(const Workshop& workshop, std::string_view job);
/// Steps that may be recorded of a job: the coats of its last plan, the other steps of its last
/// schedule, and those of any board.
std::vector<std::string> step_names(const Workshop& workshop, std::string_view job);
/// Of the shop file that a job here would use.
std::vector<std::string> cup_names(const Workshop& workshop);
std::vector<std::string> resin_names(const Workshop& workshop);
/// Materials and cloths.
std::vector<std::string> material_names(const Workshop& workshop);

}  // namespace wetout::work
