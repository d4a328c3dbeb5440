// From keys back to places in the file.
#include <charconv>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "document.hpp"
#include "wetout/files/job_file.hpp"

namespace wetout::files {
namespace {

std::string_view first_word(std::string_view key) { return key.substr(0, key.find_first_of(".[")); }

/// The index in "[7]" at the start of `key`, which is taken off.
std::optional<std::size_t> take_index(std::string_view& key) {
  std::size_t index = 0;
  if (!key.starts_with('[')) return std::nullopt;
  const auto [end, error] = std::from_chars(key.data() + 1, key.data() + key.size(), index);
  if (error != std::errc() || end == key.data() + key.size() || *end != ']') return std::nullopt;
  key.remove_prefix(static_cast<std::size_t>(end - key.data()) + 1);
  return index;
}

/// "board.width[1]" as the file has it: "board.width.tail12".
std::string in_file(std::string_view key, const Source& source) {
  if (const auto alias = source.aliases.find(std::string(key)); alias != source.aliases.end()) {
    return alias->second;
  }
  const std::size_t bracket = key.find('[');
  if (bracket == std::string_view::npos) return std::string(key);
  const auto list = source.members.find(std::string(key.substr(0, bracket)));
  if (list == source.members.end()) return std::string(key);
  std::string_view rest = key.substr(bracket);
  const auto index = take_index(rest);
  if (!index || *index >= list->second.size()) return std::string(key);
  return list->second[*index] + std::string(rest);
}

struct Found {
  const toml::node* node;
  bool whole;  ///< the whole key is there
};

/// As far down as the key can be followed.
Found follow(const toml::table& root, std::string_view key) {
  const toml::node* node = &root;
  while (!key.empty()) {
    const toml::node* next = nullptr;
    if (key.front() == '[') {
      const auto index = take_index(key);
      const toml::array* array = node->as_array();
      if (!index || array == nullptr) return {node, false};
      next = array->get(*index);
    } else {
      if (key.front() == '.') key.remove_prefix(1);
      const std::string_view word = first_word(key);
      const toml::table* table = node->as_table();
      if (table == nullptr || word.empty()) return {node, false};
      next = table->get(word);
      key.remove_prefix(word.size());
    }
    if (next == nullptr) return {node, false};
    node = next;
  }
  return {node, true};
}

bool belongs(const base::Problem& problem, const Source& source) {
  if (problem.key.empty() || !problem.file.empty() || problem.line > 0) return false;
  const std::string_view word = first_word(problem.key);
  for (const std::string& table : source.tables) {
    if (table == word) return true;
  }
  return false;
}

}  // namespace

base::Problems locate(base::Problems problems, const Source& source) {
  std::optional<base::Result<Document>> document;
  for (base::Problem& problem : problems) {
    if (!belongs(problem, source)) continue;
    if (!document) document = Document::parse(source.text, source.name);
    problem.file = source.name;
    if (!*document) continue;  // the text was changed since it was read
    problem.key = in_file(problem.key, source);
    const auto [node, whole] = follow((*document)->root(), problem.key);
    const Position place = begin_of(node->source());
    problem.line = place.line;
    problem.column = place.column;
    problem.source_line = (*document)->lines().shown(place);
    if (problem.found.empty() && (whole || !node->is_table())) {
      problem.found = (*document)->written(*node);
    }
  }
  return problems;
}

}  // namespace wetout::files
