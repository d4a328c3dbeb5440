// How problems of meaning are said, whatever the key.
#include "sample.hpp"

namespace wetout::files {
namespace {

TEST(Problems, AreAllReportedAtOnceInTheOrderOfTheFile) {
  std::string text = job_with("length = \"6 ft 4 in\"", "length = \"6 kg\"");
  text = with(text, "wide = \"20 3/4 in\"", "wide = 20.75");
  text = with(text, "foam = \"eps\"", "foam = \"styro\"");
  text = with(text, "laps = \"cut\"", "lapses = \"cut\"");
  const base::Problems problems = job_problems(text);
  ASSERT_EQ(problems.size(), 4U) << list(problems);
  EXPECT_EQ(problems[0].code, "unit.wrong");
  EXPECT_EQ(problems[1].code, "word.unknown");
  EXPECT_EQ(problems[2].code, "unit.missing");
  EXPECT_EQ(problems[3].code, "key.unknown");
  EXPECT_TRUE(std::is_sorted(problems.begin(), problems.end(),
                             [](const auto& a, const auto& b) { return a.line < b.line; }));
}

TEST(Problems, CarryFileLineColumnKeyFoundExpectedAndSourceLine) {
  const base::Problem p = only(job_problems(job_with("nose12 = \"12 in\"", "nose12 = \"12 g\"")));
  EXPECT_EQ(p.code, "unit.wrong");
  EXPECT_EQ(p.file, "job.toml");
  EXPECT_EQ(p.line, 14);
  EXPECT_EQ(p.column, 10);
  EXPECT_EQ(p.key, "board.width.nose12");
  EXPECT_EQ(p.found, "\"12 g\"");
  EXPECT_TRUE(contains(p.expected, "a length")) << p.expected;
  EXPECT_TRUE(contains(p.expected, "e.g. \"")) << p.expected;
  EXPECT_FALSE(p.hint.empty());
  EXPECT_EQ(p.source_line, "nose12 = \"12 g\"");
}

TEST(BareNumber, IsShownWithAUnit) {
  const base::Problem p = only(job_problems(job_with("length = \"6 ft 4 in\"", "length = 76")));
  EXPECT_EQ(p.code, "unit.missing");
  EXPECT_EQ(p.line, 5);
  EXPECT_EQ(p.column, 10);
  EXPECT_EQ(p.key, "board.length");
  EXPECT_EQ(p.found, "76");
  EXPECT_EQ(p.expected, "a length with its unit, e.g. \"76 in\"");
}

TEST(BareNumber, TakesTheUnitOfItsKey) {
  const std::pair<const char*, const char*> job_cases[] = {
      {"gap = \"3 mm\"", "gap = 3"},
      {"fill = \"18 ml\"", "fill = 18.5"},
      {"foam_density = \"2 lb/ft3\"", "foam_density = 2"},
      {"share = \"2 %\"", "share = 0.02"},
  };
  const char* expected[] = {"\"3 mm\"", "\"18.5 ml\"", "\"2 lb/ft3\"", "\"2 %\""};
  for (std::size_t i = 0; i < std::size(job_cases); ++i) {
    const base::Problem p = only(job_problems(job_with(job_cases[i].first, job_cases[i].second)));
    EXPECT_EQ(p.code, "unit.missing");
    EXPECT_TRUE(contains(p.expected, expected[i])) << p.expected;
  }
  const base::Problem p = only(shop_problems(shop_with("price = \"33.00 USD\"", "price = 33")));
  EXPECT_EQ(p.code, "unit.missing");
  EXPECT_TRUE(contains(p.expected, "\"33 USD\"")) << p.expected;
}

TEST(BareNumber, InQuotesIsNoBetter) {
  const base::Problem p = only(job_problems(job_with("\"6 ft 4 in\"", "\"76\"")));
  EXPECT_EQ(p.code, "unit.missing");
  EXPECT_EQ(p.found, "\"76\"");
  EXPECT_TRUE(contains(p.hint, "\"76 in\"")) << p.hint;
}

TEST(UnknownKey, PointsAtTheKeyAndNamesTheNearest) {
  const base::Problem p = only(job_problems(job_with("stringer_weight =", "  stringer_wieght =")));
  EXPECT_EQ(p.code, "key.unknown");
  EXPECT_EQ(p.line, 8);
  EXPECT_EQ(p.column, 3);
  EXPECT_EQ(p.key, "board.stringer_wieght");
  EXPECT_EQ(p.found, "stringer_wieght");
  EXPECT_EQ(p.hint, "did you mean \"stringer_weight\"?");
  EXPECT_TRUE(contains(p.expected, "stringer_weight")) << p.expected;
}

TEST(UnknownKey, ThatMisspellsARequiredOneIsOneProblemNotTwo) {
  const base::Problem p = only(job_problems(job_with("\nlength =", "\nlenght =")));
  EXPECT_EQ(p.code, "key.unknown");
  EXPECT_EQ(p.hint, "did you mean \"length\"?");
}

TEST(UnknownKey, ThatIsAtHomeElsewhereIsToldWhere) {
  const base::Problem p =
      only(job_problems(job_with("kind = \"hotcoat\"", "kind = \"hotcoat\"\nlap = \"2 in\"")));
  EXPECT_EQ(p.code, "key.unknown");
  EXPECT_TRUE(contains(p.hint, "[[coat.ply]]")) << p.hint;
}

TEST(UnknownKey, OfTheWholeFile) {
  const base::Problem p = only(job_problems(input("job.toml") + "\n[baord]\nx = 1\n"));
  EXPECT_EQ(p.code, "key.unknown");
  EXPECT_EQ(p.column, 2);
  EXPECT_EQ(p.hint, "did you mean \"board\"?");
}

TEST(MissingKey, TakesThePlaceOfItsTable) {
  const base::Problem p = only(job_problems(job_with("foam = \"eps\"", "")));
  EXPECT_EQ(p.code, "key.missing");
  EXPECT_EQ(p.line, 2);
  EXPECT_EQ(p.column, 1);
  EXPECT_EQ(p.key, "board.foam");
  EXPECT_EQ(p.source_line, "[board]");
  EXPECT_TRUE(contains(p.expected, "\"eps\", \"xps\" or \"pu\"")) << p.expected;
}

TEST(MissingKey, OfABracedTableTakesThePlaceOfItsBrace) {
  const base::Problem p = only(job_problems(
      job_with("{ material = \"white\", share = \"2 %\" }", "{ material = \"white\" }")));
  EXPECT_EQ(p.code, "key.missing");
  EXPECT_EQ(p.key, "coat[1].additives[0].share");
  EXPECT_EQ(p.line, 51);
  EXPECT_EQ(p.column, 15);
}

TEST(MissingTable, IsPlacedAtTheTopOfTheFile) {
  const base::Problem p = only(job_problems(small_coat));
  EXPECT_EQ(p.code, "key.missing");
  EXPECT_EQ(p.key, "board");
  EXPECT_EQ(p.line, 1);
  EXPECT_EQ(p.column, 1);
}

TEST(WrongType, SaysWhatIsDue) {
  const std::pair<const char*, const char*> cases[] = {
      {"name = \"Sandpiper 6-4\"", "name = 64"},
      {"count = 5\n", "count = \"5\"\n"},
      {"length = \"6 ft 4 in\"", "length = true"},
      {"after = [\"deck hotcoat\"]", "after = \"deck hotcoat\""},
      {"rail = { name = \"60/40\", fullness = \"medium\" }", "rail = \"60/40\""},
      {"foam = \"eps\"", "foam = [\"eps\"]"},
  };
  for (const auto& [from, to] : cases) {
    const base::Problem p = only(job_problems(job_with(from, to)));
    EXPECT_EQ(p.code, "type.wrong") << to;
    EXPECT_FALSE(p.expected.empty()) << to;
  }
}

TEST(WrongType, ATableThatComesOftenNeedsDoubleBrackets) {
  const base::Problem p = only(job_problems(small_board + with(small_coat, "[[coat]]", "[coat]")));
  EXPECT_EQ(p.code, "type.wrong");
  EXPECT_EQ(p.line, 15);
  EXPECT_TRUE(contains(p.expected, "[[coat]]")) << p.expected;
  EXPECT_TRUE(contains(p.hint, "double brackets")) << p.hint;
}

TEST(Range, NumbersBeyondSenseAreRefusedWithKeyAndPlace) {
  const std::tuple<const char*, const char*, const char*> cases[] = {
      {"wide = \"20 3/4 in\"", "wide = \"0 in\"", "board.width.wide"},
      {"wide = \"20 3/4 in\"", "wide = \"-20 in\"", "board.width.wide"},
      {"stringer_weight = \"120 g\"", "stringer_weight = \"-120 g\"", "board.stringer_weight"},
      {"foam_density = \"2 lb/ft3\"", "foam_density = \"0 lb/ft3\"", "board.foam_density"},
      {"length = \"6 ft 4 in\"", "length = \"600 ft\"", "board.length"},
      {"share = \"2 %\"", "share = \"102 %\"", "coat[1].additives[0].share"},
      {"share = \"2 %\"", "share = \"-2 %\"", "coat[1].additives[0].share"},
      {"count = 5", "count = -5", "coat[2].count"},
      {"fill = \"18 ml\"", "fill = \"0 ml\"", "coat[2].fill"},
      {"nose = \"5 in\"", "nose = \"-5 in\"", "board.rocker.nose"},
  };
  for (const auto& [from, to, key] : cases) {
    const base::Problem p = only(job_problems(job_with(from, to)));
    EXPECT_EQ(p.code, "value.range") << to;
    EXPECT_EQ(p.key, key);
    EXPECT_GT(p.line, 1);
    EXPECT_TRUE(at_caret(p).starts_with(std::string(to).substr(std::string(to).find('=') + 2)))
        << at_caret(p);
  }
}

TEST(Range, NanAndInfAreRefused) {
  for (const char* value : {"nan", "inf", "-inf", "\"nan in\"", "\"inf in\"", "\"1e999 in\""}) {
    const base::Problem p = only(job_problems(job_with("\"20 3/4 in\"", value)));
    EXPECT_EQ(p.key, "board.width.wide") << value;
    EXPECT_TRUE(p.code == "number.not_finite" || p.code == "number.bad" ||
                p.code == "unit.unknown" || p.code == "unit.missing")
        << value << " " << p.code;
  }
  EXPECT_EQ(only(job_problems(job_with("fullness = \"medium\"", "exponent = nan"))).code,
            "number.not_finite");
  EXPECT_EQ(only(job_problems(job_with("fullness = \"medium\"", "exponent = inf"))).code,
            "number.not_finite");
}

TEST(Text, ControlCharactersAreRefused) {
  const base::Problem p = only(job_problems(job_with("\"Sandpiper 6-4\"", "\"Sand\\u001bpiper\"")));
  EXPECT_EQ(p.code, "text.control");
  EXPECT_EQ(only(job_problems(job_with("\"Sandpiper 6-4\"", "\" \""))).code, "text.empty");
}

TEST(Problems, NeverShowMoreThanAThousand) {
  std::string text = small_board + small_coat + "[x]\n";
  for (int i = 0; i < 5000; ++i) text += "[k" + std::to_string(i) + "]\n";
  const base::Problems problems = job_problems(text);
  ASSERT_EQ(problems.size(), 1001U);
  EXPECT_EQ(problems.back().code, "file.more_problems");
  EXPECT_TRUE(contains(problems.back().hint, "mend")) << problems.back().hint;
}

TEST(Problems, OnVeryLongLinesShowNoLine) {
  const std::string text = "x = \"" + std::string(100000, 'a') + "\"\n" + small_board + small_coat;
  std::string moved = small_board + small_coat + "y = [" + std::string(3000, ' ') + "1]\n";
  for (const base::Problem& p : job_problems(text)) EXPECT_LT(p.source_line.size(), 500U);
  for (const base::Problem& p : job_problems(moved)) EXPECT_LT(p.source_line.size(), 500U);
}

TEST(OtherKind, AShopFileIsNoJob) {
  EXPECT_EQ(only(job_problems(input("shop.toml"))).code, "file.other_kind");
  EXPECT_EQ(only(shop_problems(input("job.toml"))).code, "file.other_kind");
}

}  // namespace
}  // namespace wetout::files
