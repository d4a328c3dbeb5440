#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "sample.hpp"
#include "text_checks.hpp"

namespace wetout::report {
namespace {

using Json = nlohmann::ordered_json;

TEST(Problems, AreNullWhereAKeyDoesNotApply) {
  const Json json = Json::parse(problems_json(sample::problems()));
  EXPECT_EQ(json["format"], "wetout.problems/1");
  const Json& missing = json["problems"][1];
  EXPECT_EQ(missing["file"], "shop.tml");
  EXPECT_EQ(missing["line"], nullptr);
  EXPECT_EQ(missing["found"], nullptr);
  EXPECT_EQ(missing["hint"], "did you mean shop.toml?");
  EXPECT_EQ(json["problems"][0]["column"], 10);
  EXPECT_FALSE(missing.contains("source_line"));
}

TEST(Problems, ShowTheLineWithACaret) {
  const std::string text = problems_text(sample::problems());
  EXPECT_EQ(text,
            "boards/sandpiper.toml:12:10: A length needs its unit.\n"
            "    wide   = \"20.75\"\n"
            "             ^\n"
            "    key:      board.width.wide\n"
            "    found:    20.75\n"
            "    expected: a length such as \"20 3/4 in\" or \"52.7 cm\"\n"
            "shop.tml: There is no such file.\n"
            "    hint:     did you mean shop.toml?\n");
}

base::Problem at(int column, const std::string& line) {
  base::Problem problem;
  problem.code = "x";
  problem.message = "Bad.";
  problem.file = "f";
  problem.line = 1;
  problem.column = column;
  problem.source_line = line;
  return problem;
}

// The character above the caret.
std::string pointed_at(const base::Problem& problem) {
  const auto lines = lines_of(problems_text({problem}));
  const std::size_t caret = lines.at(2).find('^');
  std::string above = lines.at(1);
  std::size_t column = 0;
  for (std::size_t i = 0; i < above.size(); ++i) {
    if ((static_cast<unsigned char>(above[i]) & 0xC0U) == 0x80U) continue;
    if (column++ == caret) return above.substr(i, 1);
  }
  return {};
}

TEST(Problems, CountColumnsInCharacters) {
  EXPECT_EQ(pointed_at(at(9, "é = \"é\" X")), "X");
  EXPECT_EQ(pointed_at(at(3, "\tkX")), "X");
}

TEST(Problems, ShowThePartOfALongLineAroundTheCaret) {
  const std::string line = std::string(300, 'a') + "X" + std::string(300, 'b');
  EXPECT_EQ(pointed_at(at(301, line)), "X");
  EXPECT_EQ(unfit_line(problems_text({at(301, line)})), "");
  EXPECT_EQ(unfit_line(problems_text({at(100'000, line)})), "");
}

TEST(Problems, KeepLongPathsWhole) {
  base::Problem problem;
  problem.message = "There is no such file.";
  problem.file = "/" + std::string(200, 'p') + "/job.toml";
  EXPECT_EQ(problems_text({problem}), problem.file + ":\n    There is no such file.\n");
}

TEST(Check, TellsGoodFilesFromBad) {
  const Json json = Json::parse(to_json(sample::check()));
  EXPECT_EQ(json["format"], "wetout.check/1");
  EXPECT_EQ(json["files"][0]["ok"], true);
  EXPECT_EQ(json["files"][0]["notices"].size(), 1U);
  EXPECT_EQ(json["files"][1]["ok"], false);
  EXPECT_EQ(json["files"][1]["problems"].size(), 2U);
  const std::string text = to_text(sample::check(), units::System::us);
  EXPECT_TRUE(text.starts_with("shop.toml: good\n  * slow: parts by volume"));
  EXPECT_NE(text.find("boards/sandpiper.toml:12:10: A length"), std::string::npos);
}

TEST(Jobs, AreListedWithTheirLastRevision) {
  EXPECT_EQ(to_text(sample::jobs()),
            "job                      rev.  planned           name\n"
            "sandpiper-6-4               3  2026-05-02 18:20  Sandpiper 6-4\n"
            "old-log                     -  -                 (archived) Longboard for the...\n");
  EXPECT_EQ(to_text(JobsDocument{}), "No jobs in the log.\n");
  const Json json = Json::parse(to_json(sample::jobs()));
  EXPECT_EQ(json["jobs"][0]["revision"], 3);
  EXPECT_EQ(json["jobs"][1]["revision"], nullptr);
  EXPECT_EQ(json["jobs"][0]["archived"], nullptr);
}

TEST(Log, SaysWhatItHoldsAndWhetherItIsSound) {
  EXPECT_EQ(to_text(sample::log()),
            "log        /home/shaper/.local/share/wetout/log.db\n"
            "holds      2 jobs, 3 plans, 1 schedule, 12 events, 8 documents\n"
            "size       118784 bytes, tables of version 2\n"
            "checked    damaged\n"
            "  * page 7 is never used\n");
  LogDocument copied = sample::log();
  copied.action = "backup";
  copied.sound.reset();
  copied.faults.clear();
  copied.copy = "/tmp/copy.db";
  EXPECT_TRUE(to_text(copied).ends_with("copied to  /tmp/copy.db\n"));
  EXPECT_EQ(Json::parse(to_json(copied))["sound"], nullptr);
}

TEST(Log, SaysWhereARestoreKeptTheOldOne) {
  LogDocument restored = sample::log();
  restored.action = "restore";
  restored.sound = true;
  restored.faults.clear();
  restored.copy = "copy.db";
  restored.kept = "log.db.before";
  EXPECT_TRUE(to_text(restored).ends_with(
      "checked    sound\ntaken from copy.db\nkept as    log.db.before\n"));
  EXPECT_EQ(Json::parse(to_json(restored))["kept"], "log.db.before");
  restored.jobs = 1;
  EXPECT_NE(to_text(restored).find("1 job, 3 plans"), std::string::npos);
}

TEST(New, SaysWhatADryRunWouldWrite) {
  NewDocument dry = sample::fresh();
  dry.written = false;
  EXPECT_TRUE(to_text(dry).starts_with("would write shop/shop.toml (shop)\n"));
  EXPECT_EQ(Json::parse(to_json(dry))["written"], false);
}

TEST(New, ListsTheFilesAndTheNextCommand) {
  EXPECT_EQ(to_text(sample::fresh()),
            "wrote shop/shop.toml (shop)\n"
            "wrote shop/board.toml (job)\n"
            "next: wetout plan shop/board.toml\n");
}

TEST(Mix, OfAFreeMassHasNoJob) {
  const Json json = Json::parse(to_json(sample::free_mix()));
  EXPECT_EQ(json["job"], nullptr);
  EXPECT_EQ(json["coat"], nullptr);
  EXPECT_EQ(json["mass_g"], 130);
  EXPECT_EQ(json["batches"][0]["pours"][1]["reads_g"], 130);
}

TEST(Mix, OfACoatHasItsBatchesAsInThePlan) {
  const PlanDocument plan = sample::plan();
  const Json json = Json::parse(to_json(*mix_document(plan, "deck-lam")));
  EXPECT_EQ(json["batches"], Json::parse(to_json(plan))["coats"][1]["batches"]);
  EXPECT_EQ(json["revision"], 3);
}

}  // namespace
}  // namespace wetout::report
