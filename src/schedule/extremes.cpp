#include "extremes.hpp"

#include <algorithm>
#include <bit>
#include <cmath>

namespace wetout::schedule {

Extremes::Extremes(const time::History& history, Kind kind) : kind_(kind), first_(history.first()) {
  for (const time::HistoryPoint& point : history.points()) {
    at_.push_back(seconds(point.at));
    value_.push_back(point.value);
  }
  const std::size_t n = at_.size();
  auto& single = best_.emplace_back(n);
  for (std::size_t i = 0; i < n; ++i) single[i] = static_cast<std::uint32_t>(i);
  for (std::size_t width = 2; width <= n; width *= 2) {
    const auto& half = best_.back();
    std::vector<std::uint32_t> level(n - width + 1);
    for (std::size_t i = 0; i < level.size(); ++i) {
      const std::uint32_t a = half[i], b = half[i + width / 2];
      level[i] = better(value_[b], value_[a]) ? b : a;
    }
    best_.push_back(std::move(level));
  }
  // About one point a step, so that finding one is a look and a stride or two.
  step_s_ = n > 1 ? std::max(1.0, at_.back() / static_cast<double>(n)) : 1.0;
  std::size_t i = 0;
  for (double s = 0.0; s <= at_.back(); s += step_s_) {
    while (at_[i] < s) ++i;
    place_.push_back(static_cast<std::uint32_t>(i));
  }
}

std::size_t Extremes::point_from(double s) const {
  if (s <= 0.0) return 0;
  if (s > at_.back()) return at_.size();
  const auto step = std::min(static_cast<std::size_t>(s / step_s_), place_.size() - 1);
  std::size_t i = place_[step];
  while (i > 0 && at_[i - 1] >= s) --i;
  while (at_[i] < s) ++i;
  return i;
}

double Extremes::value_at(double s) const {
  const std::size_t i = point_from(s);
  if (i == 0) return value_.front();
  if (i == at_.size()) return value_.back();
  const double share = (s - at_[i - 1]) / (at_[i] - at_[i - 1]);
  return value_[i - 1] + share * (value_[i] - value_[i - 1]);
}

double Extremes::at(time::Instant instant) const { return value_at(seconds(instant)); }

Extreme Extremes::over(time::Instant from, time::Instant until) const {
  const double low = seconds(from), high = seconds(until);
  Extreme found{value_at(low), from};
  if (const double end = value_at(high); better(end, found.value)) found = {end, until};
  const std::size_t begin = point_from(low);
  std::size_t past = point_from(high);
  if (past < at_.size() && at_[past] == high) ++past;
  if (begin >= past) return found;
  const auto k = static_cast<std::size_t>(std::bit_width(past - begin) - 1);
  for (const std::uint32_t i : {best_[k][begin], best_[k][past - (std::size_t{1} << k)]}) {
    if (better(value_[i], found.value)) {
      found = {value_[i], first_ + std::chrono::seconds(std::llround(at_[i]))};
    }
  }
  return found;
}

}  // namespace wetout::schedule
