#include "wetout/report/learn_document.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base_fields.hpp"
#include "json_writer.hpp"
#include "layout.hpp"

namespace wetout::report {

template <>
struct Fields<LearnedLine> {
  static void visit(auto& v, const LearnedLine& line) {
    v("key", line.key);
    v("table", line.table);
    v("standing", line.standing);
    v("unit", line.unit);
    v("value", line.value, as::Plain{});
    v("spread", line.spread, as::Plain{});
    v("default", line.standard, as::Plain{});
    v("default_spread", line.standard_spread, as::Plain{});
    v("records", line.records);
  }
};
template <>
struct Fields<RecordLine> {
  static void visit(auto& v, const RecordLine& line) {
    v("job", line.job);
    v("coat", line.coat);
    v("of", line.of);
    v("value", line.value, as::Plain{});
    v("expected", line.expected, as::Plain{});
    v("weight", line.weight, as::Plain{});
    v("event", line.event);
  }
};
template <>
struct Fields<AsideLine> {
  static void visit(auto& v, const AsideLine& line) {
    v("event", line.event);
    v("job", line.job);
    v("step", line.step);
    v("kind", line.kind);
  }
};
template <>
struct Fields<LearnDocument> {
  static void visit(auto& v, const LearnDocument& document) {
    v("program", document.program);
    v("made", document.made);
    v("boards", document.boards);
    v("values", document.values);
    v("records", document.records);
    v("aside", document.aside);
    v("shop_lines", document.shop_lines);
    v("notices", document.notices);
  }
};

namespace {

// A record that is believed by less than this is worth a look.
constexpr double doubted = 0.5;

// As many digits as the spread leaves sense in.
std::string number(double value, double spread) {
  return fmt::format("{:.{}f}", value, spread < 0.1 ? 3 : spread < 1.0 ? 2 : 1);
}

std::string line_of(const LearnedLine& line) {
  const std::string name = line.unit.empty() ? line.key : line.key + ", " + line.unit;
  if (line.records == 0) {
    return fmt::format("{:<30}{:>11}{:>11}{:>11}{:>9}", name, "-", "-",
                       number(line.standard, line.spread), "-");
  }
  return fmt::format("{:<30}{:>11}{:>11}{:>11}{:>9}", name, number(line.value, line.spread),
                     number(line.spread, line.spread), number(line.standard, line.spread),
                     line.records);
}

std::string doubt(const RecordLine& record) {
  if (record.of == "speed") {
    return fmt::format(
        "{}/{}: {:.2f} x as fast as its sheet where {:.2f} x was to be expected, believed by "
        "{:.0f} % (event {})",
        record.job, record.coat, record.value, record.expected, record.weight * 100.0,
        record.event);
  }
  const char* const unit = record.of == "time" ? "min" : "g";
  return fmt::format(
      "{}/{}: {:.0f} {} where {:.0f} {} was to be expected, believed by {:.0f} % (event {})",
      record.job, record.coat, record.value, unit, record.expected, unit, record.weight * 100.0,
      record.event);
}

}  // namespace

std::string to_json(const LearnDocument& document) { return document_json(learn_format, document); }

std::string to_text(const LearnDocument& document) {
  layout::Page page;
  const auto count = [&](std::string_view of) {
    return std::count_if(document.records.begin(), document.records.end(),
                         [&](const RecordLine& record) { return record.of == of; });
  };
  page.heading(
      "What the records say",
      fmt::format("{} coats weighed, {} timed, {} seen, of {} {}", count("resin"), count("time"),
                  count("speed"), document.boards, document.boards == 1 ? "board" : "boards"));
  page.line(
      fmt::format("{:<30}{:>11}{:>11}{:>11}{:>9}", "", "learned", "spread", "default", "coats"));
  for (const LearnedLine& line : document.values) page.line(line_of(line));
  if (!document.shop_lines.empty()) {
    page.blank();
    page.line("Plans use it where the shop file says nothing. To fix it there:");
    for (const std::string& line : document.shop_lines) page.verbatim("    " + line);
  }
  for (const LearnedLine& line : document.values) {
    if (line.table != "resin") continue;
    page.blank();
    page.item("", layout::plain(fmt::format("Plans and their schedules use {}. To fix it: speed = "
                                            "{:.3g} in the [[resin]] \"{}\".",
                                            line.key, line.value,
                                            line.key.substr(line.key.find('.') + 1))));
  }
  const bool any_doubt = std::any_of(document.records.begin(), document.records.end(),
                                     [](const auto& record) { return record.weight < doubted; });
  if (any_doubt) {
    page.blank();
    page.line("Records that weigh little");
    for (const RecordLine& record : document.records) {
      if (record.weight < doubted) page.item("  * ", layout::plain(doubt(record)));
    }
    page.line("To leave one aside: wetout learn --forget EVENT");
  }
  if (!document.aside.empty()) {
    page.blank();
    page.line("Left aside");
    for (const AsideLine& one : document.aside) {
      page.item("  * ", layout::plain(fmt::format("event {}: {}/{}, {}", one.event, one.job,
                                                  one.step, one.kind)));
    }
  }
  if (document.records.empty()) {
    page.blank();
    page.item("",
              "Nothing to learn from yet: record what was mixed and what was left over (0 g "
              "counts), with --done, of boards that were planned.");
  }
  for (const base::Notice& notice : document.notices) {
    page.blank();
    page.item("* ", layout::plain(notice.subject + ": " + notice.text));
  }
  return page.text();
}

}  // namespace wetout::report
