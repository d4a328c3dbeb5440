#include "document.hpp"

#include <algorithm>
#include <tuple>
#include <utility>

#include "key_depth.hpp"
#include "syntax.hpp"
#include "text_file.hpp"

namespace wetout::files {

Document::Document(std::string_view text, std::string_view name, toml::table root)
    : name_(name), lines_(text), root_(std::move(root)) {}

base::Result<Document> Document::parse(std::string_view text, std::string_view name) {
  if (base::Problems wrong = wrong_text(text, name); !wrong.empty()) {
    return base::fail(std::move(wrong));
  }
  const std::string_view plain = text.substr(text.starts_with("\xef\xbb\xbf") ? 3 : 0);
  if (const auto deep = too_many_parts(plain)) {
    const Lines lines(text);
    const Position at = lines.position(*deep);
    return base::fail(
        {.code = "toml.syntax",
         .message = "this key has too many parts",
         .file = std::string(name),
         .line = at.line,
         .column = at.column,
         .expected = "at most " + std::to_string(most_key_parts) + " words with dots between them",
         .source_line = lines.shown(at)});
  }
  try {
    return Document(text, name, toml::parse(text));
  } catch (const toml::parse_error& error) {
    return base::fail(explain(error.description(), begin_of(error.source()), Lines(text), name));
  }
}

std::string_view Document::home_of(std::string_view key) const {
  const auto home = std::find_if(homes_.begin(), homes_.end(),
                                 [&](const Home& candidate) { return candidate.key == key; });
  return home == homes_.end() ? std::string_view() : home->place;
}

std::string Document::written(const toml::source_region& region) const {
  return lines_.slice(begin_of(region), end_of(region));
}

std::string Document::written(const toml::node& node) const { return written(node.source()); }

void Document::add(base::Problem problem, Position at) {
  if (full()) return;
  problem.file = name_;
  problem.line = at.line;
  problem.column = at.column;
  problems_.push_back(std::move(problem));
}

void Document::add_at(base::Problem problem, const toml::node& node) {
  if (problem.found.empty() && !full()) problem.found = written(node);
  add(std::move(problem), begin_of(node.source()));
}

base::Problems Document::take_problems() {
  std::stable_sort(problems_.begin(), problems_.end(),
                   [](const base::Problem& a, const base::Problem& b) {
                     return std::tie(a.line, a.column) < std::tie(b.line, b.column);
                   });
  for (base::Problem& problem : problems_) {
    problem.source_line = lines_.shown({problem.line, problem.column});
  }
  if (full()) {
    problems_.push_back({.code = "file.more_problems",
                         .message = "the file was not looked at any further",
                         .file = std::string(name_),
                         .hint = "mend the first ones and check the file again"});
  }
  return std::exchange(problems_, {});
}

}  // namespace wetout::files
