// The program with every command that is described, whether this build offers it or not.
#pragma once

#include <string>
#include <vector>

#include "commands.hpp"
#include "completion.hpp"
#include "parsed.hpp"

namespace wetout::cli {

inline const Program& everything() {
  static const Program program = described_program([](std::string_view) { return true; });
  return program;
}

inline base::Result<Parsed> parsed(const std::vector<std::string>& args) {
  return parse(everything(), args);
}

/// The problems of a bad command line; empty when it is a good one.
inline base::Problems problems(const std::vector<std::string>& args) {
  const auto result = parsed(args);
  return result ? base::Problems{} : result.error();
}

/// Code and key of the only problem, "code key"; else how many there are.
inline std::string problem(const std::vector<std::string>& args) {
  const base::Problems all = problems(args);
  if (all.size() != 1) return std::to_string(all.size()) + " problems";
  return all.front().code + (all.front().key.empty() ? "" : " " + all.front().key);
}

/// Every command that can be typed, hidden ones included: "complete-words" has no help but an
/// argument or two.
inline std::vector<Place> all_places() {
  std::vector<Place> out = places(everything());
  for (const Command& command : everything().commands) {
    if (command.hidden) out.push_back({{command.name}, &command});
  }
  return out;
}

/// A value that an argument takes.
inline std::string a_value(const Argument& argument) {
  switch (argument.reads) {
    case Reads::text:
      return "some-text";
    case Reads::temperature:
      return "-5C";
    case Reads::mass:
      return "245g";
    case Reads::amount:
      return "0g";
    case Reads::percent:
      return "62%";
    case Reads::duration:
      return "25min";
    case Reads::time:
      return "2026-06-14T18:30:00-07:00";
    case Reads::past_time:
      return "18:30";
    case Reads::date:
      return "2026-06-14";
    case Reads::money:
      return "48.00 USD";
    case Reads::count:
      return "3";
    case Reads::choice:
      return std::string(argument.choices.back());
  }
  return "";
}

}  // namespace wetout::cli
