#include "commands.hpp"

namespace wetout::cli {

using enum ArgumentKind;

std::vector<Command> weather_commands() {
  return {{
      .name = "weather",
      .summary = "show the coming days and when a film may be started",
      .text = {"Day by day the air of the shop's room, how far a board is above the dew point, and "
               "whether a film started then is good, good with a notice, or refused, and by which "
               "limit. A film is open from its start until it is tack-free.",
               "A typical-year file (EPW) is placed on the dates that are asked for: a climate, "
               "not a forecast. Nothing is downloaded."},
      .arguments = {{.kind = positional,
                     .name = "FILE",
                     .help = "weather (CSV, EPW, JSON); else that of the shop file",
                     .completes = Completes::file},
                    {.kind = option,
                     .name = "--from",
                     .value = "TIME",
                     .help = "begin then, e.g. \"2026-06-14 18:30\"; else now",
                     .reads = Reads::time},
                    {.kind = option,
                     .name = "--until",
                     .value = "TIME",
                     .help = "end then; else where the weather ends, or after 7 days of a year",
                     .reads = Reads::time},
                    {.kind = option,
                     .name = "--resin",
                     .value = "R",
                     .help = "of the film, a resin of the shop file; else its first",
                     .completes = Completes::resin},
                    {.kind = option,
                     .name = "--guard",
                     .value = "GUARD",
                     .help = "how far the forecast is doubted; else normal",
                     .reads = Reads::choice,
                     .completes = Completes::choice,
                     .choices = {"none", "normal", "wide"}}},
      .examples = {{"wetout weather", "the shop's forecast, from now on"},
                   {"wetout weather forecast.csv --resin quick", "another resin"},
                   {"wetout weather chicago.epw --from \"2026-07-04 00:00\" --guard none",
                    "a week of a typical year"}},
      .exits = {{1,
                 "the weather cannot be read or does not reach the time, the resin is not found or "
                 "not the only one so named, or nothing can be said of it"}},
  }};
}

}  // namespace wetout::cli
