// The description of every command. Which of them exist in a build is the registry's to say.
#pragma once

#include "describe.hpp"

namespace wetout::cli {

/// All that is described, offered or not.
std::vector<Command> described_commands();

/// The parts of it: commands about files and plans, about one resin, weather, what was done,
/// the shelf and its ledger, the log, the program itself.
std::vector<Command> planning_commands();
std::vector<Command> resin_commands();
std::vector<Command> weather_commands();
std::vector<Command> schedule_commands();
std::vector<Command> recording_commands();
std::vector<Command> stock_commands();
std::vector<Command> log_commands();
std::vector<Command> program_commands();

/// Accepted before and after every command.
std::vector<Argument> global_arguments();

/// The meaning of the exit codes that every command shares.
std::vector<ExitMeaning> shared_exits();

/// What the environment says, for the manual.
std::vector<Example> environment_variables();

/// The whole program as described, with the commands for which `offered` is true.
Program described_program(bool (*offered)(std::string_view command));

}  // namespace wetout::cli
