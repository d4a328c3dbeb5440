// Translation and search together against all ways there are.
#include "wetout/schedule/arrange.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <memory>
#include <string>

#include "all_ways.hpp"
#include "board_work.hpp"
#include "sample.hpp"
#include "small_setting.hpp"

namespace wetout::schedule {
namespace {

using sample::Random;

std::size_t u(int i) { return static_cast<std::size_t>(i); }

// What was found, in the terms of best_way(): films that are on the board are no visit.
sample::Way way_of(const Setting& setting, const Arranging& made, const Arrangement& found) {
  sample::Way way;
  const auto& value = found.answer.value;
  way.value.assign(value.begin(), value.begin() + 8);
  way.start.assign(setting.boards[0].steps.steps.size(), -1);
  bool begun = false;
  for (std::size_t op = 0; op < made.of.size(); ++op) {
    const auto start = found.answer.schedule.start[op];
    if (made.of[op].done) {
      way.value[7] -= *start;
      begun = true;
    } else {
      way.start[u(made.of[op].step)] = start.value_or(-1);
    }
  }
  way.value[setting.prefer == Prefer::visits ? 0 : 6] -= begun ? 1 : 0;
  way.chosen = found.chosen[0];
  return way;
}

// Compares what is found with the best of all ways; whether there is one.
bool expect_best(const Setting& setting) {
  const auto expected = sample::best_way(setting);
  const Arranging made = arranging(setting);
  const Arrangement found = arrange(setting, made, {});
  const search::State state = expected ? search::State::proved : search::State::infeasible;
  EXPECT_EQ(found.answer.state, state);
  EXPECT_EQ(fits(setting, {}), state);
  if (!expected || found.answer.state != state) return expected.has_value();
  if (!made.problem.ops.empty()) {
    const sample::Way way = way_of(setting, made, found);
    EXPECT_EQ(way.value, expected->value);
    EXPECT_EQ(way.start, expected->start);
    EXPECT_EQ(way.chosen, expected->chosen);
  }
  return true;
}

TEST(Arrange, FindsTheBestOfAllWaysOfOneBoard) {
  int feasible = 0, begun = 0, fixed = 0, of_two = 0, preferred[3] = {};
  constexpr int cases = 2000;
  for (std::uint64_t seed = 1; seed <= cases; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Random random(seed);
    const Setting setting = sample::small_setting(random);
    if (!expect_best(setting)) continue;
    ++feasible;
    ++preferred[static_cast<int>(setting.prefer)];
    const auto has = [](const auto& all) {
      return std::any_of(all.begin(), all.end(), [](const auto& one) { return one.has_value(); });
    };
    begun += has(setting.boards[0].facts) ? 1 : 0;
    fixed += has(setting.boards[0].fixed) ? 1 : 0;
    of_two += setting.people.size() > 1 ? 1 : 0;
  }
  EXPECT_GT(feasible, cases / 3);
  EXPECT_LT(feasible, cases * 2 / 3);
  EXPECT_GT(begun, 100);
  EXPECT_GT(fixed, 40);
  EXPECT_GT(of_two, 200);
  for (const int count : preferred) EXPECT_GT(count, 100);
}

// Steps as they are made from coats, films as they are followed, on quarters of an hour: looks
// after 15, 30, 60 min need no finer grid.
TEST(Arrange, FindsTheBestOfAllWaysOfRealSteps) {
  using laminate::CoatKind;
  using laminate::Laps;
  const auto source = [] {
    auto of = FilmSource::of(sample::kelp_quick(), {}, {}, nullptr);
    return std::make_shared<const FilmSource>(std::move(*of));
  }();
  const auto deck = board::Face::deck;
  std::vector<sample::CoatSpec> kinds = {
      sample::coat("seal", deck, CoatKind::seal), sample::lam("free", deck, Laps::free),
      sample::lam("cut", deck, Laps::cut), sample::coat("hot", deck, CoatKind::hotcoat),
      sample::boxes("boxes", deck)};
  int feasible = 0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Random random(seed);
    auto coat = kinds[seed % kinds.size()];
    coat.resin = "kelp-quick";
    Setting s;
    s.grid = {sample::midnight, 4 * 44, std::chrono::minutes(15)};
    s.prefer = static_cast<Prefer>(random.between(0, 2));
    s.sanding_room = random.chance(30);
    auto& person = s.people.emplace_back();
    for (int from : {16, 40}) {
      from += random.between(0, 2);
      person.spans.push_back({sample::hours_on(from), sample::hours_on(from + 3.0)});
    }
    const double warm = random.between(17, 25);
    const auto weather = sample::weather(
        4, [&](double h) { return sample::daily(h, warm, 3.0); }, [](double) { return 8.0; });
    const Conditions inside = sample::outdoors(weather);
    s.air = std::make_shared<const time::History>(inside.air);
    s.films["kelp-quick"] =
        std::make_shared<const FilmTable>(film_table(*source, *s.air, s.grid, s.grid.slots + 8));
    s.sources["kelp-quick"] = source;
    BoardSetting& board = s.boards.emplace_back();
    board.job = "board";
    board.steps = sample::steps(sample::rough({coat}));
    board.limits = std::make_shared<const LimitTester>(inside);
    board.rules = {sample::rules()};
    board.resins = {"kelp-quick"};
    ASSERT_TRUE(put_facts(board, {}, {}, s.grid.origin).empty());
    feasible += expect_best(s) ? 1 : 0;
  }
  EXPECT_GT(feasible, 20);
  EXPECT_LT(feasible, 60);
}

}  // namespace
}  // namespace wetout::schedule
