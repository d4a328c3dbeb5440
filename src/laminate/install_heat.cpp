#include "install_heat.hpp"

#include "lookup.hpp"

namespace wetout::laminate {
namespace {

using units::Temperature;

constexpr int most_fills = 4;

}  // namespace

resin::FillSurroundings fill_surroundings(const Defaults& settings) {
  return {.conductivity_w_per_m_k = settings.foam_conductivity.value,
          .capacity_j_per_m3_k = settings.foam_heat.value * 1e3,
          .box_heat_j_per_m2_k = settings.box_heat.value * 1e3,
          .box_loss_w_per_m2_k = settings.box_loss.value};
}

base::Result<void> check_fill(const PlanInput& input, const CoatSpec& coat,
                              const Defaults& settings, const resin::WorkingTimes& times,
                              CoatState& state) {
  const resin::Product& product = get(input.shop.resins, coat.resin);
  if (!coat.install || coat.install->gap <= units::Length{} ||
      product.chemistry != resin::Chemistry::epoxy) {
    return {};
  }
  const resin::FillSurroundings foam = fill_surroundings(settings);
  const Temperature resin_temp = input.resin_temp.value_or(input.air);
  const auto peak = [&](const resin::Product& with, units::Length gap) {
    auto heat = times.fill(with, gap, foam, input.air, resin_temp);
    return heat ? base::Result<Temperature>(heat->peak) : tl::unexpected(heat.error());
  };
  const auto own = peak(product, coat.install->gap);
  if (!own) return tl::unexpected(own.error());
  state.need.fill_peak = *own;
  const Temperature limit = input.board.foam == board::Foam::pu
                                ? settings.fill_limit_polyurethane.value
                                : settings.fill_limit_polystyrene.value;
  if (*own <= limit) return {};
  const auto note = [&](std::string code, std::string text, Temperature value) {
    state.notices.push_back({.code = std::move(code),
                             .text = std::move(text),
                             .subject = coat.id,
                             .value = value.in_celsius(),
                             .limit = limit.in_celsius(),
                             .unit = "C"});
  };
  note("install.fill_hot", "the fill gets hotter than the foam around it takes", *own);
  for (const resin::Product& other : input.shop.resins) {
    if (other.id == product.id || other.chemistry != product.chemistry ||
        other.part_a != product.part_a) {
      continue;
    }
    const auto slower = peak(other, coat.install->gap);
    if (!slower || *slower > limit) continue;
    state.assumed.insert(times.calibration(other)->cup_assumed.begin(),
                         times.calibration(other)->cup_assumed.end());
    note("install.slower", "resin \"" + other.id + "\" stays cool enough in this gap", *slower);
    return {};
  }
  for (int fills = 2; fills <= most_fills; ++fills) {
    const auto thin = peak(product, coat.install->gap / static_cast<double>(fills));
    if (!thin || *thin > limit) continue;
    note("install.fills",
         "filled in " + std::to_string(fills) +
             " goes, each when the one before has cooled, it stays cool enough",
         *thin);
    return {};
  }
  note("install.gap", "no fill of this resin stays cool enough: a closer fit, or cooler resin",
       *own);
  return {};
}

}  // namespace wetout::laminate
