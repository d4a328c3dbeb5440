#include "sample.hpp"

namespace wetout::files {
namespace {

const Source& job_source() {
  static const JobFile job = parse_job(input("job.toml"), "job.toml").value();
  return job.source;
}

base::Problem at(const std::string& key, const Source& source = job_source()) {
  return locate({{.code = "x", .message = "x", .key = key}}, source).at(0);
}

TEST(Locate, FindsAKeyAndWhatStandsThere) {
  const base::Problem p = at("coat[1].ply[2].lap");
  EXPECT_EQ(p.file, "job.toml");
  EXPECT_EQ(p.line, 64);
  EXPECT_EQ(p.column, 7);
  EXPECT_EQ(p.found, "\"2 in\"");
  EXPECT_EQ(p.source_line, "lap = \"2 in\"");
}

TEST(Locate, MapsMembersOfListsToTheNamedKeys) {
  const std::pair<const char*, const char*> cases[] = {
      {"board.width[0]", "board.width.tail"},
      {"board.width[1]", "board.width.tail12"},
      {"board.width[2]", "board.width.wide"},
      {"board.width[3]", "board.width.nose12"},
      {"board.width[4]", "board.width"},  // a round nose: no key
      {"board.wide_point", "board.width.wide_point"},
      {"board.thickness[0]", "board.thickness.tail12"},
      {"board.thickness[1]", "board.thickness.centre"},
      {"board.rocker[0]", "board.rocker.tail"},
      {"board.rocker[2]", "board.rocker"},  // mid-length: no key
      {"board.rocker[4]", "board.rocker.nose"},
  };
  for (const auto& [key, in_file] : cases) EXPECT_EQ(at(key).key, in_file);
  EXPECT_EQ(at("board.width[1]").found, "\"15 in\"");
  EXPECT_EQ(at("board.width[1]").line, 17);
  EXPECT_EQ(at("board.width[4]").line, 13);
}

TEST(Locate, MissingKeysTakeThePlaceOfTheNearestTable) {
  const base::Problem p = at("coat[2].film");
  EXPECT_EQ(p.line, 66);
  EXPECT_EQ(p.column, 1);
  EXPECT_EQ(p.key, "coat[2].film");
  EXPECT_EQ(p.found, "");
  EXPECT_EQ(at("coat[99].ply").line, 35);
  EXPECT_EQ(at("board.tail.depth").line, 10);
  EXPECT_EQ(at("board.rail[0].exponent").line, 11);
}

TEST(Locate, LeavesAloneWhatIsNotOfThisFile) {
  for (const char* key : {"", "resin[0].pot_life", "shop.cup", "--air"}) {
    const base::Problem p = at(key);
    EXPECT_EQ(p.file, "") << key;
    EXPECT_EQ(p.line, 0) << key;
  }
  const base::Problem placed = {.code = "x", .file = "other.toml", .line = 3, .key = "board"};
  EXPECT_EQ(locate({placed}, job_source()).at(0).line, 3);
}

TEST(Locate, KeepsWhatTheProblemFoundItself) {
  const base::Problem p =
      locate({{.code = "x", .key = "coat[0].resin", .found = "slow on xps"}}, job_source()).at(0);
  EXPECT_EQ(p.found, "slow on xps");
  EXPECT_EQ(p.line, 39);
}

TEST(Locate, MapsListsOfStations) {
  std::string text = R"([board]
name = "Plank"
length = "2 m"
foam = "eps"
nose = "round"
tail = "round"
[[board.station]]
at = "0.5 m"
width = "40 cm"
[[board.station]]
at = "1 m"
width = "50 cm"
thickness = "6 cm"
rail = { apex = "30 %", exponent = 2 }
)" + small_coat;
  const auto job = parse_job(text, "job.toml");
  ASSERT_TRUE(job) << list(job.error());
  EXPECT_EQ(at("board.width[0]", job->source).key, "board.tail");
  EXPECT_EQ(at("board.width[2]", job->source).key, "board.station[1].width");
  EXPECT_EQ(at("board.width[2]", job->source).line, 12);
  EXPECT_EQ(at("board.thickness[0]", job->source).line, 13);
  EXPECT_EQ(at("board.rail[0].exponent", job->source).line, 14);
  EXPECT_EQ(at("board.rail[0].exponent", job->source).column, 36);
}

TEST(Locate, WorksOnTheShop) {
  const auto shop = parse_shop(input("shop.toml"), "shop.toml");
  ASSERT_TRUE(shop);
  const base::Problem p = at("resin[0].pot_life", shop->source);
  EXPECT_EQ(p.line, 71);
  EXPECT_EQ(at("shop.cup", shop->source).found, "\"quart\"");
  EXPECT_EQ(at("board.length", shop->source).line, 0);
}

TEST(Locate, StrangeKeysDoNoHarm) {
  for (const char* key : {"coat[", "coat[]", "coat[-1]", "coat[99999999999999999999]", "coat..x",
                          "board.", "board.width[7]", "coat[0", "board[0]", "coat.x"}) {
    EXPECT_EQ(at(key).file, "job.toml") << key;
    EXPECT_GT(at(key).line, 0) << key;
  }
}

}  // namespace
}  // namespace wetout::files
