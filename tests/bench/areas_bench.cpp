// Areas of boards: planform, deck, bottom, a 2 in lap on each face, perimeter, volume, from the
// measuring points on. Budget: 1000 boards a second on one core, see items_per_second.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <limits>

#include "wetout/board/hull.hpp"

namespace {

using namespace wetout;
using board::EndShape;
using board::Face;
using board::Hull;
using board::Spec;
using units::inches;
using units::Length;

// Example of a 6 ft 4 in board, as in the job file of the documentation.
Spec step_up() {
  Spec spec;
  spec.length = inches(76);
  spec.tail.shape = EndShape::square;
  spec.wide_point = inches(39);
  spec.width = {{inches(0), inches(6)},
                {inches(12), inches(15)},
                {inches(39), inches(20.75)},
                {inches(64), inches(12)},
                {inches(76), inches(0)}};
  spec.thickness = {
      {inches(12), inches(1.625)}, {inches(38), inches(2.625)}, {inches(64), inches(1.5)}};
  spec.rocker = {{inches(0), inches(2)},
                 {inches(12), inches(0.875)},
                 {inches(38), inches(0)},
                 {inches(64), inches(2.125)},
                 {inches(76), inches(5)}};
  spec.rail = {{Length{}, {0.4, 2.5}}};
  return spec;
}

Spec swallow() {
  Spec spec = step_up();
  spec.tail = {EndShape::swallow, inches(4)};
  spec.width[0].value = inches(9);
  return spec;
}

Spec changing_rail() {
  Spec spec = step_up();
  spec.rail = {{Length{}, {0.2, std::numeric_limits<double>::infinity()}},
               {inches(38), {0.4, 2.5}},
               {inches(64), {0.5, 2.0}}};
  return spec;
}

Spec stations(int count) {
  const Hull hull = Hull::make(step_up()).value();
  Spec spec = step_up();
  spec.wide_point.reset();
  spec.width.clear();
  spec.thickness.clear();
  spec.rocker.clear();
  for (int i = 0; i <= count; ++i) {
    const Length x = hull.length() * (1.0 * i / count);
    spec.width.push_back({x, hull.width(x)});
    spec.thickness.push_back({x, hull.thickness(x)});
    spec.rocker.push_back({x, hull.rocker(x)});
  }
  return spec;
}

// Everything a plan asks of a board but its patches; the largest relative error estimate.
double measure(const Spec& spec) {
  const Hull hull = Hull::make(spec).value();
  const board::Surfaces s = hull.surfaces();
  double worst = std::max(s.deck.error / s.deck.area, s.bottom.error / s.bottom.area);
  for (const Face face : {Face::deck, Face::bottom}) {
    const auto band = hull.band_area(face, inches(2), Length{}, hull.length()).value();
    worst = std::max(worst, band.error / band.area);
  }
  return worst;
}

void boards(benchmark::State& state, const Spec& spec) {
  double worst = 0.0;
  for (auto _ : state) worst = std::max(worst, measure(spec));
  state.SetItemsProcessed(state.iterations());
  state.counters["error_estimate"] = worst;
}
BENCHMARK_CAPTURE(boards, step_up, step_up())->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(boards, swallow, swallow())->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(boards, changing_rail, changing_rail())->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(boards, stations_41, stations(40))->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(boards, stations_10001, stations(10000))->Unit(benchmark::kMicrosecond);

void surfaces_only(benchmark::State& state) {
  const Spec spec = step_up();
  for (auto _ : state) benchmark::DoNotOptimize(Hull::make(spec).value().surfaces());
  state.SetItemsProcessed(state.iterations());
}
BENCHMARK(surfaces_only)->Unit(benchmark::kMicrosecond);

}  // namespace

BENCHMARK_MAIN();
