// One board for 14 days on a 5-minute grid (budget 0.5 s), the published RCPSP/max instances (2 s
// together), ten boards for ten seconds of this process (gap; budget 5 % with a sanding room, 10 %
// without).
#include <benchmark/benchmark.h>

#include <ctime>
#include <string>

#include "../unit/search/board_problem.hpp"
#include "../unit/search/rcpsp_max.hpp"
#include "wetout/search/solve.hpp"

namespace {

using namespace wetout::search;
using namespace wetout::search::test;

/// Seconds that this process had of the processor: a gap after some of them is the same on a
/// machine that has other things to do.
Limits limits(double seconds) {
  Limits limits;
  const auto now_s = [] { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; };
  limits.elapsed_s = [now_s, begun = now_s()] { return now_s() - begun; };
  limits.time_limit_s = seconds;
  return limits;
}

void one_board(benchmark::State& state, Shop::Hours hours, bool gloss) {
  Shop shop;
  shop.hours = hours;
  shop.air = made_up_air(shop.days, static_cast<double>(state.range(0)), 18.0);
  const std::vector<Board> boards = {{"a", 1.0, gloss}};
  const Problem problem = glass(shop, boards);
  const Objective objective = board_objective(problem, boards);
  Answer answer;
  for (auto _ : state) answer = solve(problem, objective);
  state.SetLabel(std::string(to_string(answer.state)));
  state.counters["labels"] = static_cast<double>(answer.effort.steps);
  state.counters["starts tried"] = static_cast<double>(answer.effort.extensions);
}
BENCHMARK_CAPTURE(one_board, evenings, Shop::Hours::evenings, false)
    ->Arg(16)
    ->Arg(19)
    ->Arg(22)
    ->Arg(25)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(one_board, days_gloss, Shop::Hours::days_and_saturday, true)
    ->Arg(16)
    ->Arg(19)
    ->Arg(22)
    ->Arg(25)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(one_board, all_day_gloss, Shop::Hours::all_day, true)
    ->Arg(16)
    ->Arg(19)
    ->Arg(22)
    ->Arg(25)
    ->Unit(benchmark::kMillisecond);

void rcpsp_max(benchmark::State& state) {
  if (!std::filesystem::exists(test_data())) {
    state.SkipWithError("no test data (set WETOUT_TEST_DATA)");
    return;
  }
  std::vector<Problem> problems;
  for (const Instance& instance : published_instances(test_data() / "rcpsp-max")) {
    problems.push_back(read_instance(instance.file));
  }
  std::uint64_t nodes = 0;
  for (auto _ : state) {
    nodes = 0;
    for (const Problem& problem : problems) nodes += solve(problem, makespan()).effort.steps;
  }
  state.counters["instances"] = static_cast<double>(problems.size());
  state.counters["nodes"] = static_cast<double>(nodes);
}
BENCHMARK(rcpsp_max)->Unit(benchmark::kMillisecond);

void ten_boards(benchmark::State& state, Shop::Hours hours, bool sanding_room) {
  Shop shop;
  shop.days = 35;
  shop.people = 2;
  shop.stands = 3;
  shop.hours = hours;
  shop.sanding_room = sanding_room;
  shop.air = made_up_air(shop.days, static_cast<double>(state.range(0)), 20.0);
  std::vector<Board> boards;
  for (int k = 0; k < 10; ++k) {
    boards.push_back({std::string(1, static_cast<char>('a' + k)), 0.8 + 0.05 * k, k % 3 != 0});
  }
  const Problem problem = glass(shop, boards);
  const Objective objective = board_objective(problem, boards);
  Answer answer;
  for (auto _ : state) answer = solve(problem, objective, limits(10.0));
  state.counters["gap %"] = 100.0 * gap(answer).value_or(1.0);
  state.counters["steps of a board"] = static_cast<double>(problem.ops.size()) / 10.0;
  state.counters["board days"] = static_cast<double>(answer.value[0]) / slots_per_day;
}
BENCHMARK_CAPTURE(ten_boards, sanding_room, Shop::Hours::days_and_saturday, true)
    ->Arg(24)
    ->Arg(20)
    ->Iterations(1)
    ->Unit(benchmark::kSecond);
BENCHMARK_CAPTURE(ten_boards, modes, Shop::Hours::days_and_saturday, false)
    ->Arg(24)
    ->Arg(20)
    ->Iterations(1)
    ->Unit(benchmark::kSecond);
BENCHMARK_CAPTURE(ten_boards, modes_evenings, Shop::Hours::evenings, false)
    ->Arg(24)
    ->Iterations(1)
    ->Unit(benchmark::kSecond);

}  // namespace

BENCHMARK_MAIN();
