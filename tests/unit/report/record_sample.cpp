#include "record_sample.hpp"

namespace wetout::report::sample {
namespace {

using units::Milligrams;

RecordedFact fact(std::int64_t number, std::string kind, std::string step = "bottom-lam/wet") {
  RecordedFact out;
  out.number = number;
  out.token = "call-" + std::to_string(number) + "/" + kind;
  out.kind = std::move(kind);
  out.step = std::move(step);
  out.at = "2026-05-02T18:" + std::to_string(20 + number) + ":00-07:00";
  out.recorded = "2026-05-02T19:00:00-07:00";
  return out;
}

RecordedFact mixed(std::int64_t number, Milligrams a, Milligrams b, Milligrams rest) {
  RecordedFact out = fact(number, "mixed");
  out.mass = a + b + rest;
  out.part_a = a;
  out.part_b = b;
  return out;
}

RecordDocument head(std::string action) {
  RecordDocument document;
  document.program = "wetout 0.1.0";
  document.made = "2026-05-02T19:00:00-07:00";
  document.action = std::move(action);
  document.saved = document.action != "list";
  document.job = {"sandpiper-6-4", "Sandpiper 6-4", 3, false, false};
  return document;
}

LedgerEntry entry(std::int64_t number, std::string kind, std::int64_t event, LedgerLine line) {
  LedgerEntry out;
  out.number = number;
  out.kind = std::move(kind);
  out.date = "2026-05-02";
  out.at = "2026-05-02T18:22:00-07:00";
  out.recorded = "2026-05-02T19:00:00-07:00";
  out.event = event;
  out.lines = {std::move(line)};
  return out;
}

StepTotal bottom() {
  return {.step = "bottom-lam/wet",
          .coat = "bottom-lam",
          .planned = Milligrams(292'000),
          .mixed = Milligrams(245'000),
          .part_a = Milligrams(165'333),
          .part_b = Milligrams(75'000),
          .left = Milligrams(12'500),
          .spilled = Milligrams(4'000),
          .started = "2026-05-02T18:21:00-07:00",
          .done = "2026-05-02T18:27:00-07:00"};
}

}  // namespace

RecordDocument record() {
  RecordDocument document = head("record");
  document.job.brought_back = true;
  document.events = {fact(1, "started"),
                     mixed(2, Milligrams(165'333), Milligrams(75'000), Milligrams(4'667)),
                     fact(3, "left"), fact(4, "done")};
  document.events[0].already = true;
  document.events[2].mass = Milligrams(12'500);
  LedgerLine resin{.from = "stock",
                   .to = "board",
                   .material = "kelp-a",
                   .lot = "2026-05-01",
                   .job = "sandpiper-6-4",
                   .step = "bottom-lam/wet",
                   .amount = {165'333, GoodsUnit::gram},
                   .cost = {261, "USD"},
                   .expired = true,
                   .overdrawn = GoodsAmount{333, GoodsUnit::gram}};
  LedgerLine work{.from = "labour",
                  .to = "board",
                  .material = {},
                  .lot = {},
                  .job = "sandpiper-6-4",
                  .step = "bottom-lam/wet",
                  .amount = {25, GoodsUnit::minute},
                  .cost = {1000, "USD"},
                  .expired = false,
                  .overdrawn = {}};
  document.booked = {entry(7, "use", 2, resin), entry(8, "labour", 4, work)};
  document.booked[1].already = true;
  document.totals = {bottom()};
  document.cautions = {"A cup left standing gets hot."};
  document.notices = {{.code = "ratio.off",
                       .text = "part B is above what the ratio wants",
                       .subject = "bottom-lam",
                       .value = 0.052,
                       .limit = 0.03,
                       .unit = "share"}};
  return document;
}

RecordDocument record_list() {
  RecordDocument document = head("list");
  RecordedFact milestone = fact(5, "milestone");
  milestone.milestone = "tack_free";
  RecordedFact air = fact(6, "conditions");
  air.air = units::Temperature::celsius(21);
  air.humidity = 0.615;
  RecordedFact damp = fact(7, "conditions");
  damp.humidity = 0.6;
  RecordedFact note = fact(8, "note", "weigh");
  note.note = "2.84 kg with \"fins\"\n\x1b[31m, and a long tale of how it came to weigh so much";
  RecordedFact of_job = fact(9, "note");
  of_job.step.reset();
  of_job.note = "x";
  RecordedFact undo = fact(10, "undo");
  undo.undoes = 3;
  undo.note = "that was the deck";
  RecordedFact spilled = fact(11, "spilled", "a-coat-whose-name-does-not-fit-anywhere/watch-30");
  spilled.mass = Milligrams(4'000);
  document.events = record().events;
  document.events[0].already = false;
  document.events[2].undone_by = 10;
  for (const RecordedFact& one : {milestone, air, damp, note, of_job, undo, spilled}) {
    document.events.push_back(one);
  }
  StepTotal other;
  other.step = "spot";
  other.left = Milligrams(1);
  StepTotal nothing;
  nothing.step = "weigh";
  document.totals = {bottom(), other, nothing};
  return document;
}

RecordDocument record_undo() {
  RecordDocument document = head("undo");
  RecordedFact undo = fact(10, "undo");
  undo.undoes = 3;
  RecordedFact left = fact(3, "left");
  left.mass = Milligrams(12'500);
  left.undone_by = 10;
  document.events = {undo};
  document.undone = left;
  document.totals = {bottom()};
  return document;
}

PastDocument past() {
  PastDocument document;
  document.program = "wetout 0.1.0";
  document.made = "2026-05-02T19:00:00-07:00";
  document.file = "past.toml";
  document.saved = true;
  document.boards = {{.job = "kittiwake-6-0",
                      .name = "Kittiwake 6-0",
                      .began = true,
                      .from = "2025-07-04",
                      .to = "2025-07-12",
                      .steps = 5,
                      .facts = 21,
                      .before = 0,
                      .mixed = Milligrams(1'120'500),
                      .left = Milligrams(41'000),
                      .minutes = 185,
                      .goods = {6120, "USD"},
                      .work = {9250, "USD"}},
                     {.job = "an-old-board-with-a-long-name",
                      .name = "An old board with a long name",
                      .began = false,
                      .from = "2025-08-01",
                      .to = "2025-08-01",
                      .steps = 1,
                      .facts = 0,
                      .before = 3,
                      .mixed = {},
                      .left = {},
                      .minutes = 0,
                      .goods = {},
                      .work = {}}};
  document.facts = 21;
  document.before = 3;
  document.entries = 14;
  document.notices = {{.code = "stock.expired",
                       .text = "lot 2025-06-01 is past its last good day",
                       .subject = "kelp-a"}};
  return document;
}

}  // namespace wetout::report::sample
