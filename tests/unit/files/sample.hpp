// The example files, changed in one place, and what is said about them.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <sstream>
#include <string>
#include <string_view>

#include "wetout/files/job_file.hpp"
#include "wetout/files/shop_file.hpp"

namespace wetout::files {

inline std::string input(const std::string& name) {
  std::ifstream in(std::string(TEST_INPUTS) + "/" + name, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  EXPECT_FALSE(text.str().empty()) << name;
  return text.str();
}

/// The first `from` replaced; it must be there.
inline std::string with(std::string text, std::string_view from, std::string_view to) {
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  if (at != std::string::npos) text.replace(at, from.size(), to);
  return text;
}
inline std::string job_with(std::string_view from, std::string_view to) {
  return with(input("job.toml"), from, to);
}
inline std::string shop_with(std::string_view from, std::string_view to) {
  return with(input("shop.toml"), from, to);
}

/// A short board that is right, for tests that need lines to be few.
inline const std::string small_board = R"([board]
name = "Plank"
length = "2 m"
foam = "eps"
nose = "round"
tail = "round"
[board.width]
nose12 = "30 cm"
wide = "50 cm"
tail12 = "36 cm"
[board.thickness]
nose12 = "4 cm"
centre = "6 cm"
tail12 = "4 cm"
)";
inline const std::string small_coat = R"([[coat]]
name = "bottom hotcoat"
face = "bottom"
kind = "hotcoat"
resin = "slow"
)";

inline base::Problems job_problems(const std::string& text) {
  const auto job = parse_job(text, "job.toml");
  return job ? base::Problems{} : job.error();
}
inline base::Problems shop_problems(const std::string& text) {
  const auto shop = parse_shop(text, "shop.toml");
  return shop ? base::Problems{} : shop.error();
}

/// Every problem on a line of its own, for failure messages and for counting.
inline std::string list(const base::Problems& problems) {
  std::string out;
  for (const base::Problem& p : problems) {
    out += p.code + " " + std::to_string(p.line) + ":" + std::to_string(p.column) + " " + p.key +
           " | " + p.message + " | " + p.found + " | " + p.expected + " | " + p.hint + "\n";
  }
  return out;
}

/// What stands under the caret and after it.
inline std::string at_caret(const base::Problem& problem) {
  const std::string& line = problem.source_line;
  int column = 0;
  for (std::size_t i = 0; i < line.size(); ++i) {
    if ((static_cast<unsigned char>(line[i]) & 0xc0) == 0x80) continue;
    if (++column == problem.column) return line.substr(i);
  }
  return problem.column == column + 1 ? "<end>" : "<beyond>";
}

inline bool contains(std::string_view text, std::string_view part) {
  return text.find(part) != std::string_view::npos;
}

/// The only problem there is.
inline base::Problem only(const base::Problems& problems) {
  EXPECT_EQ(problems.size(), 1U) << list(problems);
  return problems.empty() ? base::Problem{} : problems.front();
}
inline base::Problem with_code(const base::Problems& problems, std::string_view code) {
  const auto found = std::find_if(problems.begin(), problems.end(),
                                  [&](const base::Problem& p) { return p.code == code; });
  EXPECT_NE(found, problems.end()) << code << " in\n" << list(problems);
  return found == problems.end() ? base::Problem{} : *found;
}

}  // namespace wetout::files
