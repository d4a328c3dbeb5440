#include "wetout/files/table_file.hpp"

#include <utility>

#include "text_file.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/base/table_text.hpp"

namespace wetout::files {
namespace {

constexpr FileKind table_kind{largest_file, "a table", "at most 4 MiB", "purchases.csv", ""};
constexpr std::size_t most_problems = 1000;
constexpr std::size_t most_shown = 1000;

// A cell as base::split() leaves it, doubled quotes made single where it stood in quotes.
TableCell cell_of(std::string_view line, std::string_view part) {
  TableCell cell{std::string(part), base::column_of(line, part)};
  const bool is_quoted = part.data() > line.data() && part.data()[-1] == '"';
  if (!is_quoted) return cell;
  for (std::size_t i = cell.text.find("\"\""); i != std::string::npos;
       i = cell.text.find("\"\"", i + 1)) {
    cell.text.erase(i, 1);
  }
  return cell;
}

class TableReader {
 public:
  TableReader(std::string_view text, std::string name) : lines_(text) {
    table_.name = std::move(name);
  }

  base::Result<TableFile> read() {
    if (!next()) {
      return base::fail({.code = "table.empty",
                         .message = "there is no line in this file",
                         .file = table_.name,
                         .expected = "a header line and rows below it"});
    }
    if (lines_.line().find(';') != std::string_view::npos) table_.delimiter = ';';
    begin(table_.header);
    if (!split(table_.header)) return base::fail(std::move(problems_));
    auto& names = table_.header.cells;
    if (names.size() > most_table_columns) {
      return base::fail(about({.code = "table.big",
                               .message = "this table has too many columns",
                               .expected = "at most " + std::to_string(most_table_columns)}));
    }
    // Spreadsheets leave delimiters behind.
    while (!names.empty() && names.back().text.empty()) names.pop_back();
    while (problems_.size() < most_problems && next()) read_row();
    if (!problems_.empty()) return base::fail(std::move(problems_));
    return std::move(table_);
  }

 private:
  // Over empty lines, comments, and rows of delimiters alone.
  bool next() {
    while (lines_.next()) {
      const std::string_view inside = base::trimmed(lines_.line());
      if (!inside.starts_with('#') && inside.find_first_not_of(" \t,;") != std::string_view::npos) {
        return true;
      }
    }
    return false;
  }

  void begin(TableRow& row) const {
    row.line = lines_.number();
    if (lines_.line().size() <= most_shown) row.text = lines_.line();
  }

  [[nodiscard]] base::Problem about(base::Problem problem) const {
    problem.file = table_.name;
    problem.line = lines_.number();
    problem.column = 1;
    if (lines_.line().size() <= most_shown) problem.source_line = lines_.line();
    return problem;
  }

  // False with a problem.
  bool split(TableRow& row) {
    std::vector<std::string_view> parts;
    if (base::split(lines_.line(), table_.delimiter, parts) == base::Split::open_quote) {
      problems_.push_back(
          about({.code = "table.quote",
                 .message = "a quote of this line is not closed",
                 .expected = "a quote at both ends of a cell, two for one inside"}));
      return false;
    }
    for (const std::string_view part : parts) row.cells.push_back(cell_of(lines_.line(), part));
    return true;
  }

  void read_row() {
    TableRow row;
    begin(row);
    const std::size_t columns = table_.header.cells.size();
    if (!split(row)) return;
    while (row.cells.size() > columns && row.cells.back().text.empty()) row.cells.pop_back();
    if (row.cells.size() != columns) {
      problems_.push_back(about({.code = "table.columns",
                                 .message = "this row does not have the columns of the header",
                                 .found = std::to_string(row.cells.size()) + " columns",
                                 .expected = std::to_string(columns) + " columns",
                                 .hint = "a cell with a comma in it stands in quotes"}));
      return;
    }
    table_.rows.push_back(std::move(row));
  }

  base::TextLines lines_;
  TableFile table_;
  base::Problems problems_;
};

}  // namespace

base::Result<TableFile> parse_table(std::string_view text, std::string name) {
  if (base::Problems wrong = wrong_text(text, name); !wrong.empty()) {
    for (base::Problem& problem : wrong) {
      if (problem.code == "file.empty") problem.hint.clear();
      problem.expected = problem.code == "file.too_big" ? std::string(table_kind.expected)
                                                        : "a table as text in UTF-8";
    }
    return base::fail(std::move(wrong));
  }
  constexpr std::string_view byte_order_mark = "\xef\xbb\xbf";
  if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
  return TableReader(text, std::move(name)).read();
}

base::Result<TableFile> read_table(const std::filesystem::path& path) {
  const base::Result<std::string> text = read_bytes(path, table_kind);
  if (!text) return base::fail(text.error());
  return parse_table(*text, path.string());
}

base::Problem at_cell(base::Problem problem, const TableFile& table, const TableRow& row,
                      const TableCell& cell) {
  problem.file = table.name;
  problem.line = row.line;
  problem.column = cell.column;
  problem.source_line = row.text;
  if (problem.found.empty()) problem.found = base::shown(cell.text);
  return problem;
}

}  // namespace wetout::files
