// Random numbers that are the same with every standard library.
#pragma once

#include <cstdint>
#include <utility>
#include <vector>

namespace wetout::search {

/// splitmix64 (Steele, Lea and Flood 2014); the constants are theirs.
class Random {
 public:
  explicit Random(std::uint64_t seed) : state_(seed) {}

  std::uint64_t next() {
    std::uint64_t z = (state_ += 0x9e3779b97f4a7c15U);
    z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
    z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
    return z ^ (z >> 31U);
  }

  /// low .. high, both included.
  int between(int low, int high) {
    return low + static_cast<int>(next() % static_cast<std::uint64_t>(high - low + 1));
  }

  /// In (0, 1].
  double unit() {
    constexpr double step = 1.0 / static_cast<double>(std::uint64_t{1} << 53U);
    return static_cast<double>((next() >> 11U) + 1) * step;
  }

  void shuffle(std::vector<int>& list) {
    for (std::size_t k = list.size(); k > 1; --k) {
      std::swap(list[k - 1], list[next() % k]);
    }
  }

 private:
  std::uint64_t state_;
};

}  // namespace wetout::search
