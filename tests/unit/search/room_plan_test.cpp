// Days of a room kept in one mode at a time.
#include "room_plan.hpp"

#include <gtest/gtest.h>

#include "board_problem.hpp"

namespace wetout::search::test {
namespace {

Problem boards(bool sanding_room) {
  Shop shop;
  shop.days = 7;
  shop.hours = Shop::Hours::days_and_saturday;
  shop.air = made_up_air(shop.days, 24.0, 20.0);
  shop.sanding_room = sanding_room;
  return glass(shop, {{"a", 1.0, false}, {"b", 1.0, false}});
}

TEST(RoomPlan, GivesTheBeginningOfEachDayToDustAcrossLunch) {
  const RoomPlanner rooms(boards(false));
  ASSERT_FALSE(rooms.empty());
  const std::vector<Taken> plan = rooms.plan(0.5);
  // Six days from 8 to 17 h: dust until 12:30, films until the next morning.
  ASSERT_EQ(plan.size(), 13U);
  constexpr int film = 0, dust = 1;
  for (std::size_t day = 0; day < 6; ++day) {
    const Slot morning = static_cast<Slot>(day) * slots_per_day + 8 * slots_per_hour;
    const Taken& before = plan[2 * day];
    const Taken& dusty = plan[2 * day + 1];
    EXPECT_EQ(before.what, film);
    EXPECT_EQ(before.to, morning);
    EXPECT_EQ(dusty.what, dust);
    EXPECT_EQ(dusty.from, morning);
    EXPECT_EQ(dusty.to, morning + 9 * slots_per_hour / 2);
    EXPECT_EQ(plan[2 * day + 2].from, dusty.to) << "without a gap";
  }
}

TEST(RoomPlan, IsNotMadeWhereThereIsNothingToPlan) {
  EXPECT_TRUE(RoomPlanner(boards(true)).empty()) << "a sanding room";
  Problem no_calendar = boards(false);
  no_calendar.ops[3].calendar = -1;
  EXPECT_TRUE(RoomPlanner(no_calendar).empty());
  Problem three_modes = boards(false);
  three_modes.modes.back().mode = 2;
  EXPECT_TRUE(RoomPlanner(three_modes).empty());
}

}  // namespace
}  // namespace wetout::search::test
