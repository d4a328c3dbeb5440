// What is malformed is a bug of the caller and says where.
#include <gtest/gtest.h>

#include <functional>
#include <stdexcept>

#include "small_problem.hpp"
#include "wetout/search/solve.hpp"

namespace wetout::search::test {
namespace {

void expect_malformed(const std::string& where, const std::function<void(Problem&)>& spoil) {
  Problem problem = small_problem();
  ASSERT_NO_THROW(check(problem));
  spoil(problem);
  try {
    check(problem);
    ADD_FAILURE() << "not noticed: " << where;
  } catch (const std::logic_error& error) {
    EXPECT_NE(std::string(error.what()).find(where), std::string::npos) << error.what();
  }
  EXPECT_THROW((void)solve(problem, {}), std::logic_error);
}

TEST(Check, NamesWhatIsMalformed) {
  expect_malformed("horizon", [](Problem& p) { p.horizon = 0; });
  expect_malformed("operation wet, allowed", [](Problem& p) { p.ops[0].allowed = Bits(3); });
  expect_malformed("operation wet, attended end", [](Problem& p) { p.ops[0].attended = Slot{-1}; });
  expect_malformed("event tack-free",
                   [](Problem& p) { std::get<Table>(p.ops[0].events[0].at).at[7] = 6; });
  expect_malformed("event tack-free",
                   [](Problem& p) { std::get<Table>(p.ops[0].events[0].at).at.pop_back(); });
  expect_malformed("magnitude", [](Problem& p) {
    std::get<Table>(p.ops[0].events[0].at).at[7] = Slot{1} << 29;
  });
  expect_malformed("tightness", [](Problem& p) { p.ops[0].tightness.push_back({{1, 2, 3}}); });
  expect_malformed("calendar of operation next", [](Problem& p) { p.ops[1].calendar = 1; });
  expect_malformed("option of operation scuff", [](Problem& p) { p.ops[2].when = {0, 2}; });
  expect_malformed("option of lag", [](Problem& p) { p.lags[1].when = {1, 0}; });
  expect_malformed("lag without", [](Problem& p) { p.lags[0].min.reset(); });
  expect_malformed("scale", [](Problem& p) { p.lags[1].scale = -1; });
  expect_malformed("operation of a lag", [](Problem& p) { p.lags[0].to.op = 3; });
  expect_malformed("event of a lag", [](Problem& p) { p.lags[0].from.event = 1; });
  expect_malformed("lag, size of the table", [](Problem& p) { p.lags[0].min = Table{{1, 2}}; });
  expect_malformed("resource of a hold", [](Problem& p) { p.holds[0].resource = 1; });
  expect_malformed("amount", [](Problem& p) { p.holds[0].amount = -1; });
  expect_malformed("count of resource person", [](Problem& p) { p.resources[0].count = -1; });
  expect_malformed("room mode", [](Problem& p) { p.modes.push_back({0, -1, {0}, {0}, 0, {}}); });
  expect_malformed("relation", [](Problem& p) { p.relations.push_back({0, 1, {}, {}}); });
  expect_malformed("calendar", [](Problem& p) { p.calendars[0].spans[1].first = 6; });
  expect_malformed("group way", [](Problem& p) { p.groups[0].options = 0; });
  expect_malformed("order of group way", [](Problem& p) { p.groups[0].when = {0, 1}; });
}

TEST(Check, AnUnallowedStartMayHoldAnything) {
  Problem problem = small_problem();
  std::get<Table>(problem.ops[0].events[0].at).at[7] = 0;
  problem.ops[0].allowed = Bits(problem.horizon, true);
  problem.ops[0].allowed.reset(7);
  EXPECT_NO_THROW(check(problem));
}

TEST(Check, ObjectivesHaveEachTermOnceAndTheTieBreakersLast) {
  const Problem problem = small_problem();
  EXPECT_NO_THROW(check(Objective{{LastEnd{}, Sum{}, Starts{}, Choices{}}}, problem));
  EXPECT_NO_THROW(check(Objective{{Sum{}, Choices{}}}, problem));
  const std::vector<Objective> bad = {
      {{Starts{}, Sum{}}},       {{Choices{}, Starts{}}},     {{Sum{}, Sum{}}},
      {{LastEnd{{{0, 0}}, -1}}}, {{LastEnd{{{0}, {3}}, -1}}}, {{LastEnd{{}, 1}}},
      {{Visits{0, {}}}},         {{TightCounts{0, 10}}},      {{Sum{{Slot{0}}}}},
  };
  for (const Objective& objective : bad) {
    EXPECT_THROW(check(objective, problem), std::logic_error);
  }
}

}  // namespace
}  // namespace wetout::search::test
