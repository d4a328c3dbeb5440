#include "commands.hpp"

namespace wetout::cli {
namespace {

using enum ArgumentKind;

Command schedule() {
  return {
      .name = "schedule",
      .summary = "say when to start each step, given weather, room and free hours",
      .text =
          {"The best order and times of all that is to be done to one or several boards: coats, "
           "and everything before, between and after them. Attended work lies in the hours of "
           "the shop file, films where the weather of the shop's room lets them be, each coat "
           "inside the window of the one below, or that one washed and scuffed first. What was "
           "recorded as done is a fact; the rest is planned from now.",
           "Of one board the best is proved; of several a gap is stated. Where nothing fits, "
           "the smallest single change that helps is looked for.",
           "The schedule is kept in the log unless it is as the last one. An interrupt ends "
           "the search with the best so far."},
      .arguments = {{.kind = positional,
                     .name = "JOB",
                     .help = "a job of the log, or a job file (it is planned first)",
                     .completes = Completes::job,
                     .required = true,
                     .repeatable = true},
                    {.kind = option,
                     .name = "--weather",
                     .value = "FILE",
                     .help = "forecast or year (CSV, EPW, JSON); else that of the shop file",
                     .completes = Completes::file},
                    {.kind = option,
                     .name = "--from",
                     .value = "TIME",
                     .help = "nothing starts before, e.g. \"2026-06-14 18:30\" or 18:30; else now"},
                    {.kind = option,
                     .name = "--until",
                     .value = "TIME",
                     .help = "all is done by then; else 14 days on, or where the weather ends"},
                    {.kind = option,
                     .name = "--fix",
                     .value = "STEP=TIME",
                     .help = "start a step then, whatever hours and weather say",
                     .repeatable = true},
                    {.kind = option,
                     .name = "--hours",
                     .value = "SPAN",
                     .help =
                         "work then instead: \"18:00-22:00\", \"sat 08:00-12:00\", \"2026-06-15 "
                         "18:00-23:00\"",
                     .repeatable = true},
                    {.kind = option,
                     .name = "--guard",
                     .value = "GUARD",
                     .help = "how far the forecast is doubted; else normal",
                     .reads = Reads::choice,
                     .completes = Completes::choice,
                     .choices = {"none", "normal", "wide"}},
                    {.kind = option,
                     .name = "--prefer",
                     .value = "WHAT",
                     .help = "what counts first; else finish",
                     .reads = Reads::choice,
                     .completes = Completes::choice,
                     .choices = {"finish", "slack", "visits"}},
                    {.kind = option,
                     .name = "--alternatives",
                     .value = "N",
                     .help = "show up to so many other good schedules",
                     .reads = Reads::count},
                    {.kind = option,
                     .name = "--time-limit",
                     .value = "D",
                     .help = "look for so long at most; else 10 s",
                     .reads = Reads::duration},
                    {.kind = option,
                     .name = "--ics",
                     .value = "FILE",
                     .help =
                         "write it there as a calendar too, e.g. boards.ics; a calendar that is "
                         "there is replaced",
                     .completes = Completes::file}},
      .examples = {{"wetout schedule board.toml", "plan a board and say when to do what"},
                   {"wetout schedule sandpiper pico", "two boards that share people and stands"},
                   {"wetout schedule sandpiper --fix deck-lam=\"2026-06-14 18:30\"",
                    "the deck is laminated then"},
                   {"wetout schedule sandpiper --ics sandpiper.ics",
                    "for the calendar of a phone; import it again after every new schedule"},
                   {"wetout schedule sandpiper --hours \"sat 08:00-18:00\"",
                    "what if all of Saturday were free?"}},
      .exits = {{1, "nothing fits, or a job, file, step or time is not found or bad"},
                {130, "interrupted before anything was found"}},
  };
}

Command sheet() {
  return {
      .name = "sheet",
      .summary = "write the job sheet: one page to print or to open on a phone",
      .text = {"One HTML page that needs no network: what to lay out and cut, then every step with "
               "its window, the air then, what to pour as the scale shows it, until when a cup may "
               "be used, what to beware of, and room to write. It has clocks for the cups, and "
               "what is filled in can be downloaded for \"wetout record import\".",
               "It is made from the last plan and the last schedule of the job. Batches are those "
               "for the air that the room is expected to have at each coat. Without a schedule "
               "the page has no times and says so."},
      .arguments = {{.kind = positional,
                     .name = "JOB",
                     .help = "job of the log, or a job file",
                     .completes = Completes::job,
                     .required = true},
                    {.kind = option,
                     .name = "--output",
                     .value = "FILE",
                     .help = "where to; else JOB-sheet.html. An earlier one is replaced, no other "
                             "file is",
                     .completes = Completes::file}},
      .examples = {{"wetout sheet sandpiper", "write sandpiper-sheet.html"},
                   {"wetout sheet sandpiper --output monday.html", "the same under another name"}},
      .exits = {{1, "the job is not found, or the file cannot be written"}},
  };
}

}  // namespace

std::vector<Command> schedule_commands() { return {schedule(), sheet()}; }

}  // namespace wetout::cli
