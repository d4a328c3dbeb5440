// Room air of some days, as weather makes it: a daily wave, a slow one, and noise.
#pragma once

#include <rapidcheck.h>

#include <chrono>
#include <cmath>

#include "wetout/time/history.hpp"

namespace wetout::resin {

inline time::History air_of_days(int days, double mean_c, double swing_k, double phase,
                                 double noise_k, unsigned seed) {
  std::vector<time::HistoryPoint> points;
  unsigned state = seed | 1U;
  for (int h = 0; h <= 24 * days; ++h) {
    state = state * 1664525U + 1013904223U;
    const double noise = noise_k * (static_cast<double>(state >> 8U) / (1U << 24U) - 0.5);
    const double celsius = mean_c + swing_k * std::sin(0.2617994 * h + phase) +
                           0.3 * swing_k * std::sin(0.041 * h) + noise;
    points.push_back({time::Instant{} + std::chrono::hours(h),
                      273.15 + std::fmin(40.0, std::fmax(0.0, celsius))});
  }
  return *time::History::of(std::move(points));
}

inline time::History random_air() {
  return air_of_days(*rc::gen::inRange(2, 15), *rc::gen::inRange(0, 41), *rc::gen::inRange(0, 11),
                     *rc::gen::inRange(0, 7), *rc::gen::inRange(0, 3),
                     *rc::gen::arbitrary<unsigned>());
}

}  // namespace wetout::resin
