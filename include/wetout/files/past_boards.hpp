// Boards of the past, to be entered into a log: as TOML, or as a table with one fact in a line
// (docs/formats/past_boards.md). What the facts mean is for whoever records them to say.
#pragma once

#include <array>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/problem.hpp"

namespace wetout::files {

/// What is written at one place of the file.
struct Written {
  std::string text;
  std::string key;  ///< of TOML "board[0].coat[1].mixed", of a table the name of the column
  int line = 0;     ///< from 1
  int column = 0;   ///< from 1, in characters
  std::string source_line;
};

/// Words of facts, in the order in which a step has them. Several cloth, used, lot and note may
/// stand in a step, all others once.
inline constexpr std::array<std::string_view, 14> past_facts{
    "time",   "minutes", "air",     "humidity", "resin", "mixed", "part-a",
    "part-b", "left",    "spilled", "cloth",    "used",  "lot",   "note"};

struct PastFact {
  std::string what;  ///< one of past_facts
  Written value;     ///< of cloth, used and lot "ID=VALUE"
};

/// One step of one board on one day.
struct PastStep {
  Written board;                ///< its name
  Written step;                 ///< "bottom lam", "bottom-lam/sand"
  Written date;                 ///< "2025-07-12"
  std::vector<PastFact> facts;  ///< in the order of past_facts
};

struct PastBoards {
  std::string name;             ///< of the file, as the user named it
  std::vector<PastStep> steps;  ///< in the order of the file, at least one
};

/// A name that ends in .csv is a table. Everything wrong is reported (above 1000 problems the first
/// ones). Problems: those of read_job() or read_table(), "past.fact" (no such fact), "past.twice"
/// (one that may stand once), "import.column", "import.twice", "import.missing".
base::Result<PastBoards> read_past_boards(const std::filesystem::path& path);
base::Result<PastBoards> parse_past_boards(std::string text, std::string name);

/// A problem with the place of what is written, and what stands there.
base::Problem at_written(base::Problem problem, const PastBoards& past, const Written& written);

}  // namespace wetout::files
