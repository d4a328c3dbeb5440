// Cups: budgets 25 ms for one to 0.1 % in gel, 0.65 s for a table of 5 x 5, 20 ms for a fit.
#include <benchmark/benchmark.h>

#include "../unit/resin/sheets.hpp"
#include "wetout/resin/calibrate.hpp"
#include "wetout/resin/pot_life.hpp"
#ifdef WETOUT_SUNDIALS
#include "../unit/resin/cvode_reference.hpp"
#endif

namespace wetout::resin {
namespace {

using units::Temperature;

const Cure& cure_of(std::int64_t sheet) {
  static const std::vector<Cure> cures = [] {
    std::vector<Cure> all;
    for (const Product& p :
         {sheets::quick(), sheets::medium(), sheets::slow(), sheets::tropical()}) {
      all.push_back(calibrate(p, {})->cure);
    }
    return all;
  }();
  return cures[static_cast<std::size_t>(sheet)];
}

CupRun run_of(const Cure& cure) {
  return cup_run(cure, fill_of(units::grams(150) / cure.bulk.density), Temperature::celsius(25),
                 Temperature::celsius(25));
}

void one_cup(benchmark::State& state) {
  const CupRun run = run_of(cure_of(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(follow(run));
}
BENCHMARK(one_cup)->DenseRange(0, 3)->Unit(benchmark::kMillisecond);

void one_cup_to_gel(benchmark::State& state) {
  CupRun run = run_of(cure_of(1));
  run.until = CupUntil::gel;
  for (auto _ : state) benchmark::DoNotOptimize(follow(run));
}
BENCHMARK(one_cup_to_gel)->Unit(benchmark::kMillisecond);

void table_of_25(benchmark::State& state) {
  std::vector<units::Mass> masses;
  std::vector<Temperature> airs;
  for (const double g : {50.0, 100.0, 200.0, 400.0, 800.0}) masses.push_back(units::grams(g));
  for (const double c : {15.0, 20.0, 25.0, 30.0, 35.0}) airs.push_back(Temperature::celsius(c));
  for (auto _ : state) {
    benchmark::DoNotOptimize(pot_life_table(cure_of(1), masses, airs, std::nullopt));
  }
}
BENCHMARK(table_of_25)->Unit(benchmark::kMillisecond);

void fit(benchmark::State& state) {
  const Product p = sheets::medium();
  for (auto _ : state) benchmark::DoNotOptimize(calibrate(p, {}));
}
BENCHMARK(fit)->Unit(benchmark::kMillisecond);

void fit_again_from_the_cache(benchmark::State& state) {
  const Product p = sheets::medium();
  MemoryCache cache;
  for (auto _ : state) benchmark::DoNotOptimize(calibrate(p, {}, &cache));
}
BENCHMARK(fit_again_from_the_cache)->Unit(benchmark::kMillisecond);

void largest(benchmark::State& state) {
  const PotLifeRequest request{units::grams(1), Temperature::celsius(25), Temperature::celsius(25),
                               std::nullopt, std::nullopt};
  for (auto _ : state) {
    benchmark::DoNotOptimize(
        largest_batch(cure_of(1), request, units::minutes(20), units::grams(2000)));
  }
}
BENCHMARK(largest)->Unit(benchmark::kMillisecond);

#ifdef WETOUT_SUNDIALS
// The same grid and question, at a tolerance that gives gel to 0.1 %.
void cvode_one_cup_to_gel(benchmark::State& state) {
  const CupRun run = run_of(cure_of(1));
  for (auto _ : state) benchmark::DoNotOptimize(cvode::cup(run, 1e-5, false));
}
BENCHMARK(cvode_one_cup_to_gel)->Unit(benchmark::kMillisecond);
void cvode_one_cup(benchmark::State& state) {
  const CupRun run = run_of(cure_of(1));
  for (auto _ : state) benchmark::DoNotOptimize(cvode::cup(run, 1e-5, true));
}
BENCHMARK(cvode_one_cup)->Unit(benchmark::kMillisecond);
#endif

}  // namespace
}  // namespace wetout::resin

BENCHMARK_MAIN();
