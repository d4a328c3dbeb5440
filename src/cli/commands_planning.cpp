#include "commands.hpp"

namespace wetout::cli {
namespace {

using enum ArgumentKind;

Argument air() {
  return {.kind = option,
          .name = "--air",
          .value = "T",
          .help = "air where the work is done, e.g. 24C or 75F; else that of the shop file",
          .reads = Reads::temperature};
}

Argument resin_temperature() {
  return {.kind = option,
          .name = "--resin-temp",
          .value = "T",
          .help = "resin and hardener when they are mixed; else as the air",
          .reads = Reads::temperature};
}

Argument cup() {
  return {.kind = option,
          .name = "--cup",
          .value = "C",
          .help = "a cup of the shop file; else the shop's usual one",
          .completes = Completes::cup};
}

Command new_files() {
  return {
      .name = "new",
      .summary = "write a shop file and a job file to start from",
      .text = {"Both files are commented and work as they are. Nothing that is already there is "
               "overwritten."},
      .arguments = {{.kind = positional,
                     .name = "DIR",
                     .help = "folder to write to, made when it is missing; else the current one",
                     .completes = Completes::folder}},
      .examples = {{"wetout new boards", "start in the folder boards"}},
      .exits = {{1, "a file of that name is there already, or the folder cannot be used"}},
  };
}

Command check() {
  return {
      .name = "check",
      .summary = "say what is wrong with shop and job files",
      .text = {"Every problem is shown with its place, what was found and what is expected. "
               "Nothing is saved."},
      .arguments = {{.kind = positional,
                     .name = "FILE",
                     .help = "shop or job file (.toml)",
                     .completes = Completes::toml,
                     .required = true,
                     .repeatable = true}},
      .examples = {{"wetout check shop.toml sandpiper.toml", "look at a shop and a job file"}},
      .exits = {{1, "there is something wrong with a file"}},
  };
}

Command plan() {
  return {
      .name = "plan",
      .summary = "work out cloth, resin and batches of a board",
      .text = {"Prints for each coat the cloth, the resin, the batches as the scale will show "
               "them and what to beware of, then totals and the finished weight.",
               "The plan is saved in the job log as the job's next revision, unless nothing has "
               "changed since the last one."},
      .arguments = {{.kind = positional,
                     .name = "FILE",
                     .help = "job file (.toml); each makes a plan of its own",
                     .completes = Completes::toml,
                     .required = true,
                     .repeatable = true},
                    {.kind = option,
                     .name = "--as",
                     .value = "ID",
                     .help = "the job's name in the log; else the board's. With one FILE only",
                     .completes = Completes::job},
                    air(),
                    resin_temperature(),
                    cup(),
                    {.kind = flag,
                     .name = "--no-learned",
                     .help = "leave aside what was learned from records"},
                    {.kind = option,
                     .name = "--svg",
                     .value = "FILE",
                     .help = "draw deck and bottom there, to scale with plies and laps, e.g. "
                             "board.svg; a drawing of a plan that is there is replaced. With one "
                             "FILE only",
                     .completes = Completes::file}},
      .examples = {{"wetout plan sandpiper.toml", "plan a board and save the plan"},
                   {"wetout plan sandpiper.toml --air 18C --dry-run",
                    "see what a cooler room changes, without saving"}},
      .exits = {{1, "a file is not found or bad, or the plan cannot be met"}},
  };
}

Command mix() {
  return {
      .name = "mix",
      .summary = "print the mixing card of a coat, or of any mass of resin",
      .text = {"The card can be read at arm's length: what to pour, the running totals of the "
               "scale, how long the batch can be used, the next coat, and what to beware of. It is "
               "made from the last plan of the job.",
               "With --mass any other amount is mixed at the same ratio: for a coat that came out "
               "short, or with --resin for a resin of the shop without a job."},
      .arguments = {{.kind = positional,
                     .name = "JOB",
                     .help = "job of the log",
                     .completes = Completes::job},
                    {.kind = positional,
                     .name = "COAT",
                     .help = "coat of its last plan",
                     .completes = Completes::coat},
                    {.kind = option,
                     .name = "--resin",
                     .value = "R",
                     .help = "resin of the shop file, without a job",
                     .completes = Completes::resin},
                    {.kind = option,
                     .name = "--batch",
                     .value = "N",
                     .help = "this batch only, counted from 1; else all of them",
                     .reads = Reads::count},
                    {.kind = option,
                     .name = "--mass",
                     .value = "M",
                     .help = "mix this much in all, e.g. 245g",
                     .reads = Reads::mass},
                    air(),
                    resin_temperature(),
                    cup()},
      .forms = {{.needs = {"JOB", "COAT"}, .may = {"--batch", "--air", "--resin-temp", "--cup"}},
                {.needs = {"JOB", "COAT", "--mass"}, .may = {"--air", "--resin-temp", "--cup"}},
                {.needs = {"--resin", "--mass"}, .may = {"--air", "--resin-temp", "--cup"}}},
      .examples = {{"wetout mix sandpiper bottom-lam", "the card of a coat"},
                   {"wetout mix sandpiper \"deck lam\" --batch 2", "its second batch only"},
                   {"wetout mix --resin slow --mass 60g", "60 g of a resin at its ratio"}},
      .exits = {{1,
                 "the job, coat, batch, cup or resin is not found or not the only one so named"}},
  };
}

Command cloth() {
  return {
      .name = "cloth",
      .summary = "say how the cloth of boards is cut off the rolls",
      .text =
          {"The pieces of all plies, laps and what is trimmed included, laid on the roll so that "
           "the least of it is taken, warp along the board; what to mark where, and what is "
           "left over. For up to eight pieces of a cloth none is shorter, for more the text "
           "says how far it may be from the shortest. Remnants are used first, those in stock and "
           "those named here.",
           "A ply wider than its roll is cut of a wider cloth of the same weight in the shop "
           "file, or joined of strips; nothing is written or booked but the drawing."},
      .arguments = {{.kind = positional,
                     .name = "JOB",
                     .help = "job of the log, or a job file; several are cut together",
                     .completes = Completes::job,
                     .required = true,
                     .repeatable = true},
                    {.kind = option,
                     .name = "--remnant",
                     .value = "ID=LxW",
                     .help = "a piece that is there, along the warp by across, e.g. e4=60cmx40cm",
                     .repeatable = true},
                    {.kind = option,
                     .name = "--svg",
                     .value = "FILE",
                     .help =
                         "also a drawing to scale. An earlier one is replaced, no other file is",
                     .completes = Completes::file}},
      .examples = {{"wetout cloth sandpiper", "where to mark and cut"},
                   {"wetout cloth sandpiper heron --remnant e4=1.2mx68cm --svg cut.svg",
                    "two boards, a remnant first"}},
      .exits = {{1,
                 "a job is not found, a remnant is of no cloth that is cut, or the drawing cannot "
                 "be written"}},
  };
}

Command full_size() {
  return {
      .name = "template",
      .summary = "draw a board at full size, to be printed and taped together",
      .text = {"A PDF of sheets that are taped together, with a first page that says how, and with "
               "squares to measure before anything is cut. It is one half of the board, to be "
               "turned over at the centre line, unless --whole asks for both.",
               "Drawn are the outline with the half width at every 6 in (150 mm), and with it the "
               "lines where laps end (lap-line), or the edges of patches (patches).",
               "A file that ends in .svg or .dxf is all of the outline in millimetres, for drawing "
               "programs and machines; a job file takes it back as its outline."},
      .arguments = {{.kind = positional,
                     .name = "JOB",
                     .help = "job of the log, or a job file",
                     .completes = Completes::job,
                     .required = true},
                    {.kind = positional,
                     .name = "DRAWING",
                     .help = "outline, lap-line or patches",
                     .reads = Reads::choice,
                     .completes = Completes::choice,
                     .choices = {"outline", "lap-line", "patches"},
                     .required = true},
                    {.kind = option,
                     .name = "--paper",
                     .value = "SIZE",
                     .help = "sheets, or one long piece off a roll; else a4",
                     .reads = Reads::choice,
                     .completes = Completes::choice,
                     .choices = {"a4", "letter", "roll"}},
                    {.kind = flag, .name = "--whole", .help = "both halves"},
                    {.kind = option,
                     .name = "--output",
                     .value = "FILE",
                     .help = "where to; else JOB-DRAWING.pdf. An earlier one is replaced, no other "
                             "file is",
                     .completes = Completes::file}},
      .examples = {{"wetout template sandpiper outline", "half of the outline on A4"},
                   {"wetout template sandpiper lap-line --paper letter --output laps.pdf",
                    "where the laps end, on letter paper"},
                   {"wetout template sandpiper outline --whole --paper roll",
                    "all of it in one piece"},
                   {"wetout template sandpiper outline --output sandpiper.dxf",
                    "for another program"}},
      .exits = {{1,
                 "the job is not found, has nothing of the kind, or the file cannot be written"}},
  };
}

}  // namespace

std::vector<Command> planning_commands() {
  return {new_files(), check(), plan(), mix(), cloth(), full_size()};
}

}  // namespace wetout::cli
