#include "wetout/report/problems_document.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base_fields.hpp"
#include "json_writer.hpp"
#include "layout.hpp"

namespace wetout::report {

namespace {
struct ProblemsDocument {
  const base::Problems& problems;
};
}  // namespace

template <>
struct Fields<ProblemsDocument> {
  static void visit(auto& v, const ProblemsDocument& document) { v("problems", document.problems); }
};

namespace {

// The line of the file and a caret under `column`; of a long line the part around it.
void add_caret(layout::Page& page, const base::Problem& problem) {
  constexpr std::string_view indent = "    ";
  constexpr std::size_t room = layout::page_columns - indent.size();
  const std::string line = layout::plain(problem.source_line);
  // Byte and display column of the character the caret stands under.
  std::size_t byte = 0;
  for (int skip = problem.column - 1; skip > 0 && byte < line.size(); --skip) {
    do {
      ++byte;
    } while (byte < line.size() && (static_cast<unsigned char>(line[byte]) & 0xC0U) == 0x80U);
  }
  std::string_view shown = line;
  if (layout::columns(std::string_view(line).substr(0, byte)) > room - 20) {
    std::size_t from = byte > room / 2 ? byte - room / 2 : 0;
    while (from < byte && (static_cast<unsigned char>(line[from]) & 0xC0U) == 0x80U) ++from;
    shown.remove_prefix(from);
    byte -= from;
  }
  page.line(std::string(indent) + layout::fit(shown, room));
  const std::size_t before = layout::columns(shown.substr(0, byte));
  page.line(std::string(indent) + std::string(std::min(before, room - 1), ' ') + '^');
}

void add_problem(layout::Page& page, const base::Problem& problem) {
  std::string place = layout::plain(problem.file);
  if (problem.line > 0) place += fmt::format(":{}", problem.line);
  if (problem.line > 0 && problem.column > 0) place += fmt::format(":{}", problem.column);
  if (!place.empty()) place += ": ";
  // File and message flow together; following lines are indented. A long path keeps whole.
  if (layout::columns(place) > layout::page_columns / 2) {
    place.pop_back();
    page.verbatim(place);
    place.clear();
  }
  const std::vector<std::string> lines =
      layout::wrap(place + layout::plain(problem.message), layout::page_columns - 4);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    page.line((i == 0 && !place.empty() ? "" : "    ") + lines[i]);
  }
  if (problem.line > 0 && problem.column > 0 && !problem.source_line.empty()) {
    add_caret(page, problem);
  }
  const auto detail = [&page](std::string_view label, const std::string& text) {
    if (!text.empty()) page.item(label, layout::plain(text));
  };
  detail("    key:      ", problem.key);
  detail("    found:    ", problem.found);
  detail("    expected: ", problem.expected);
  detail("    hint:     ", problem.hint);
}

}  // namespace

std::string problems_json(const base::Problems& problems) {
  return document_json(problems_format, ProblemsDocument{problems});
}

std::string problems_text(const base::Problems& problems) {
  layout::Page page;
  for (const base::Problem& problem : problems) add_problem(page, problem);
  return page.text();
}

}  // namespace wetout::report
