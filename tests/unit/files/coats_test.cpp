#include "sample.hpp"

namespace wetout::files {
namespace {

using laminate::CoatKind;

JobFile example() {
  auto job = parse_job(input("job.toml"), "job.toml");
  EXPECT_TRUE(job) << list(job.error());
  return job ? std::move(*job) : JobFile{};
}

TEST(Coats, OfTheExampleAreReadInFileOrder) {
  const JobFile job = example();
  ASSERT_EQ(job.coats.size(), 6U);
  const char* ids[] = {"bottom-lam",     "deck-lam",     "fin-boxes",
                       "bottom-hotcoat", "deck-hotcoat", "bottom-gloss"};
  const CoatKind kinds[] = {CoatKind::laminate, CoatKind::laminate, CoatKind::install,
                            CoatKind::hotcoat,  CoatKind::hotcoat,  CoatKind::gloss};
  for (std::size_t i = 0; i < 6; ++i) {
    EXPECT_EQ(job.coats[i].id, ids[i]);
    EXPECT_EQ(job.coats[i].kind, kinds[i]);
    EXPECT_EQ(job.coats[i].resin, "slow");
  }
  EXPECT_EQ(job.coats[0].name, "bottom lam");
  EXPECT_EQ(job.coats[0].face, board::Face::bottom);
  EXPECT_EQ(job.coats[1].face, board::Face::deck);
  EXPECT_EQ(job.coats[0].laps, laminate::Laps::cut);
  EXPECT_EQ(job.coats[1].laps, laminate::Laps::free);
}

TEST(Coats, AdditivesAndInstallsAreRead) {
  const JobFile job = example();
  ASSERT_EQ(job.coats[1].additives.size(), 1U);
  EXPECT_EQ(job.coats[1].additives[0].material, "white");
  EXPECT_NEAR(job.coats[1].additives[0].share, 0.02, 1e-15);
  ASSERT_TRUE(job.coats[2].install);
  EXPECT_EQ(job.coats[2].install->part, "fin-box");
  EXPECT_EQ(job.coats[2].install->count, 5);
  EXPECT_EQ(job.coats[2].install->fill, units::millilitres(18));
  EXPECT_EQ(job.coats[2].install->gap, units::millimetres(3));
}

TEST(Plies, AreReadInTheOrderTheyAreLaid) {
  const JobFile job = example();
  const auto& plies = job.coats[1].plies;
  ASSERT_EQ(plies.size(), 3U);
  EXPECT_EQ(plies[0].id, "deck-patch");
  EXPECT_EQ(plies[0].from_tail, units::inches(14));
  EXPECT_EQ(plies[0].to, units::inches(56));
  EXPECT_EQ(plies[0].width, units::inches(15));
  EXPECT_EQ(plies[0].lap, units::Length{});
  EXPECT_FALSE(plies[1].from_tail);
  EXPECT_FALSE(plies[1].width);
  EXPECT_EQ(plies[2].id, "e4");
  EXPECT_EQ(plies[2].lap, units::inches(2));
}

TEST(Plies, WithoutANameAreCalledAfterTheirClothAndCounted) {
  const auto job = parse_job(small_board + R"([[coat]]
name = "lam"
face = "deck"
kind = "laminate"
resin = "slow"
[[coat.ply]]
cloth = "e4"
[[coat.ply]]
cloth = "e6"
[[coat.ply]]
cloth = "e4"
[[coat.ply]]
cloth = "e4"
[[coat.ply]]
name = "e4 2"
cloth = "e6"
)",
                             "job.toml");
  ASSERT_TRUE(job) << list(job.error());
  std::vector<std::string> ids;
  for (const auto& ply : job->coats[0].plies) ids.push_back(ply.id);
  // "e4-2" is taken by a name further down.
  EXPECT_EQ(ids, (std::vector<std::string>{"e4", "e6", "e4-3", "e4-4", "e4-2"}));
  EXPECT_EQ(job->coats[0].laps, laminate::Laps::free);
}

TEST(Plies, AreNeededInALaminate) {
  const base::Problem p =
      only(job_problems(small_board + with(small_coat, "\"hotcoat\"", "\"laminate\"")));
  EXPECT_EQ(p.code, "key.missing");
  EXPECT_EQ(p.key, "coat[0].ply");
  EXPECT_EQ(p.line, 15);
}

TEST(Plies, NeedACloth) {
  const base::Problem p =
      only(job_problems(job_with("cloth = \"e4\"\nlap = \"2 in\"", "lap = \"2 in\"")));
  EXPECT_EQ(p.code, "key.missing");
  EXPECT_EQ(p.key, "coat[0].ply[0].cloth");
  EXPECT_EQ(p.line, 41);
}

TEST(Kinds, KeysOfAnotherKindSayWhereTheyBelong) {
  const std::tuple<const char*, const char*, const char*> cases[] = {
      {"hotcoat", "laps = \"cut\"", "laminate"},
      {"hotcoat", "part = \"fin-box\"", "install"},
      {"gloss", "count = 5", "install"},
      {"seal", "gap = \"3 mm\"", "install"},
      {"laminate", "film = \"0.2 mm\"\nply = [ { cloth = \"e4\" } ]", "seal, hotcoat or gloss"},
      {"laminate", "fill = \"3 ml\"\nply = [ { cloth = \"e4\" } ]", "install"},
      {"install", "film = \"0.2 mm\"\npart = \"p\"\ncount = 1\nfill = \"3 ml\"\ngap = \"3 mm\"",
       "seal, hotcoat or gloss"},
      {"hotcoat", "ply = [ { cloth = \"e4\" } ]", "laminate"},
  };
  for (const auto& [kind, line, where] : cases) {
    const base::Problem p = only(job_problems(
        small_board + with(small_coat, "\"hotcoat\"", std::string("\"") + kind + "\"") + line));
    EXPECT_EQ(p.code, "key.misplaced") << kind << " " << line;
    EXPECT_EQ(p.line, 20) << kind;
    EXPECT_EQ(p.column, 1);
    EXPECT_TRUE(contains(p.expected, where)) << p.expected;
  }
}

TEST(Kinds, FilmIsReadWhereThereIsOne) {
  for (const char* kind : {"seal", "hotcoat", "gloss"}) {
    const auto job =
        parse_job(small_board + with(small_coat, "\"hotcoat\"", std::string("\"") + kind + "\"") +
                      "film = \"0.2 mm\"\n",
                  "job.toml");
    ASSERT_TRUE(job) << list(job.error());
    EXPECT_EQ(job->coats[0].film, units::millimetres(0.2));
  }
}

TEST(Coats, FaceKindAndResinAreNeeded) {
  const base::Problems problems = job_problems(small_board + "[[coat]]\nname = \"x\"\n");
  ASSERT_EQ(problems.size(), 3U) << list(problems);
  for (const base::Problem& p : problems) {
    EXPECT_EQ(p.code, "key.missing");
    EXPECT_EQ(p.line, 15);
  }
}

TEST(Coats, AreNeeded) {
  const base::Problem p = only(job_problems(small_board));
  EXPECT_EQ(p.code, "key.missing");
  EXPECT_EQ(p.key, "coat");
  EXPECT_EQ(p.line, 1);
}

TEST(After, TakesNamesAndIds) {
  for (const char* word : {"deck hotcoat", "deck-hotcoat", "Deck Hotcoat"}) {
    const auto job =
        parse_job(job_with("[\"deck hotcoat\"]", std::string("[\"") + word + "\"]"), "job.toml");
    ASSERT_TRUE(job) << list(job.error());
    EXPECT_EQ(job->coats[5].after, std::vector<std::string>{"deck-hotcoat"});
  }
}

TEST(After, IdsOfNamedCoatsAreUsed) {
  const auto job =
      parse_job(with(job_with("name = \"deck hotcoat\"", "name = \"deck hotcoat\"\nid = \"dh\""),
                     "[\"deck hotcoat\"]", "[\"deck hotcoat\", \"dh\"]"),
                "job.toml");
  ASSERT_TRUE(job) << list(job.error());
  EXPECT_EQ(job->coats[5].after, std::vector<std::string>{"dh"});
}

TEST(After, UnknownCoatsPointAtTheMember) {
  const base::Problem p =
      only(job_problems(job_with("[\"deck hotcoat\"]", "[\"deck lam\", \"deck hotcaot\"]")));
  EXPECT_EQ(p.code, "coat.after_unknown");
  EXPECT_EQ(p.key, "coat[5].after");
  EXPECT_EQ(p.line, 91);
  EXPECT_EQ(p.column, 22);
  EXPECT_EQ(p.hint, "did you mean \"deck-hotcoat\"?");
}

TEST(Additives, TwiceAreAConflict) {
  const base::Problem p = only(job_problems(
      job_with("[ { material = \"white\", share = \"2 %\" } ]",
               "[ { material = \"white\", share = \"2 %\" }, { material = \"white\", share = "
               "\"1 %\" } ]")));
  EXPECT_EQ(p.code, "additive.twice");
  EXPECT_EQ(p.key, "coat[1].additives[1].material");
}

TEST(Coats, ManyMoreThanMakeSenseAreRefused) {
  std::string text = small_board;
  for (int i = 0; i < 1001; ++i) text += with(small_coat, "bottom hotcoat", std::to_string(i));
  EXPECT_EQ(only(job_problems(text)).code, "value.range");
}

}  // namespace
}  // namespace wetout::files
