#include "sample.hpp"

namespace wetout::files {
namespace {

TEST(Ids, AreMadeFromTheName) {
  const auto job = parse_job(job_with("id = \"sandpiper-6-4\"", ""), "job.toml");
  ASSERT_TRUE(job) << list(job.error());
  EXPECT_EQ(job->board.id, "sandpiper-6-4");
}

TEST(Ids, NameIsTheIdWhenThereIsNone) {
  const auto job = parse_job(job_with("name = \"Sandpiper 6-4\"", ""), "job.toml");
  ASSERT_TRUE(job) << list(job.error());
  EXPECT_EQ(job->board.name, "sandpiper-6-4");
}

TEST(Ids, MustBeSlugs) {
  const base::Problem p = only(job_problems(job_with("\"sandpiper-6-4\"", "\"Sand Piper\"")));
  EXPECT_EQ(p.code, "id.bad");
  EXPECT_EQ(p.key, "board.id");
  EXPECT_EQ(p.line, 3);
  EXPECT_EQ(p.column, 6);
  EXPECT_EQ(p.hint, "write \"sand-piper\"");
}

TEST(Ids, CannotBeMadeFromEveryName) {
  const std::string no_id = job_with("id = \"sandpiper-6-4\"", "");
  EXPECT_EQ(only(job_problems(with(no_id, "Sandpiper 6-4", "\u6ce2"))).code, "id.bad");
  EXPECT_EQ(only(job_problems(with(no_id, "Sandpiper 6-4", std::string(65, 'a')))).code, "id.bad");
}

TEST(Ids, OrANameMustBeThere) {
  const base::Problem p = only(job_problems(job_with("name = \"bottom lam\"\n", "")));
  EXPECT_EQ(p.code, "key.missing");
  EXPECT_EQ(p.key, "coat[0].id");
  EXPECT_EQ(p.line, 35);
}

TEST(Ids, SubcommandWordsAreRefused) {
  for (const char* word : {"list", "show", "diff", "rename", "archive", "undo", "import"}) {
    const std::string quoted = std::string("\"") + word + "\"";
    EXPECT_EQ(only(job_problems(job_with("\"sandpiper-6-4\"", quoted))).code, "id.reserved");
    const base::Problem p = only(job_problems(job_with("\"bottom gloss\"", quoted)));
    EXPECT_EQ(p.code, "id.reserved") << word;
    EXPECT_EQ(p.key, "coat[5].name");
    EXPECT_EQ(only(shop_problems(shop_with("id = \"white\"", "id = " + quoted))).code,
              "id.reserved");
  }
}

TEST(Ids, TwiceNameBothLines) {
  const base::Problem p = with_code(
      job_problems(job_with("name = \"bottom gloss\"", "name = \"Bottom Lam\"")), "id.twice");
  EXPECT_EQ(p.line, 87);
  EXPECT_EQ(p.column, 8);
  EXPECT_TRUE(contains(p.message, "line 36")) << p.message;
  EXPECT_TRUE(contains(p.hint, "bottom-lam-2")) << p.hint;
}

TEST(Ids, TwiceInEveryKindOfThing) {
  const std::pair<const char*, const char*> cases[] = {
      {"id = \"white\"", "id = \"slow-b\""},
      {"id = \"e4\"", "id = \"white\""},  // cloth and material are one stock
      {"[[material]]   ",
       "[[cup]]\nid = \"quart\"\nholds = \"1 l\"\ndiameter = \"1 in\"\n[[material]]   "},
      {"[[resource]]", "[[resource]]\nid = \"stand\"\n[[resource]]"},
      {"[[person]]", "[[person]]\nid = \"first\"\n[[person]]"},
  };
  for (const auto& [from, to] : cases) {
    const base::Problem p = with_code(shop_problems(shop_with(from, to)), "id.twice");
    EXPECT_TRUE(contains(p.message, "on line ")) << p.message;
  }
  std::string two = input("shop.toml");
  const std::size_t resin = two.find("[[resin]]");
  const std::size_t losses = two.find("[losses]");
  two.insert(losses, two.substr(resin, losses - resin));
  EXPECT_EQ(only(shop_problems(two)).code, "id.twice");
}

TEST(Ids, PliesOfDifferentCoatsMayShareThem) {
  const auto job = parse_job(input("job.toml"), "job.toml");
  ASSERT_TRUE(job);
  EXPECT_EQ(job->coats[0].plies[0].id, job->coats[1].plies[2].id);
  EXPECT_EQ(only(job_problems(job_with("name = \"tail patch\"", "name = \"deck patch\""))).code,
            "id.twice");
}

}  // namespace
}  // namespace wetout::files
