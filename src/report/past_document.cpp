// Past boards that were entered, as JSON and as a table.
#include "wetout/report/past_document.hpp"

#include <fmt/format.h>

#include "base_fields.hpp"
#include "goods_text.hpp"
#include "json_writer.hpp"
#include "layout.hpp"
#include "ledger_fields.hpp"
#include "phrases.hpp"

namespace wetout::report {

template <>
struct Fields<PastBoard> {
  static void visit(auto& v, const PastBoard& board) {
    v("job", board.job);
    v("name", board.name);
    v("began", board.began);
    v("from", board.from);
    v("to", board.to);
    v("steps", board.steps);
    v("facts", board.facts);
    v("before", board.before);
    v("mixed_g", board.mixed, as::Grams{});
    v("left_g", board.left, as::Grams{});
    v("minutes", board.minutes);
    v("goods", known(board.goods));
    v("work", known(board.work));
  }
};
template <>
struct Fields<PastDocument> {
  static void visit(auto& v, const PastDocument& document) {
    v("program", document.program);
    v("made", document.made);
    v("file", document.file);
    v("saved", document.saved);
    v("boards", document.boards);
    v("facts", document.facts);
    v("before", document.before);
    v("entries", document.entries);
    v("notices", document.notices);
  }
};

namespace {

constexpr const char* row = "{}{:>6}{:>14}{:>12}{:>14}{:>14}";
constexpr std::size_t name_columns = 18;

std::string count_of(std::int64_t n, std::string_view one, std::string_view many) {
  return fmt::format("{} {}", n, n == 1 ? one : many);
}

}  // namespace

std::string to_json(const PastDocument& document) { return document_json(past_format, document); }

std::string to_text(const PastDocument& document, units::System system) {
  layout::Page page;
  const auto boards = static_cast<std::int64_t>(document.boards.size());
  page.line(count_of(boards, "board", "boards") + ", " +
            count_of(document.facts, "new fact", "new facts") +
            (document.before > 0 ? fmt::format(", {} entered before", document.before) : ""));
  if (document.facts == 0) return page.text();
  page.blank();
  page.line(fmt::format(row, layout::left("board", name_columns), "facts", "mixed", "time", "goods",
                        "work"));
  for (const PastBoard& board : document.boards) {
    const bool anything = board.facts > 0;
    page.line(fmt::format(
        row, layout::left(layout::plain(board.job), name_columns), board.facts,
        board.mixed > units::Milligrams() ? units::print_weight(board.mixed.mass(), system) : "-",
        board.minutes > 0 ? units::print(units::minutes(static_cast<double>(board.minutes)), system)
                          : "-",
        anything ? money_text(board.goods) : "-", anything ? money_text(board.work) : "-"));
  }
  for (const base::Notice& notice : document.notices) {
    page.item("  * ", subject_text(notice) + notice_text(notice, system));
  }
  return page.text();
}

}  // namespace wetout::report
