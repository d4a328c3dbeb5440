#include <cmath>
#include <limits>

#include "sample.hpp"
#include "wetout/board/hull.hpp"

namespace wetout::files {
namespace {

using units::inches;

JobFile job_of(const std::string& text) {
  auto job = parse_job(text, "job.toml");
  EXPECT_TRUE(job) << list(job.error());
  return job ? std::move(*job) : JobFile{};
}

// Two lengths from two routes of arithmetic.
void expect_near(units::Length a, units::Length b) { EXPECT_NEAR(a.si(), b.si(), 1e-12); }

TEST(Board, ExampleFileIsReadAsItStands) {
  const JobFile job = job_of(input("job.toml"));
  const board::Spec& board = job.board;
  EXPECT_EQ(board.id, "sandpiper-6-4");
  EXPECT_EQ(board.name, "Sandpiper 6-4");
  EXPECT_EQ(board.length, inches(76));
  EXPECT_EQ(board.foam, board::Foam::eps);
  ASSERT_TRUE(board.foam_density);
  EXPECT_NEAR(units::in_pounds_per_cubic_foot(*board.foam_density), 2.0, 1e-12);
  EXPECT_FALSE(board.core_weight);
  EXPECT_EQ(board.stringer_weight, units::grams(120));
  EXPECT_EQ(board.nose.shape, board::EndShape::round);
  EXPECT_EQ(board.tail.shape, board::EndShape::square);
  ASSERT_EQ(board.rail.size(), 1U);
  EXPECT_EQ(board.rail[0].rail.apex_share, 0.4);
  EXPECT_EQ(board.rail[0].rail.exponent, 2.5);
}

TEST(Board, MeasuringPointsStandTwelveInchesFromTheEnds) {
  const board::Spec board = job_of(input("job.toml")).board;
  ASSERT_EQ(board.width.size(), 5U);
  const double places[] = {0, 12, 39, 64, 76};
  const double widths[] = {6, 15, 20.75, 12, 0};
  for (std::size_t i = 0; i < 5; ++i) {
    expect_near(board.width[i].from_tail, inches(places[i]));
    EXPECT_EQ(board.width[i].value, inches(widths[i]));
  }
  ASSERT_TRUE(board.wide_point);
  expect_near(*board.wide_point, inches(39));

  ASSERT_EQ(board.thickness.size(), 3U);
  expect_near(board.thickness[1].from_tail, inches(38));
  EXPECT_EQ(board.thickness[1].value, inches(2.625));
}

TEST(Board, RockerIsZeroAtMidLength) {
  const board::Spec board = job_of(input("job.toml")).board;
  ASSERT_EQ(board.rocker.size(), 5U);
  expect_near(board.rocker[2].from_tail, inches(38));
  EXPECT_EQ(board.rocker[2].value, units::Length{});
  EXPECT_EQ(board.rocker[4].value, inches(5));
  EXPECT_EQ(board.rocker[0].value, inches(2));
}

TEST(Board, WidePointIsAtMidLengthWhenNotGiven) {
  const board::Spec board = job_of(small_board + small_coat).board;
  EXPECT_EQ(board.width[2].from_tail, units::metres(1));
  EXPECT_EQ(board.wide_point, units::metres(1));
  EXPECT_TRUE(board.rocker.empty());
}

TEST(Board, TipThicknessIsTakenWhenGiven) {
  const JobFile job = job_of(
      with(small_board, "centre = ", "tail = \"1 cm\"\nnose = \"8 mm\"\ncentre = ") + small_coat);
  ASSERT_EQ(job.board.thickness.size(), 5U);
  EXPECT_EQ(job.board.thickness[0].value, units::millimetres(10));
  EXPECT_EQ(job.board.thickness[4].value, units::millimetres(8));
}

TEST(Board, UnitSystemsGiveTheSameBoard) {
  std::string metric = input("job.toml");
  const std::pair<const char*, const char*> swaps[] = {
      {"\"6 ft 4 in\"", "\"193.04 cm\""}, {"\"12 in\"", "\"304.8 mm\""},
      {"\"20 3/4 in\"", "\"52.705 cm\""}, {"\"1 in\"", "\"25.4 mm\""},
      {"\"15 in\"", "\"0.381 m\""},       {"\"6 in\"", "\"152.4 mm\""}};
  for (const auto& [us, si] : swaps) metric = with(metric, us, si);
  const board::Spec a = job_of(input("job.toml")).board;
  const board::Spec b = job_of(metric).board;
  EXPECT_EQ(a.length, b.length);
  for (std::size_t i = 0; i < a.width.size(); ++i) {
    EXPECT_EQ(a.width[i].value, b.width[i].value);
    EXPECT_EQ(a.width[i].from_tail, b.width[i].from_tail);
  }
}

TEST(Board, ExampleMakesAHull) {
  const auto hull = board::Hull::make(job_of(input("job.toml")).board);
  ASSERT_TRUE(hull) << list(hull.error());
}

TEST(Ends, ARoundTailHasNoWidth) {
  const base::Problem p =
      only(job_problems(job_with("tail = { shape = \"square\" }", "tail = { shape = \"round\" }")));
  EXPECT_EQ(p.code, "board.end_width");
  EXPECT_EQ(p.key, "board.width.tail");
  EXPECT_EQ(p.line, 18);
  EXPECT_EQ(p.column, 8);
}

TEST(Ends, ASquareTailNeedsItsWidth) {
  const base::Problem p = only(job_problems(job_with("tail = \"6 in\"\n", "")));
  EXPECT_EQ(p.code, "key.missing");
  EXPECT_EQ(p.key, "board.width.tail");
  EXPECT_EQ(p.line, 13);
}

TEST(Ends, ASquareTailHasMoreThanNoWidth) {
  EXPECT_EQ(only(job_problems(job_with("tail = \"6 in\"", "tail = \"0 in\""))).code, "value.range");
}

TEST(Ends, ASwallowTailHasADepth) {
  const JobFile job = job_of(job_with("tail = { shape = \"square\" }",
                                      "tail = { shape = \"swallow\", depth = \"4 in\" }"));
  EXPECT_EQ(job.board.tail.shape, board::EndShape::swallow);
  EXPECT_EQ(job.board.tail.depth, inches(4));
  EXPECT_EQ(only(job_problems(job_with("{ shape = \"square\" }", "{ shape = \"swallow\" }"))).key,
            "board.tail.depth");
  EXPECT_EQ(only(job_problems(job_with("{ shape = \"square\" }", "\"swallow\""))).code,
            "key.missing");
  EXPECT_EQ(only(job_problems(job_with("{ shape = \"square\" }",
                                       "{ shape = \"square\", depth = \"4 in\" }")))
                .code,
            "key.misplaced");
}

TEST(Ends, ANoseMayBeCutOffAndIsWrittenEitherWay) {
  std::string text = with(small_board, "nose = \"round\"", "nose = { shape = \"square\" }");
  text = with(text, "[board.width]\n", "[board.width]\nnose = \"20 cm\"\n") + small_coat;
  const JobFile job = job_of(text);
  EXPECT_EQ(job.board.nose.shape, board::EndShape::square);
  EXPECT_EQ(job.board.width.back().value, units::metres(0.2));
  EXPECT_EQ(only(job_problems(job_with("nose = \"round\"", "nose = \"swallow\""))).code,
            "word.unknown");
}

TEST(Board, WidePointBeyondAMeasuringPointIsRefused) {
  for (const char* place : {"\"26 in\"", "\"30 in\"", "\"-26 in\""}) {
    const base::Problem p =
        only(job_problems(job_with("wide_point = \"1 in\"", std::string("wide_point = ") + place)));
    EXPECT_EQ(p.code, "board.wide_point") << place;
    EXPECT_EQ(p.line, 16);
    EXPECT_EQ(p.column, 14);
  }
  EXPECT_TRUE(parse_job(job_with("wide_point = \"1 in\"", "wide_point = \"25.9 in\""), "j"));
}

TEST(Board, TooShortForMeasuringPointsSaysSo) {
  const base::Problem p = only(job_problems(job_with("\"6 ft 4 in\"", "\"24 in\"")));
  EXPECT_EQ(p.code, "board.too_short");
  EXPECT_EQ(p.line, 5);
}

TEST(Core, IsWeighedOrComputedNotBoth) {
  const base::Problems problems =
      job_problems(job_with("foam = \"eps\"", "foam = \"eps\"\ncore_weight = \"2.4 kg\""));
  ASSERT_EQ(problems.size(), 2U) << list(problems);  // density and stringer
  EXPECT_EQ(problems[0].code, "key.conflict");
  EXPECT_EQ(problems[0].key, "board.foam_density");
  EXPECT_EQ(problems[1].key, "board.stringer_weight");
}

std::string drawn_job(const std::string& outline, const std::string& more = "") {
  return "[board]\nname = \"x\"\nlength = \"2 m\"\nfoam = \"pu\"\nnose = \"round\"\n"
         "tail = \"round\"\noutline = " +
         outline +
         "\n[board.thickness]\nnose12 = \"4 cm\"\ncentre = \"6 cm\"\ntail12 = \"4 cm\"\n" + more +
         small_coat;
}

// An ellipse of 2 m by 50 cm.
base::Result<JobFile> drawn(
    const std::string& text,
    const std::string& inside =
        "<ellipse id=\"rail\" cx=\"25\" cy=\"100\" rx=\"25\" ry=\"100\"/>") {
  return parse_job(
      text, "job.toml", board::defaults(),
      [=](const std::string& name) -> base::Result<std::string> {
        if (name != "board.svg")
          return base::fail(
              {.code = "file.missing", .message = "there is no such file", .file = name});
        return "<svg xmlns=\"http://www.w3.org/2000/svg\">" + inside + "</svg>";
      });
}

TEST(Outline, ComesOutOfADrawing) {
  for (const char* outline :
       {"\"board.svg\"", "\"board.svg#rail\"", "{ file = \"board.svg\", nose = \"up\" }",
        "{ file = \"board.svg\", id = \"rail\", nose = \"down\" }"}) {
    const auto job = drawn(drawn_job(outline));
    ASSERT_TRUE(job) << list(job.error());
    ASSERT_TRUE(job->board.drawn);
    EXPECT_EQ(job->board.width.size(), job->board.drawn->knots.size());
    EXPECT_EQ(job->outline->name, "board.svg");
    EXPECT_TRUE(job->notices.empty());
  }
}

TEST(Outline, IsComparedWithTheWidthsOfTheFile) {
  const auto job = drawn(drawn_job("\"board.svg\"", "[board.width]\nwide = \"52 cm\"\n"));
  ASSERT_TRUE(job) << list(job.error());
  ASSERT_EQ(job->notices.size(), 1U);
  EXPECT_EQ(job->notices[0].code, "outline.figures");
  EXPECT_EQ(job->notices[0].subject, "wide");
  EXPECT_NEAR(*job->notices[0].value, 500.0, 0.01);
  EXPECT_TRUE(
      drawn(drawn_job("\"board.svg\"", "[board.width]\nwide = \"50.2 cm\"\n"))->notices.empty());
}

TEST(Outline, OfABadDrawingIsSaidAtItsKey) {
  const base::Problem missing = only(drawn(drawn_job("\"bord.svg\"")).error());
  EXPECT_EQ(missing.code, "file.missing");
  EXPECT_EQ(missing.line, 7);
  EXPECT_EQ(missing.column, 11);
  const base::Problem wrong =
      only(drawn(drawn_job("\"board.svg\""), "\n<path id=\"rail\" d=\"M0 0 L 5\"/>").error());
  EXPECT_EQ(wrong.code, "outline.path");
  EXPECT_EQ(wrong.line, 7);
  EXPECT_TRUE(contains(wrong.message, "board.svg:2: path#rail d: ")) << wrong.message;
  EXPECT_EQ(only(drawn(drawn_job("{ nose = \"up\" }")).error()).code, "key.missing");
  EXPECT_EQ(only(drawn(drawn_job("{ file = \"board.svg\", nose = \"north\" }")).error()).code,
            "word.unknown");
  EXPECT_EQ(only(job_problems(drawn_job("\"board.svg\""))).code, "outline.unread");
  EXPECT_EQ(
      drawn(drawn_job("\"board.svg\"", "[[board.station]]\nat = \"1 m\"\nwidth = \"50 cm\"\n"))
          .error()
          .front()
          .code,
      "key.conflict");
}

board::Rail rail_of(const std::string& rail, JobFile* whole = nullptr) {
  JobFile job =
      job_of(job_with("rail = { name = \"60/40\", fullness = \"medium\" }", "rail = " + rail));
  const board::Rail out = job.board.rail.at(0).rail;
  if (whole != nullptr) *whole = std::move(job);
  return out;
}

TEST(Rail, NamesGiveTheShareAboveTheApexFirst) {
  EXPECT_EQ(rail_of(R"({ name = "50/50", fullness = "soft" })").apex_share, 0.5);
  EXPECT_EQ(rail_of(R"({ name = "60/40", fullness = "soft" })").apex_share, 0.4);
  EXPECT_EQ(rail_of(R"({ name = "70/30", fullness = "soft" })").apex_share, 0.3);
  EXPECT_EQ(rail_of(R"({ name = "80/20", fullness = "soft" })").apex_share, 0.2);
  EXPECT_NEAR(rail_of(R"({ apex = "35 %", fullness = "soft" })").apex_share, 0.35, 1e-15);
}

TEST(Rail, FullnessIsAnExponent) {
  EXPECT_EQ(rail_of(R"({ name = "60/40", fullness = "soft" })").exponent, 2.0);
  EXPECT_EQ(rail_of(R"({ name = "60/40", exponent = 2.75 })").exponent, 2.75);
  EXPECT_EQ(rail_of(R"({ name = "60/40", exponent = 3 })").exponent, 3.0);
  EXPECT_TRUE(std::isinf(rail_of(R"({ name = "60/40", fullness = "square" })").exponent));
}

TEST(Rail, BelowAnEllipseIsRefused) {
  const base::Problem p = only(job_problems(job_with("fullness = \"medium\"", "exponent = 1.9")));
  EXPECT_EQ(p.code, "value.range");
  EXPECT_EQ(p.key, "board.rail.exponent");
}

TEST(Rail, GivenTwiceIsAConflict) {
  EXPECT_EQ(
      only(job_problems(job_with("fullness = \"medium\"", "fullness = \"medium\", exponent = 2.5")))
          .code,
      "key.conflict");
  EXPECT_EQ(
      only(job_problems(job_with("name = \"60/40\"", "name = \"60/40\", apex = \"40 %\""))).code,
      "key.conflict");
}

std::vector<std::string> names(const JobFile& job) {
  std::vector<std::string> out;
  for (const auto& one : job.assumed) out.push_back(one.name);
  return out;
}

TEST(Assumed, OnlyWordsWithoutADefinitionAreListed) {
  JobFile job;
  rail_of(R"({ name = "60/40", fullness = "soft" })", &job);
  EXPECT_TRUE(job.assumed.empty());
  rail_of(R"({ name = "60/40", fullness = "square" })", &job);
  EXPECT_TRUE(job.assumed.empty());
  rail_of(R"({ apex = "40 %", exponent = 2.5 })", &job);
  EXPECT_TRUE(job.assumed.empty());
  rail_of(R"({ name = "60/40", fullness = "full" })", &job);
  EXPECT_EQ(names(job), std::vector<std::string>{"rail.full"});
  rail_of(R"({ name = "60/40", fullness = "medium" })", &job);
  ASSERT_EQ(names(job), std::vector<std::string>{"rail.medium"});
  EXPECT_EQ(job.assumed[0].value, 2.5);
  EXPECT_EQ(job.assumed[0].unit, "");
  EXPECT_EQ(job.assumed[0].standing, "assumed");
  EXPECT_EQ(job.assumed[0].used_by, std::vector<std::string>{"board"});
}

TEST(Assumed, AMissingRailIsAMediumSixtyForty) {
  const JobFile job = job_of(small_board + small_coat);
  ASSERT_EQ(job.board.rail.size(), 1U);
  EXPECT_EQ(job.board.rail[0].rail.apex_share, 0.4);
  EXPECT_EQ(job.board.rail[0].rail.exponent, 2.5);
  EXPECT_EQ(names(job), (std::vector<std::string>{"rail.default", "rail.medium"}));
}

TEST(Assumed, DefaultsCanBeMovedForAWhatIf) {
  board::Defaults moved;
  moved.rail_medium.value = 2.6;
  moved.rail_apex.value = 0.45;
  const auto job = parse_job(small_board + small_coat, "job.toml", moved);
  ASSERT_TRUE(job);
  EXPECT_EQ(job->board.rail[0].rail.exponent, 2.6);
  EXPECT_EQ(job->board.rail[0].rail.apex_share, 0.45);
  EXPECT_EQ(job->assumed[0].value, 0.45);
}

}  // namespace
}  // namespace wetout::files
