// The job sheet of a shop: what stands on it against what other actions say.
#include "wetout/work/job_sheet.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <iterator>
#include <regex>
#include <string>
#include <vector>

#include "schedule_shop.hpp"
#include "wetout/work/mix.hpp"

namespace wetout::work {
namespace {

using testing::ScheduleShop;

constexpr const char* monday = "2026-06-15 12:00";

class JobSheetOfAShop : public ::testing::Test {
 protected:
  // As written for "pip", or for another name.
  std::string page(const std::string& job = "pip") {
    const auto made = make_job_sheet(
        shop.workshop(monday), {.job = job, .file = shop.folder() / "page.html", .units = {}});
    EXPECT_TRUE(made.has_value());
    if (!made) return {};
    no_schedule = made->no_schedule;
    number = made->schedule;
    std::ifstream in(made->file);
    return {std::istreambuf_iterator<char>(in), {}};
  }
  ScheduleShop shop;
  std::string no_schedule;
  std::optional<int> number;
};

std::vector<double> numbers(const std::string& text, const std::regex& what) {
  std::vector<double> all;
  for (std::sregex_iterator at(text.begin(), text.end(), what), end; at != end; ++at) {
    all.push_back(std::stod((*at)[1]));
  }
  return all;
}

// Each cup's seconds are those that `mix` tells for the air of the room when it is mixed.
TEST_F(JobSheetOfAShop, IsMixedForTheAirOfItsDay) {
  shop.air = [](double) { return 27.0; };
  shop.dew = [](double) { return 12.0; };
  shop.write();
  const report::ScheduleDocument schedule = shop.document(monday);
  const std::string text = page();
  EXPECT_EQ(number, schedule.number);
  for (const report::TimelineStep& step : schedule.timeline) {
    if (!step.id.ends_with("/wet")) continue;
    ASSERT_TRUE(step.room.has_value());
    EXPECT_NEAR(step.room->in_celsius(), 27.0, 0.2);
  }
  for (const char* coat : {"bottom-lam", "bottom-hot"}) {
    const auto at = [&](double celsius) {
      MixCoatRequest request;
      request.job = "pip";
      request.coat = coat;
      request.choices.air = units::Temperature::celsius(celsius);
      const auto card = mix_coat(shop.workshop(monday), request);
      EXPECT_TRUE(card.has_value());
      return units::in_minutes(card->document.batches.front().use_within);
    };
    const auto told =
        numbers(text, std::regex("data-cup=\"" + std::string(coat) + "/1\" data-use-s=\"(\\d+)\""));
    ASSERT_EQ(told.size(), 1U);
    EXPECT_EQ(told.front(), 60.0 * std::floor(at(27.0))) << coat;
    // The plan is made for 21 C, where a cup lasts longer.
    EXPECT_GT(at(21.0), told.front() / 60.0 + 3.0) << coat;
  }
}

// Gel is a conversion (stockmayer1943), and a time of the sheet: the curve meets both.
TEST_F(JobSheetOfAShop, CurvesPassGelWhereTheFilmGels) {
  (void)shop.document(monday);
  const std::string text = page();
  // The marks stand in the order of marks: gel is the first line of its kind.
  const std::regex chart("<svg class=\"chart\"[^>]*><title>Cure of [^]*?</svg>");
  int charts = 0;
  for (std::sregex_iterator at(text.begin(), text.end(), chart), end; at != end; ++at, ++charts) {
    const std::string svg = at->str();
    const auto gel = numbers(svg, std::regex("<line x1=\"([\\d.]+)\"[^>]*class=\"mark\""));
    ASSERT_FALSE(gel.empty());
    const auto x = numbers(svg, std::regex("([\\d.]+),[\\d.]+ "));
    const auto y = numbers(svg, std::regex("[\\d.]+,([\\d.]+) "));
    ASSERT_EQ(x.size(), y.size());
    ASSERT_GT(x.size(), 50U);
    std::size_t after = 1;
    while (after + 1 < x.size() && x[after] < gel.front()) ++after;
    const double part = (gel.front() - x[after - 1]) / (x[after] - x[after - 1]);
    // The plot reaches from 100 % at 16 down to 0 % at 100.
    const double share = (100.0 - (y[after - 1] + part * (y[after] - y[after - 1]))) / 84.0;
    EXPECT_NEAR(share, 0.577, 0.015);
    EXPECT_NEAR(y.front(), 100.0, 0.1);
    for (std::size_t i = 1; i < y.size(); ++i) EXPECT_LE(y[i], y[i - 1]);
  }
  EXPECT_EQ(charts, 2);
}

TEST_F(JobSheetOfAShop, KnowsAFileThatIsInTheLogAsItStands) {
  (void)shop.document(monday);
  const std::string of_job = page();
  EXPECT_EQ(page((shop.folder() / "board.toml").string()), of_job);
  EXPECT_TRUE(no_schedule.empty());
  // Cloth of what is done is not cut again, whichever way the board is named.
  RecordRequest done;
  done.step = "bottom-lam";
  done.done = true;
  shop.record("2026-06-15 12:30", done);
  const std::string later = page();
  const std::string piece = "name=\"cut/bottom-lam/";
  EXPECT_NE(of_job.find(piece), std::string::npos);
  EXPECT_EQ(later.find(piece), std::string::npos);
  EXPECT_EQ(page((shop.folder() / "board.toml").string()), later);
  shop.more_job =
      "\n[[coat]]\nname = \"deck hot\"\nface = \"deck\"\nkind = \"hotcoat\"\n"
      "resin = \"quick\"\n";
  shop.write();
  EXPECT_NE(page((shop.folder() / "board.toml").string()), of_job);
  EXPECT_FALSE(no_schedule.empty());
  EXPECT_FALSE(number.has_value());
}

TEST_F(JobSheetOfAShop, IsNotWrittenOnADryRun) {
  (void)shop.document(monday);
  Workshop dry = shop.workshop(monday);
  dry.dry_run = true;
  const auto made =
      make_job_sheet(dry, {.job = "pip", .file = shop.folder() / "dry.html", .units = {}});
  ASSERT_TRUE(made.has_value());
  EXPECT_FALSE(std::filesystem::exists(shop.folder() / "dry.html"));
}

}  // namespace
}  // namespace wetout::work
