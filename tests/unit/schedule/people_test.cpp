// Who does what: inside everybody's own hours, one thing at a time.
#include <gtest/gtest.h>

#include <chrono>
#include <string>
#include <vector>

#include "sample.hpp"
#include "small_setting.hpp"
#include "wetout/schedule/arrange.hpp"

namespace wetout::schedule {
namespace {

using sample::hours_on;
using sample::Random;

std::size_t u(int i) { return static_cast<std::size_t>(i); }

/// Each board takes so many hours of work in one go, on a grid of hours.
Setting boards_of_one_step(const std::vector<int>& hours, Slot slots = 24) {
  Setting s;
  s.grid = {sample::midnight, slots, std::chrono::hours(1)};
  for (const int h : hours) {
    BoardSetting& board = s.boards.emplace_back();
    board.job = "board-" + std::to_string(s.boards.size());
    Step step;
    step.name = {"", StepWord::weigh, ""};
    step.attended = units::hours(h);
    step.title = "Weigh";
    board.steps.steps = {step};
    put_facts(board, {}, {}, s.grid.origin);
  }
  return s;
}
PersonSpans person(std::string id, double from, double until) {
  return {std::move(id), {{hours_on(from), hours_on(until)}}};
}

/// Each planned step has somebody who is there from its start to its end and does nothing else.
void expect_each_has_somebody(const Setting& setting, const Arrangement& found) {
  for (const PlacedStep& a : found.steps) {
    if (a.state == PlacedStep::State::done) continue;
    const std::string name = setting.boards[u(a.board)].job + " " + std::to_string(a.step);
    ASSERT_GE(a.person, 0) << name;
    bool there = a.state == PlacedStep::State::fixed;
    for (const WorkingSpan& span : setting.people[u(a.person)].spans) {
      there = there || (span.from <= a.start && a.attended_until <= span.until);
    }
    EXPECT_TRUE(there) << name;
    for (const PlacedStep& b : found.steps) {
      if (&a == &b || b.state == PlacedStep::State::done || a.person != b.person) continue;
      EXPECT_TRUE(a.attended_until <= b.start || b.attended_until <= a.start) << name;
    }
  }
}

// One is there from 6 to 10, one from 7 to 15: at no time is there more to do than people, and yet
// from 8 to 12 one step would go from hand to hand.
TEST(People, AreNotHandedWorkHalfWay) {
  Setting setting = boards_of_one_step({2, 4, 3});
  setting.people = {person("early", 6, 10), person("late", 7, 15)};
  const Arrangement found = arrange(setting, arranging(setting), {});
  ASSERT_TRUE(found.fits());
  expect_each_has_somebody(setting, found);
  EXPECT_EQ(found.answer.state, search::State::feasible);
  EXPECT_EQ(found.answer.bound_leaves_out.substr(found.answer.bound_leaves_out.size() - 13),
            "who does what");
  // The early one takes 4 hours, the late one 2 and then 3, or the early one 3, the late one 2 and
  // then 4: 10 + 9 + 12 or 9 + 9 + 13.
  std::int64_t total = 0;
  for (const PlacedStep& placed : found.steps) {
    total += setting.grid.not_before(placed.attended_until);
  }
  EXPECT_EQ(total, 31);
}

// Where it is told which hours are short, either takes what fits.
TEST(People, DoWhatFitsTheirHours) {
  Setting setting = boards_of_one_step({4, 2});
  setting.people = {person("short", 8, 10), person("long", 9, 14)};
  const Arrangement found = arrange(setting, arranging(setting), {});
  ASSERT_TRUE(found.fits());
  expect_each_has_somebody(setting, found);
  for (const PlacedStep& placed : found.steps) {
    EXPECT_EQ(placed.start, placed.board == 0 ? hours_on(9) : hours_on(8));
    EXPECT_EQ(placed.person, placed.board == 0 ? 1 : 0);
  }
  // Together they are there for six hours on end, but neither for as long.
  Setting long_one = boards_of_one_step({6});
  long_one.people = setting.people;
  EXPECT_EQ(arrange(long_one, arranging(long_one), {}).answer.state, search::State::infeasible);
}

// Boards of one or two long steps, which are hard to share out.
Setting long_steps(Random& random) {
  std::vector<int> hours;
  for (int k = random.between(2, 5); k > 0; --k) hours.push_back(random.between(1, 4));
  Setting setting = boards_of_one_step(hours);
  for (int k = random.between(2, 3); k > 0; --k) {
    const int from = random.between(0, 10);
    setting.people.push_back(person("person", from, from + random.between(3, 8)));
  }
  return setting;
}

/// Whether single steps, one after the other, fit into the one span of each person.
bool could_be_shared_out(const Setting& setting, std::vector<double> left_h, std::size_t board) {
  if (board == setting.boards.size()) return true;
  const double hours = units::in_hours(setting.boards[board].steps.steps[0].attended);
  for (std::size_t p = 0; p < left_h.size(); ++p) {
    if (left_h[p] < hours) continue;
    left_h[p] -= hours;
    if (could_be_shared_out(setting, left_h, board + 1)) return true;
    left_h[p] += hours;
  }
  return false;
}
bool could_be_shared_out(const Setting& setting) {
  std::vector<double> hours;
  for (const PersonSpans& one : setting.people) {
    hours.push_back(
        std::chrono::duration<double, std::ratio<3600>>(one.spans[0].until - one.spans[0].from)
            .count());
  }
  return could_be_shared_out(setting, hours, 0);
}

TEST(People, WorkInTheirOwnHoursAndOneAtATime) {
  int some = 0, hard = 0;
  for (std::uint64_t seed = 1; seed <= 600; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Random random(seed);
    const Setting setting =
        seed % 2 == 0
            ? long_steps(random)
            : sample::small_setting(
                  random,
                  {.boards = random.between(1, 3), .least_steps = 2, .most_steps = 5, .slots = 16});
    const Arrangement found = arrange(setting, arranging(setting), {});
    const bool possible = seed % 2 != 0 || could_be_shared_out(setting);
    if (!possible) {
      // Told rather than hidden: somebody is missing.
      EXPECT_TRUE(!found.fits() || found.answer.state == search::State::feasible);
      continue;
    }
    if (!found.fits()) continue;
    ++some;
    hard += found.answer.bound_leaves_out.find("who does what") != std::string::npos ? 1 : 0;
    expect_each_has_somebody(setting, found);
  }
  EXPECT_GT(some, 200);
  EXPECT_GT(hard, 5);
}

}  // namespace
}  // namespace wetout::schedule
