// Cloth on a roll: eight pieces proved, sixty within a share of the bound.
#include <benchmark/benchmark.h>

#include <random>

#include "wetout/cloth/cutting.hpp"

namespace {

using wetout::cloth::Piece;

constexpr std::int64_t roll = 76'200;

// Sizes of plies and patches, in hundredths of a millimetre.
std::vector<Piece> pieces(std::size_t count, unsigned seed) {
  std::mt19937 random(seed);
  const auto between = [&](std::int64_t low, std::int64_t high) {
    return low + static_cast<std::int64_t>(random()) % (high - low);
  };
  std::vector<Piece> all;
  for (std::size_t i = 0; i < count; ++i) {
    const bool is_patch = i % 2 == 1;
    all.push_back(is_patch ? Piece{between(30'000, 100'000), between(20'000, 40'000)}
                           : Piece{between(150'000, 300'000), between(25'000, 74'000)});
  }
  return all;
}

void proves_eight(benchmark::State& state) {
  double proved = 0.0, runs = 0.0;
  unsigned seed = 0;
  for (auto _ : state) {
    const auto cutting = wetout::cloth::cut(pieces(8, seed++ % 40), roll);
    proved += cutting.proved ? 1.0 : 0.0;
    runs += 1.0;
  }
  state.counters["proved"] = proved / runs;
}
BENCHMARK(proves_eight)->Unit(benchmark::kMillisecond)->Iterations(40);

void lays_sixty(benchmark::State& state) {
  double worst = 0.0;
  unsigned seed = 0;
  for (auto _ : state) {
    const auto cutting = wetout::cloth::cut(pieces(60, seed++ % 10), roll);
    worst = std::max(
        worst, static_cast<double>(cutting.length) / static_cast<double>(cutting.bound) - 1.0);
  }
  state.counters["over_bound"] = worst;
}
BENCHMARK(lays_sixty)->Unit(benchmark::kMillisecond)->Iterations(10);

}  // namespace

BENCHMARK_MAIN();
