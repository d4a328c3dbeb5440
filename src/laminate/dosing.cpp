#include "dosing.hpp"

#include <algorithm>
#include <cmath>

#include "wetout/resin/polyester.hpp"

namespace wetout::laminate {
namespace {

constexpr double least_room = 0.005;

struct DoseRange {
  double low = 0.0;
  double high = 0.0;
};

// As the sheet says, else what its table spans.
DoseRange range_of(const resin::Product& polyester) {
  DoseRange range;
  if (!polyester.catalyst.empty()) {
    const auto [least, most] =
        std::minmax_element(polyester.catalyst.begin(), polyester.catalyst.end(),
                            [](const auto& a, const auto& b) { return a.dose < b.dose; });
    range = {least->dose, most->dose};
  }
  if (polyester.dose_low) range.low = *polyester.dose_low;
  if (polyester.dose_high) range.high = *polyester.dose_high;
  return range;
}

}  // namespace

resin::Product with_dose(const resin::Product& polyester, double dose,
                         const resin::Defaults& settings) {
  resin::Product product = polyester;
  product.by_volume.reset();
  product.by_mass = resin::Parts{resin::By::mass, 100.0, 100.0 * dose};
  const DoseRange range = range_of(polyester);
  const double room = std::min(range.high / dose, dose / range.low) - 1.0;
  const double wished = settings.dose_tolerance.value;
  // A sheet with one dose, or next to none between its ends, leaves no room to keep to.
  product.tolerance = room > least_room ? std::min(wished, room) : wished;
  product.dose_low.reset();  // kept by the tolerance from here on
  product.dose_high.reset();
  return product;
}

base::Result<double> dose_for_gel(const resin::Product& polyester, units::Temperature air,
                                  units::Duration gel, const resin::Defaults& settings) {
  const DoseRange range = range_of(polyester);
  const double round = 1.0 + settings.dose_tolerance.value;
  resin::Product inside = polyester;
  if (range.low * round * round < range.high) {
    inside.dose_low = range.low * round;
    inside.dose_high = range.high / round;
  } else {
    inside.dose_low = inside.dose_high = std::sqrt(range.low * range.high);
  }
  // The scale may round the dose up, and a gel time falls about as the dose rises.
  const auto found = resin::dose_for(inside, air, gel * (round * round), settings);
  if (!found) return tl::unexpected(found.error());
  return found->share;
}

double usual_dose(const resin::Product& polyester) {
  const DoseRange range = range_of(polyester);
  return std::sqrt(range.low * range.high);
}

}  // namespace wetout::laminate
