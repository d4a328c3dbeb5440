#include "wetout/resin/fill_heat.hpp"

#include <algorithm>

#include "wetout/base/check.hpp"
#include "wetout/resin/reacting_body.hpp"

namespace wetout::resin {
namespace {

constexpr std::size_t resin_cells = 12;
constexpr std::size_t foam_cells = 36;
// The first cell of foam, and how much wider each next one is.
constexpr double first_foam_m = 0.0005;
constexpr double still_air = 10.0;  // W/(m² K), at the foam's far side

// The box as one cell, resin from it outwards, then foam in ever wider cells.
Chain chain_of(const Bulk& bulk, double gap_m, const FillSurroundings& foam) {
  const double capacity = bulk.heat_capacity_j_per_kg_k * bulk.density.si();
  Chain chain = across(gap_m, resin_cells, bulk.conductivity_w_per_m_k, capacity,
                       foam.box_loss_w_per_m2_k, insulated);
  const double half_resin =
      0.5 * gap_m / static_cast<double>(resin_cells) / bulk.conductivity_w_per_m_k;
  double resistance = half_resin, width = first_foam_m, left = units::in_metres(foam.thickness);
  chain.conductance.pop_back();
  for (std::size_t i = 0; i < foam_cells && left > 0.0; ++i) {
    const double cell = std::min(width, left);
    const double half = 0.5 * cell / foam.conductivity_w_per_m_k;
    chain.conductance.push_back(1.0 / (resistance + half));
    chain.capacity.push_back(foam.capacity_j_per_m3_k * cell);
    resistance = half;
    left -= cell;
    width *= 1.25;
  }
  chain.conductance.push_back(1.0 / (resistance + 1.0 / still_air));
  if (foam.box_heat_j_per_m2_k > 0.0) {
    chain.capacity.insert(chain.capacity.begin(), foam.box_heat_j_per_m2_k);
    chain.conductance.front() = 1.0 / half_resin;
    chain.conductance.insert(chain.conductance.begin(), foam.box_loss_w_per_m2_k);
  }
  return chain;
}

}  // namespace

FillHeat fill_heat(const Cure& cure, units::Length gap, const FillSurroundings& foam,
                   units::Temperature air, units::Temperature resin) {
  base::promise(gap.si() > 0.0 && foam.thickness.si() > 0.0, "a fill stands between box and foam");
  const Reactant reactant{ConversionCurve(cure.kinetics.r, cure.kinetics.m, cure.kinetics.n),
                          cure.kinetics,
                          cure.bulk.heat_j_per_kg / cure.bulk.heat_capacity_j_per_kg_k};
  const std::size_t first = foam.box_heat_j_per_m2_k > 0.0 ? 1 : 0;
  ReactingBody body(reactant, chain_of(cure.bulk, units::in_metres(gap), foam),
                    Chain{{1.0}, {0.0, 0.0}}, air, resin, {first, first + resin_cells});
  const double film_gel = reactant.curve.reduced_time(cure.gel_conversion) /
                          rate_constant(cure.kinetics, std::min(air, resin));
  double time = 0.0, dt = 1.0;
  FillHeat heat{resin, air, {}};
  // Until it has reacted and cools, at the longest for two gel times of a film.
  while (time < 2.0 * film_gel) {
    if (body.step(dt) > 1.0) {
      body.undo();
      dt *= 0.6;
      continue;
    }
    time += dt;
    dt = std::min(dt * 1.2, 0.005 * film_gel);
    double hottest = 0.0;
    for (std::size_t i = 0; i < resin_cells; ++i)
      hottest = std::max(hottest, body.cell_kelvin(first + i));
    const auto now = units::Temperature::kelvin(hottest);
    heat.foam_peak =
        std::max(heat.foam_peak, units::Temperature::kelvin(body.cell_kelvin(first + resin_cells)));
    if (now > heat.peak) {
      heat.peak = now;
      heat.peak_at = units::seconds(time);
    } else if (body.furthest_conversion() > 0.9 && (heat.peak - now).in_kelvin() > 2.0) {
      break;
    }
  }
  return heat;
}

}  // namespace wetout::resin
