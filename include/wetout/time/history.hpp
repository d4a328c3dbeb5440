// A value over time, known at instants and straight between them: air temperature, humidity.
#pragma once

#include <span>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::time {

/// One value at one instant; the unit is the user's, who names it.
struct HistoryPoint {
  Instant at;
  double value = 0.0;

  friend bool operator==(const HistoryPoint&, const HistoryPoint&) = default;
};

/// Piecewise linear. Outside its points the end values hold; whoever must not use them asks for
/// first() and last().
class History {
 public:
  /// At least one point, instants rising, values finite. Codes "history.empty", "history.order"
  /// (found: the instant that does not come after the one before it), "history.not_finite".
  static base::Result<History> of(std::vector<HistoryPoint> points);
  /// One value for all time.
  static History constant(double value);

  [[nodiscard]] std::span<const HistoryPoint> points() const { return points_; }
  [[nodiscard]] Instant first() const { return points_.front().at; }
  [[nodiscard]] Instant last() const { return points_.back().at; }

  [[nodiscard]] double at(Instant instant) const;
  /// The same at a fraction of a second: seconds after first(), may be negative.
  [[nodiscard]] double at_seconds(double after_first_s) const;
  [[nodiscard]] double lowest() const;
  [[nodiscard]] double highest() const;

 private:
  explicit History(std::vector<HistoryPoint> points) : points_(std::move(points)) {}
  std::vector<HistoryPoint> points_;
};

}  // namespace wetout::time
