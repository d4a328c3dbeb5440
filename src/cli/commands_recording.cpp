#include "commands.hpp"

namespace wetout::cli {
namespace {

using enum ArgumentKind;

Argument token() {
  return {.kind = option,
          .name = "--token",
          .value = "TEXT",
          .help = "names this call: the same token again records nothing twice"};
}

Argument mass(std::string_view name, std::string_view help) {
  return {.kind = option, .name = name, .value = "M", .help = help, .reads = Reads::mass};
}

Argument amount(std::string_view name, std::string_view help) {
  return {.kind = option, .name = name, .value = "M", .help = help, .reads = Reads::amount};
}

Argument past(std::string_view name, std::string_view help) {
  return {.kind = option, .name = name, .value = "TIME", .help = help, .reads = Reads::past_time};
}

Command record_undo() {
  return {.name = "undo",
          .summary = "take one event back",
          .text = {"Nothing is deleted: the log keeps the event and that it was taken back."},
          .arguments = {{.kind = positional,
                         .name = "EVENT",
                         .help = "its number, as record JOB lists it",
                         .reads = Reads::count,
                         .required = true},
                        {.kind = option, .name = "--note", .value = "TEXT", .help = "why"},
                        token()},
          .examples = {{"wetout record undo 12", "event 12 was a slip"}},
          .exits = {{1, "there is no such event, or it cannot be taken back"}}};
}

Command record_import() {
  return {
      .name = "import",
      .summary = "enter boards of the past, all of a file",
      .text = {"FILE lists boards with the days and coats, what was mixed, cut and used: TOML, or "
               "a table (.csv) with one fact in a line. All of it is entered or nothing; what was "
               "entered before is not entered again."},
      .arguments = {{.kind = positional,
                     .name = "FILE",
                     .help = "past boards",
                     .completes = Completes::file,
                     .required = true}},
      .examples = {{"wetout record import past_boards.toml --dry-run",
                    "show what would be entered"},
                   {"wetout record import past_boards.toml", "enter it"}},
      .exits = {{1, "the file is not found, or something in it is bad"}}};
}

const std::vector<std::string_view> facts = {
    "--resin", "--left", "--spilled",  "--cloth", "--used", "--remnant",  "--lot",   "--start",
    "--at",    "--air",  "--humidity", "--done",  "--note", "--observed", "--token", "--new"};

std::vector<std::string_view> facts_and(std::string_view other) {
  std::vector<std::string_view> all = {other};
  all.insert(all.end(), facts.begin(), facts.end());
  return all;
}

Command record() {
  return {
      .name = "record",
      .summary = "keep what was done: mixed, left over, started, seen, done",
      .text =
          {"Each option is a fact of its own, kept in the log under a number; repeated records "
           "add up. What is mixed is compared with the plan. JOB alone lists what was recorded.",
           "Where stock is kept, what was mixed, cut and used is taken from it in the same call, "
           "and the work is booked when a step is done.",
           "STEP is a coat, or a coat and what was done to it (bottom-lam/trim), or a step of "
           "the whole board (weigh). A time of day alone is the latest past one."},
      .arguments = {{.kind = positional,
                     .name = "JOB",
                     .help = "job of the log",
                     .completes = Completes::job,
                     .required = true},
                    {.kind = positional,
                     .name = "STEP",
                     .help = "coat of its last plan, COAT/STEP, or a step of the board",
                     .completes = Completes::step},
                    mass("--mixed", "resin mixed in all, e.g. 245g; split at the planned ratio"),
                    mass("--part-a", "resin as weighed, without the hardener"),
                    mass("--part-b", "hardener or catalyst as weighed"),
                    {.kind = option,
                     .name = "--resin",
                     .value = "R",
                     .help = "which resin was mixed, where no plan tells",
                     .completes = Completes::resin},
                    amount("--left", "left over in the cup; 0g when it was scraped clean"),
                    amount("--spilled", "lost otherwise"),
                    {.kind = option,
                     .name = "--cloth",
                     .value = "ID=LEN",
                     .help = "length cut off the roll, e.g. e4=1.9m",
                     .repeatable = true},
                    {.kind = option,
                     .name = "--used",
                     .value = "ID=N",
                     .help = "anything else that was used up, e.g. side-box=2 or foam-white=12g",
                     .repeatable = true},
                    {.kind = option,
                     .name = "--remnant",
                     .value = "ID=LENxWID",
                     .help = "a piece of what was cut is kept as a lot of its own, e.g. "
                             "e4=60cmx40cm",
                     .repeatable = true},
                    {.kind = option,
                     .name = "--lot",
                     .value = "ID=LABEL",
                     .help = "take it from this lot, not from the oldest, e.g. kelp-a=2026-05-04",
                     .repeatable = true},
                    past("--start", "when the step began, e.g. 18:30 or \"2026-06-14 18:30\""),
                    past("--at", "when the rest happened; else now"),
                    {.kind = option,
                     .name = "--air",
                     .value = "T",
                     .help = "air where the work was done, e.g. 24C or 75F",
                     .reads = Reads::temperature},
                    {.kind = option,
                     .name = "--humidity",
                     .value = "P",
                     .help = "of that air, e.g. 62%",
                     .reads = Reads::percent},
                    {.kind = option,
                     .name = "--observed",
                     .value = "MILESTONE=TIME",
                     .help = "when the film had come so far, e.g. gel=18:30 or tack-free=22:10",
                     .repeatable = true},
                    {.kind = flag, .name = "--done", .help = "the step is finished"},
                    {.kind = option, .name = "--note", .value = "TEXT", .help = "anything else"},
                    token(),
                    {.kind = flag,
                     .name = "--new",
                     .help = "begin the job JOB without a plan when the log does not know it"}},
      .forms = {{.needs = {"JOB"}},
                {.needs = {"JOB", "STEP"}, .may = facts_and("--mixed")},
                {.needs = {"JOB", "STEP", "--part-a", "--part-b"}, .may = facts}},
      .subcommands = {record_undo(), record_import()},
      .examples = {{"wetout record sandpiper bottom-lam --mixed 245g --start 18:30",
                    "mixed for a coat, begun at half past six"},
                   {"wetout record sandpiper bottom-lam --left 12g --done",
                    "what was left over, and the coat is finished"},
                   {"wetout record sandpiper deck-lam --cloth e6=2.1m --lot e6=2026-05-04",
                    "cut from that roll"},
                   {"wetout record sandpiper bottom-lam --observed gel=19:05", "the gel was seen"},
                   {"wetout record sandpiper bottom-lam/trim --done", "its laps are trimmed"},
                   {"wetout record sandpiper", "list what was recorded"}},
      .exits = {{1,
                 "the job, coat or step is not found or not the only one so named, or the record "
                 "does not agree with what was recorded before"}},
  };
}

}  // namespace

std::vector<Command> recording_commands() { return {record()}; }

}  // namespace wetout::cli
