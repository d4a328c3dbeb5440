#include "commands.hpp"

namespace wetout::cli {
namespace {

using enum ArgumentKind;

Argument token() {
  return {.kind = option,
          .name = "--token",
          .value = "TEXT",
          .help = "names this call: the same token again books nothing twice"};
}

Argument note() {
  return {.kind = option, .name = "--note", .value = "TEXT", .help = "anything worth keeping"};
}

Argument material(std::string_view help) {
  return {.kind = positional,
          .name = "MATERIAL",
          .help = help,
          .completes = Completes::material,
          .required = true};
}

Argument amount(std::string_view help) {
  return {.kind = positional, .name = "AMOUNT", .help = help, .required = true};
}

Argument lot(std::string_view help) {
  return {.kind = option, .name = "--lot", .value = "LABEL", .help = help};
}

Argument day(std::string_view name, std::string_view help) {
  return {.kind = option, .name = name, .value = "DAY", .help = help, .reads = Reads::date};
}

const ExitMeaning cannot_be_booked = {1,
                                      "the material or lot is not found, or this cannot be booked"};

Command stock_list() {
  return {.name = "list",
          .summary = "what is there, what boards need of it, what is short",
          .text = {"What boards need is what the plans of those that are scheduled or begun want "
                   "and was not used for them yet. What is past its last good day is on hand, but "
                   "counts for nothing that is planned."},
          .examples = {{"wetout stock", "what is there, and what is short"}}};
}

Command stock_receive() {
  Argument named = material("material or cloth of the shop file, e.g. resin-a");
  Argument much =
      amount("how much came in all, e.g. 5kg, 1gal, 10yd, 12, \"2 packs\", \"2 x 5kg\"");
  named.required = much.required = false;
  return {
      .name = "receive",
      .summary = "book what was bought",
      .text = {"What comes in by one call is one lot, with its own cost: receive containers one by "
               "one to tell them apart."},
      .arguments = {named,
                    much,
                    {.kind = option,
                     .name = "--cost",
                     .value = "MONEY",
                     .help = "what was paid for it in all, e.g. 48.00USD",
                     .reads = Reads::money},
                    lot("what the lot is called; else the day it came"),
                    {.kind = option,
                     .name = "--maker-batch",
                     .value = "TEXT",
                     .help = "what the maker calls it"},
                    day("--expires", "the last day on which it is good, e.g. 2027-06-30"),
                    day("--on", "the day it came; else today"),
                    note(),
                    {.kind = option,
                     .name = "--kit",
                     .value = "FILE",
                     .help = "several things for one price, shared by what they are worth",
                     .completes = Completes::toml},
                    token()},
      .forms = {{.needs = {"MATERIAL", "AMOUNT", "--cost"},
                 .may = {"--lot", "--maker-batch", "--expires", "--on", "--note", "--token"}},
                {.needs = {"--kit"}, .may = {"--on", "--note", "--token"}}},
      .examples = {{"wetout stock receive resin-a 1gal --cost 48USD", "a gallon came"},
                   {"wetout stock receive e4 \"2 packs\" --cost 130USD --on 2026-05-30",
                    "two rolls as the shop file has them, some days ago"},
                   {"wetout stock receive --kit kit.toml", "several things for one price"}},
      .exits = {{1, "the material or kit is not found or bad, or this cannot be booked"}}};
}

Command stock_count() {
  return {.name = "count",
          .summary = "say what is really there",
          .text = {"The difference is booked: what is missing costs what the oldest lots cost, "
                   "what is more costs nothing."},
          .arguments = {material("material or cloth on the shelf"),
                        amount("all that is there, e.g. 3.2kg; 0g when it is used up"),
                        lot("of this lot alone; else of all lots together"), note(), token()},
          .examples = {{"wetout stock count resin-a 3.2kg", "so much is left in all"},
                       {"wetout stock count leash-plug 7 --lot 2026-05-04", "in one lot"}},
          .exits = {cannot_be_booked}};
}

Command stock_waste() {
  return {
      .name = "waste",
      .summary = "book what was spoilt or thrown away",
      .text = {"What was lost over a board belongs to that board's record."},
      .arguments = {material("material or cloth on the shelf"),
                    amount("how much, e.g. 400g, 3ft, 2"), lot("of this lot; else of the oldest"),
                    day("--on", "the day it happened; else today"), note(), token()},
      .examples = {{"wetout stock waste slow-b 400g --note \"left open\"", "it went off"}},
      .exits = {cannot_be_booked}};
}

Command stock_lots() {
  Argument named = material("only this one, used-up lots too");
  named.required = false;
  return {.name = "lots",
          .summary = "every container and roll: maker's batch, last good day, boards it is in",
          .arguments = {named},
          .examples = {{"wetout stock lots resin-a", "which boards have resin of which lot"}},
          .exits = {{1, "the material is not found"}}};
}

Command stock_reorder() {
  return {.name = "reorder",
          .summary = "what to buy for the boards that are scheduled or begun, and by when",
          .text = {"What runs short, in whole packs of the shop file: the cheapest that hold "
                   "enough; of equally cheap ones those with the least left over, then the "
                   "fewest."},
          .examples = {{"wetout stock reorder", "what to buy, what it costs, by when"}}};
}

Command stock_import() {
  return {.name = "import",
          .summary = "book the purchases of a table (CSV)",
          .text = {"Columns date, material, amount, cost, and where wanted lot, batch, expires, "
                   "note. All rows are booked or none; rows that were booked before are not booked "
                   "again."},
          .arguments = {{.kind = positional,
                         .name = "FILE",
                         .help = "table of purchases",
                         .completes = Completes::file,
                         .required = true}},
          .examples = {{"wetout stock import purchases.csv --dry-run", "show what would be booked"},
                       {"wetout stock import purchases.csv", "book it"}},
          .exits = {{1, "the table is not found, or a row of it is bad"}}};
}

Command stock() {
  return {.name = "stock",
          .summary = "look after the shelf: what is there, what comes in and goes, what to buy",
          .text = {"Materials and cloths are those of the shop file that a board here would use. "
                   "Everything is booked in the log and never changed; wetout ledger undo takes an "
                   "entry back."},
          .subcommands = {stock_list(), stock_receive(), stock_count(), stock_waste(), stock_lots(),
                          stock_reorder(), stock_import()},
          .default_subcommand = "list",
          .examples = {{"wetout stock", "what is there, and what is short"},
                       {"wetout stock receive resin-a 1gal --cost 48USD", "a gallon came"},
                       {"wetout stock reorder", "what to buy, and by when"}},
          .exits = {{1, "the shop file, a material, lot or file is not found or bad"}}};
}

Command ledger_undo() {
  return {.name = "undo",
          .summary = "take one entry back",
          .text = {"Nothing is deleted: another entry moves everything back, on the day of the old "
                   "one."},
          .arguments = {{.kind = positional,
                         .name = "ENTRY",
                         .help = "its number, as stock and ledger show it",
                         .reads = Reads::count,
                         .required = true},
                        {.kind = option, .name = "--note", .value = "TEXT", .help = "why"},
                        token()},
          .examples = {{"wetout ledger undo 12", "entry 12 was a slip"}},
          .exits = {{1, "there is no such entry, or it cannot be taken back"}}};
}

Command ledger() {
  return {.name = "ledger",
          .summary = "what boards used and cost, totals, and exports",
          .text = {"Of a JOB: each material of each coat as planned, as mixed and as taken from "
                   "stock; work; what all of it cost. Without one: months and the latest entries.",
                   "Work that was recorded with its start and end but not booked is worked out "
                   "at the labour of the shop file."},
          .arguments = {{.kind = positional,
                         .name = "JOB",
                         .help = "job of the log",
                         .completes = Completes::job},
                        {.kind = option,
                         .name = "--by",
                         .value = "WHAT",
                         .help = "totals by this",
                         .reads = Reads::choice,
                         .completes = Completes::choice,
                         .choices = {"month", "material", "job"}},
                        {.kind = option,
                         .name = "--export",
                         .value = "FORMAT",
                         .help = "print all entries as a double-entry journal, or as a table",
                         .reads = Reads::choice,
                         .completes = Completes::choice,
                         .choices = {"journal", "csv"}}},
          .forms = {{.needs = {}, .may = {"JOB", "--by"}}, {.needs = {"--export"}, .may = {"JOB"}}},
          .subcommands = {ledger_undo()},
          .examples = {{"wetout ledger sandpiper", "what a board used and cost"},
                       {"wetout ledger --by month", "what was bought, used and wasted each month"},
                       {"wetout ledger --export journal > shop.journal",
                        "for programs that keep accounts in plain text"}},
          .exits = {{1, "the job or entry is not found, or the entry cannot be taken back"}}};
}

Command learn() {
  return {.name = "learn",
          .summary = "say what the records tell of the shop's own losses and speeds",
          .text = {"Every coat of a planned board counts that was mixed, whose rest was weighed "
                   "(record --left, 0 g too) and that is done; and every wet step with its start "
                   "and end. Each number starts from the default and moves as far as the "
                   "records carry it; a record that fits nothing else weighs little.",
                   "Plans use what records speak of where the shop file says nothing itself; plan "
                   "--no-learned leaves it aside.",
                   "And every film of which a milestone was seen (record --observed) in air that "
                   "is known, by the weather of the board's schedule or by record --air: how fast "
                   "its resin is against the data sheet.",
                   "What was recorded stays in the log whatever is forgotten here; plans that were "
                   "made stay as they are."},
          .arguments = {{.kind = option,
                         .name = "--forget",
                         .value = "EVENT",
                         .help = "learn nothing from this event any more, e.g. 27, as it stands "
                                 "beside a record that looks odd, or as record JOB lists it",
                         .reads = Reads::count},
                        {.kind = option,
                         .name = "--remember",
                         .value = "EVENT",
                         .help = "learn from it again",
                         .reads = Reads::count}},
          .examples = {{"wetout learn", "losses, speeds, and records that look odd"},
                       {"wetout learn --forget 27 --dry-run",
                        "what would be learned without event 27"}},
          .exits = {{1, "there is no such event, or nothing is learned from it"}}};
}

}  // namespace

std::vector<Command> stock_commands() { return {stock(), ledger(), learn()}; }

}  // namespace wetout::cli
