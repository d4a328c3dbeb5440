#include "profile.hpp"

#include <algorithm>
#include <cmath>

namespace wetout::board {
namespace {

// Sharper than this is a point, and should be declared one.
constexpr double least_power = 1.25;
constexpr double ellipse_power = 2.0;
constexpr double is_ellipse = 1e-6;

// Stations [from, to] of one flank; the summit is at `to` when rising.
void add_flank(Curve& curve, const Stations& all, std::size_t from, std::size_t to, bool rising,
               bool round_end) {
  if (from == to) return;
  std::vector<double> x(all.x.begin() + static_cast<std::ptrdiff_t>(from),
                        all.x.begin() + static_cast<std::ptrdiff_t>(to) + 1);
  std::vector<double> v(all.y.begin() + static_cast<std::ptrdiff_t>(from),
                        all.y.begin() + static_cast<std::ptrdiff_t>(to) + 1);
  double power = 1.0;
  if (round_end) {
    power = ellipse_power;
    const std::size_t next = rising ? 1 : x.size() - 2;
    const double top = rising ? v.back() : v.front();
    const double tip = rising ? v.front() : v.back();
    if (x.size() > 2 && tip == 0.0) {
      const double from_top = rising ? x.back() - x[next] : x[next] - x.front();
      power = round_end_power(from_top / (x.back() - x.front()), v[next] / top);
    }
    for (double& value : v) value = power == 2.0 ? value * value : std::pow(value, power);
  }
  const bool measured = (rising ? v.front() : v.back()) > 0.0;
  RowEnds ends;
  if (rising) {
    ends = {.last_slope = 0.0, .first_measured = measured};
  } else {
    ends = {.first_slope = 0.0, .last_measured = measured};
  }
  const std::vector<double> slopes = monotone_slopes(x, v, ends);
  curve.add(x, v, slopes, power);
}

}  // namespace

double round_end_power(double x_of_unit, double y_of_unit) {
  if (!(x_of_unit > 0.0 && x_of_unit < 1.0 && y_of_unit > 0.0 && y_of_unit < 1.0))
    return ellipse_power;
  const auto outside = [&](double p) {
    return std::pow(x_of_unit, p) + std::pow(y_of_unit, p) - 1.0;
  };
  double low = least_power;
  double high = ellipse_power;
  if (outside(high) >= -is_ellipse) return high;
  if (outside(low) <= 0.0) return low;
  while (high - low > 1e-12) {
    const double middle = 0.5 * (low + high);
    (outside(middle) > 0.0 ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

std::pair<std::size_t, std::size_t> summit(const std::vector<double>& y) {
  const auto first = std::max_element(y.begin(), y.end());
  auto last = first;
  while (std::next(last) != y.end() && *std::next(last) == *first) ++last;
  return {static_cast<std::size_t>(first - y.begin()), static_cast<std::size_t>(last - y.begin())};
}

Curve rise_and_fall(const Stations& stations, std::size_t first_top, std::size_t last_top,
                    bool round_tail, bool round_nose) {
  if (first_top == 0 && last_top + 1 == stations.x.size()) return Curve::constant(stations.y[0]);
  Curve curve;
  add_flank(curve, stations, 0, first_top, true, round_tail);
  if (last_top > first_top) {
    const std::vector<double> x = {stations.x[first_top], stations.x[last_top]};
    const std::vector<double> v(2, stations.y[first_top]);
    curve.add(x, v, std::vector<double>(2, 0.0), 1.0);
  }
  add_flank(curve, stations, last_top, stations.x.size() - 1, false, round_nose);
  return curve;
}

Curve monotone(const Stations& stations, Beyond beyond) {
  const auto& [x, y] = stations;
  if (std::all_of(y.begin(), y.end(), [&](double v) { return v == y.front(); }))
    return Curve::constant(y.front());
  const std::vector<double> slopes = monotone_slopes(x, y);
  Curve curve;
  const auto straight = [&](double from, double to, double value_at, double value, double slope) {
    const double m = beyond == Beyond::straight ? slope : 0.0;
    curve.add(std::vector<double>{from, to},
              std::vector<double>{value + m * (from - value_at), value + m * (to - value_at)},
              std::vector<double>{m, m}, 1.0);
  };
  straight(x.front() - 1.0, x.front(), x.front(), y.front(), slopes.front());
  curve.add(x, y, slopes, 1.0);
  straight(x.back(), x.back() + 1.0, x.back(), y.back(), slopes.back());
  return curve;
}

}  // namespace wetout::board
