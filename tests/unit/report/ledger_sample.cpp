#include "ledger_sample.hpp"

namespace wetout::report::sample {
namespace {

units::Money euros(std::int64_t minor) { return {minor, "EUR"}; }
GoodsAmount grams(std::int64_t milligrams) { return {milligrams, GoodsUnit::gram}; }
GoodsAmount metres(std::int64_t micrometres) { return {micrometres, GoodsUnit::metre}; }
GoodsAmount pieces(std::int64_t count) { return {count, GoodsUnit::piece}; }

LedgerLine line(std::string from, std::string to, std::string material, std::string lot,
                GoodsAmount amount, std::int64_t minor) {
  LedgerLine out;
  out.from = std::move(from);
  out.to = std::move(to);
  out.material = std::move(material);
  out.lot = std::move(lot);
  out.amount = amount;
  out.cost = euros(minor);
  return out;
}

LedgerLine of_job(LedgerLine out) {
  out.job = "sandpiper-6-4";
  out.step = "bottom-lam/wet";
  return out;
}

LedgerEntry entry(std::int64_t number, std::string kind, std::vector<LedgerLine> lines) {
  LedgerEntry out;
  out.number = number;
  out.kind = std::move(kind);
  out.date = "2026-05-0" + std::to_string(number);
  out.at = out.date + "T12:00:00-07:00";
  out.recorded = out.date + "T12:30:00-07:00";
  out.lines = std::move(lines);
  return out;
}

LedgerLine work(std::int64_t minutes, std::int64_t minor) {
  LedgerLine out;
  out.from = "labour";
  out.to = "board";
  out.amount = {minutes, GoodsUnit::minute};
  out.cost = euros(minor);
  return of_job(out);
}

LedgerDocument head(std::string action) {
  LedgerDocument document;
  document.program = "wetout 0.1.0";
  document.made = "2026-05-09T19:00:00-07:00";
  document.action = std::move(action);
  document.currency = "EUR";
  return document;
}

PlanVsActual row(const char* coat, std::string material, std::optional<GoodsAmount> planned,
                 std::optional<GoodsAmount> recorded, GoodsAmount used, std::int64_t minor) {
  PlanVsActual out;
  if (coat != nullptr) out.coat = coat;
  out.material = std::move(material);
  out.planned = planned;
  out.recorded = recorded;
  out.used = used;
  out.cost = euros(minor);
  return out;
}

MonthSums month(std::string name, std::int64_t received, std::int64_t used) {
  return {.month = std::move(name),
          .received = euros(received),
          .used = euros(used),
          .wasted = euros(630),
          .adjusted = euros(-15),
          .labour = euros(3600),
          .minutes = 90};
}

}  // namespace

std::vector<LedgerEntry> entries() {
  LedgerEntry kit =
      entry(1, "receive",
            {line("supplier", "stock", "resin-a", "2026-05-01", grams(5'000'000), 7900),
             line("supplier", "stock", "e4", "roll", metres(27'432'000), 6500)});
  kit.note = "kit; \"spring\" [2026-99-99]\n=1+1";
  LedgerEntry used =
      entry(2, "use",
            {of_job(line("stock", "board", "resin-a", "2026-05-01", grams(178'123), 281)),
             of_job(line("stock", "board", "e4", "roll", metres(1'800'000), 427))});
  used.event = 12;
  LedgerEntry wasted =
      entry(3, "waste", {line("stock", "waste", "resin-a", "2026-05-01", grams(400'000), 632)});
  wasted.undone_by = 6;
  LedgerEntry counted = entry(4, "count",
                              {line("stock", "adjustment", "e4", "roll", metres(1), 0),
                               line("adjustment", "stock", "fin-box", "-2", pieces(1), 0),
                               line("stock", "adjustment", "leash-plug", "x", pieces(0), 0)});
  LedgerEntry worked = entry(5, "labour", {work(55, 2200)});
  LedgerEntry undone =
      entry(6, "undo", {line("waste", "stock", "resin-a", "2026-05-01", grams(400'000), 632)});
  undone.date = "2026-05-03";
  undone.undoes = 3;
  undone.note = "was the old jug";
  LedgerEntry rest = entry(7, "receive",
                           {line("supplier", "stock", "white", "w", grams(250'000), 0),
                            line("stock", "adjustment", "white", "w", grams(0), 1)});
  rest.already = true;
  LedgerEntry unbooked = entry(8, "labour", {work(35, 1400)});
  unbooked.number.reset();
  unbooked.recorded.reset();
  return {kit, used, wasted, counted, worked, undone, rest, unbooked};
}

LedgerDocument ledger_of_job() {
  LedgerDocument document = head("job");
  document.job = LedgerJob{"sandpiper-6-4", "Sandpiper 6-4", 3};
  document.entries = {entries()[1], entries()[4]};
  JobSums sums;
  sums.planned_goods = euros(6699);
  sums.goods = euros(708);
  sums.labour = euros(3600);
  sums.minutes = 90;
  sums.all = euros(4308);
  sums.waste_share = 0.054321;
  document.cost = sums;
  document.plan_vs_actual = {
      row("bottom-lam", "e4", metres(1'800'400), std::nullopt, metres(1'800'000), 427),
      row("bottom-lam", "resin-a", grams(177'778), grams(178'123), grams(178'123), 281),
      row("deck-lam", "resin-a", grams(251'000), std::nullopt, grams(0), 0),
      row("deck-lam", "fin-box", pieces(2), std::nullopt, pieces(0), 0),
      row(nullptr, "gloves", std::nullopt, std::nullopt, pieces(2), 0)};
  document.plan_vs_actual[1].planned_cost = euros(280);
  document.work = {{.step = "bottom-lam/wet", .minutes = 55, .cost = euros(2200), .booked = true},
                   {.step = "bottom-lam/trim", .minutes = 35, .cost = euros(1400), .booked = false},
                   {.step = std::nullopt, .minutes = 5, .cost = std::nullopt, .booked = true}};
  document.notices = {
      {.code = "ledger.not_taken", .text = "what was mixed was not taken from stock"}};
  return document;
}

LedgerDocument ledger_list() {
  LedgerDocument document = head("list");
  document.entries = entries();
  document.earlier = 3;
  document.months = {month("2026-04", 0, 0), month("2026-05", 14400, 708)};
  return document;
}

LedgerDocument ledger_by_material() {
  LedgerDocument document = head("material");
  document.materials = {{.material = "resin-a",
                         .name = "Laminating resin, part A",
                         .received = {grams(5'000'000), euros(7900)},
                         .used = {grams(178'123), euros(281)},
                         .wasted = {grams(0), euros(0)},
                         .adjusted = {grams(-100'000), euros(-158)},
                         .on_hand = {grams(4'721'877), euros(7461)}},
                        {.material = "gloves",
                         .name = "gloves",
                         .received = {pieces(2), euros(0)},
                         .used = {pieces(2), euros(0)},
                         .wasted = {pieces(0), euros(0)},
                         .adjusted = {pieces(0), euros(0)},
                         .on_hand = {pieces(0), euros(0)}}};
  return document;
}

LedgerDocument ledger_by_job() {
  LedgerDocument document = head("board");
  document.boards = {{.job = "pico",
                      .name = "Pico",
                      .goods = euros(0),
                      .labour = euros(0),
                      .all = euros(0),
                      .minutes = 0},
                     {.job = "sandpiper-6-4",
                      .name = "Sandpiper 6-4",
                      .goods = euros(708),
                      .labour = euros(3600),
                      .all = euros(4308),
                      .minutes = 90}};
  return document;
}

LedgerDocument ledger_undo() {
  LedgerDocument document = head("undo");
  document.saved = true;
  document.entries = {entries()[5]};
  document.undone = entries()[2];
  return document;
}

LedgerDocument ledger_bare() {
  LedgerDocument document = head("job");
  document.currency.clear();
  document.job = LedgerJob{"pico", "Pico", std::nullopt};
  document.cost = JobSums{};
  PlanVsActual used = row(nullptr, "gloves", std::nullopt, std::nullopt, pieces(2), 0);
  used.cost = {};
  document.plan_vs_actual = {used};
  return document;
}

}  // namespace wetout::report::sample
