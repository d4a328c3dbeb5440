// What has been done, and what follows from it.
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <string>
#include <vector>

#include "asked.hpp"
#include "board_work.hpp"
#include "sample.hpp"
#include "wetout/schedule/setting.hpp"

namespace wetout::schedule {
namespace {

using resin::Milestone;
using sample::Answered;
using sample::find;
using sample::hours_on;
using std::chrono::minutes;
using time::Instant;

std::size_t u(int i) { return static_cast<std::size_t>(i); }

Fact fact(const char* name, double start_h, double end_h) {
  return {*read_step_name(name), hours_on(start_h), hours_on(end_h), {}};
}

BoardSetting usual_board() {
  BoardSetting board;
  board.job = "board";
  board.steps = sample::steps(sample::rough(sample::usual_coats()));
  return board;
}
bool is_passed(const BoardSetting& board, const char* name) {
  return board.passed[u(find(board.steps, name))];
}

TEST(Facts, LetEverythingBeforeThemCountAsDone) {
  BoardSetting board = usual_board();
  const auto problems =
      put_facts(board, {fact("bottom-lam/wet", 10, 10.5), fact("deck-lam/prepare", 30, 30.5)}, {},
                hours_on(31));
  EXPECT_TRUE(problems.empty());
  const int last = find(board.steps, "deck-lam/prepare");
  for (int i = 0; u(i) < board.steps.steps.size(); ++i) {
    const bool done = board.facts[u(i)].has_value();
    EXPECT_EQ(done, board.steps.steps[u(i)].name == StepName({"bottom-lam", StepWord::wet, ""}) ||
                        i == last);
    EXPECT_EQ(board.passed[u(i)], !done && i < last) << to_string(board.steps.steps[u(i)].name);
  }
}

TEST(Facts, KnowThatALookCannotBeMadeUpFor) {
  BoardSetting board = usual_board();
  // Poured out at 10:30; it is 11:05 now.
  EXPECT_TRUE(
      put_facts(board, {fact("bottom-lam/wet", 10, 10.5)}, {}, hours_on(11) + minutes(5)).empty());
  EXPECT_TRUE(is_passed(board, "bottom-lam/watch-15"));   // until 10:55
  EXPECT_FALSE(is_passed(board, "bottom-lam/watch-30"));  // until 11:10
  EXPECT_FALSE(is_passed(board, "bottom-lam/watch-60"));
  EXPECT_FALSE(is_passed(board, "bottom-lam/trim"));
}

TEST(Facts, AskForTheWetThatMustHaveBeen) {
  BoardSetting board = usual_board();
  const auto problems = put_facts(board, {fact("deck-hot/wet", 80, 80.5)}, {}, hours_on(81));
  ASSERT_EQ(problems.size(), 4U);
  for (const base::Problem& problem : problems) EXPECT_EQ(problem.code, "schedule.wet_unknown");
  EXPECT_EQ(problems.front().key, "board/bottom-lam");
  EXPECT_NE(problems.front().hint.find("wetout record board bottom-lam"), std::string::npos);
}

TEST(Facts, DoNotMindWhatThePlanDoesNotHave) {
  BoardSetting board = usual_board();
  EXPECT_TRUE(
      put_facts(board, {fact("spackle", 1, 2), fact("third-coat/wet", 3, 4)}, {}, hours_on(5))
          .empty());
  for (std::size_t i = 0; i < board.facts.size(); ++i) {
    EXPECT_FALSE(board.facts[i] || board.passed[i]);
  }
}

TEST(FixedStarts, AreOfStepsThatAreStillToCome) {
  BoardSetting board = usual_board();
  const auto problems = put_facts(board, {fact("bottom-lam/wet", 10, 10.5)},
                                  {{*read_step_name("acclimatise"), hours_on(12)},
                                   {*read_step_name("bottom-lam/wet"), hours_on(12)},
                                   {{"deck-lamm", StepWord::wet, ""}, hours_on(12)},
                                   {*read_step_name("weigh"), hours_on(99)}},
                                  hours_on(11));
  ASSERT_EQ(problems.size(), 3U);
  EXPECT_EQ(problems[0].code, "step.done");  // it counts as done
  EXPECT_EQ(problems[1].code, "step.done");
  EXPECT_EQ(problems[2].code, "step.unknown");
  EXPECT_EQ(board.fixed[u(find(board.steps, "weigh"))], hours_on(99));
}

TEST(FixedStarts, OfAnUnknownStepTellWhatWasMeant) {
  BoardSetting board = usual_board();
  const auto problems =
      put_facts(board, {}, {{{"bottom-hott", StepWord::sand, ""}, hours_on(12)}}, hours_on(1));
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].found, "bottom-hott/sand");
  EXPECT_NE(problems[0].hint.find("bottom-hot/sand"), std::string::npos);
}

// Whoever says when laps are cut wants them cut, and not ground instead.
TEST(FixedStarts, DecideWhatIsChosen) {
  Asked asked = sample::asked(sample::one_face(), {.mean_c = 21, .swing_k = 2, .dew_c = 8}, 6);
  const FixedStart wet{*read_step_name("lam/wet"), hours_on(24 * 2 + 20.5)};
  asked.boards[0].fixed = {wet};
  const Answered poured = sample::answer(asked);
  ASSERT_TRUE(poured.fits());
  const Setting& setting = poured.set_up.setting;
  const PlacedStep* placed = poured.placed("lam/wet");
  const FilmSpans film =
      film_of(setting, setting.boards[0], 0, placed->start, placed->attended_until, nullptr);
  ASSERT_LT(film[Milestone::gel] + 2400.0, film[Milestone::trim_until]);
  const Instant rubber = setting.grid.at(setting.grid.not_before(
      setting.grid.origin + std::chrono::seconds(std::lround(film[Milestone::gel] + 600.0))));
  const auto option = [&](const char* step, Instant at) {
    asked.boards[0].fixed = {wet, {*read_step_name(step), at}};
    const Answered found = sample::answer(asked);
    EXPECT_TRUE(found.fits()) << step;
    const PlacedStep* there = found.placed(step);
    EXPECT_TRUE(there != nullptr && there->start == at) << step;
    const auto& steps = found.set_up.setting.boards[0].steps;
    return found.arrangement.chosen[0][u(sample::find_group(steps, "lam/laps"))];
  };
  EXPECT_EQ(option("lam/trim", rubber), 0);
  EXPECT_EQ(option("lam/feather-edge", hours_on(24 * 4 + 18)), 1);
}

// --- in a schedule

/// Sunday noon; the lam was poured at 10, inside no hours of anybody.
Asked poured() {
  Asked asked = sample::asked(sample::one_face(), {.mean_c = 21, .swing_k = 2, .dew_c = 8}, 6);
  asked.guard = climate::Guard::none;
  asked.from = hours_on(12);
  asked.boards[0].facts = {fact("lam/wet", 10, 10.5)};
  return asked;
}

TEST(Facts, StandInTheScheduleAsTheyWere) {
  const Asked asked = poured();
  const Answered found = sample::answer(asked);
  ASSERT_TRUE(found.fits());
  const PlacedStep* wet = found.placed("lam/wet");
  ASSERT_NE(wet, nullptr);
  EXPECT_EQ(wet->state, PlacedStep::State::done);
  EXPECT_EQ(wet->start, hours_on(10));
  EXPECT_EQ(wet->attended_until, hours_on(10.5));
  EXPECT_EQ(found.placed("lam/prepare"), nullptr);  // counts as done, when is not known
  for (const PlacedStep& placed : found.arrangement.steps) {
    EXPECT_TRUE(placed.state == PlacedStep::State::done || placed.start >= asked.from);
  }
}

TEST(Facts, DecideWhatWasChosen) {
  Asked asked = poured();
  const auto option = [](const Answered& found) {
    const auto& groups = found.set_up.setting.boards[0].steps;
    return found.arrangement.chosen[0][u(sample::find_group(groups, "lam/laps"))];
  };
  // Trimmed at 13: no grinding any more.
  asked.boards[0].facts.push_back(fact("lam/trim", 13, 13.25));
  asked.from = hours_on(14);
  const Answered cut = sample::answer(asked);
  ASSERT_TRUE(cut.fits());
  EXPECT_EQ(option(cut), 0);
  EXPECT_EQ(cut.placed("lam/feather-edge"), nullptr);
  EXPECT_NE(cut.placed("lam/feather"), nullptr);
  // Nobody cut them in time.
  asked.boards[0].facts.pop_back();
  asked.from = hours_on(40);
  const Answered ground = sample::answer(asked);
  ASSERT_TRUE(ground.fits());
  EXPECT_EQ(option(ground), 1);
  EXPECT_NE(ground.placed("lam/feather-edge"), nullptr);
}

TEST(Facts, AreLookedAtOutsideTheHoursToo) {
  Asked asked = poured();
  // Nobody works on a Sunday before 18; poured out at 10:30, and it is 10:40.
  asked.from = hours_on(10) + minutes(40);
  const Answered found = sample::answer(asked);
  ASSERT_TRUE(found.fits());
  for (const int m : {15, 30, 60}) {
    const PlacedStep* look = found.placed("lam/watch-" + std::to_string(m));
    ASSERT_NE(look, nullptr);
    EXPECT_EQ(look->start, hours_on(10.5) + minutes(m));
  }
}

TEST(Facts, ThatAreNotOverKeepTheBoardBusy) {
  Asked asked = sample::asked(sample::one_face(), {.mean_c = 21, .swing_k = 2, .dew_c = 8}, 6);
  asked.from = hours_on(18) + minutes(10);
  asked.boards[0].facts = {fact("acclimatise", 18, 19)};
  const Answered found = sample::answer(asked);
  ASSERT_TRUE(found.fits());
  EXPECT_GE(found.placed("lam/prepare")->start, hours_on(19));
  EXPECT_GE(found.placed("lam/wet")->start, hours_on(21));  // two hours to warm through
}

TEST(Facts, OfFilmsAreFollowedFromWhenTheyWere) {
  Asked asked = poured();
  const Answered found = sample::answer(asked);
  const Setting& setting = found.set_up.setting;
  const BoardSetting& board = setting.boards[0];
  const Fact& wet = *board.facts[u(board.steps.wets[0])];
  const FilmSpans film = film_of(setting, board, 0, wet.start, wet.end, &wet);
  // 21 C or so: gel of 100 min at 25 C comes somewhat later.
  const double gel_h = (film[Milestone::gel] - setting.grid.seconds(wet.end)) / 3600.0;
  EXPECT_GT(gel_h, 100.0 / 60.0);
  EXPECT_LT(gel_h, 3.0);
  // What somebody saw takes the place of what was computed, and of nothing else.
  Fact seen = wet;
  seen.observed = {{Milestone::handle, hours_on(17)}};
  const FilmSpans told = film_of(setting, board, 0, wet.start, wet.end, &seen);
  for (const Milestone m : resin::milestones) {
    EXPECT_EQ(told[m], m == Milestone::handle ? setting.grid.seconds(hours_on(17)) : film[m]);
  }
}

TEST(Facts, OfWarmerAirAreFilmsThatAreFurther) {
  Asked asked = poured();
  const auto handle_at = [&](std::vector<time::HistoryPoint> air) {
    asked.recorded_air = std::move(air);
    const Answered found = sample::answer(asked);
    const Setting& setting = found.set_up.setting;
    const BoardSetting& board = setting.boards[0];
    const Fact& wet = *board.facts[u(board.steps.wets[0])];
    return film_of(setting, board, 0, wet.start, wet.end, &wet)[Milestone::handle];
  };
  const double forecast = handle_at({});
  const double warm = handle_at({{hours_on(10), 303.15}, {hours_on(11.5), 302.15}});
  const double cold = handle_at({{hours_on(10), 287.15}, {hours_on(11.5), 288.15}});
  EXPECT_LT(warm, forecast - 600.0);
  EXPECT_GT(cold, forecast + 600.0);
  // What is read off after now is not known yet.
  EXPECT_EQ(handle_at({{hours_on(13), 303.15}}), forecast);
}

// Facts cannot break a rule: more boards may stand than there are stands.
TEST(Facts, MayHoldMoreStandsThanThereAre) {
  Asked asked = poured();
  asked.boards.push_back(asked.boards[0]);
  asked.boards[1].work.job = "other";
  asked.boards[1].facts = {fact("lam/wet", 10.75, 11.25)};
  asked.shared = {{"stand", 1}, {"rack", 2}};
  const Answered found = sample::answer(asked);
  ASSERT_TRUE(found.fits());
  // The next coat finds a stand: both lams can be handled by then, and one hotcoat at a time.
  std::vector<std::pair<double, double>> standing;
  const Setting& setting = found.set_up.setting;
  for (const PlacedStep& placed : found.arrangement.steps) {
    const BoardSetting& board = setting.boards[u(placed.board)];
    const Step& step = board.steps.steps[u(placed.step)];
    if (!step.is_wet()) continue;
    const auto& done = board.facts[u(placed.step)];
    const FilmSpans film = film_of(setting, board, step.coat, placed.start, placed.attended_until,
                                   done ? &*done : nullptr);
    standing.emplace_back(setting.grid.seconds(placed.start), film[Milestone::handle]);
  }
  ASSERT_EQ(standing.size(), 4U);
  std::sort(standing.begin(), standing.end());
  EXPECT_GE(standing[2].first, std::max(standing[0].second, standing[1].second));
  EXPECT_GE(standing[3].first, standing[2].second);
}

}  // namespace
}  // namespace wetout::schedule
