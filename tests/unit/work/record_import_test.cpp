// Boards of the past: all or nothing, and never twice.
#include "wetout/work/record_import.hpp"

#include <gtest/gtest.h>

#include <fstream>

#include "record_shelf.hpp"
#include "support.hpp"

namespace wetout::work {
namespace {

using namespace testing;

class PastImport : public RecordShelf {
 protected:
  std::filesystem::path file(const std::string& name, const std::string& text) {
    std::ofstream(folder_ / name) << text;
    return folder_ / name;
  }
};

const std::string old_one = R"([[board]]
name = "Old One"
date = 2025-07-04
[[board.coat]]
name = "bottom lam"
minutes = 40
resin = "slow"
mixed = "144 g"
left = "9 g"
cloth = { e4 = "1.9 m" }
[[board.coat]]
name = "twin boxes"
part_a = "50 g"
part_b = "22 g"
resin = "quick"
used = { side-box = 2 }
)";

const std::string as_table = R"(board,date,step,fact,value
Old One,2025-07-04,bottom-lam,minutes,40
Old One,2025-07-04,bottom-lam,resin,slow
Old One,2025-07-04,bottom-lam,mixed,144 g
Old One,2025-07-04,bottom-lam,left,9 g
Old One,2025-07-04,bottom-lam,cloth,e4=1.9 m
Old One,2025-07-04,twin boxes,part-a,50 g
Old One,2025-07-04,twin boxes,part-b,22 g
Old One,2025-07-04,twin boxes,resin,quick
Old One,2025-07-04,twin boxes,used,side-box=2
)";

TEST_F(PastImport, TakesWhatTheBoardsUsed) {
  fill_shelf();
  const auto done = import_past(workshop_, file("past.toml", old_one));
  ASSERT_TRUE(done) << done.error().front().message;
  const report::PastDocument& document = done->document;
  ASSERT_EQ(document.boards.size(), 1U);
  EXPECT_TRUE(document.boards[0].began);
  EXPECT_EQ(document.boards[0].mixed, units::Milligrams(216'000));
  EXPECT_EQ(document.boards[0].minutes, 40);
  EXPECT_EQ(document.boards[0].work.minor, 1600);
  EXPECT_EQ(document.facts, 8) << "started, mixed, left, used, done; mixed, used, done";
  EXPECT_EQ(on_hand("kelp-a"), 5'000'000 - 150'000);
  EXPECT_EQ(on_hand("kelp-slow-b"), 2'200'000 - 44'000);
  EXPECT_EQ(on_hand("kelp-quick-b"), 1'000'000 - 22'000);
  EXPECT_EQ(on_hand("e4"), 20'000'000 - 1'900'000);
  EXPECT_EQ(on_hand("side-box"), 2);
  const auto cost = log().job_cost("old-one");
  ASSERT_TRUE(cost);
  EXPECT_EQ(cost->goods_minor, document.boards[0].goods.minor);
  EXPECT_EQ(cost->work_minor, 1600);
}

TEST_F(PastImport, EntersNothingTwiceInWhateverFormItComes) {
  fill_shelf();
  ASSERT_TRUE(import_past(workshop_, file("past.toml", old_one)));
  const auto before = log().info();
  for (const auto& again : {file("again.toml", old_one), file("again.csv", as_table)}) {
    const auto done = import_past(workshop_, again);
    ASSERT_TRUE(done) << done.error().front().message;
    EXPECT_EQ(done->document.facts, 0);
    EXPECT_EQ(done->document.before, 8);
  }
  EXPECT_EQ(log().info().events, before.events);
  EXPECT_EQ(log().info().entries, before.entries);

  // A file that has grown.
  const auto grown =
      import_past(workshop_, file("grown.toml", old_one + "[[board.coat]]\nname = \"deck lam\"\n"));
  EXPECT_EQ(grown->document.facts, 1);
  EXPECT_EQ(grown->document.before, 8);
}

TEST_F(PastImport, EntersEqualStepsAsManyTimesAsTheyStand) {
  const std::string step =
      "[[board.coat]]\nname = \"spot fill\"\nmixed = \"12 g\"\nresin = \"quick\"\n";
  const auto twice = import_past(
      workshop_, file("p.toml", "[[board]]\nname = \"x\"\ndate = 2025-07-04\n" + step + step));
  ASSERT_TRUE(twice);
  EXPECT_EQ(twice->document.facts, 4);
}

TEST_F(PastImport, EntersAllOrNothing) {
  fill_shelf();
  const auto before = log().info();
  // Good until the last: the lot is looked for when it is booked.
  const std::string bad = old_one + "lot = { side-box = \"nowhere\" }\n";
  Workshop dry = workshop_;
  dry.dry_run = true;
  for (const Workshop& workshop : {workshop_, dry}) {
    const auto done = import_past(workshop, file("past.toml", bad));
    ASSERT_FALSE(done);
    EXPECT_EQ(done.error().front().code, "lot.unknown");
    EXPECT_EQ(done.error().front().line, 17) << done.error().front().key;
    EXPECT_EQ(log().info().events, before.events);
    EXPECT_EQ(log().info().entries, before.entries);
    EXPECT_EQ(log().info().jobs, before.jobs);
    EXPECT_EQ(on_hand("e4"), 20'000'000);
  }
}

TEST_F(PastImport, ForeseesWhatItThenEnters) {
  fill_shelf();
  Workshop dry = workshop_;
  dry.dry_run = true;
  const auto path = file("past.toml", old_one);
  auto foreseen = import_past(dry, path);
  ASSERT_TRUE(foreseen);
  EXPECT_EQ(log().info().events, 0);
  const auto done = import_past(workshop_, path);
  foreseen->document.saved = true;
  EXPECT_EQ(report::to_json(foreseen->document), report::to_json(done->document));
}

TEST_F(PastImport, TellsEverythingThatIsWrongWithItsLine) {
  const auto done = import_past(workshop_, file("past.toml", R"([[board]]
name = "Old One"
date = 2025-13-04
[[board.coat]]
name = "bottom lam"
mixed = "262"
left = "9 m"
air = "21"
humidity = "160 %"
minutes = 0
[[board.coat]]
name = "deck lam"
date = "2027-01-01"
part_a = "50 g"
)"));
  ASSERT_FALSE(done);
  EXPECT_EQ(done.error().front().code.substr(0, 4), "toml") << "a day that no month has";
  const auto more = import_past(workshop_, file("past.toml", R"([[board]]
name = "Old One"
date = "2025-02-30"
[[board.coat]]
name = "bottom lam"
mixed = "262"
left = "9 m"
air = "21"
humidity = "160 %"
minutes = 0
time = "25:00"
[[board.coat]]
name = "deck lam"
date = "2025-01-01"
part_a = "50 g"
used = { sand = 2 }
)"));
  ASSERT_FALSE(more);
  std::string all;
  for (const base::Problem& problem : more.error()) {
    all += problem.code + " " + std::to_string(problem.line) + "\n";
  }
  EXPECT_EQ(all,
            "date.bad 3\nunit.missing 6\nunit.wrong 7\nunit.missing 8\nvalue.range 9\n"
            "value.range 10\ntime.bad 11\npast.parts 15\nmaterial.unknown 16\n");
  const auto future = import_past(workshop_, file("past.toml", R"([[board]]
name = "Old One"
date = 2027-01-01
[[board.coat]]
name = "deck lam"
resin = "fast"
cloth = { e5 = "2 m" }
minutes = 5
)"));
  ASSERT_FALSE(future);
  all.clear();
  for (const base::Problem& problem : future.error()) {
    all += problem.code + " " + std::to_string(problem.line) + "\n";
  }
  EXPECT_EQ(all, "time.future 3\nresin.unknown 6\nmaterial.unknown 7\n");
}

TEST_F(PastImport, SaysOfManyOnceWhatIsToBeSaidOfEach) {
  fill_shelf();
  std::string text = "[[board]]\nname = \"x\"\ndate = 2025-07-04\n";
  for (const char* coat : {"a", "b", "c", "d", "e"}) {
    text += "[[board.coat]]\nname = \"" + std::string(coat) +
            "\"\nmixed = \"100 g\"\nused = { side-box = 3 }\n";
  }
  const auto done = import_past(workshop_, file("p.toml", text));
  ASSERT_TRUE(done);
  std::string said;
  for (const base::Notice& notice : done->document.notices) {
    said += notice.code + " " + std::to_string(static_cast<int>(notice.value.value_or(0))) + "\n";
  }
  EXPECT_EQ(said, "record.not_split 5\nstock.which_resin 5\nstock.overdrawn 11\n");
}

}  // namespace
}  // namespace wetout::work
