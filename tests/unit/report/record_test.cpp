// What was recorded, as text and as JSON.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "record_sample.hpp"
#include "text_checks.hpp"

namespace wetout::report {
namespace {

using Json = nlohmann::json;
using units::System;

TEST(RecordText, ShowsEachFactWithItsNumberAndWhatItComesTo) {
  EXPECT_EQ(to_text(sample::record(), System::metric),
            "sandpiper-6-4, bottom-lam/wet\n"
            "     1  2026-05-02 18:21  started (recorded before)\n"
            "     2  2026-05-02 18:22  mixed 245 g: part A 165.3 g, part B 75.0 g,\n"
            "                          stirred in 4.7 g\n"
            "     3  2026-05-02 18:23  left 12.5 g\n"
            "     4  2026-05-02 18:24  done\n"
            "  * the job is back from the archive\n"
            "  * bottom-lam: part B is above what the ratio wants - 5.2 %, limit 3 %\n"
            "\n"
            "From stock\n"
            "  165 g kelp-a (lot 2026-05-01, past its day), 2.61 USD\n"
            "\n"
            "Work\n"
            "  25 min, 10.00 USD (booked before)\n"
            "\n"
            "So far\n"
            "  bottom-lam/wet  mixed 245 g of 292 g planned, left 12.5 g, spilled 4 g\n"
            "\n"
            "  ! A cup left standing gets hot.\n");
}

TEST(RecordText, ListsEveryKindInColumns) {
  const std::string text = to_text(sample::record_list(), System::us);
  EXPECT_EQ(unfit_line(text), "");
  for (const char* line : {
           "sandpiper-6-4: what was recorded\n",
           "     3  2026-05-02 18:23  bottom-lam/wet            left 12.5 g (0.4 oz) (taken\n",
           "     5  2026-05-02 18:25  bottom-lam/wet            seen: tack-free\n",
           "     6  2026-05-02 18:26  bottom-lam/wet            air 70 \xc2\xb0"
           "F, humidity 61.5 %\n",
           "     7  2026-05-02 18:27  bottom-lam/wet            humidity 60 %\n",
           "     8  2026-05-02 18:28  weigh                     \"2.84 kg with \"fins\"",
           "     9  2026-05-02 18:29                            \"x\"\n",
           "    10  2026-05-02 18:30  bottom-lam/wet            takes back event 3, \"that\n",
           "a-coat-whose-name-doe...",
           "\nSo far\n  bottom-lam/wet  mixed 245 g (8.6 oz) of 292 g (10.3 oz) planned,",
           "\n  spot  mixed 0 g (0.0 oz), left 0.001 g (0.0 oz)\n",
       }) {
    EXPECT_NE(text.find(line), std::string::npos) << line << text;
  }
  EXPECT_EQ(text.find("\n  weigh"), std::string::npos) << "nothing was mixed for it";
}

TEST(RecordText, SaysThatNothingWasRecorded) {
  RecordDocument document = sample::record_list();
  document.events.clear();
  document.totals.clear();
  EXPECT_EQ(to_text(document, System::us), "Nothing was recorded of sandpiper-6-4.\n");
}

TEST(RecordText, ShowsWhatAnUndoTookBack) {
  EXPECT_EQ(to_text(sample::record_undo(), System::metric),
            "sandpiper-6-4, bottom-lam/wet\n"
            "    10  2026-05-02 18:30  takes back event 3\n"
            "     3  2026-05-02 18:23  left 12.5 g\n"
            "\n"
            "So far\n"
            "  bottom-lam/wet  mixed 245 g of 292 g planned, left 12.5 g, spilled 4 g\n");
}

// As a scale shows them: what is weighed to the gram is not made a split to the tenth.
TEST(RecordText, PrintsPartsThatAddUp) {
  RecordDocument document = sample::record();
  RecordedFact& mixed = document.events[1];
  mixed.mass = units::Milligrams(144'000);
  mixed.part_a = units::Milligrams(100'000);
  mixed.part_b = units::Milligrams(44'000);
  EXPECT_NE(to_text(document, System::metric).find("144 g: part A 100 g, part B 44 g\n"),
            std::string::npos);
  mixed.part_a = units::Milligrams(99'960);
  mixed.part_b = units::Milligrams(44'040);
  EXPECT_NE(to_text(document, System::metric).find("144 g: part A 100.0 g, part B 44.0 g\n"),
            std::string::npos);
  mixed.part_a.reset();
  mixed.part_b.reset();
  EXPECT_NE(to_text(document, System::metric).find("mixed 144 g\n"), std::string::npos);
}

TEST(RecordJson, HasEveryKeyAlways) {
  const Json json = Json::parse(to_json(sample::record()));
  EXPECT_EQ(json["format"], "wetout.record/1");
  EXPECT_EQ(json["events"].size(), 4U);
  EXPECT_EQ(json["events"][0]["already"], true);
  EXPECT_EQ(json["events"][1]["mass_g"], 245);
  EXPECT_EQ(json["events"][1]["part_a_g"], 165.333);
  EXPECT_EQ(json["events"][0]["mass_g"], nullptr);
  EXPECT_EQ(json["undone"], nullptr);
  EXPECT_EQ(json["booked"][0]["lines"][0]["amount"], 165.333);
  EXPECT_EQ(json["booked"][0]["lines"][0]["overdrawn"], 0.333);
  EXPECT_EQ(json["booked"][1]["lines"][0]["unit"], "min");
  EXPECT_EQ(json["totals"][0]["planned_g"], 292);
  const Json list = Json::parse(to_json(sample::record_list()));
  EXPECT_EQ(list["events"][5]["rh_pct"], 61.5);
  EXPECT_EQ(list["events"][5]["air_c"], 21);
  EXPECT_EQ(list["events"][2]["undone_by"], 10);
  EXPECT_EQ(list["events"][8]["step"], nullptr);
  EXPECT_EQ(list["totals"][1]["coat"], nullptr);
}

TEST(PastText, HasALineForEachBoard) {
  const std::string text = to_text(sample::past(), System::metric);
  EXPECT_EQ(unfit_line(text), "");
  EXPECT_EQ(text,
            "2 boards, 21 new facts, 3 entered before\n"
            "\n"
            "board              facts         mixed        time         goods          work\n"
            "kittiwake-6-0         21       1.12 kg   3 h 5 min     61.20 USD     92.50 USD\n"
            "an-old-board-wi...     0             -           -             -             -\n"
            "  * kelp-a: lot 2025-06-01 is past its last good day\n");
}

}  // namespace
}  // namespace wetout::report
