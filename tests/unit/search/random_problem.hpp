// Small problems with everything in them, the same on every machine.
#pragma once

#include <cstdint>

#include "wetout/search/objective.hpp"

namespace wetout::search::test {

/// splitmix64: the standard's distributions differ between libraries.
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
  bool chance(int percent) { return between(1, 100) <= percent; }

 private:
  std::uint64_t state_;
};

struct Shape {
  int ops = 5;
  Slot horizon = 14;
  bool chain = true;   ///< one person holds every operation
  bool plain = false;  ///< places are kept by one operation at a time; no relations
};

Problem random_problem(Random& random, const Shape& shape);

/// Two chains that share a place and a room, and nothing else.
Problem random_pair(Random& random, const Shape& shape);

/// Random terms in a random order; ends with Starts and Choices when `complete`, so that one
/// schedule only is best.
Objective random_objective(Random& random, const Problem& problem, bool complete);

}  // namespace wetout::search::test
