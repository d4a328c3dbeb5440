#include "wetout/files/past_boards.hpp"

#include "sample.hpp"

namespace wetout::files {
namespace {

const std::string toml = R"([[board]]
name = "Old One"
date = 2025-07-04
[[board.coat]]
name = "bottom lam"
time = 18:30:00
minutes = 40
resin = "slow"
mixed = "262 g"
left = "9 g"
cloth = { e4 = "1.9 m" }
used = { side-box = 2 }
note = "warm"
[[board.coat]]
name = "bottom lam"
step = "sand"
date = 2025-07-09
)";

const std::string csv = R"(board,date,coat,fact,value
Old One,2025-07-04,bottom lam,note,warm
Old One,2025-07-04,bottom lam,mixed,262 g
Old One,2025-07-04,bottom lam,left,9 g
Old One,2025-07-04,bottom lam,resin,slow
Old One,2025-07-04,bottom lam,used,side-box=2
Old One,2025-07-04,bottom lam,cloth,e4=1.9 m
Old One,2025-07-04,bottom lam,time,18:30
Old One,2025-07-04,bottom lam,minutes,40
)";

std::string said(const PastStep& step) {
  std::string text = step.board.text + "|" + step.date.text + "|" + step.step.text;
  for (const PastFact& fact : step.facts) text += "|" + fact.what + " " + fact.value.text;
  return text;
}

std::string code_of(const std::string& text, const std::string& name = "past.toml") {
  const auto read = parse_past_boards(text, name);
  if (read) return "none";
  const base::Problem& first = read.error().front();
  return first.code + " " + first.key + " " + std::to_string(first.line);
}

TEST(PastBoards, HaveStepsWithFactsInOneOrder) {
  const auto read = parse_past_boards(toml, "past.toml");
  ASSERT_TRUE(read) << list(read.error());
  ASSERT_EQ(read->steps.size(), 2U);
  EXPECT_EQ(said(read->steps[0]),
            "Old One|2025-07-04|bottom lam|time 18:30|minutes 40|resin slow|mixed 262 g|left 9 g|"
            "cloth e4=1.9 m|used side-box=2|note warm");
  EXPECT_EQ(said(read->steps[1]), "Old One|2025-07-09|bottom lam/sand");
  const Written& mixed = read->steps[0].facts[3].value;
  EXPECT_EQ(mixed.key, "board[0].coat[0].mixed");
  EXPECT_EQ(mixed.line, 9);
  EXPECT_EQ(mixed.source_line, "mixed = \"262 g\"");
}

TEST(PastBoards, SayTheSameAsATable) {
  const auto table = parse_past_boards(csv, "Past.CSV");
  ASSERT_TRUE(table) << list(table.error());
  ASSERT_EQ(table->steps.size(), 1U);
  EXPECT_EQ(said(table->steps[0]), said(parse_past_boards(toml, "past.toml")->steps[0]));
  EXPECT_EQ(table->steps[0].facts[3].value.line, 3);
}

TEST(PastBoards, KeepRowsOfOneStepTogetherWhereverTheyStand) {
  const auto table = parse_past_boards(
      "board;date;step;fact;value\nA;2025-07-04;deck-lam;mixed;1 g\nB;2025-07-04;deck-lam;mixed;2 "
      "g\n"
      "a;2025-07-04;Deck Lam;left;0 g\n",
      "p.csv");
  ASSERT_TRUE(table) << list(table.error());
  ASSERT_EQ(table->steps.size(), 2U);
  EXPECT_EQ(said(table->steps[0]), "A|2025-07-04|deck-lam|mixed 1 g|left 0 g");
}

TEST(PastBoards, MissWhatTheyNeed) {
  EXPECT_EQ(code_of(with(toml, "date = 2025-07-04\n", "")), "key.missing board[0].coat[0].date 3");
  EXPECT_EQ(code_of(with(toml, "name = \"Old One\"\n", "")), "key.missing board[0].name 1");
  EXPECT_EQ(code_of("[[board]]\nname = \"x\"\n"), "key.missing board[0].coat 1");
  EXPECT_EQ(code_of("x = 1\n"), "key.unknown x 1");
  EXPECT_EQ(code_of(with(toml, "left =", "lfet =")), "key.unknown board[0].coat[0].lfet 10");
  EXPECT_EQ(code_of(with(toml, "\"262 g\"", "2.5")), "type.wrong board[0].coat[0].mixed 9");
  EXPECT_EQ(code_of("[board]\nname = \"x\"\n"), "file.other_kind  0");
  EXPECT_EQ(code_of(""), "file.empty  0");
}

TEST(PastBoards, AreRefusedWithTheRowOfATable) {
  const auto row = [](const std::string& text) {
    return code_of("board,date,step,fact,value\n" + text, "p.csv");
  };
  EXPECT_EQ(row("A,2025-07-04,wet,mixd,1 g\n"), "past.fact fact 2");
  EXPECT_EQ(row("A,2025-07-04,wet,mixed,1 g\nA,2025-07-04,wet,mixed,2 g\n"), "past.twice fact 3");
  EXPECT_EQ(row("A,2025-07-04,wet,note,1\nA,2025-07-04,wet,note,2\n"), "none");
  EXPECT_EQ(row("A,,wet,mixed,1 g\n"), "key.missing date 2");
  EXPECT_EQ(row(""), "table.empty  0");
  EXPECT_EQ(code_of("board,date,step,fact\nA,B,C,D\n", "p.csv"), "import.missing  1");
  EXPECT_EQ(code_of("board,date,step,fact,value,valeu\n", "p.csv"), "import.column  1");
  EXPECT_EQ(code_of("board,date,day,step,fact,value\n", "p.csv"), "import.twice  1");
}

}  // namespace
}  // namespace wetout::files
