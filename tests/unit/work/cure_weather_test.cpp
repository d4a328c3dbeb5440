// A film in the shop's room, by the weather of a file.
#include <stdlib.h>

#include <chrono>
#include <cmath>
#include <fstream>

#include "support.hpp"
#include "wetout/time/print.hpp"
#include "wetout/time/read.hpp"
#include "wetout/work/cure.hpp"

namespace wetout::work {
namespace {

namespace fs = std::filesystem;
using report::CureMilestone;
using resin::Milestone;
using testing::has;
using testing::problem_of;
using namespace std::chrono_literals;

const time::Instant first = *time::read_instant("2026-06-13T00:00:00Z", time::Zone());

class Shop {
 public:
  explicit Shop(const std::string& room) {
    std::string name = (fs::temp_directory_path() / "wetout-cure-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
    folder_ = name;
    std::ofstream(folder_ / "shop.toml") << R"([shop]
time_zone = "Europe/Lisbon"
currency = "EUR"
units = "metric"
air = "21 C"
)" << room << R"(
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
tg = "64 C"
pot_life = [ { mass = "150 g", air = "25 C", time = "40 min" } ]
gel = [ { air = "25 C", time = "5 h" } ]
sand = [ { air = "25 C", time = "28 h" } ]
full_cure = [ { air = "25 C", time = "7 days" } ]
)";
  }
  Shop(const Shop&) = delete;
  Shop& operator=(const Shop&) = delete;
  ~Shop() { fs::remove_all(folder_); }

  /// One value an hour.
  template <class Air>
  fs::path weather(int hours, const Air& air_c) const {
    std::ofstream out(folder_ / "weather.csv");
    out << "time,air [C]\n";
    for (int h = 0; h < hours; ++h) {
      out << time::rfc3339(first + std::chrono::hours(h), time::Zone()) << ','
          << static_cast<double>(std::lround(100.0 * air_c(h))) / 100.0 << '\n';
    }
    return folder_ / "weather.csv";
  }

  base::Result<CureAnswer> ask(CureRequest request, time::Instant now = first + 10h) const {
    request.resin = "slow";
    Workshop workshop;
    workshop.shop = folder_ / "shop.toml";
    workshop.now = [now](const time::Zone&) { return now; };
    return cure(workshop, request);
  }
  base::Result<CureAnswer> ask_from(const fs::path& weather, time::Instant start) const {
    CureRequest request;
    request.weather = weather;
    request.start = [start](const time::Zone&) {
      return base::Result<std::optional<time::Instant>>(start);
    };
    return ask(request);
  }

 private:
  fs::path folder_;
};

double hours(const CureAnswer& answer, Milestone name) {
  for (const CureMilestone& m : answer.document.milestones) {
    if (m.name == name) return m.after ? units::in_hours(*m.after) : -1.0;
  }
  return -1.0;
}

TEST(CureInWeather, OfOneTemperatureIsAsInThatAir) {
  const Shop shop("[room]\nkind = \"unheated\"\nlag = \"3 h\"");
  const auto by_weather = shop.ask_from(shop.weather(400, [](int) { return 20.0; }), first + 5h);
  ASSERT_TRUE(by_weather);
  CureRequest constant;
  constant.air = units::Temperature::celsius(20);
  const auto by_air = shop.ask(constant);
  ASSERT_TRUE(by_air);
  for (const Milestone m : {Milestone::gel, Milestone::sandable, Milestone::full_cure}) {
    EXPECT_NEAR(hours(*by_weather, m), hours(*by_air, m), 1e-3 * hours(*by_air, m));
  }
  EXPECT_FALSE(has(by_weather->document.notices, "weather.repeated")) << "it is not come to";
  EXPECT_EQ(by_weather->document.air, std::nullopt);
  EXPECT_EQ(by_weather->document.weather->room, "unheated");
  EXPECT_EQ(by_weather->document.start, "2026-06-13T06:00:00+01:00") << "on the shop's clock";
  EXPECT_FALSE(by_air->document.weather);
}

TEST(CureInWeather, FollowsTheRoomNotTheAirOutside) {
  const auto day = [](int h) { return 18.0 + 8.0 * std::sin((h - 9) * 2.0 * M_PI / 24.0); };
  const Shop open("[room]\nkind = \"outdoors\"");
  const Shop heated(
      "[room]\nkind = \"heated\"\nheater = { kind = \"electric\", minimum = \"20 C\" }");
  const auto outside = open.ask_from(open.weather(240, day), first + 20h);
  const auto inside = heated.ask_from(heated.weather(240, day), first + 20h);
  ASSERT_TRUE(outside && inside);
  EXPECT_LT(hours(*inside, Milestone::gel), 0.8 * hours(*outside, Milestone::gel));
  EXPECT_TRUE(testing::lists(inside->document.assumptions, "room.lag"));
  EXPECT_FALSE(testing::lists(outside->document.assumptions, "room.lag"));
}

TEST(CureInWeather, MarksWhatComesAfterItsEnd) {
  const Shop shop("[room]\nkind = \"outdoors\"");
  const auto told = shop.ask_from(shop.weather(49, [](int) { return 20.0; }), first + 5h);
  ASSERT_TRUE(told);
  for (const CureMilestone& m : told->document.milestones) {
    ASSERT_TRUE(m.reached);
    EXPECT_EQ(m.beyond_air, units::in_hours(*m.after) > 43.0) << resin::to_string(m.name);
  }
  EXPECT_TRUE(has(told->document.notices, "weather.repeated"));
}

TEST(CureInWeather, IsNotBeyondItsEndInAWarmBox) {
  const Shop shop("[room]\nkind = \"outdoors\"");
  CureRequest request;
  request.weather = shop.weather(49, [](int) { return 20.0; });
  const auto told_after = [&](double after_h) {
    request.warm_box = WarmBoxChoice{units::Temperature::celsius(40), units::hours(after_h)};
    return shop.ask(request, first + 5h);
  };
  const auto told = told_after(24);
  ASSERT_TRUE(told);
  for (const CureMilestone& m : told->document.milestones) EXPECT_FALSE(m.beyond_air);
  const auto late = told_after(60);
  ASSERT_TRUE(late);
  EXPECT_TRUE(late->document.milestones.back().beyond_air) << "by then the weather was made up";
}

TEST(CureInWeather, MustCoverTheStart) {
  const Shop shop("");
  const fs::path weather = shop.weather(48, [](int) { return 20.0; });
  EXPECT_EQ(problem_of(shop.ask_from(weather, first - 1h)), "weather.outside --start");
  EXPECT_EQ(problem_of(shop.ask_from(weather, first + 48h)), "weather.outside --start");
  CureRequest now;
  now.weather = weather;
  EXPECT_EQ(problem_of(shop.ask(now, first + 100h)), "weather.outside --weather");
  const auto told = shop.ask(now, first + 10h);
  ASSERT_TRUE(told);
  EXPECT_EQ(told->document.start, "2026-06-13T11:00:00+01:00") << "else the present time";
}

TEST(CureInWeather, HoldsItsLastSensibleAir) {
  const Shop shop("[room]\nkind = \"outdoors\"");
  const auto told =
      shop.ask_from(shop.weather(100, [](int h) { return h < 30 ? 18.0 : -5.0; }), first + 5h);
  ASSERT_TRUE(told);
  EXPECT_TRUE(has(told->document.notices, "weather.beyond_sense"));
  EXPECT_FALSE(told->document.milestones.front().beyond_air);
  for (const CureMilestone& m : told->document.milestones) {
    if (m.name == Milestone::sandable) {
      EXPECT_TRUE(m.beyond_air);
    }
  }
  EXPECT_EQ(problem_of(shop.ask_from(shop.weather(48, [](int) { return -5.0; }), first + 5h)),
            "cure.beyond_sense --weather");
}

TEST(CureInWeather, NeedsAFileThatIsThere) {
  const Shop shop("");
  CureRequest request;
  request.weather = "nowhere/weather.csv";
  EXPECT_EQ(problem_of(shop.ask(request)), "file.missing ");
}

}  // namespace
}  // namespace wetout::work
