#include "wetout/files/table_file.hpp"

#include <algorithm>
#include <utility>

#include "lines.hpp"
#include "text_file.hpp"
#include "wetout/base/shown.hpp"

namespace wetout::files {
namespace {

constexpr FileKind table_kind{largest_file, "a table", "at most 4 MiB", "purchases.csv", ""};
constexpr std::size_t most_problems = 1000;
constexpr std::size_t most_shown = 1000;

constexpr std::string_view blanks = " \t\r";

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(blanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

// One line of the text, without its end; the text is shortened by it.
std::string_view take_line(std::string_view& rest) {
  const std::size_t end = rest.find('\n');
  std::string_view line = rest.substr(0, end);
  rest.remove_prefix(end == std::string_view::npos ? rest.size() : end + 1);
  if (line.ends_with('\r')) line.remove_suffix(1);
  return line;
}

class Splitter {
 public:
  explicit Splitter(char delimiter) : delimiter_(delimiter) {}

  // False when a quote is not closed on the line, or something follows its end.
  bool split(std::string_view line, std::vector<TableCell>& cells, std::size_t most) const {
    std::size_t at = 0;
    while (true) {
      const std::size_t begin = std::min(line.find_first_not_of(" \t", at), line.size());
      const bool is_quoted = begin < line.size() && line[begin] == '"';
      TableCell cell;
      const std::size_t end = is_quoted ? quoted(line, begin, cell) : bare(line, at, cell);
      if (end == std::string_view::npos) return false;
      cell.column = characters_of(line.substr(0, is_quoted ? begin : std::min(begin, end))) + 1;
      cells.push_back(std::move(cell));
      if (end == line.size() || cells.size() > most) return true;
      at = end + 1;
    }
  }

 private:
  // Each gives where the cell ends: at a delimiter or at the end of the line.
  std::size_t bare(std::string_view line, std::size_t at, TableCell& cell) const {
    const std::size_t end = std::min(line.find(delimiter_, at), line.size());
    cell.text = trimmed(line.substr(at, end - at));
    return end;
  }

  std::size_t quoted(std::string_view line, std::size_t begin, TableCell& cell) const {
    std::size_t i = begin + 1;
    std::string inside;
    for (;; ++i) {
      if (i >= line.size()) return std::string_view::npos;
      if (line[i] != '"') {
        inside += line[i];
      } else if (i + 1 < line.size() && line[i + 1] == '"') {
        inside += line[i++];
      } else {
        break;
      }
    }
    const std::size_t end = std::min(line.find_first_not_of(blanks, i + 1), line.size());
    if (end < line.size() && line[end] != delimiter_) return std::string_view::npos;
    cell.text = trimmed(inside);
    return end;
  }

  char delimiter_;
};

class TableReader {
 public:
  TableReader(std::string_view text, std::string name) : rest_(text) {
    table_.name = std::move(name);
    constexpr std::string_view byte_order_mark = "\xef\xbb\xbf";
    if (rest_.starts_with(byte_order_mark)) rest_.remove_prefix(byte_order_mark.size());
  }

  base::Result<TableFile> read() {
    if (!next()) {
      return base::fail({.code = "table.empty",
                         .message = "there is no line in this file",
                         .file = table_.name,
                         .expected = "a header line and rows below it"});
    }
    if (line_.find(';') != std::string_view::npos) table_.delimiter = ';';
    const Splitter splitter(table_.delimiter);
    begin(table_.header);
    if (!splitter.split(line_, table_.header.cells, most_table_columns)) return base::fail(quote());
    auto& names = table_.header.cells;
    if (names.size() > most_table_columns) {
      return base::fail(about({.code = "table.big",
                               .message = "this table has too many columns",
                               .expected = "at most " + std::to_string(most_table_columns)}));
    }
    // Spreadsheets leave delimiters behind.
    while (!names.empty() && names.back().text.empty()) names.pop_back();
    while (problems_.size() < most_problems && next()) read_row(splitter);
    if (!problems_.empty()) return base::fail(std::move(problems_));
    return std::move(table_);
  }

 private:
  // Over empty lines, comments, and rows of delimiters alone.
  bool next() {
    while (!rest_.empty()) {
      line_ = take_line(rest_);
      ++number_;
      const std::string_view inside = trimmed(line_);
      if (!inside.starts_with('#') && inside.find_first_not_of(" \t,;") != std::string_view::npos) {
        return true;
      }
    }
    return false;
  }

  void begin(TableRow& row) const {
    row.line = number_;
    if (line_.size() <= most_shown) row.text = line_;
  }

  [[nodiscard]] base::Problem about(base::Problem problem) const {
    problem.file = table_.name;
    problem.line = number_;
    problem.column = 1;
    if (line_.size() <= most_shown) problem.source_line = line_;
    return problem;
  }

  [[nodiscard]] base::Problem quote() const {
    return about({.code = "table.quote",
                  .message = "a quote of this line is not closed",
                  .expected = "a quote at both ends of a cell, two for one inside"});
  }

  void read_row(const Splitter& splitter) {
    TableRow row;
    begin(row);
    const std::size_t columns = table_.header.cells.size();
    if (!splitter.split(line_, row.cells, most_table_columns)) {
      problems_.push_back(quote());
      return;
    }
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

  std::string_view rest_;
  std::string_view line_;
  int number_ = 0;
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
