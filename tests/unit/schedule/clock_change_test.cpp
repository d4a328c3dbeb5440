// Nights in which clocks are put forward or back.
#include <gtest/gtest.h>

#include <chrono>

#include "asked.hpp"
#include "board_work.hpp"
#include "sample.hpp"

namespace wetout::schedule {
namespace {

using sample::Answered;
using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::sys_days;
using time::Instant;

struct Night {
  const char* name;
  Instant from;      ///< 18:00 on the evening before
  Instant change;    ///< of the clocks
  hours long_night;  ///< between 18:00 and 06:00 on the wall
};
// New York: 2026-03-08 02:00 EST becomes 03:00 EDT, 2026-11-01 02:00 EDT becomes 01:00 EST.
const Night nights[] = {{"forward", sys_days{std::chrono::year{2026} / 3 / 7} + hours(23),
                         sys_days{std::chrono::year{2026} / 3 / 8} + hours(7), hours(11)},
                        {"back", sys_days{std::chrono::year{2026} / 10 / 31} + hours(22),
                         sys_days{std::chrono::year{2026} / 11 / 1} + hours(6), hours(13)}};

/// Somebody works all night, from 18:00 to 06:00.
Asked at_night(const Night& night) {
  Asked asked = sample::asked({sample::coat("seal", board::Face::deck, laminate::CoatKind::seal)},
                              {.mean_c = 22, .swing_k = 0, .dew_c = 8}, 4);
  asked.boards[0].work.coats[0].resin = "kelp-quick";
  const auto later = night.from - sample::midnight;
  for (climate::WeatherPoint& point : asked.weather.points) point.at += later;
  asked.issued = asked.from = night.from;
  asked.until = night.from + hours(36);
  asked.zone = *time::Zone::named("America/New_York");
  WeekHours all_night;
  all_night.days.fill({sample::from_to(0, 6), sample::from_to(18, 24)});
  asked.people.front().hours = all_night;
  return asked;
}

TEST(ClockChange, LeavesTheNightsRealLength) {
  for (const Night& night : nights) {
    SCOPED_TRACE(night.name);
    const Asked asked = at_night(night);
    EXPECT_NE(asked.zone.offset_at(night.change - std::chrono::seconds(1)),
              asked.zone.offset_at(night.change));
    const auto people = people_of(asked);
    ASSERT_GE(people.front().spans.size(), 1U);
    EXPECT_EQ(people.front().spans.front(),
              (WorkingSpan{night.from, night.from + night.long_night}));
  }
}

TEST(ClockChange, LeavesAttendedMinutesWhole) {
  for (const Night& night : nights) {
    SCOPED_TRACE(night.name);
    for (int early = 0; early <= 40; early += 5) {
      Asked asked = at_night(night);
      // The wet lies over the change; everything else as suits.
      asked.boards[0].fixed = {{{"seal", StepWord::wet, ""}, night.change - minutes(early)}};
      const Answered found = sample::answer(asked);
      ASSERT_TRUE(found.fits()) << early;
      const auto& setting = found.set_up.setting;
      Instant last = asked.from;
      for (const PlacedStep& placed : found.arrangement.steps) {
        const Step& step = setting.boards[0].steps.steps[static_cast<std::size_t>(placed.step)];
        EXPECT_EQ(std::chrono::duration<double>(placed.attended_until - placed.start).count(),
                  units::in_seconds(step.attended));
        EXPECT_EQ((placed.start - asked.from) % grid_step, std::chrono::seconds(0));
        EXPECT_GE(placed.start, last);
        last = placed.attended_until;
        EXPECT_EQ(placed.person, 0);
      }
      const PlacedStep* wet = found.placed("seal/wet");
      EXPECT_EQ(wet->start, night.change - minutes(early));
      // Looks count real minutes, whatever the clock on the wall does.
      for (const int m : {15, 30, 60}) {
        const PlacedStep* look = found.placed("seal/watch-" + std::to_string(m));
        ASSERT_NE(look, nullptr);
        EXPECT_GE(look->start - wet->attended_until, minutes(m));
        EXPECT_LE(look->start - wet->attended_until, minutes(m + 10));
      }
      // 2 h after the board came in, not an hour more or less.
      EXPECT_GE(wet->start - found.placed("acclimatise")->attended_until, hours(2));
    }
  }
}

// An hour that is skipped is not worked, one that comes twice is worked twice.
TEST(ClockChange, MakesANightShorterOrLonger) {
  for (const Night& night : nights) {
    SCOPED_TRACE(night.name);
    Asked asked = at_night(night);
    asked.until = night.from + hours(20);
    asked.boards[0].work.coats.clear();
    asked.boards[0].work.plan.coats.clear();
    // 10 min to carry in, so long of spackle, 5 min to weigh: in one night.
    const auto fits_with = [&](minutes spackle) {
      asked.boards[0].work.spackle = units::minutes(static_cast<double>(spackle.count()));
      return sample::answer(asked).fits();
    };
    EXPECT_TRUE(fits_with(night.long_night - minutes(15)));
    EXPECT_FALSE(fits_with(night.long_night - minutes(10)));
  }
}

}  // namespace
}  // namespace wetout::schedule
