#include "fields.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "say.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/base/words.hpp"
#include "wetout/units/print.hpp"

namespace wetout::files {
namespace {

bool has_control(std::string_view text) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto c = static_cast<unsigned char>(text[i]);
    if (c < 0x20 || c == 0x7f) return true;
    if (c == 0xc2 && i + 1 < text.size() && static_cast<unsigned char>(text[i + 1]) < 0xa0) {
      return true;
    }
  }
  return false;
}

bool is_money(std::string_view wanted) { return wanted.find("money") != std::string_view::npos; }

std::string one_of(const std::vector<std::string_view>& words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) out += i + 1 == words.size() ? " or " : ", ";
    out += enclosed(words[i], '"');
  }
  return out;
}

std::string did_you_mean(const std::optional<std::string>& meant) {
  return meant ? "did you mean \"" + *meant + "\"?" : std::string();
}

}  // namespace

std::string with_unit(std::string_view wanted, std::string_view example) {
  return std::string(wanted) + (is_money(wanted) ? " with its currency" : " with its unit") +
         ", e.g. " + enclosed(example, '"');
}

Fields::Fields(Document& document, const toml::table& table, std::string path)
    : document_(&document), table_(&table), path_(std::move(path)) {
  known_.reserve(8);
}

std::string Fields::path_of(std::string_view key) const {
  return path_.empty() ? base::shown(key) : path_ + "." + base::shown(key);
}

Position Fields::position_of(std::string_view key) const {
  const toml::node* node = table_->get(key);
  return node == nullptr ? position() : begin_of(node->source());
}

const toml::node* Fields::find(std::string_view key) {
  known_.push_back(key);
  return table_->get(key);
}

const toml::key* Fields::key_of(std::string_view key) const {
  const auto found = table_->find(key);
  return found == table_->cend() ? nullptr : &found->first;
}

void Fields::wrong_node(const toml::node& node, std::string_view key, base::Problem problem) {
  problem.key = path_of(key);
  // A reader quotes the text; the file may have written it with escapes.
  problem.found = document_->written(node);
  document_->add(std::move(problem), begin_of(node.source()));
}

void Fields::wrong_value(std::string_view key, base::Problem problem) {
  const toml::node* node = table_->get(key);
  if (node != nullptr) {
    wrong_node(*node, key, std::move(problem));
  } else {
    problem.key = path_of(key);
    document_->add(std::move(problem), position());
  }
}

void Fields::wrong_key(std::string_view key, base::Problem problem) {
  const toml::key* place = key_of(key);
  problem.key = path_of(key);
  if (problem.found.empty() && place != nullptr) problem.found = base::shown(place->str());
  document_->add(std::move(problem), place == nullptr ? position() : begin_of(place->source()));
}

void Fields::wrong_table(base::Problem problem) {
  if (problem.key.empty()) problem.key = path_;
  document_->add(std::move(problem), position());
}

void Fields::missing(std::string_view key, std::string expected) {
  missing_.push_back({std::string(key), std::move(expected)});
}

void Fields::misplaced(std::string_view key, std::string why, std::string expected) {
  if (find(key) == nullptr) return;
  wrong_key(key,
            {.code = "key.misplaced", .message = std::move(why), .expected = std::move(expected)});
}

void Fields::wrong_type(const toml::node& node, std::string_view key, std::string expected,
                        std::string hint) {
  wrong_node(node, key,
             {.code = "type.wrong",
              .message = quoted(key) + " is not what it should be",
              .expected = std::move(expected),
              .hint = std::move(hint)});
}

const std::string* Fields::quantity_text(const toml::node& node, std::string_view key,
                                         std::string_view wanted, std::string_view unit,
                                         std::string_view example) {
  if (const auto* text = node.as_string()) return &text->get();
  const std::optional<double> number = node.is_number() ? node.value<double>() : std::nullopt;
  if (!number) {
    wrong_type(node, key, with_unit(wanted, example));
    return nullptr;
  }
  const std::string written = document_->written(node);
  if (!std::isfinite(*number)) {
    wrong_node(node, key,
               {.code = "number.not_finite",
                .message = written + " is not " + std::string(wanted),
                .expected = with_unit(wanted, example)});
    return nullptr;
  }
  std::string better(example);
  if (*number > 0 && unit == "%" && *number < 1) {
    better = units::print_percent(*number);
  } else if (*number > 0 && *number < 1e6) {
    better = units::print_number(*number, 4) + " " + std::string(unit);
  }
  wrong_node(node, key,
             {.code = "unit.missing",
              .message = written + (is_money(wanted) ? " has no currency" : " has no unit"),
              .expected = with_unit(wanted, better),
              .hint = "write it in quotes: " + enclosed(better, '"')});
  return nullptr;
}

void Fields::out_of_range(const toml::node& node, std::string_view key, std::string_view wanted,
                          std::string_view range, std::string_view example) {
  wrong_node(node, key,
             {.code = "value.range",
              .message = quoted(key) + " must be " + std::string(range),
              .expected = std::string(wanted) + ", " + std::string(range) + ", e.g. \"" +
                          std::string(example) + "\""});
}

std::optional<std::string> Fields::text(std::string_view key, std::string_view example, Must must) {
  const toml::node* node = find(key);
  if (node != nullptr) return text_in(*node, key, example);
  if (must == Must::be_there) missing(key, "a text, e.g. \"" + std::string(example) + "\"");
  return std::nullopt;
}

std::optional<std::string> Fields::text_in(const toml::node& node, std::string_view key,
                                           std::string_view example) {
  const std::string expected = "a text in quotes, e.g. \"" + std::string(example) + "\"";
  const auto* text = node.as_string();
  if (text == nullptr) {
    const bool plain = node.is_number() || node.is_boolean() || node.is_date() || node.is_time();
    wrong_type(node, key, expected,
               plain ? "write it in quotes: \"" + document_->written(node) + "\"" : "");
    return std::nullopt;
  }
  if (text->get().find_first_not_of(' ') == std::string::npos) {
    wrong_node(node, key,
               {.code = "text.empty", .message = quoted(key) + " is empty", .expected = expected});
    return std::nullopt;
  }
  if (has_control(text->get())) {
    wrong_node(node, key,
               {.code = "text.control",
                .message = quoted(key) + " holds a line break or another control character",
                .expected = expected});
    return std::nullopt;
  }
  return text->get();
}

std::optional<bool> Fields::flag(std::string_view key) {
  const toml::node* node = find(key);
  if (node == nullptr) return std::nullopt;
  if (const auto* value = node->as_boolean()) return value->get();
  wrong_type(*node, key, "true or false, without quotes");
  return std::nullopt;
}

std::optional<std::int64_t> Fields::whole(std::string_view key, std::int64_t low, std::int64_t high,
                                          std::string_view example, Must must) {
  const std::string expected = "a whole number from " + std::to_string(low) + " to " +
                               std::to_string(high) + ", without quotes, e.g. " +
                               std::string(example);
  const toml::node* node = find(key);
  if (node == nullptr) {
    if (must == Must::be_there) missing(key, expected);
    return std::nullopt;
  }
  const auto* value = node->as_integer();
  if (value == nullptr) {
    wrong_type(*node, key, expected);
    return std::nullopt;
  }
  if (value->get() < low || value->get() > high) {
    wrong_node(*node, key,
               {.code = "value.range",
                .message = quoted(key) + " must be from " + std::to_string(low) + " to " +
                           std::to_string(high),
                .expected = expected});
    return std::nullopt;
  }
  return value->get();
}

std::optional<double> Fields::number(std::string_view key, double low, bool low_allowed,
                                     double high, std::string_view range, std::string_view example,
                                     Must must) {
  const std::string expected =
      "a number " + std::string(range) + ", without quotes, e.g. " + std::string(example);
  const toml::node* node = find(key);
  if (node == nullptr) {
    if (must == Must::be_there) missing(key, expected);
    return std::nullopt;
  }
  const std::optional<double> value = node->is_number() ? node->value<double>() : std::nullopt;
  if (!value) {
    wrong_type(*node, key, expected);
    return std::nullopt;
  }
  // Written so that a NaN is outside.
  const bool fits = (low_allowed ? *value >= low : *value > low) && *value <= high;
  if (!fits) {
    wrong_node(*node, key,
               {.code = std::isfinite(*value) ? "value.range" : "number.not_finite",
                .message = quoted(key) + " must be " + std::string(range),
                .expected = expected});
    return std::nullopt;
  }
  return value;
}

std::optional<std::size_t> Fields::chosen(std::string_view key,
                                          const std::vector<std::string_view>& words, Must must) {
  const toml::node* node = find(key);
  if (node == nullptr) {
    if (must == Must::be_there) missing(key, one_of(words));
    return std::nullopt;
  }
  const auto* text = node->as_string();
  if (text == nullptr) {
    wrong_type(*node, key, one_of(words));
    return std::nullopt;
  }
  const auto found = std::find(words.begin(), words.end(), text->get());
  if (found != words.end()) return static_cast<std::size_t>(found - words.begin());
  const auto meant = base::nearest(text->get(), {words.begin(), words.end()});
  wrong_node(*node, key,
             {.code = "word.unknown",
              .message = quoted(text->get()) + " is not a word for " + quoted(key),
              .expected = one_of(words),
              .hint = did_you_mean(meant)});
  return std::nullopt;
}

std::optional<Fields> Fields::subtable(std::string_view key, std::string_view example, Must must) {
  const toml::node* node = find(key);
  if (node == nullptr) {
    if (must == Must::be_there) missing(key, std::string(example));
    return std::nullopt;
  }
  if (const toml::table* table = node->as_table()) return Fields(*document_, *table, path_of(key));
  wrong_type(*node, key, "a table, e.g. " + std::string(example),
             node->is_array_of_tables() && !path_of(key).starts_with('[')
                 ? "it comes once: single brackets, [" + path_of(key) + "]"
                 : "");
  return std::nullopt;
}

std::vector<Fields> Fields::subtables(std::string_view key, std::string_view example, Must must,
                                      std::size_t most) {
  std::vector<Fields> tables;
  const toml::node* node = find(key);
  if (node == nullptr) {
    if (must == Must::be_there) missing(key, std::string(example));
    return tables;
  }
  const toml::array* array = node->as_array();
  if (array == nullptr) {
    const toml::table* alone = node->as_table();
    const bool braces = alone != nullptr && alone->is_inline();
    std::string hint;
    if (braces) hint = "put it in brackets: [ { ... } ]";
    if (alone != nullptr && !braces) hint = "write it with double brackets";
    wrong_type(*node, key, "a list of tables, e.g. " + std::string(example), hint);
    return tables;
  }
  tables.reserve(std::min(array->size(), most));
  for (std::size_t i = 0; i < array->size(); ++i) {
    const toml::node& member = (*array)[i];
    if (i == most) {
      wrong_node(member, key,
                 {.code = "value.range",
                  .message = "more than " + std::to_string(most) + " of these make no sense",
                  .expected = "at most " + std::to_string(most)});
      break;
    }
    if (const toml::table* table = member.as_table()) {
      tables.emplace_back(*document_, *table, path_of(key) + "[" + std::to_string(i) + "]");
    } else {
      wrong_type(member, key, "a list of tables, e.g. " + std::string(example));
    }
  }
  if (array->empty() && must == Must::be_there) missing(key, std::string(example));
  return tables;
}

std::vector<const toml::node*> Fields::list(std::string_view key, std::string_view example) {
  std::vector<const toml::node*> members;
  const toml::node* node = find(key);
  if (node == nullptr) return members;
  const toml::array* array = node->as_array();
  if (array == nullptr) {
    wrong_type(*node, key, "a list, e.g. " + std::string(example),
               node->is_string() ? "put it in brackets: [ " + document_->written(*node) + " ]"
                                 : std::string());
    return members;
  }
  members.reserve(array->size());
  for (const toml::node& member : *array) members.push_back(&member);
  return members;
}

void Fields::unknown(const toml::key& key) {
  const std::string_view typed = key.str();
  std::vector<std::string> absent, all;
  for (const std::string_view known : known_) {
    all.emplace_back(known);
    if (!has(known)) absent.emplace_back(known);
  }
  base::Problem problem{.code = "key.unknown",
                        .message = quoted(typed) + (path_.empty() ? " is not a table of this file"
                                                                  : " is not a key of this table")};
  const std::string_view home = document_->home_of(typed);
  if (!home.empty()) {
    problem.hint = quoted(typed) + " belongs in " + std::string(home);
  } else {
    auto meant = base::nearest(typed, absent);
    if (!meant) meant = base::nearest(typed, all);
    problem.hint = did_you_mean(meant);
    // What was misspelt is not missing too.
    std::erase_if(missing_, [&](const Missing& gap) { return meant && gap.key == *meant; });
  }
  std::sort(all.begin(), all.end());
  all.erase(std::unique(all.begin(), all.end()), all.end());
  for (const std::string& known : all) {
    problem.expected += (problem.expected.empty() ? "one of " : ", ") + known;
  }
  wrong_key(typed, std::move(problem));
}

void Fields::done() {
  if (document_->full()) return;
  for (auto member = table_->cbegin(); member != table_->cend() && !document_->full(); ++member) {
    const bool known = std::find(known_.begin(), known_.end(), member->first.str()) != known_.end();
    if (!known) unknown(member->first);
  }
  for (Missing& gap : missing_) {
    wrong_table({.code = "key.missing",
                 .message = quoted(gap.key) + (path_.empty() ? " is missing in this file"
                                                             : " is missing in this table"),
                 .key = path_of(gap.key),
                 .expected = std::move(gap.expected)});
  }
  missing_.clear();
}

}  // namespace wetout::files
