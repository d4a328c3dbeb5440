// Past boards as a table: one fact in a line.
#include <algorithm>
#include <array>
#include <map>
#include <tuple>
#include <utility>

#include "past_steps.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/base/table_text.hpp"
#include "wetout/base/words.hpp"
#include "wetout/files/table_file.hpp"

namespace wetout::files {
namespace {

enum class Column { board, date, step, fact, value };

struct Named {
  std::string_view name;
  Column column;
};

constexpr std::array names{Named{"board", Column::board}, Named{"date", Column::date},
                           Named{"step", Column::step},   Named{"fact", Column::fact},
                           Named{"value", Column::value}, Named{"day", Column::date},
                           Named{"coat", Column::step},   Named{"what", Column::fact}};
constexpr std::size_t columns = 5;
constexpr std::size_t most_problems = 1000;

std::string listed() {
  std::string list;
  for (const std::string_view word : past_facts) {
    list += (list.empty() ? "one of: " : ", ") + std::string(word);
  }
  return list;
}

class PastTable {
 public:
  explicit PastTable(TableFile table) : table_(std::move(table)) {}

  base::Result<PastBoards> run() {
    out_.name = table_.name;
    header();
    if (!problems_.empty()) return base::fail(std::move(problems_));
    for (const TableRow& row : table_.rows) {
      if (problems_.size() >= most_problems) break;
      this->row(row);
    }
    if (problems_.empty() && out_.steps.empty()) {
      problems_.push_back({.code = "table.empty",
                           .message = "there are no facts in this table",
                           .file = table_.name,
                           .expected = "rows below the header"});
    }
    if (!problems_.empty()) return base::fail(std::move(problems_));
    for (PastStep& step : out_.steps) put_in_order(step);
    return std::move(out_);
  }

 private:
  void refuse(const TableRow& row, const TableCell& cell, std::string_view key,
              base::Problem problem) {
    problem.key = key;
    problems_.push_back(at_cell(std::move(problem), table_, row, cell));
  }

  void header() {
    std::vector<std::string> words;
    for (const Named& one : names) words.emplace_back(one.name);
    std::array<bool, columns> there{};
    for (std::size_t i = 0; i < table_.header.cells.size(); ++i) {
      const TableCell& cell = table_.header.cells[i];
      const std::string name = base::plain_name(cell.text);
      const auto* known = std::find_if(names.begin(), names.end(),
                                       [&](const Named& one) { return one.name == name; });
      if (known == names.end()) {
        const auto near = base::nearest(name, words);
        refuse(table_.header, cell, "",
               {.code = "import.column",
                .message = "nobody knows this column",
                .expected = "board, date, step, fact, value",
                .hint = near ? "did you mean \"" + *near + "\"?"
                             : "take it out, or name it otherwise"});
        continue;
      }
      const auto column = static_cast<std::size_t>(known->column);
      if (there[column]) {
        refuse(table_.header, cell, "",
               {.code = "import.twice",
                .message = "there are two columns of this kind",
                .expected = "one column \"" + std::string(names[column].name) + "\""});
      }
      there[column] = true;
      at_[column] = i;
    }
    for (std::size_t column = 0; column < columns; ++column) {
      if (there[column]) continue;
      refuse(table_.header, {"", 1}, "",
             {.code = "import.missing",
              .message = "there is no column \"" + std::string(names[column].name) + "\"",
              .found = base::shown(table_.header.text),
              .expected = "a header such as \"board,date,step,fact,value\""});
    }
  }

  Written written(const TableRow& row, Column column) const {
    const TableCell& cell = row.cells[at_[static_cast<std::size_t>(column)]];
    return {cell.text, std::string(names[static_cast<std::size_t>(column)].name), row.line,
            cell.column, row.text};
  }

  bool is_there(const TableRow& row, Column column, std::string_view example) {
    const auto i = static_cast<std::size_t>(column);
    if (!row.cells[at_[i]].text.empty()) return true;
    refuse(row, row.cells[at_[i]], names[i].name,
           {.code = "key.missing",
            .message = "there is no " + std::string(names[i].name) + " in this row",
            .expected = "for example " + std::string(example)});
    return false;
  }

  void row(const TableRow& row) {
    bool good = is_there(row, Column::board, "Sandpiper 6-4");
    good = is_there(row, Column::date, "2025-07-12") && good;
    good = is_there(row, Column::step, "bottom-lam") && good;
    good = is_there(row, Column::fact, "mixed") && good;
    good = is_there(row, Column::value, "262 g") && good;
    if (!good) return;
    const Written said = written(row, Column::fact);
    const std::string what = base::slug(said.text);
    if (std::find(past_facts.begin(), past_facts.end(), what) == past_facts.end()) {
      std::vector<std::string> words(past_facts.begin(), past_facts.end());
      const auto near = base::nearest(what, words);
      const TableCell& cell = row.cells[at_[static_cast<std::size_t>(Column::fact)]];
      return refuse(row, cell, "fact",
                    {.code = "past.fact",
                     .message = "there is no such fact",
                     .expected = listed(),
                     .hint = near ? "did you mean \"" + *near + "\"?" : ""});
    }
    PastStep& step = step_of(row);
    const bool is_there_already =
        std::any_of(step.facts.begin(), step.facts.end(),
                    [&](const PastFact& fact) { return fact.what == what; });
    if (is_there_already && !may_repeat(what)) {
      const TableCell& cell = row.cells[at_[static_cast<std::size_t>(Column::fact)]];
      return refuse(row, cell, "fact",
                    {.code = "past.twice",
                     .message = "this step has this fact already",
                     .hint = "add them up, or give the other one another day"});
    }
    step.facts.push_back({what, written(row, Column::value)});
  }

  // Rows of one board, day and step belong together, wherever they stand.
  PastStep& step_of(const TableRow& row) {
    PastStep step{
        written(row, Column::board), written(row, Column::step), written(row, Column::date), {}};
    const auto key =
        std::tuple(base::slug(step.board.text), step.date.text, base::slug(step.step.text));
    const auto [found, is_new] = index_.emplace(key, out_.steps.size());
    if (is_new) out_.steps.push_back(std::move(step));
    return out_.steps[found->second];
  }

  TableFile table_;
  std::array<std::size_t, columns> at_{};
  std::map<std::tuple<std::string, std::string, std::string>, std::size_t> index_;
  base::Problems problems_;
  PastBoards out_;
};

}  // namespace

base::Result<PastBoards> parse_past_table(std::string_view text, std::string name) {
  auto table = parse_table(text, std::move(name));
  if (!table) return tl::unexpected(table.error());
  return PastTable(std::move(*table)).run();
}

}  // namespace wetout::files
