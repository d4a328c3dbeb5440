#include "commands.hpp"

#include <iterator>

namespace wetout::cli {

std::vector<Command> described_commands() {
  std::vector<Command> all = planning_commands();
  for (auto* part : {&resin_commands, &weather_commands, &schedule_commands, &recording_commands,
                     &stock_commands, &log_commands, &program_commands}) {
    std::vector<Command> more = part();
    std::move(more.begin(), more.end(), std::back_inserter(all));
  }
  return all;
}

std::vector<Argument> global_arguments() {
  using enum ArgumentKind;
  return {
      {.kind = option,
       .name = "--shop",
       .value = "FILE",
       .help = "shop file; else WETOUT_SHOP, or shop.toml beside the job file or in a folder above "
               "it, or wetout/shop.toml in the configuration folder",
       .completes = Completes::toml},
      {.kind = option,
       .name = "--log",
       .value = "FILE",
       .help = "job log; else WETOUT_LOG, or wetout/log.db in the data folder",
       .completes = Completes::file},
      {.kind = flag, .name = "--json", .help = "print the result as JSON, one document a line"},
      {.kind = option,
       .name = "--units",
       .value = "SYSTEM",
       .help = "units to print in; else those of the shop file",
       .reads = Reads::choice,
       .completes = Completes::choice,
       .choices = {"us", "metric"}},
      {.kind = option,
       .name = "--now",
       .value = "TIME",
       .help = "take this for the present time, e.g. \"2026-06-14 18:30\"",
       .reads = Reads::time},
      {.kind = flag, .name = "--dry-run", .help = "say what would be done, and change nothing"},
      {.kind = option,
       .name = "--color",
       .value = "WHEN",
       .help = "colour in messages; auto: on a terminal, unless NO_COLOR is set",
       .reads = Reads::choice,
       .completes = Completes::choice,
       .choices = {"auto", "always", "never"}},
      {.kind = flag, .name = "--quiet", .letter = "-q", .help = "no messages but errors"},
      {.kind = flag, .name = "--verbose", .letter = "-v", .help = "more messages"},
      {.kind = flag, .name = "--help", .letter = "-h", .help = "explain the command"},
      {.kind = flag, .name = "--version", .help = "print the version"},
  };
}

std::vector<ExitMeaning> shared_exits() {
  return {
      {0, "done"},
      {1, "a file or name is not found, ambiguous or bad, or the plan cannot be met"},
      {2, "the command, an option or its value is bad"},
      {3,
       "the log is locked, read-only, newer, not wetout's or damaged, the disk is full, or there "
       "is a bug in wetout"},
      {130, "interrupted"},
  };
}

std::vector<Example> environment_variables() {
  return {
      {"WETOUT_SHOP", "shop file when --shop is not given"},
      {"WETOUT_LOG", "job log when --log is not given"},
      {"XDG_CONFIG_HOME", "configuration folder; $HOME/.config when not set"},
      {"XDG_DATA_HOME", "data folder; $HOME/.local/share when not set"},
      {"XDG_CACHE_HOME", "cache folder; $HOME/.cache when not set"},
      {"NO_COLOR", "no colour when set and not empty"},
  };
}

Program described_program(bool (*offered)(std::string_view command)) {
  Program program = {
      .name = "wetout",
      .version = WETOUT_VERSION,
      .summary = "plans the glassing of foam-cored boards",
      .text = {"From a file that describes a board and its coats, and one that describes the "
               "shop, wetout works out cloth, resin, batches as the scale will show them, and the "
               "finished weight, and keeps every plan in a job log.",
               "Quantities carry their unit, glued or in quotes: 245g, -5C, \"6 ft 4 in\". Case, "
               "spaces and hyphens in the name of a job or coat do not matter, and the beginning "
               "of a name is enough when no other begins so."},
      .globals = global_arguments(),
  };
  for (Command& command : described_commands()) {
    if (offered(command.name)) program.commands.push_back(std::move(command));
  }
  return program;
}

}  // namespace wetout::cli
