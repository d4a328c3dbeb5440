#include "wetout/resin/clock.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "gauss.hpp"
#include "wetout/base/check.hpp"
#include "wetout/resin/defaults.hpp"

namespace wetout::resin {
namespace {

// Over a panel the logarithm of the speed changes by less than 0.5 (80 kJ/mol near 0 C): five
// points integrate that to 1e-14.
constexpr double most_kelvin_a_panel = 4.0;
constexpr double infinity = std::numeric_limits<double>::infinity();
// Finite, so that 0 K/s times it is 0.
constexpr double long_ago = -1e300;

}  // namespace

Clock::Clock(double energy_j_per_mol, units::Temperature sheet_air, const time::History& air_kelvin)
    : e_over_r_(energy_j_per_mol / gas_constant_j_per_mol_k.value),
      inverse_sheet_(1.0 / sheet_air.in_kelvin()),
      lowest_(air_kelvin.lowest()) {
  base::promise(lowest_ > 0.0, "air is above absolute zero");
  const auto points = air_kelvin.points();
  const auto seconds = [&](std::size_t i) {
    return static_cast<double>((points[i].at - points[0].at).count());
  };
  panels_.reserve(points.size() + 2);
  const double before = speed(points.front().value);
  panels_.push_back({long_ago, 0.0, points.front().value, 0.0, 0.0, before, 0.0});
  double age = 0.0;
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const double a = points[i].value, b = points[i + 1].value;
    const double start = seconds(i), length = seconds(i + 1) - start;
    const int parts =
        std::max(1, static_cast<int>(std::ceil(std::abs(b - a) / most_kelvin_a_panel)));
    for (int part = 0; part < parts; ++part) {
      const double s0 = static_cast<double>(part) / parts,
                   s1 = static_cast<double>(part + 1) / parts;
      Panel panel{start + s0 * length,
                  start + s1 * length,
                  a + s0 * (b - a),
                  (b - a) / length,
                  age,
                  0.0,
                  0.0};
      panel.speed = speed(panel.kelvin);
      panel.growth =
          std::log(speed(a + s1 * (b - a)) / panel.speed) / (panel.end_s - panel.start_s);
      age += gained(panel, panel.end_s);
      panels_.push_back(panel);
    }
  }
  const double last = points.back().value;
  panels_.push_back({seconds(points.size() - 1), infinity, last, 0.0, age, speed(last), 0.0});
}

double Clock::speed(double kelvin) const {
  return std::exp(e_over_r_ * (inverse_sheet_ - 1.0 / kelvin));
}

double Clock::gained(const Panel& panel, double until_s) const {
  const double length = until_s - panel.start_s;
  if (panel.kelvin_per_s == 0.0) return panel.speed * length;
  return gauss5(0.0, length,
                [&](double t) { return speed(panel.kelvin + panel.kelvin_per_s * t); });
}

const Clock::Panel& Clock::panel_at(double time_s, Place& place) const {
  place = std::min(place, panels_.size() - 1);
  const auto holds = [&](const Panel& p) { return p.start_s <= time_s && time_s < p.end_s; };
  if (holds(panels_[place])) return panels_[place];
  if (place + 1 < panels_.size() && holds(panels_[place + 1])) return panels_[++place];
  const auto after = std::upper_bound(panels_.begin(), panels_.end(), time_s,
                                      [](double t, const Panel& p) { return t < p.start_s; });
  place = static_cast<std::size_t>(after - panels_.begin()) - 1;
  return panels_[place];
}

double Clock::age(double time_s, Place& place) const {
  const Panel& panel = panel_at(time_s, place);
  if (panel.start_s == long_ago) return panel.speed * time_s;
  return panel.age_s + gained(panel, time_s);
}

double Clock::when(double age_s, Place& place) const {
  if (age_s < 0.0) return age_s / panels_.front().speed;
  place = std::clamp<std::size_t>(place, 1, panels_.size() - 1);
  const auto holds = [&](std::size_t i) {
    return panels_[i].age_s <= age_s && (i + 1 == panels_.size() || age_s < panels_[i + 1].age_s);
  };
  if (!holds(place)) {
    if (place + 1 < panels_.size() && holds(place + 1)) {
      ++place;
    } else {
      const auto after = std::upper_bound(panels_.begin() + 1, panels_.end(), age_s,
                                          [](double age, const Panel& p) { return age < p.age_s; });
      place = static_cast<std::size_t>(after - panels_.begin()) - 1;
    }
  }
  const Panel& panel = panels_[place];
  const double wanted = age_s - panel.age_s;
  if (panel.kelvin_per_s == 0.0) return panel.start_s + wanted / panel.speed;
  // The speed is nearly exponential in time; Newton mends what it is not.
  const double even = wanted / panel.speed;
  double t =
      std::abs(panel.growth * even) < 1e-12 ? even : std::log1p(panel.growth * even) / panel.growth;
  for (int i = 0; i < 8; ++i) {
    const double miss = gained(panel, panel.start_s + t) - wanted;
    const double correction = miss / speed(panel.kelvin + panel.kelvin_per_s * t);
    t -= correction;
    // What is left after a correction c is about growth c^2/2.
    if (std::abs(correction) < 1e-3 && std::abs(panel.growth) * correction * correction < 1e-9)
      break;
  }
  return panel.start_s + t;
}

}  // namespace wetout::resin
