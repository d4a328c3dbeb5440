#include "wetout/resin/cure_course.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "random_air.hpp"
#include "sheets.hpp"
#include "wetout/resin/warm_box.hpp"

namespace wetout::resin {
namespace {

using sheets::c;
using std::chrono::hours;

const Calibration& medium() {
  static const Calibration fitted = *calibrate(sheets::medium(), {});
  return fitted;
}
time::History constant(double celsius) { return time::History::constant(273.15 + celsius); }
const CourseMilestone& find(const CureCourse& course, Milestone m) {
  return *std::find_if(course.milestones.begin(), course.milestones.end(),
                       [&](const CourseMilestone& told) { return told.milestone == m; });
}
bool says(const base::Notices& notices, std::string_view code) {
  return std::any_of(notices.begin(), notices.end(),
                     [&](const base::Notice& n) { return n.code == code; });
}

TEST(CureCourse, TellsMilestonesInOrderOfTime) {
  const auto start = time::Instant{} + hours(500000);
  const auto course = cure_course(medium(), constant(25), start);
  ASSERT_TRUE(course);
  EXPECT_EQ(course->milestones.size(), 8u);
  for (std::size_t i = 0; i < course->milestones.size(); ++i) {
    const CourseMilestone& told = course->milestones[i];
    EXPECT_TRUE(told.reached);
    EXPECT_FALSE(told.extrapolated);
    EXPECT_EQ(told.air, units::Temperature::kelvin(298.15));
    EXPECT_EQ((told.at - start).count(), std::llround(units::in_seconds(told.after)));
    if (i > 0) {
      EXPECT_GE(told.after, course->milestones[i - 1].after);
      EXPECT_GE(told.conversion, course->milestones[i - 1].conversion - 1e-9);
    }
  }
  EXPECT_NEAR(find(*course, Milestone::gel).conversion, 0.57735, 2e-5);
  EXPECT_NEAR(units::in_hours(find(*course, Milestone::full_cure).after), 168.0, 1e-6);
  EXPECT_TRUE(course->notices.empty());
  EXPECT_EQ(course->curve.size(), 97u);
  EXPECT_EQ(course->curve.front().conversion, 0.0);
  EXPECT_NEAR(course->curve.back().after_s, 168 * 3600.0, 1e-3);
}

// Worked out before for a Tg of 60 C: conversion and Tg above the film at the sheet's own times.
TEST(CureCourse, ConversionsAreSensible) {
  const auto course = cure_course(medium(), constant(25), time::Instant{});
  const auto above = [&](Milestone m) {
    const CourseMilestone& told = find(*course, m);
    return (told.tg - told.air).in_kelvin();
  };
  EXPECT_NEAR(above(Milestone::gel), -38.0, 1.0);
  EXPECT_LT(above(Milestone::tack_free), 0.0);
  EXPECT_NEAR(above(Milestone::sandable), 17.0, 3.0);
  EXPECT_NEAR(above(Milestone::full_cure), 27.0, 3.0);
}

TEST(CureCourse, BelowTheLowestTemperatureFullCureIsNotClaimed) {
  const auto course = cure_course(medium(), constant(11), time::Instant{});  // the sheet's is 12 C
  ASSERT_TRUE(course);
  EXPECT_TRUE(says(course->notices, "cure.below_lowest"));
  EXPECT_TRUE(find(*course, Milestone::gel).extrapolated);
  EXPECT_TRUE(find(*course, Milestone::gel).reached);
  const CourseMilestone& full = find(*course, Milestone::full_cure);
  EXPECT_FALSE(full.reached);
  ASSERT_TRUE(full.would_do);
  EXPECT_GE(*full.would_do, c(12));
}

TEST(CureCourse, NotReachedNamesTheTemperature) {
  Calibration fitted = medium();
  fitted.cure.lowest_air.reset();
  const auto course = cure_course(fitted, constant(4), time::Instant{});
  const CourseMilestone& full = find(*course, Milestone::full_cure);
  EXPECT_EQ(&full, &course->milestones.back());
  EXPECT_FALSE(full.reached);
  ASSERT_TRUE(full.would_do);
  const auto warmer = cure_course(fitted, constant(full.would_do->in_celsius()), time::Instant{});
  EXPECT_TRUE(find(*warmer, Milestone::full_cure).reached);
  EXPECT_TRUE(says(course->notices, "cure.not_reached"));
  EXPECT_TRUE(says(course->notices, "cure.cold"));
}

TEST(CureCourse, BeyondTheAirIsMarked) {
  const auto air = air_of_days(3, 22, 4, 0, 0, 1);
  const auto course = cure_course(medium(), air, time::Instant{} + hours(30));
  EXPECT_FALSE(find(*course, Milestone::gel).beyond_air);
  EXPECT_TRUE(find(*course, Milestone::full_cure).beyond_air);
}

TEST(CureCourse, SenselessAirIsRefused) {
  EXPECT_EQ(cure_course(medium(), constant(-1), time::Instant{}).error().front().code,
            "cure.beyond_sense");
  EXPECT_EQ(cure_course(medium(), constant(61), time::Instant{}).error().front().code,
            "cure.beyond_sense");
  EXPECT_TRUE(says(cure_course(medium(), constant(45), time::Instant{})->notices, "cure.hot"));
}

WarmBox box(double after_h, double celsius, double hottest = 50) {
  return {units::hours(after_h), c(celsius), c(hottest)};
}

TEST(WarmBox, SpeedsUpWhatComesAfterIt) {
  const auto start = time::Instant{} + hours(10);
  const auto air = in_warm_box(medium().cure, constant(18), start, box(24, 45), CureDefaults{});
  ASSERT_TRUE(air) << air.error().front().message;
  const auto without = cure_course(medium(), constant(18), start);
  const auto with = cure_course(medium(), *air, start);
  EXPECT_NEAR(find(*with, Milestone::gel).after / find(*without, Milestone::gel).after, 1.0, 1e-9);
  EXPECT_LT(find(*with, Milestone::full_cure).after,
            find(*without, Milestone::full_cure).after * 0.4);
  EXPECT_GT(with->curve.back().tg, without->curve.back().tg);
}

TEST(WarmBox, RampAndTgHold) {
  for (const double after : {9.0, 14.0, 48.0}) {
    const auto start = time::Instant{} + hours(10);
    const auto air =
        in_warm_box(medium().cure, constant(25), start, box(after, 50), CureDefaults{});
    ASSERT_TRUE(air) << air.error().front().message;
    const Film film(medium().cure, *air);
    const auto points = air->points();
    EXPECT_NEAR(points.back().value, 323.15, 1e-9);
    for (std::size_t i = 1; i < points.size(); ++i) {
      const double h = static_cast<double>((points[i].at - points[i - 1].at).count()) / 3600.0;
      EXPECT_LE((points[i].value - points[i - 1].value) / h, 10.0 + 1e-6);
      const double since = static_cast<double>((points[i].at - start).count());
      if (since < after * 3600.0) continue;
      EXPECT_LE(points[i].value, film.state(start, since).tg.in_kelvin() + 15.0 + 1e-3);
    }
  }
}

TEST(WarmBox, LimitsAreHeld) {
  const auto code = [](const WarmBox& at) {
    const auto air = in_warm_box(medium().cure, constant(25), time::Instant{}, at, CureDefaults{});
    return air ? "" : air.error().front().code;
  };
  EXPECT_EQ(code(box(24, 51)), "box.too_hot");
  EXPECT_EQ(code(box(24, 58, 60)), "");
  EXPECT_EQ(code(box(3, 45)), "box.too_early");
}

}  // namespace
}  // namespace wetout::resin
