#include "commands.hpp"

namespace wetout::cli {
namespace {

using enum ArgumentKind;

Argument resin() {
  return {.kind = positional,
          .name = "RESIN",
          .help = "resin of the shop file",
          .completes = Completes::resin,
          .required = true};
}

Command potlife() {
  return {
      .name = "potlife",
      .summary = "say how long a batch of resin lasts",
      .text = {"How long the cup can be used and when it gels, how hot it gets if it is left "
               "standing, and how long the resin can be worked once it is spread. From cure "
               "chemistry fitted to the data sheet in the shop file; what nobody gave is listed.",
               "Of a polyester only the gel of a film is known, by its catalyst."},
      .arguments =
          {resin(),
           {.kind = option,
            .name = "--mass",
            .value = "M",
            .help = "of the batch, e.g. 300g; else that of the sheet's pot life, else 200 g",
            .reads = Reads::mass},
           {.kind = option,
            .name = "--air",
            .value = "T",
            .help = "air around the cup, e.g. 24C or 75F; else that of the shop file",
            .reads = Reads::temperature},
           {.kind = option,
            .name = "--resin-temp",
            .value = "T",
            .help = "resin and hardener when they are mixed; else as the air",
            .reads = Reads::temperature},
           {.kind = option,
            .name = "--cup",
            .value = "C",
            .help = "a cup of the shop file; else the shop's usual one, or the smallest that holds "
                    "the batch",
            .completes = Completes::cup},
           {.kind = option,
            .name = "--pour-after",
            .value = "D",
            .help = "what the film still has when it is poured out and spread then, e.g. 10min",
            .reads = Reads::duration},
           {.kind = option,
            .name = "--workable",
            .value = "D",
            .help = "also the largest batch that can be worked so long, e.g. 25min",
            .reads = Reads::duration},
           {.kind = flag, .name = "--table", .help = "also a table of masses by temperatures"}},
      .examples = {{"wetout potlife slow --mass 300g --air 26C", "a batch on a warm day"},
                   {"wetout potlife slow --workable 25min", "how much to mix at once"},
                   {"wetout potlife quick --table --cup tray", "a table for the wall"}},
      .exits = {{1,
                 "the resin or cup is not found or not the only one so named, or nothing can be "
                 "said of it"}},
  };
}

Command cure() {
  return {
      .name = "cure",
      .summary = "say when a film can be trimmed, recoated, sanded",
      .text = {"A plot of how far the film has cured, when each milestone is reached, and what "
               "would reach one that is not. From cure chemistry fitted to the data sheet in the "
               "shop file; how well it fits is shown, and what nobody gave is listed.",
               "Of a polyester the milestones only."},
      .arguments = {resin(),
                    {.kind = option,
                     .name = "--air",
                     .value = "T",
                     .help = "air around the board all the while, e.g. 24C or 75F",
                     .reads = Reads::temperature},
                    {.kind = option,
                     .name = "--weather",
                     .value = "FILE",
                     .help = "the shop's room in this weather (CSV, EPW, JSON), in place of --air",
                     .completes = Completes::file},
                    {.kind = option,
                     .name = "--start",
                     .value = "TIME",
                     .help =
                         "when the film is spread, e.g. \"2026-06-14 18:30\": then clock times are "
                         "shown. With --weather else now",
                     .reads = Reads::time},
                    {.kind = option,
                     .name = "--warm-box",
                     .value = "T",
                     .help = "put into a warm box of this temperature, e.g. 40C",
                     .reads = Reads::temperature},
                    {.kind = option,
                     .name = "--after",
                     .value = "D",
                     .help = "so long after the start, e.g. 24h; not before it can be handled",
                     .reads = Reads::duration}},
      .forms = {{.needs = {"RESIN", "--air"}, .may = {"--start"}},
                {.needs = {"RESIN", "--weather"}, .may = {"--start"}},
                {.needs = {"RESIN", "--air", "--warm-box", "--after"}, .may = {"--start"}},
                {.needs = {"RESIN", "--weather", "--warm-box", "--after"}, .may = {"--start"}}},
      .examples = {{"wetout cure slow --air 22C", "times after the start"},
                   {"wetout cure slow --air 18C --start \"2026-06-14 18:30\"",
                    "the same by the clock"},
                   {"wetout cure slow --weather forecast.csv --start \"2026-06-14 18:30\"",
                    "in the shop's room, by a forecast"},
                   {"wetout cure slow --air 18C --warm-box 45C --after 24h",
                    "with a warm box on the second day"}},
      .exits = {{1,
                 "the resin is not found or not the only one so named, or nothing can be said of "
                 "it"}},
  };
}

}  // namespace

std::vector<Command> resin_commands() { return {potlife(), cure()}; }

}  // namespace wetout::cli
