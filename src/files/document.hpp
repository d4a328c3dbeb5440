// A parsed file and the problems found in it. Only this header and those that include it see
// toml++.
#pragma once

#include <toml++/toml.h>

#include <span>
#include <string>
#include <string_view>

#include "lines.hpp"
#include "wetout/base/problem.hpp"

namespace wetout::files {

/// Where a key is at home, for keys written in the wrong table.
struct Home {
  std::string_view key;
  std::string_view place;
};

class Document {
 public:
  /// Nothing is copied: `text` and `name` must outlive this. Fails on what is no text ("file.*")
  /// and on the first syntax error ("toml.*").
  static base::Result<Document> parse(std::string_view text, std::string_view name);

  [[nodiscard]] const toml::table& root() const { return root_; }
  [[nodiscard]] const Lines& lines() const { return lines_; }

  /// Keys of this kind of file and their tables, for hints.
  void set_homes(std::span<const Home> homes) { homes_ = homes; }
  [[nodiscard]] std::string_view home_of(std::string_view key) const;

  /// As the user wrote it.
  [[nodiscard]] std::string written(const toml::source_region& region) const;
  /// The header of a table, the value of everything else.
  [[nodiscard]] std::string written(const toml::node& node) const;

  /// `problem` without its place; file, line and column are added here. Beyond a thousand they
  /// are dropped.
  void add(base::Problem problem, Position at);
  /// The same with what stands at the value as `found`, where the problem says nothing of its own.
  void add_at(base::Problem problem, const toml::node& node);

  /// A file that is all wrong would cost more to explain than it is worth.
  [[nodiscard]] bool full() const { return problems_.size() >= most_problems; }
  [[nodiscard]] bool faultless() const { return problems_.empty(); }
  /// In the order of the file, with source lines.
  [[nodiscard]] base::Problems take_problems();

 private:
  static constexpr std::size_t most_problems = 1000;

  Document(std::string_view text, std::string_view name, toml::table root);

  std::string_view name_;
  Lines lines_;
  toml::table root_;
  std::span<const Home> homes_;
  base::Problems problems_;
};

inline Position begin_of(const toml::source_region& region) {
  return {static_cast<int>(region.begin.line), static_cast<int>(region.begin.column)};
}
inline Position end_of(const toml::source_region& region) {
  return {static_cast<int>(region.end.line), static_cast<int>(region.end.column)};
}

}  // namespace wetout::files
