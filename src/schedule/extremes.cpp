#include "extremes.hpp"

#include <algorithm>
#include <bit>
#include <cmath>

namespace wetout::schedule {
namespace {

constexpr std::size_t block = 8;  // points

}  // namespace

Extremes::Extremes(const time::History& history, Kind kind) : kind_(kind), first_(history.first()) {
  at_.reserve(history.points().size());
  value_.reserve(history.points().size());
  for (const time::HistoryPoint& point : history.points()) {
    at_.push_back(seconds(point.at));
    value_.push_back(point.value);
  }
  const std::size_t n = at_.size();
  const std::size_t blocks = n / block;  // whole ones
  auto& single = best_.emplace_back(blocks);
  for (std::size_t i = 0; i < blocks; ++i) {
    std::size_t best = i * block;
    for (std::size_t p = best + 1; p < (i + 1) * block; ++p) {
      if (better(value_[p], value_[best])) best = p;
    }
    single[i] = static_cast<std::uint32_t>(best);
  }
  for (std::size_t width = 2; width <= blocks; width *= 2) {
    const auto& half = best_.back();
    std::vector<std::uint32_t> level(blocks - width + 1);
    for (std::size_t i = 0; i < level.size(); ++i) {
      const std::uint32_t a = half[i], b = half[i + width / 2];
      level[i] = better(value_[b], value_[a]) ? b : a;
    }
    best_.push_back(std::move(level));
  }
  // About one point a step, so that finding one is a look and a stride or two.
  step_s_ = n > 1 ? std::max(1.0, at_.back() / static_cast<double>(n)) : 1.0;
  place_.reserve(static_cast<std::size_t>(at_.back() / step_s_) + 1);
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
  const std::size_t best = best_point(begin, past);
  if (better(value_[best], found.value)) {
    found = {value_[best], first_ + std::chrono::seconds(std::llround(at_[best]))};
  }
  return found;
}

std::size_t Extremes::best_point(std::size_t begin, std::size_t past) const {
  std::size_t best = begin;
  const auto look = [&](std::size_t i) {
    if (better(value_[i], value_[best])) best = i;
  };
  const std::size_t first = (begin + block - 1) / block, last = past / block;
  if (first >= last) {
    for (std::size_t i = begin; i < past; ++i) look(i);
    return best;
  }
  for (std::size_t i = begin; i < first * block; ++i) look(i);
  const auto k = static_cast<std::size_t>(std::bit_width(last - first) - 1);
  look(best_[k][first]);
  look(best_[k][last - (std::size_t{1} << k)]);
  for (std::size_t i = last * block; i < past; ++i) look(i);
  return best;
}

}  // namespace wetout::schedule
