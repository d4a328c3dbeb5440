// One table of a file, read key by key. What is wrong goes to the document; a value comes back only
// when it can be used.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "document.hpp"
#include "measure.hpp"

namespace wetout::files {

enum class Must { be_there, not_be_there };

/// A word of a list and what it means.
template <class T>
struct Word {
  std::string_view word;
  T meaning;
};

/// `a length with its unit, e.g. "76 in"`.
std::string with_unit(std::string_view wanted, std::string_view example);

class Fields {
 public:
  /// `path` is the key of the table as the user would write it: "coat[2].ply[0]"; empty: the root.
  Fields(Document& document, const toml::table& table, std::string path);

  [[nodiscard]] Document& document() const { return *document_; }
  [[nodiscard]] const toml::table& table() const { return *table_; }
  [[nodiscard]] const std::string& path() const { return path_; }
  [[nodiscard]] std::string path_of(std::string_view key) const;
  [[nodiscard]] Position position() const { return begin_of(table_->source()); }
  /// Of the value; of the table when the key is not there.
  [[nodiscard]] Position position_of(std::string_view key) const;

  /// The value of a key, which is known from now on.
  const toml::node* find(std::string_view key);
  [[nodiscard]] bool has(std::string_view key) const { return table_->contains(key); }
  /// The key is known in this table, though nobody reads it: no unknown key.
  void know(std::string_view key) { find(key); }

  template <class T>
  std::optional<T> quantity(std::string_view key, const Measure<T>& measure,
                            Must must = Must::not_be_there) {
    const toml::node* node = find(key);
    if (node == nullptr) {
      if (must == Must::be_there) missing(key, with_unit(measure.wanted, measure.example));
      return std::nullopt;
    }
    return quantity_in(*node, key, measure);
  }
  /// Of a value that is not a key's own: the member of a list.
  template <class T>
  std::optional<T> quantity_in(const toml::node& node, std::string_view key,
                               const Measure<T>& measure);

  /// A text of at least one character, none of them a control character.
  std::optional<std::string> text(std::string_view key, std::string_view example,
                                  Must must = Must::not_be_there);
  std::optional<std::string> text_in(const toml::node& node, std::string_view key,
                                     std::string_view example);
  std::optional<bool> flag(std::string_view key);
  std::optional<std::int64_t> whole(std::string_view key, std::int64_t low, std::int64_t high,
                                    std::string_view example, Must must = Must::not_be_there);
  /// A plain number, for what has no unit.
  std::optional<double> number(std::string_view key, double low, bool low_allowed, double high,
                               std::string_view range, std::string_view example,
                               Must must = Must::not_be_there);

  template <class T, std::size_t n>
  std::optional<T> choice(std::string_view key, const Word<T> (&words)[n],
                          Must must = Must::not_be_there) {
    std::vector<std::string_view> list;
    for (const Word<T>& word : words) list.push_back(word.word);
    const std::optional<std::size_t> index = chosen(key, list, must);
    if (!index) return std::nullopt;
    return words[*index].meaning;
  }

  std::optional<Fields> subtable(std::string_view key, std::string_view example,
                                 Must must = Must::not_be_there);
  /// [[key]], or a list of tables in braces. More than `most` make no sense, and readers compare
  /// them with each other.
  std::vector<Fields> subtables(std::string_view key, std::string_view example,
                                Must must = Must::not_be_there, std::size_t most = 1000);
  /// The members of a list, whatever they are.
  std::vector<const toml::node*> list(std::string_view key, std::string_view example);

  /// Problems of this table.
  void wrong_value(std::string_view key, base::Problem problem);
  void wrong_node(const toml::node& node, std::string_view key, base::Problem problem);
  void wrong_key(std::string_view key, base::Problem problem);
  void wrong_table(base::Problem problem);
  /// Said by done(), unless a misspelt key was probably meant.
  void missing(std::string_view key, std::string expected);
  /// A key that is known elsewhere but not here. `why` is a whole sentence.
  void misplaced(std::string_view key, std::string why, std::string expected);

  /// Call when every key has been asked for: reports what is missing and what nobody knows.
  void done();

 private:
  struct Missing {
    std::string key;
    std::string expected;
  };

  /// The text to read a quantity from, or nothing after saying why.
  const std::string* quantity_text(const toml::node& node, std::string_view key,
                                   std::string_view wanted, std::string_view unit,
                                   std::string_view example);
  void out_of_range(const toml::node& node, std::string_view key, std::string_view wanted,
                    std::string_view range, std::string_view example);
  void wrong_type(const toml::node& node, std::string_view key, std::string expected,
                  std::string hint = "");
  std::optional<std::size_t> chosen(std::string_view key,
                                    const std::vector<std::string_view>& words, Must must);
  const toml::key* key_of(std::string_view key) const;
  void unknown(const toml::key& key);

  Document* document_;
  const toml::table* table_;
  std::string path_;
  std::vector<std::string_view> known_;  // literals
  std::vector<Missing> missing_;
};

template <class T>
std::optional<T> Fields::quantity_in(const toml::node& node, std::string_view key,
                                     const Measure<T>& measure) {
  const std::string* text = quantity_text(node, key, measure.wanted, measure.unit, measure.example);
  if (text == nullptr) return std::nullopt;
  base::Result<T> value = measure.read(*text);
  if (!value) {
    for (base::Problem& problem : value.error()) {
      problem.expected = with_unit(measure.wanted, measure.example);
      wrong_node(node, key, std::move(problem));
    }
    return std::nullopt;
  }
  if (!within(measure, *value)) {
    out_of_range(node, key, measure.wanted, measure.range, measure.example);
    return std::nullopt;
  }
  return std::move(*value);
}

}  // namespace wetout::files
