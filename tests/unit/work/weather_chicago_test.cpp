// The whole command on a typical year: US National Renewable Energy Laboratory, TMY3, station
// 725300 (Chicago O'Hare).
#include <stdlib.h>

#include <filesystem>
#include <fstream>

#include "support.hpp"
#include "wetout/time/read.hpp"
#include "wetout/work/weather.hpp"

namespace wetout::work {
namespace {

namespace fs = std::filesystem;
using report::WeatherDocument;
using schedule::Limit;
using schedule::State;
using testing::has;

fs::path test_data() {
  if (const char* given = std::getenv("WETOUT_TEST_DATA")) return given;
  return WETOUT_TEST_DATA;
}

class WeatherOfChicago : public ::testing::Test {
 protected:
  void SetUp() override {
    if (!fs::exists(test_data())) {
      GTEST_SKIP() << "no test data at " << test_data() << " (set WETOUT_TEST_DATA)";
    }
    std::string name = (fs::temp_directory_path() / "wetout-chicago-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
    folder_ = name;
  }
  void TearDown() override { fs::remove_all(folder_); }

  WeatherDocument week(const std::string& room, const std::string& from,
                       const std::string& guard = "none") const {
    std::ofstream(folder_ / "shop.toml") << R"([shop]
time_zone = "America/Chicago"
currency = "USD"
air = "21 C"
weather = ")" << (test_data() / "weather" / "chicago.epw").string()
                                         << "\"\n[room]\n"
                                         << room << R"(
[[material]]
id = "a"
density = "1.1 g/ml"
[[material]]
id = "b"
density = "1.0 g/ml"
[[resin]]
id = "slow"
chemistry = "epoxy"
part_a = "a"
part_b = "b"
parts = { by = "mass", a = 100, b = 40 }
lowest_air = "15 C"
highest_air = "30 C"
humidity_limit = "80 %"
gel = [ { air = "25 C", time = "4 h" } ]
tack_free = [ { air = "25 C", time = "7 h" } ]
)";
    Workshop workshop;
    workshop.shop = folder_ / "shop.toml";
    const auto now = *time::read_instant("2026-06-13T12:00:00Z", time::Zone());
    workshop.now = [now](const time::Zone&) { return now; };
    WeatherRequest request;
    request.from = [&](const time::Zone& zone) -> base::Result<std::optional<time::Instant>> {
      return *time::read_instant(from, zone);
    };
    request.guard = guard;
    const auto answer = weather(workshop, request);
    EXPECT_TRUE(answer) << problem_of(answer);
    return answer ? answer->document : WeatherDocument{};
  }
  template <class T>
  static std::string problem_of(const T& result) {
    return testing::problem_of(result);
  }

 private:
  fs::path folder_;
};

int hours(const WeatherDocument& document, State state, std::optional<Limit> limit = {}) {
  double seconds = 0.0;
  for (const report::StartWindow& window : document.windows) {
    if (window.ok != state || (limit && window.limit != limit)) continue;
    const auto at = [](const std::string& text) { return *time::read_instant(text, time::Zone()); };
    seconds += std::chrono::duration<double>(at(window.to) - at(window.from)).count();
  }
  return static_cast<int>(seconds / 3600.0);
}

TEST_F(WeatherOfChicago, WeekIsShownOfAYearThatIsNoForecast) {
  const WeatherDocument document = week("kind = \"outdoors\"", "2026-07-12 00:00", "normal");
  EXPECT_TRUE(document.placed);
  EXPECT_TRUE(has(document.notices, "weather.placed"));
  EXPECT_EQ(document.hours, 7 * 24);
  EXPECT_EQ(document.series.size(), 7U * 24U + 1U);
  EXPECT_EQ(document.from, "2026-07-12T00:00:00-05:00");
  EXPECT_DOUBLE_EQ(document.guard.at_from.in_kelvin(), 2.5);
}

TEST_F(WeatherOfChicago, HotWeekClosesForHeat) {
  const WeatherDocument document = week("kind = \"outdoors\"", "2026-07-15 00:00");
  double hottest = 0.0;
  for (const report::WeatherHour& hour : document.series) {
    hottest = std::max(hottest, hour.room->in_celsius());
  }
  // Its line of 19 July, hour 15.
  EXPECT_DOUBLE_EQ(hottest, 35.0);
  EXPECT_GT(hours(document, State::refuse, Limit::warm), 48);
}

TEST_F(WeatherOfChicago, ColdWeekIsClosedUnlessTheRoomIsHeated) {
  const WeatherDocument cold = week("kind = \"unheated\"", "2026-01-12 00:00");
  EXPECT_EQ(hours(cold, State::refuse, Limit::cold), 7 * 24);
  const WeatherDocument heated =
      week("kind = \"heated\"\nheater = { kind = \"electric\", minimum = \"18 C\" }",
           "2026-01-12 00:00");
  EXPECT_EQ(hours(heated, State::good), 7 * 24);
  for (const report::WeatherHour& hour : heated.series) {
    EXPECT_NEAR(hour.room->in_celsius(), 18.0, 2e-3);
  }
  const WeatherDocument gas =
      week("kind = \"heated\"\nheater = { kind = \"unvented gas\", minimum = \"18 C\" }",
           "2026-01-12 00:00");
  EXPECT_EQ(hours(gas, State::refuse, Limit::foul_air), 7 * 24);
}

// The air of 16 September is on average 1.1 K above its dew point.
TEST_F(WeatherOfChicago, DampDaysCloseForDamp) {
  const WeatherDocument document = week("kind = \"unheated\"", "2026-09-14 00:00");
  const int damp = hours(document, State::refuse, Limit::dew_margin) +
                   hours(document, State::refuse, Limit::humidity);
  EXPECT_GT(damp, 84);
}

}  // namespace
}  // namespace wetout::work
