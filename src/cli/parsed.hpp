// A command line that has been read and checked against the description of its command.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "describe.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/time/read.hpp"
#include "wetout/time/zone.hpp"
#include "wetout/units/money.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::cli {

/// Asking for a name that the command does not describe, or as something else than it is described
/// to be, is a bug (std::logic_error). Values have been checked: asking cannot fail.
class Parsed {
 public:
  /// Texts given, by the argument's name; a flag holds one empty text for each time it was given.
  using Given = std::map<std::string, std::vector<std::string>, std::less<>>;

  Parsed(const Program& program, std::vector<std::string_view> path, Given given);

  /// "jobs"; empty when there was no command.
  [[nodiscard]] std::string_view command() const;
  /// "show" of "jobs show", the default one when none was given; else empty.
  [[nodiscard]] std::string_view subcommand() const;
  /// The description; null when there was no command.
  [[nodiscard]] const Command* description() const { return description_; }

  /// True when the argument was given.
  [[nodiscard]] bool has(std::string_view name) const;
  /// True when the flag was given.
  [[nodiscard]] bool flag(std::string_view name) const;

  /// Nothing when it was not given.
  [[nodiscard]] std::optional<std::string> text(std::string_view name) const;
  /// The text of an argument that the chosen form needs.
  [[nodiscard]] const std::string& needed(std::string_view name) const;
  /// All texts of a repeatable argument, in the order given.
  [[nodiscard]] const std::vector<std::string>& all(std::string_view name) const;

  [[nodiscard]] std::optional<units::Temperature> temperature(std::string_view name) const;
  /// Also of what is read as an amount.
  [[nodiscard]] std::optional<units::Mass> mass(std::string_view name) const;
  /// As a share of 1.
  [[nodiscard]] std::optional<double> percent(std::string_view name) const;
  [[nodiscard]] std::optional<units::Duration> duration(std::string_view name) const;
  [[nodiscard]] std::optional<int> count(std::string_view name) const;
  [[nodiscard]] std::optional<time::Date> date(std::string_view name) const;
  [[nodiscard]] std::optional<units::Money> money(std::string_view name) const;
  /// Wall times are read in `zone`. Problems: a wall time that does not exist or exists twice
  /// there; whatever else can be wrong has been refused before.
  [[nodiscard]] base::Result<std::optional<time::Instant>> time(std::string_view name,
                                                                const time::Zone& zone) const;

 private:
  const std::vector<std::string>& given(std::string_view name) const;
  const std::string* one(std::string_view name, Reads reads) const;

  const Program* program_;
  std::vector<std::string_view> path_;
  const Command* description_;
  Given given_;
};

/// Reads and checks a command line, `args` without the program's name. All that is wrong is said
/// at once where it can be. Codes: "command.unknown", "option.unknown", "option.value",
/// "option.twice", "argument.missing", "argument.extra", "argument.clash", "argument.empty",
/// "choice.unknown", "count.bad", "value.range", and those of units/read.hpp and time/read.hpp.
///
/// With --help or --version nothing but the command itself is checked. `program` must outlive the
/// result.
base::Result<Parsed> parse(const Program& program, const std::vector<std::string>& args);

/// How a command line, which may be a bad one, wants to be answered.
struct Answer {
  bool json = false;
  std::optional<std::string> color = {};
};
Answer asked_answer(const std::vector<std::string>& args);

}  // namespace wetout::cli
