#include "sample.hpp"
#include "wetout/board/hull.hpp"

namespace wetout::files {
namespace {

const std::string head = R"([board]
name = "Plank"
length = "2 m"
foam = "eps"
nose = "round"
tail = "round"
rail = { name = "50/50", fullness = "soft" }
)";

std::string station(const std::string& what) { return "[[board.station]]\n" + what + "\n"; }

const std::string three = station("at = \"0.5 m\"\nwidth = \"40 cm\"\nthickness = \"5 cm\"") +
                          station("at = \"1 m\"\nwidth = \"50 cm\"\nthickness = \"6 cm\"") +
                          station("at = \"1.5 m\"\nwidth = \"40 cm\"\nthickness = \"5 cm\"");

TEST(Stations, RoundEndsNeedNone) {
  const auto job = parse_job(head + three + small_coat, "job.toml");
  ASSERT_TRUE(job) << list(job.error());
  const auto& width = job->board.width;
  ASSERT_EQ(width.size(), 5U);
  EXPECT_EQ(width.front().from_tail, units::Length{});
  EXPECT_EQ(width.front().value, units::Length{});
  EXPECT_EQ(width.back().from_tail, units::metres(2));
  EXPECT_EQ(width.back().value, units::Length{});
  EXPECT_EQ(job->board.thickness.size(), 3U);
  EXPECT_FALSE(job->board.wide_point);
  EXPECT_TRUE(board::Hull::make(job->board));
}

TEST(Stations, AtTheEndsAreTakenAsTheyStand) {
  const auto job =
      parse_job(head + station("at = \"0 m\"\nwidth = \"0 m\"\nthickness = \"0 m\"") + three +
                    station("at = \"2 m\"\nthickness = \"0 m\"\nrocker = \"10 cm\"") + small_coat,
                "job.toml");
  ASSERT_TRUE(job) << list(job.error());
  EXPECT_EQ(job->board.width.size(), 5U);
  EXPECT_EQ(job->board.thickness.size(), 5U);
  EXPECT_EQ(job->board.rocker.size(), 1U);
}

TEST(Stations, ACutTailNeedsAStationAtItsEnd) {
  const std::string square = with(head, "tail = \"round\"", "tail = \"square\"");
  const base::Problem p = only(job_problems(square + three + small_coat));
  EXPECT_EQ(p.code, "board.end_missing");
  EXPECT_EQ(p.line, 8);
  EXPECT_TRUE(contains(p.message, "tail")) << p.message;
  EXPECT_TRUE(parse_job(square + station("at = \"0 in\"\nwidth = \"20 cm\"") + three + small_coat,
                        "job.toml"));
}

TEST(Stations, ARoundTailWithAWidthIsRefused) {
  const base::Problem p =
      only(job_problems(head + station("at = \"0 in\"\nwidth = \"20 cm\"") + three + small_coat));
  EXPECT_EQ(p.code, "board.end_width");
  EXPECT_EQ(p.line, 10);
  EXPECT_EQ(p.column, 9);
}

TEST(Stations, OutOfOrderNameTheOneBefore) {
  const base::Problem p =
      only(job_problems(head + three + station("at = \"0.7 m\"\nwidth = \"45 cm\"") + small_coat));
  EXPECT_EQ(p.code, "board.station_order");
  EXPECT_EQ(p.key, "board.station[3].at");
  EXPECT_EQ(p.line, 21);
  EXPECT_EQ(p.column, 6);
  EXPECT_TRUE(contains(p.message, "line 16")) << p.message;
}

TEST(Stations, TwoInOnePlaceAreRefused) {
  const base::Problem p =
      only(job_problems(head + three + station("at = \"1.5 m\"\nwidth = \"45 cm\"") + small_coat));
  EXPECT_EQ(p.code, "board.station_order");
  EXPECT_TRUE(contains(p.message, "already")) << p.message;
}

TEST(Stations, BeyondTheNoseAreRefused) {
  const base::Problem p =
      only(job_problems(head + three + station("at = \"2.1 m\"\nwidth = \"1 cm\"") + small_coat));
  EXPECT_EQ(p.code, "board.station_off_board");
  EXPECT_EQ(p.line, 21);
}

TEST(Stations, WithNothingMeasuredAreRefused) {
  const base::Problem p = only(job_problems(head + three + station("at = \"1.6 m\"") + small_coat));
  EXPECT_EQ(p.code, "board.station_empty");
  EXPECT_EQ(p.line, 20);
}

TEST(Stations, ZeroWidthInsideTheBoardIsRefused) {
  const base::Problem p =
      only(job_problems(head + with(three, "width = \"50 cm\"", "width = \"0 cm\"") + small_coat));
  EXPECT_EQ(p.code, "value.range");
  EXPECT_EQ(p.key, "board.station[1].width");
}

TEST(Stations, NeedAWidthAndAThicknessSomewhere) {
  const base::Problem p =
      only(job_problems(head + station("at = \"1 m\"\nwidth = \"50 cm\"") + small_coat));
  EXPECT_EQ(p.code, "key.missing");
  EXPECT_TRUE(contains(p.message, "thickness")) << p.message;
}

TEST(Stations, BesideTheThreeTablesAreAConflictThatNamesBothLines) {
  const base::Problem p = only(job_problems(small_board + three + small_coat));
  EXPECT_EQ(p.code, "key.conflict");
  EXPECT_EQ(p.line, 15);
  EXPECT_TRUE(contains(p.message, "[board.width] (line 7)")) << p.message;
}

TEST(Stations, CarryRailsOfTheirOwn) {
  const std::string bare = with(head, "rail = { name = \"50/50\", fullness = \"soft\" }\n", "");
  const std::string rails =
      with(three, "width = \"40 cm\"",
           "rail = { name = \"50/50\", fullness = \"soft\" }\n"
           "width = \"40 cm\"") +
      station("at = \"1.8 m\"\nrail = { name = \"80/20\", fullness = \"full\" }");
  const auto job = parse_job(bare + rails + small_coat, "job.toml");
  ASSERT_TRUE(job) << list(job.error());
  ASSERT_EQ(job->board.rail.size(), 2U);
  EXPECT_EQ(job->board.rail[0].from_tail, units::metres(0.5));
  EXPECT_EQ(job->board.rail[0].rail.apex_share, 0.5);
  EXPECT_EQ(job->board.rail[1].rail.apex_share, 0.2);
  EXPECT_EQ(job->board.rail[1].rail.exponent, 3.2);

  const base::Problem p = with_code(job_problems(head + rails + small_coat), "key.conflict");
  EXPECT_TRUE(contains(p.message, "line 7")) << p.message;
}

TEST(Stations, TenThousandAreRead) {
  std::string text = head;
  constexpr int n = 10000;
  for (int i = 1; i < n; ++i) {
    const double x = 2000.0 * i / n;
    const double w = 500.0 * (1 - (x / 1000 - 1) * (x / 1000 - 1));
    text += station("at = \"" + std::to_string(x) + " mm\"\nwidth = \"" + std::to_string(w) +
                    " mm\"\nthickness = \"" + std::to_string(w / 10) + " mm\"");
  }
  const auto job = parse_job(text + small_coat, "job.toml");
  ASSERT_TRUE(job) << list(job.error());
  EXPECT_EQ(job->board.width.size(), std::size_t{n} + 1);
  EXPECT_EQ(job->source.members.at("board.width").at(5000), "board.station[4999].width");
}

}  // namespace
}  // namespace wetout::files
