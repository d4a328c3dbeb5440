#include "wetout/files/past_boards.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "fields.hpp"
#include "past_steps.hpp"
#include "text_file.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/time/print.hpp"
#include "wetout/time/read.hpp"

namespace wetout::files {
namespace {

constexpr auto homes = std::to_array<Home>({
    {"date", "[[board]] or [[board.coat]]"},
    {"step", "[[board.coat]]"},
    {"time", "[[board.coat]]"},
    {"minutes", "[[board.coat]]"},
    {"air", "[[board.coat]]"},
    {"humidity", "[[board.coat]]"},
    {"resin", "[[board.coat]]"},
    {"mixed", "[[board.coat]]"},
    {"part_a", "[[board.coat]]"},
    {"part_b", "[[board.coat]]"},
    {"left", "[[board.coat]]"},
    {"spilled", "[[board.coat]]"},
    {"cloth", "[[board.coat]]"},
    {"used", "[[board.coat]]"},
    {"lot", "[[board.coat]]"},
});

constexpr FileKind past_kind{largest_file, "a file of past boards",
                             "at most 4 MiB of TOML text, or of a table (.csv)", "past_boards.toml",
                             ""};

/// Reads the boards of a file, step by step.
class PastReader {
 public:
  explicit PastReader(Document& document) : document_(document) {}

  void board(Fields& fields, PastBoards& out) {
    const std::optional<Written> name = text(fields, "name", "Sandpiper 6-4", Must::be_there);
    const std::optional<Written> usual = date(fields);
    for (Fields& coat : fields.subtables("coat", "[[board.coat]]", Must::be_there)) {
      PastStep step;
      if (name) step.board = *name;
      this->step(coat, usual, step);
      out.steps.push_back(std::move(step));
    }
    fields.done();
  }

 private:
  Written written(const Fields& fields, std::string_view key, const toml::node& node,
                  std::string text) const {
    const Position at = begin_of(node.source());
    return {std::move(text), fields.path_of(key), at.line, at.column, document_.lines().shown(at)};
  }

  std::optional<Written> text(Fields& fields, std::string_view key, std::string_view example,
                              Must must = Must::not_be_there) {
    auto text = fields.text(key, example, must);
    if (!text) return std::nullopt;
    return written(fields, key, *fields.table().get(key), std::move(*text));
  }

  // A whole number needs no quotes.
  std::optional<Written> value_in(Fields& fields, std::string_view key, const toml::node& node,
                                  std::string_view example) {
    if (const auto* number = node.as_integer()) {
      return written(fields, key, node, std::to_string(number->get()));
    }
    auto text = fields.text_in(node, key, example);
    if (!text) return std::nullopt;
    return written(fields, key, node, std::move(*text));
  }

  void value(Fields& fields, std::string_view key, std::string_view what, std::string_view example,
             PastStep& step) {
    const toml::node* node = fields.find(key);
    if (node == nullptr) return;
    auto value = value_in(fields, key, *node, example);
    if (value) step.facts.push_back({std::string(what), std::move(*value)});
  }

  // { e4 = "1.9 m", side-box = 2 }: a fact for each.
  void values(Fields& fields, std::string_view key, std::string_view example, PastStep& step) {
    auto table = fields.subtable(key, example);
    if (!table) return;
    for (const auto& [id, node] : table->table()) {
      auto value = value_in(*table, id.str(), node, "1.9 m");
      if (!value) continue;
      value->text = std::string(id.str()) + "=" + value->text;
      step.facts.push_back({std::string(key), std::move(*value)});
    }
  }

  // A date of TOML's own, or the same in quotes.
  std::optional<Written> date(Fields& fields) {
    const toml::node* node = fields.find("date");
    if (node == nullptr) return std::nullopt;
    if (const auto* own = node->as_date()) {
      const toml::date& d = own->get();
      const time::Date day{std::chrono::year(d.year), std::chrono::month(d.month),
                           std::chrono::day(d.day)};
      return written(fields, "date", *node, time::print(day));
    }
    return text(fields, "date", "2025-07-12");
  }

  // A time of TOML's own, or the same in quotes.
  void time_of_day(Fields& fields, PastStep& step) {
    const toml::node* node = fields.find("time");
    if (node == nullptr) return;
    if (const auto* own = node->as_time()) {
      const auto two = [](unsigned n) { return (n < 10 ? "0" : "") + std::to_string(n); };
      step.facts.push_back({"time", written(fields, "time", *node,
                                            two(own->get().hour) + ":" + two(own->get().minute))});
      return;
    }
    if (auto text = this->text(fields, "time", "18:30")) {
      step.facts.push_back({"time", std::move(*text)});
    }
  }

  void step(Fields& fields, const std::optional<Written>& usual, PastStep& step) {
    if (auto name = text(fields, "name", "bottom lam")) {
      step.step = std::move(*name);
    }
    if (const auto word = text(fields, "step", "sand")) {
      const bool of_board = step.step.text.empty();
      step.step = of_board ? *word
                           : Written{step.step.text + "/" + word->text, word->key, word->line,
                                     word->column, word->source_line};
    } else if (step.step.text.empty() && !fields.has("name")) {
      fields.missing("name", "a coat, e.g. name = \"bottom lam\"");
    }
    if (auto own = date(fields)) {
      step.date = std::move(*own);
    } else if (usual) {
      step.date = *usual;
    } else if (!fields.has("date")) {
      fields.missing("date", "a day, e.g. date = 2025-07-12, here or in its [[board]]");
    }
    time_of_day(fields, step);
    value(fields, "minutes", "minutes", "35", step);
    value(fields, "air", "air", "21 C", step);
    value(fields, "humidity", "humidity", "60 %", step);
    value(fields, "resin", "resin", "slow", step);
    value(fields, "mixed", "mixed", "262 g", step);
    value(fields, "part_a", "part-a", "182 g", step);
    value(fields, "part_b", "part-b", "80 g", step);
    value(fields, "left", "left", "9 g", step);
    value(fields, "spilled", "spilled", "4 g", step);
    values(fields, "cloth", "{ e4 = \"1.9 m\" }", step);
    values(fields, "used", "{ side-box = 2 }", step);
    values(fields, "lot", "{ e4 = \"roll-2\" }", step);
    value(fields, "note", "note", "two drips at the tail", step);
    put_in_order(step);
    fields.done();
  }

  Document& document_;
};

base::Result<PastBoards> parse_past_toml(std::string text, std::string name) {
  PastBoards past;
  past.name = name;
  base::Result<Document> document = Document::parse(text, name);
  if (!document) return base::fail(std::move(document.error()));
  document->set_homes(homes);
  Fields root(*document, document->root(), "");
  PastReader reader(*document);
  if (root.has("board") && root.table().get("board")->is_table()) {
    return base::fail({.code = "file.other_kind",
                       .message = "this is a job file, not a file of past boards",
                       .file = past.name,
                       .expected = "[[board]]s with their [[board.coat]]s"});
  }
  for (Fields& board : root.subtables("board", "[[board]]", Must::be_there)) {
    reader.board(board, past);
  }
  root.done();
  if (!document->faultless()) return base::fail(document->take_problems());
  return past;
}

bool is_table(std::string_view name) {
  std::string end(name.substr(name.size() - std::min<std::size_t>(name.size(), 4)));
  std::transform(end.begin(), end.end(), end.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
  return end == ".csv";
}

}  // namespace

bool may_repeat(std::string_view fact) {
  return fact == "cloth" || fact == "used" || fact == "lot" || fact == "note";
}

void put_in_order(PastStep& step) {
  const auto rank = [](const PastFact& fact) {
    return std::find(past_facts.begin(), past_facts.end(), fact.what) - past_facts.begin();
  };
  std::stable_sort(step.facts.begin(), step.facts.end(),
                   [&](const PastFact& a, const PastFact& b) { return rank(a) < rank(b); });
}

base::Result<PastBoards> parse_past_boards(std::string text, std::string name) {
  if (is_table(name)) return parse_past_table(text, std::move(name));
  return parse_past_toml(std::move(text), std::move(name));
}

base::Result<PastBoards> read_past_boards(const std::filesystem::path& path) {
  base::Result<std::string> text = read_bytes(path, past_kind);
  if (!text) return base::fail(std::move(text.error()));
  return parse_past_boards(std::move(*text), path.string());
}

base::Problem at_written(base::Problem problem, const PastBoards& past, const Written& written) {
  problem.file = past.name;
  problem.line = written.line;
  problem.column = written.column;
  problem.source_line = written.source_line;
  problem.key = written.key;
  if (problem.found.empty()) problem.found = base::shown(written.text);
  return problem;
}

}  // namespace wetout::files
