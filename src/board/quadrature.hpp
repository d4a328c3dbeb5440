// Gauss-Kronrod on panels along the board: one set of points, two orders, so that every integral
// comes with an estimate of its error.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>

namespace wetout::board {

/// On [0, 1], rising; `coarse` is zero where only the finer rule has a point.
template <std::size_t n>
struct Rule {
  std::array<double, n> at, fine, coarse;
};
/// 7 and 15 points: whole faces, where an integrand costs little.
inline constexpr std::size_t rule_size = 15;
const Rule<rule_size>& gauss_kronrod();
/// 4 and 9 points: bands, where each point is a walk.
inline constexpr std::size_t small_size = 9;
const Rule<small_size>& small_gauss_kronrod();

/// One integral by two orders.
struct Estimate {
  double fine = 0.0;
  double coarse = 0.0;

  Estimate& operator+=(Estimate b) {
    fine += b.fine;
    coarse += b.coarse;
    return *this;
  }
  friend Estimate operator*(Estimate a, double k) { return {a.fine * k, a.coarse * k}; }
  [[nodiscard]] double error() const { return std::abs(fine - coarse); }
};

/// Part of the length: x = origin + reach * u^power for u in [from, to]. A power above one takes
/// away the root singularity of a round end at the origin.
struct Panel {
  double origin = 0.0;
  double reach = 0.0;  ///< negative when the origin is the nose end of the panel
  int power = 1;
  double from = 0.0;
  double to = 1.0;

  [[nodiscard]] double x(double u) const {
    double p = u;
    for (int i = 1; i < power; ++i) p *= u;
    return origin + reach * p;
  }
  /// The same, but never the singular origin itself, where slopes are infinite. Nor so near that the
  /// sum rounds to it: a panel may be far shorter than its origin is large.
  [[nodiscard]] double inside(double u) const {
    constexpr double least = 1e-13;  // far below what any integral can see
    const double away = x(u) - origin;
    const double least_away = least * (std::abs(origin) + std::abs(reach));
    return std::abs(away) < least_away ? origin + std::copysign(least_away, reach) : x(u);
  }
  /// |dx/du|
  [[nodiscard]] double stretch(double u) const {
    double p = static_cast<double>(power);
    for (int i = 1; i < power; ++i) p *= u;
    return std::abs(reach) * p;
  }
  [[nodiscard]] double u(double at) const {
    return std::pow(std::fmax(0.0, (at - origin) / reach), 1.0 / power);
  }
};

/// Calls f(x, fine weight, coarse weight) at the points of a panel.
template <class F>
void at_points(const Panel& panel, F&& f) {
  const Rule<rule_size>& rule = gauss_kronrod();
  const double width = panel.to - panel.from;
  for (std::size_t i = 0; i < rule_size; ++i) {
    const double u = panel.from + width * rule.at[i];
    const double stretch = width * panel.stretch(u);
    f(panel.inside(u), stretch * rule.fine[i], stretch * rule.coarse[i]);
  }
}

/// What an integrand is at one place, and which of its branches it took there.
struct Probe {
  Estimate value;
  int branch = 0;
};

/// Integral of f(x) -> Probe by `rule`; a panel over which the branch changes is broken there. The
/// integrand's own error and the rule's are added up without regard to sign.
template <std::size_t n, class F>
Estimate integrate_branches(const Rule<n>& rule, const Panel& panel, F&& f, int depth = 6) {
  const double width = panel.to - panel.from;
  const auto weighted = [&](double u) {
    Probe probe = f(panel.inside(u));
    probe.value = probe.value * panel.stretch(u);
    return probe;
  };
  double fine = 0.0;
  double coarse = 0.0;
  double error = 0.0;
  Probe before;
  for (std::size_t i = 0; i < n; ++i) {
    const double u = panel.from + width * rule.at[i];
    const Probe here = weighted(u);
    if (depth > 0 && i > 0 && here.branch != before.branch) {
      double low = panel.from + width * rule.at[i - 1];
      double high = u;
      Probe at_low = before;
      Probe at_high = here;
      // The integrand is continuous there: a narrow gap is bridged by its ends and its middle.
      constexpr double narrow = 0.003;
      while (high - low > narrow * width) {
        const double middle = 0.5 * (low + high);
        const Probe between = weighted(middle);
        const bool same = between.branch == at_low.branch;
        (same ? low : high) = middle;
        (same ? at_low : at_high) = between;
      }
      const double middle = weighted(0.5 * (low + high)).value.fine;
      const double ends = 0.5 * (at_low.value.fine + at_high.value.fine);
      const double bridge = 0.5 * (middle + ends);
      Estimate parts = Estimate{bridge, bridge - std::abs(middle - ends)} * (high - low);
      Panel part = panel;
      part.to = low;
      parts += integrate_branches(rule, part, f, depth - 1);
      part.to = panel.to;
      part.from = high;
      parts += integrate_branches(rule, part, f, depth - 1);
      return parts;
    }
    fine += here.value.fine * rule.fine[i];
    coarse += here.value.fine * rule.coarse[i];
    error += here.value.error() * rule.fine[i];
    before = here;
  }
  return Estimate{fine, fine - std::abs(fine - coarse) - error} * width;
}

}  // namespace wetout::board
