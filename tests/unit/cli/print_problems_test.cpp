#include "print_problems.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "text.hpp"
#include "wetout/report/problems_document.hpp"

namespace wetout::cli {
namespace {

base::Problem at_line(std::string source_line, int column) {
  base::Problem problem;
  problem.code = "unit.missing";
  problem.message = "\"12\" has no unit";
  problem.file = "board.toml";
  problem.line = 14;
  problem.column = column;
  problem.key = "board.width.nose12";
  problem.found = "12";
  problem.expected = "a length with its unit, e.g. \"20 3/4 in\"";
  problem.hint = "write \"12 in\"";
  problem.source_line = std::move(source_line);
  return problem;
}

std::vector<std::string> lines(const base::Problem& problem) {
  std::vector<std::string> out(1);
  for (const char c : problems_text({problem}, 1, false)) {
    if (c == '\n') {
      out.emplace_back();
    } else {
      out.back() += c;
    }
  }
  return out;
}

TEST(PrintProblems, ShowPlaceLineCaretAndTheNextStep) {
  EXPECT_EQ(problems_text({at_line("nose12 = \"12\"", 10)}, 1, false),
            "board.toml:14:10: error: \"12\" has no unit\n"
            "    nose12 = \"12\"\n"
            "             ^\n"
            "    key:      board.width.nose12\n"
            "    found:    12\n"
            "    expected: a length with its unit, e.g. \"20 3/4 in\"\n"
            "    hint:     write \"12 in\"\n");
}

TEST(PrintProblems, TheCaretStandsUnderItsCharacter) {
  // A tab is shown as one blank.
  EXPECT_EQ(lines(at_line("\tnose12\t= 12", 11))[1], "     nose12 = 12");
  EXPECT_EQ(lines(at_line("\tnose12\t= 12", 11))[2], "              ^");
  // Two bytes but one column each: ä, ″.
  EXPECT_EQ(lines(at_line("ä = \"12″\" # 12", 13))[2], "                ^");
  // Two columns each: 板.
  EXPECT_EQ(lines(at_line("# 板板 12", 6))[2], "           ^");
  // None: a combining accent.
  EXPECT_EQ(lines(at_line("# e\xcc\x81 12", 6))[2], "        ^");
}

TEST(PrintProblems, LongLinesAreCutAroundTheCaret) {
  const std::string line = std::string(500, 'a') + "X" + std::string(500, 'b');
  const std::vector<std::string> shown = lines(at_line(line, 501));
  EXPECT_LE(shown[1].size(), page_columns);
  ASSERT_NE(shown[2].find('^'), std::string::npos);
  EXPECT_EQ(shown[1][shown[2].find('^')], 'X');
}

TEST(PrintProblems, StayWithinEightyColumns) {
  base::Problem problem = at_line("x = 1", 1);
  problem.message = problem.hint = problem.expected =
      "word word word word word word word word "
      "word word word word word word word word word";
  for (const std::string& line : lines(problem)) EXPECT_LE(line.size(), page_columns) << line;
}

TEST(PrintProblems, WithoutAFileTheProgramSpeaks) {
  base::Problem problem;
  problem.message = "--air: \"22\" has no unit";
  problem.key = "--air";
  problem.found = "22";
  problem.hint = "write \"22 C\"";
  // What the message says already is not said again.
  EXPECT_EQ(problems_text({problem}, 1, false),
            "wetout: error: --air: \"22\" has no unit\n"
            "    hint:     write \"22 C\"\n");
}

TEST(PrintProblems, EscapeSequencesOfAFileNeverReachTheTerminal) {
  base::Problem problem = at_line("a = \"\x1b[31m\x9b\"", 5);
  problem.file = "ev\x1bil.toml";
  problem.message = "bad \x1b]0;title\x07 text";
  problem.found = "\x1b[2J";
  const std::string text = problems_text({problem}, 1, false);
  for (const char c : text) {
    EXPECT_TRUE(c == '\n' || static_cast<unsigned char>(c) >= 0x20) << static_cast<int>(c);
  }
}

TEST(PrintProblems, ColourOnlyAddsSequences) {
  const base::Problems problems = {at_line("nose12 = \"12\"", 10), at_line("x = 1", 3)};
  const std::string coloured = problems_text(problems, 9, true);
  EXPECT_NE(coloured.find("\x1b[1;31merror:\x1b[0m"), std::string::npos);
  EXPECT_NE(coloured.find("\x1b[1;31m^\x1b[0m"), std::string::npos);
  std::string plain;
  bool inside = false;
  for (const char c : coloured) {
    if (c == '\x1b') inside = true;
    if (!inside) plain += c;
    if (c == 'm') inside = false;
  }
  // 'm' itself is only dropped inside a sequence.
  EXPECT_EQ(plain, problems_text(problems, 9, false));
}

TEST(PrintProblems, ManyAreCutWithTheirNumber) {
  const base::Problems problems(120, at_line("x = 1", 3));
  const std::string text = problems_text(problems, 50, false);
  EXPECT_NE(text.find("wetout: 70 more problems; --verbose shows them all\n"), std::string::npos);
  EXPECT_EQ(problems_text(problems, 120, false).find("more problems"), std::string::npos);
}

TEST(Text, EntriesWrapBesideTheirTerm) {
  EXPECT_EQ(entry("--air T", "air", 22), "  --air T             air\n");
  EXPECT_EQ(entry("--a-very-long-option VALUE", "text", 22),
            "  --a-very-long-option VALUE\n                      text\n");
  EXPECT_EQ(wrap("aa bb cc", 5), (std::vector<std::string>{"aa bb", "cc"}));
  EXPECT_EQ(wrap("", 5), std::vector<std::string>{});
  EXPECT_EQ(wrap("abcdefgh ij", 4), (std::vector<std::string>{"abcdefgh", "ij"}));
}

TEST(Text, NamesAreGuessedFromNearMisses) {
  EXPECT_EQ(did_you_mean("botom-lam", {"bottom-lam", "deck-lam"}), "did you mean \"bottom-lam\"?");
  EXPECT_EQ(did_you_mean("xyz", {"bottom-lam", "deck-lam"}), "");
}

}  // namespace
}  // namespace wetout::cli
