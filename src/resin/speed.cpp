#include "wetout/resin/speed.hpp"

#include <algorithm>
#include <chrono>
#include <utility>

#include "sheet_times.hpp"
#include "wetout/base/check.hpp"
#include "wetout/resin/arrhenius.hpp"
#include "wetout/resin/clock.hpp"

namespace wetout::resin {
namespace {

void divide(units::DurationRange& range, double by) {
  range.low = range.low / by;
  range.high = range.high / by;
}

// Ends of windows are chosen by the sheet, not seen on a film.
bool is_seen(Milestone milestone) {
  switch (milestone) {
    case Milestone::gel:
    case Milestone::tack_free:
    case Milestone::handle:
    case Milestone::sandable:
    case Milestone::full_cure:
      return true;
    case Milestone::trim_until:
    case Milestone::recoat_from:
    case Milestone::recoat_until:
      return false;
  }
  return false;
}

}  // namespace

Product at_speed(Product product, double speed) {
  base::promise(speed > 0.0, "a speed is above 0");
  for (auto* lines : {&product.gel, &product.tack_free, &product.handle, &product.sand,
                      &product.full_cure, &product.trim}) {
    for (SheetTime& line : *lines) divide(line.time, speed);
  }
  for (SheetWindow& line : product.recoat) {
    divide(line.from, speed);
    if (line.until) divide(*line.until, speed);
  }
  for (SheetTime& line : product.pot_life) divide(line.time, std::max(speed, 1.0));
  product.speed = speed;
  return product;
}

std::optional<double> observed_speed(const Product& product, const Cure& cure,
                                     const time::History& air_kelvin, time::Instant start,
                                     Milestone milestone, time::Instant seen) {
  if (!is_seen(milestone) || seen <= start) return std::nullopt;
  const auto lines = film_lines(product);
  const SheetLine* line = own_line(lines, milestone, cure.sheet_air);
  if (line == nullptr) return std::nullopt;
  const double energy = cure.kinetics.energy_j_per_mol;
  const double wanted =
      line->middle_s() * arrhenius_factor(energy * 1e-3, line->air, cure.sheet_air);
  const Clock clock(energy, cure.sheet_air, air_kelvin);
  const auto age = [&](time::Instant at) {
    return clock.age(std::chrono::duration<double>(at - air_kelvin.first()).count());
  };
  return wanted / (age(seen) - age(start));
}

}  // namespace wetout::resin
