// Courses of air for tests.
#pragma once

#include <rapidcheck.h>

#include <chrono>
#include <cmath>
#include <vector>

#include "wetout/time/history.hpp"

namespace wetout::climate {

inline constexpr double turn = 6.283185307179586;

/// Kelvin at whole seconds after the epoch.
inline time::History course(const std::vector<std::pair<int, double>>& points) {
  std::vector<time::HistoryPoint> out;
  for (const auto& [s, kelvin] : points) {
    out.push_back({time::Instant{} + std::chrono::seconds(s), kelvin});
  }
  return *time::History::of(std::move(out));
}

/// Some days of hourly air around `mean_c`, with a daily wave, a slow one and noise.
inline time::History hourly_air(int days, double mean_c, double swing_k, unsigned seed) {
  std::vector<std::pair<int, double>> points;
  unsigned state = seed | 1U;
  for (int h = 0; h <= 24 * days; ++h) {
    state = state * 1664525U + 1013904223U;
    const double noise = 0.3 * swing_k * (static_cast<double>(state >> 8U) / (1U << 24U) - 0.5);
    points.emplace_back(3600 * h, 273.15 + mean_c + swing_k * std::sin(turn * (h - 9) / 24.0) +
                                      0.4 * swing_k * std::sin(turn * h / 151.0) + noise);
  }
  return course(points);
}

inline time::History random_air() {
  return hourly_air(*rc::gen::inRange(1, 8), *rc::gen::inRange(-5, 35), *rc::gen::inRange(0, 12),
                    *rc::gen::arbitrary<unsigned>());
}

inline double between(double low, double high) {
  return low + (high - low) * *rc::gen::inRange(0, 1000001) / 1e6;
}

}  // namespace wetout::climate
