// Lowest and highest value of a history over any range, in constant time but for finding its ends.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "wetout/time/history.hpp"

namespace wetout::schedule {

struct Extreme {
  double value = 0.0;
  time::Instant at;
};

/// Of one kind: the lowest, or the highest of what it is made from.
class Extremes {
 public:
  enum class Kind { lowest, highest };

  Extremes(const time::History& history, Kind kind);

  /// Both ends included; `from` is not after `until`. Outside the points the end values hold.
  [[nodiscard]] Extreme over(time::Instant from, time::Instant until) const;
  [[nodiscard]] double at(time::Instant instant) const;

 private:
  [[nodiscard]] bool better(double a, double b) const {
    return kind_ == Kind::lowest ? a < b : a > b;
  }
  [[nodiscard]] double seconds(time::Instant instant) const {
    return static_cast<double>((instant - first_).count());
  }
  // The first point at or after a time.
  [[nodiscard]] std::size_t point_from(double s) const;
  [[nodiscard]] double value_at(double s) const;

  // The best of the points from `begin` to before `past`; `begin` is before `past`.
  [[nodiscard]] std::size_t best_point(std::size_t begin, std::size_t past) const;

  Kind kind_;
  time::Instant first_;
  std::vector<double> at_, value_;
  // [k][i]: the best point of the 2^k blocks of points from block i on. Of blocks, as a table of
  // points would take four times the memory of all else.
  std::vector<std::vector<std::uint32_t>> best_;
  std::vector<std::uint32_t> place_;  // first point at or after each step of the grid
  double step_s_ = 1.0;
};

}  // namespace wetout::schedule
