#include "wetout/climate/guard.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace wetout::climate {
namespace {

using std::chrono::hours;
using std::chrono::seconds;
using time::History;
using time::Instant;

double shift(Guard guard, double days) { return guard_shift(guard, units::days(days)).in_kelvin(); }

TEST(Guard, GrowsWithTheLeadUpToALimit) {
  EXPECT_DOUBLE_EQ(shift(Guard::normal, 0), 0.5);
  EXPECT_DOUBLE_EQ(shift(Guard::normal, 1), 0.75);
  EXPECT_DOUBLE_EQ(shift(Guard::normal, 8), 2.5);
  EXPECT_DOUBLE_EQ(shift(Guard::normal, 14), 2.5);
  EXPECT_DOUBLE_EQ(shift(Guard::normal, -3), 0.5) << "what has been is no better known than now";
  EXPECT_DOUBLE_EQ(shift(Guard::wide, 1), 1.5);
  EXPECT_DOUBLE_EQ(shift(Guard::wide, 14), 5.0);
  EXPECT_DOUBLE_EQ(shift(Guard::none, 5), 0.0);
}

TEST(Guard, IsReadFromItsWord) {
  for (const Guard guard : {Guard::none, Guard::normal, Guard::wide}) {
    EXPECT_EQ(read_guard(to_string(guard)).value(), guard);
  }
  const base::Problem p = read_guard("normall").error().front();
  EXPECT_EQ(p.code, "word.unknown");
  EXPECT_EQ(p.found, "normall");
  EXPECT_EQ(p.hint, "did you mean \"normal\"?");
}

// Hourly air from a day before the forecast was made to twelve days after; a point an hour, but no
// point where the shift bends.
History air() {
  std::vector<time::HistoryPoint> points;
  for (int h = -24; h <= 24 * 12; h += 5) {
    points.push_back({Instant{} + hours(h), 290.0 + (h * 7 % 13)});
  }
  return *History::of(std::move(points));
}

RC_GTEST_PROP(Guard, MovesACourseByTheShiftOfEachInstant, ()) {
  const Instant issued = Instant{} + seconds(*rc::gen::inRange(-90000, 90000));
  const Guard guard = *rc::gen::element(Guard::none, Guard::normal, Guard::wide);
  const Instant at = Instant{} + seconds(*rc::gen::inRange(-86400, 12 * 86400));
  const History given = air();
  const double by =
      guard_shift(guard, units::seconds(static_cast<double>((at - issued).count()))).in_kelvin();
  RC_ASSERT(std::abs(moved(given, Way::warmer, guard, issued).at(at) - given.at(at) - by) < 1e-9);
  RC_ASSERT(std::abs(moved(given, Way::colder, guard, issued).at(at) - given.at(at) + by) < 1e-9);
}

TEST(Guard, OfNoneLeavesTheCourseAlone) {
  const History given = air();
  const History same = moved(given, Way::colder, Guard::none, Instant{});
  EXPECT_TRUE(std::equal(same.points().begin(), same.points().end(), given.points().begin(),
                         given.points().end()));
}

}  // namespace
}  // namespace wetout::climate
