// What was recorded, for people: after a record, and the whole list.
#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "goods_text.hpp"
#include "layout.hpp"
#include "phrases.hpp"
#include "wetout/report/record_document.hpp"

namespace wetout::report {
namespace {

using units::Milligrams;
using units::System;

std::string minute_text(std::string_view rfc3339) {
  constexpr std::size_t to_the_minute = 16;
  std::string text = when_text(rfc3339);
  if (text.size() > to_the_minute) text.resize(to_the_minute);
  return text;
}

std::string part_text(std::string_view what, Milligrams part, int decimals) {
  return layout::whole(std::string(what) + ' ' + scale_grams(part, decimals));
}

std::string parts_text(const RecordedFact& fact) {
  if (!fact.part_a || !fact.part_b || !fact.mass) return "";
  const std::array<Milligrams, 3> all = {*fact.mass, *fact.part_a, *fact.part_b};
  // To 0.1 g: a split at the ratio has more digits than a scale.
  const int decimals = std::min(gram_decimals(all), 1);
  const Milligrams rest = *fact.mass - *fact.part_a - *fact.part_b;
  const auto printed = printed_parts({*fact.part_a, *fact.part_b, rest}, *fact.mass, decimals);
  std::string text = ": " + part_text("part A", printed[0], decimals) + ", " +
                     part_text("part B", printed[1], decimals);
  if (rest > Milligrams()) text += ", " + part_text("stirred in", printed[2], decimals);
  return text;
}

std::string conditions_text(const RecordedFact& fact, System system) {
  std::string text;
  if (fact.air) text = "air " + units::print(*fact.air, system);
  if (fact.humidity) {
    text += (fact.air ? ", humidity " : "humidity ") + units::print_percent(*fact.humidity);
  }
  return text;
}

std::string milestone_text(std::string word) {
  std::replace(word.begin(), word.end(), '_', '-');
  return word;
}

std::string said(const RecordedFact& fact, System system) {
  std::string text = fact.kind;
  if (fact.mass) text += ' ' + layout::whole(weighed(*fact.mass, system)) + parts_text(fact);
  if (fact.milestone) text = "seen: " + milestone_text(*fact.milestone);
  if (fact.kind == "conditions") text = conditions_text(fact, system);
  if (fact.undoes) text = fmt::format("takes back event {}", *fact.undoes);
  if (fact.note) {
    // What was used is the program's own wording.
    if (fact.kind == "note" && fact.token.ends_with("/used")) return layout::plain(*fact.note);
    const std::string note = '"' + layout::plain(*fact.note) + '"';
    text = fact.kind == "note" ? note : text + ", " + note;
  }
  return text;
}

// Wide enough for the steps that are listed, within reason.
std::size_t step_columns(const RecordDocument& document) {
  constexpr std::size_t most = 24;
  std::size_t columns = 0;
  for (const RecordedFact& fact : document.events) {
    if (fact.step) columns = std::max(columns, layout::columns(*fact.step));
  }
  return std::min(columns, most);
}

std::string step_text(const RecordedFact& fact, std::size_t columns) {
  return layout::left(fact.step ? layout::plain(*fact.step) : "", columns) + "  ";
}

std::string tail(const RecordedFact& fact) {
  std::string text = fact.already ? "recorded before" : "";
  if (fact.undone_by) {
    text += fmt::format("{}taken back by event {}", text.empty() ? "" : ", ", *fact.undone_by);
  }
  if (!fact.counts) text += std::string(text.empty() ? "" : ", ") + "not learned from";
  return text.empty() ? text : " (" + text + ')';
}

// `step` is a column of its own, or empty.
void fact_line(layout::Page& page, const RecordedFact& fact, System system,
               const std::string& step) {
  page.item(fmt::format("{:>6}  {}  ", fact.number, minute_text(fact.at)) + step,
            said(fact, system) + tail(fact));
}

void total_line(layout::Page& page, const StepTotal& total, System system) {
  const Milligrams nothing;
  const auto mass = [&](Milligrams m) { return layout::whole(weighed(m, system)); };
  std::string text = "mixed " + mass(total.mixed);
  if (total.planned) text += " of " + mass(*total.planned) + " planned";
  if (total.left > nothing) text += ", left " + mass(total.left);
  if (total.spilled > nothing) text += ", spilled " + mass(total.spilled);
  page.item(fmt::format("  {}  ", layout::plain(total.step)), text);
}

void totals(layout::Page& page, const RecordDocument& document, System system) {
  const Milligrams nothing;
  bool first = true;
  for (const StepTotal& total : document.totals) {
    if (total.mixed == nothing && total.left == nothing && total.spilled == nothing) continue;
    if (first) {
      page.blank();
      page.line("So far");
    }
    first = false;
    total_line(page, total, system);
  }
}

std::string booked_text(const LedgerLine& line, System system) {
  std::string text = layout::whole(amount_text(line.amount, system));
  if (line.material) text += ' ' + layout::plain(*line.material);
  if (line.lot)
    text += " (lot " + layout::plain(*line.lot) + (line.expired ? ", past its day)" : ")");
  if (!line.cost.currency.empty()) text += ", " + layout::whole(money_text(line.cost));
  return text;
}

enum class Part { taken, kept, work };

// What is cut off a roll to be kept goes there by way of adjustment, and comes back so.
Part part_of(const LedgerLine& line) {
  if (!line.material) return Part::work;
  return line.from == "adjustment" || line.to == "adjustment" ? Part::kept : Part::taken;
}

std::string heading(Part part, bool back) {
  switch (part) {
    case Part::taken:
      return back ? "Back to stock" : "From stock";
    case Part::kept:
      return back ? "No longer kept" : "Kept";
    case Part::work:
      return back ? "Work taken back" : "Work";
  }
  return "";
}

// A line for each lot. Of a piece that is kept only its own: the roll gives what it is worth.
bool is_shown(const LedgerLine& line, Part part, bool back) {
  if (part_of(line) != part || line.amount.count == 0) return false;
  return part != Part::kept || line.to == (back ? "adjustment" : "stock");
}

void booked_lines(layout::Page& page, const RecordDocument& document, System system, Part part) {
  const bool back = document.action == "undo";
  bool first = true;
  for (const LedgerEntry& entry : document.booked) {
    for (const LedgerLine& line : entry.lines) {
      if (!is_shown(line, part, back)) continue;
      if (first) {
        page.blank();
        page.line(heading(part, back));
      }
      first = false;
      std::string tail = entry.already ? " (booked before" : "";
      if (entry.undone_by) {
        tail +=
            fmt::format("{}taken back by entry {}", tail.empty() ? " (" : ", ", *entry.undone_by);
      }
      if (!tail.empty()) tail += ')';
      page.item("  ", booked_text(line, system) + tail);
    }
  }
}

std::string title(const RecordDocument& document) {
  const std::string job = layout::plain(document.job.id);
  if (document.action == "list") return job + ": what was recorded";
  // All facts of one call are of one step.
  const RecordedFact& first = document.events.front();
  return job + (first.step ? ", " + layout::plain(*first.step) : std::string());
}

}  // namespace

std::string to_text(const RecordDocument& document, System system) {
  layout::Page page;
  const bool is_list = document.action == "list";
  if (document.events.empty()) {
    page.line("Nothing was recorded of " + layout::plain(document.job.id) + ".");
    return page.text();
  }
  page.line(title(document));
  const std::size_t columns = step_columns(document);
  for (const RecordedFact& fact : document.events) {
    fact_line(page, fact, system, is_list ? step_text(fact, columns) : "");
  }
  if (document.undone) {
    RecordedFact undone = *document.undone;
    undone.undone_by.reset();  // the line above says so
    fact_line(page, undone, system, "");
  }
  if (document.job.began) page.item("  * ", "the job is new: it has no plan yet");
  if (document.job.brought_back) page.item("  * ", "the job is back from the archive");
  for (const base::Notice& notice : document.notices) {
    page.item("  * ", subject_text(notice) + notice_text(notice, system));
  }
  for (const Part part : {Part::taken, Part::kept, Part::work}) {
    booked_lines(page, document, system, part);
  }
  totals(page, document, system);
  if (!document.cautions.empty()) page.blank();
  for (const std::string& caution : document.cautions) page.item("  ! ", layout::plain(caution));
  return page.text();
}

}  // namespace wetout::report
