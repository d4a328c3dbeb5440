#include "sample.hpp"

namespace wetout::files {
namespace {

base::Problem said(const std::string& text) { return only(job_problems(text)); }

TEST(QuoteInQuotes, PointsAtTheInchMarkThatEndsTheText) {
  const base::Problem p = said(job_with("\"6 ft 4 in\"", "\"6' 4\"\""));
  EXPECT_EQ(p.code, "toml.quote_in_quotes");
  EXPECT_EQ(p.file, "job.toml");
  EXPECT_EQ(p.line, 5);
  EXPECT_EQ(p.column, 15);
  EXPECT_EQ(p.found, "\"6' 4\"\"");
  EXPECT_TRUE(contains(p.hint, R"(write length = "6' 4\"")")) << p.hint;
  EXPECT_TRUE(contains(p.hint, "\"6 ft 4 in\"")) << p.hint;
  EXPECT_EQ(p.source_line, "length = \"6' 4\"\"                 # also \"6' 4\\\"\"");
}

TEST(QuoteInQuotes, OffersSingleQuotesWhereTheyDo) {
  const base::Problem p = said("[board]\nwide = \"20 3/4\"\"\n");
  EXPECT_EQ(p.code, "toml.quote_in_quotes");
  EXPECT_EQ(p.line, 2);
  EXPECT_EQ(p.column, 15);
  EXPECT_TRUE(contains(p.hint, "write wide = '20 3/4\"'")) << p.hint;
}

TEST(QuoteInQuotes, WhatItHintsIsRightWhenPastedIn) {
  for (const char* better : {R"("6' 4\"")", R"("6 ft 4 in")"}) {
    const auto job = parse_job(job_with("\"6 ft 4 in\"", better), "job.toml");
    ASSERT_TRUE(job) << better;
    EXPECT_EQ(job->board.length, units::inches(76)) << better;
  }
}

TEST(QuoteInQuotes, IsSeenInsideBraces) {
  const base::Problem p = said("t = { shape = \"swallow\", depth = \"4\"\" }\n");
  EXPECT_EQ(p.code, "toml.quote_in_quotes");
  EXPECT_EQ(p.column, 36);
  EXPECT_EQ(p.found, "\"4\"\"");
  EXPECT_TRUE(contains(p.hint, "write depth = '4\"'")) << p.hint;
}

TEST(CurlyQuotes, AreNamedWhereTheyOpen) {
  const base::Problem p = said("[board]\nlength = \u201c6 ft 4 in\u201d # so\n");
  EXPECT_EQ(p.code, "toml.curly_quotes");
  EXPECT_EQ(p.line, 2);
  EXPECT_EQ(p.column, 10);
  EXPECT_EQ(p.found, "\u201c6 ft 4 in\u201d");
  EXPECT_EQ(p.hint, "write length = \"6 ft 4 in\"");
}

TEST(CurlyQuotes, AreNamedWhereOnlyTheEndIsCurly) {
  const base::Problem p = said("length = \"6 ft 4 in\u201d\n");
  EXPECT_EQ(p.code, "toml.curly_quotes");
  EXPECT_EQ(p.column, 10);
  EXPECT_EQ(p.hint, "write length = \"6 ft 4 in\"");
}

TEST(CurlyQuotes, SingleOnesToo) {
  const base::Problem p = said("name = \u2018Plank\u2019\n");
  EXPECT_EQ(p.code, "toml.curly_quotes");
  EXPECT_EQ(p.column, 8);
}

TEST(CurlyQuotes, InsideATextAreMeasures) {
  const auto job = parse_job(job_with("\"20 3/4 in\"", "\"20 3/4\u201d\""), "job.toml");
  ASSERT_TRUE(job) << list(job.error());
  EXPECT_EQ(job->board.width[2].value, units::inches(20.75));
}

TEST(UnquotedQuantity, IsPutInQuotes) {
  const base::Problem p = said(job_with("lap = \"2 in\"", "lap = 2 in"));
  EXPECT_EQ(p.code, "toml.unquoted_quantity");
  EXPECT_EQ(p.line, 43);
  EXPECT_EQ(p.column, 7);
  EXPECT_EQ(p.found, "2 in");
  EXPECT_EQ(p.hint, "write lap = \"2 in\"");
}

TEST(UnquotedQuantity, InEveryUsualForm) {
  const std::pair<const char*, const char*> cases[] = {
      {"lap = 2in\n", "lap = \"2in\""},
      {"share = 2 %\n", "share = \"2 %\""},
      {"share = 2%\n", "share = \"2%\""},
      {"air = -5 C\n", "air = \"-5 C\""},
      {"wide = 20 3/4 in # widest\n", "wide = \"20 3/4 in\""},
      {"length = 6' 4\"\n", "length = \"6' 4\\\"\""},
      {"t = { lap = 2 in }\n", "lap = \"2 in\""},
  };
  for (const auto& [text, better] : cases) {
    const base::Problem p = said(text);
    EXPECT_EQ(p.code, "toml.unquoted_quantity") << text;
    EXPECT_EQ(p.hint, std::string("write ") + better) << text;
  }
}

TEST(UnquotedQuantity, WithADecimalCommaIsToldAboutThePoint) {
  const base::Problem p = said("share = 2,5\n");
  EXPECT_EQ(p.code, "toml.unquoted_quantity");
  EXPECT_EQ(p.column, 9);
  EXPECT_TRUE(contains(p.message, "point")) << p.message;
}

TEST(UnquotedTime, IsPutInQuotes) {
  const base::Problem p = only(shop_problems("[hours]\nfrom = 18:00\n"));
  EXPECT_EQ(p.code, "toml.unquoted_time");
  EXPECT_EQ(p.line, 2);
  EXPECT_EQ(p.column, 8);
  EXPECT_EQ(p.found, "18:00");
  EXPECT_EQ(p.hint, "write from = \"18:00\"");
}

TEST(UnquotedTime, InAListKeepsItsBrackets) {
  const base::Problem p = only(shop_problems("[hours]\nmon = [18:00-22:00]\n"));
  EXPECT_EQ(p.code, "toml.unquoted_time");
  EXPECT_EQ(p.column, 8);
  EXPECT_EQ(p.found, "18:00-22:00");
  EXPECT_EQ(p.hint, "write \"18:00-22:00\"");
}

TEST(UnquotedTime, InAListOverSeveralLines) {
  const base::Problem p = only(shop_problems("[hours]\nmon = [\n  18:00-22:00,\n]\n"));
  EXPECT_EQ(p.code, "toml.unquoted_time");
  EXPECT_EQ(p.line, 3);
  EXPECT_EQ(p.column, 3);
}

TEST(UnquotedTime, CoversRangesOfDates) {
  const base::Problem p = only(shop_problems("[hours]\noff = [2026-07-03/2026-07-05]\n"));
  EXPECT_EQ(p.code, "toml.unquoted_time");
  EXPECT_EQ(p.hint, "write \"2026-07-03/2026-07-05\"");
}

TEST(InlineTable, OverSeveralLinesPointsAtItsBrace) {
  const base::Problem p = said(
      job_with("rail = { name = \"60/40\", fullness", "rail = { name = \"60/40\",\n  fullness"));
  EXPECT_EQ(p.code, "toml.inline_table_lines");
  EXPECT_EQ(p.line, 11);
  EXPECT_EQ(p.column, 8);
  EXPECT_TRUE(contains(p.hint, "rail = { ... }")) << p.hint;
  EXPECT_TRUE(contains(p.hint, "[board.rail]")) << p.hint;
}

TEST(InlineTable, OpenedAtTheEndOfALine) {
  const base::Problem p = said("[board]\ntail = { # square\n  shape = \"square\"\n}\n");
  EXPECT_EQ(p.code, "toml.inline_table_lines");
  EXPECT_EQ(p.line, 2);
  EXPECT_EQ(p.column, 8);
}

TEST(InlineTable, WithAnUnquotedValueIsNotMistakenForIt) {
  EXPECT_EQ(said("r = { name = 60/40 }\n").code, "toml.unquoted_quantity");
}

TEST(Syntax, AWordWithoutQuotesIsPutInQuotes) {
  const base::Problem p = said("[board]\nfoam = eps # bare\n");
  EXPECT_EQ(p.line, 2);
  EXPECT_EQ(p.column, 8);
  EXPECT_EQ(p.hint, "write foam = \"eps\"");
}

TEST(Syntax, AKeyTwiceNamesTheFirstLine) {
  const base::Problem p = said("[board]\nname = \"a\"\nfoam = \"eps\"\n  name = \"b\"\n");
  EXPECT_EQ(p.code, "toml.twice");
  EXPECT_EQ(p.line, 4);
  EXPECT_EQ(p.column, 3);
  EXPECT_EQ(p.hint, "the first is on line 2");
}

TEST(Syntax, ATableTwiceIsShownDoubleBrackets) {
  const base::Problem p = said("[coat]\nname = \"a\"\n[coat]\nname = \"b\"\n");
  EXPECT_EQ(p.code, "toml.twice");
  EXPECT_EQ(p.line, 3);
  EXPECT_TRUE(contains(p.hint, "[[coat]]")) << p.hint;
}

TEST(Syntax, OtherErrorsKeepTheParsersWordsAndPlace) {
  const base::Problem p = said("[board]\nlength: \"6 ft\"\n");
  EXPECT_EQ(p.code, "toml.syntax");
  EXPECT_EQ(p.line, 2);
  EXPECT_EQ(p.column, 7);
  EXPECT_TRUE(contains(p.message, "expected '='")) << p.message;
  EXPECT_EQ(p.hint, "write key = value, with = and not :");
}

TEST(Syntax, ColumnsCountCharactersNotBytes) {
  const base::Problem p = said("t = { n = \"\u00fc\u00fc\", lap = 2 in }\n");
  EXPECT_EQ(p.column, 23);
  EXPECT_EQ(at_caret(p).substr(0, 4), "2 in");
}

TEST(Syntax, LinesEndInCrlfToo) {
  const base::Problem p = said("[board]\r\nlap = 2 in\r\n");
  EXPECT_EQ(p.line, 2);
  EXPECT_EQ(p.column, 7);
  EXPECT_EQ(p.source_line, "lap = 2 in");
}

}  // namespace
}  // namespace wetout::files
