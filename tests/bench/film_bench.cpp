// Films: every 5-minute start of 14 days with all milestones in 20 ms; one start against CVODE.
#include <benchmark/benchmark.h>

#include "../unit/resin/random_air.hpp"
#include "../unit/resin/sheets.hpp"
#include "wetout/resin/calibrate.hpp"
#include "wetout/resin/film.hpp"
#ifdef WETOUT_SUNDIALS
#include "../unit/resin/cvode_reference.hpp"
#endif

namespace wetout::resin {
namespace {

const Cure& medium() {
  static const Cure cure = calibrate(sheets::medium(), {})->cure;
  return cure;
}

// At a mean of 24 C the clock decides; at 11 C the floor of full cure does for many starts.
void all_starts_of_14_days(benchmark::State& state) {
  const auto air = air_of_days(21, static_cast<double>(state.range(0)), 6, 0, 1, 5);
  std::vector<time::Instant> starts;
  for (int i = 0; i < 14 * 288; ++i)
    starts.push_back(time::Instant{} + std::chrono::minutes(5 * i));
  for (auto _ : state) {
    const Film film(medium(), air);
    benchmark::DoNotOptimize(film.times(starts));
  }
}
BENCHMARK(all_starts_of_14_days)->Arg(24)->Arg(16)->Arg(11)->Unit(benchmark::kMillisecond);

void one_start(benchmark::State& state) {
  const Film film(medium(), air_of_days(21, 24, 6, 0, 1, 5));
  for (auto _ : state) benchmark::DoNotOptimize(film.times(time::Instant{}));
}
BENCHMARK(one_start)->Unit(benchmark::kMicrosecond);

const std::vector<double> three_days{3600, 4 * 3600, 12 * 3600, 36 * 3600, 72 * 3600};

void one_path_of_three_days(benchmark::State& state) {
  const Film film(medium(), air_of_days(21, 24, 6, 0, 1, 5));
  for (auto _ : state) benchmark::DoNotOptimize(film.states(time::Instant{}, three_days));
}
BENCHMARK(one_path_of_three_days)->Unit(benchmark::kMicrosecond);

#ifdef WETOUT_SUNDIALS
// At a tolerance that gives conversion to 1e-5.
void cvode_one_path_of_three_days(benchmark::State& state) {
  const auto air = air_of_days(21, 24, 6, 0, 1, 5);
  for (auto _ : state) benchmark::DoNotOptimize(cvode::path(medium(), air, 0.0, three_days, 1e-6));
}
BENCHMARK(cvode_one_path_of_three_days)->Unit(benchmark::kMicrosecond);
#endif

}  // namespace
}  // namespace wetout::resin

BENCHMARK_MAIN();
