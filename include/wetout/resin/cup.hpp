// Resin in bulk: an upright cylinder that reacts, warms itself and loses heat at its side, base and
// top (docs/models/cup.md).
#pragma once

#include <optional>

#include "wetout/resin/reacting_body.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::resin {

/// What heat does to the mix.
struct Bulk {
  double heat_j_per_kg = 0.0;  ///< of reaction
  double heat_capacity_j_per_kg_k = 1900.0;
  double conductivity_w_per_m_k = 0.2;
  units::Density density = units::kilograms_per_cubic_metre(1100.0);

  friend bool operator==(const Bulk&, const Bulk&) = default;
};

/// Heat lost by each face, W/(m² K).
struct Cooling {
  double side = 10.0;
  double top = 10.0;
  double base = 8.0;

  friend bool operator==(const Cooling&, const Cooling&) = default;
};

/// The resin in the cup, not the cup.
struct Fill {
  units::Length diameter;
  units::Length height;

  friend bool operator==(const Fill&, const Fill&) = default;
};

/// As high as that volume stands in a cup of that diameter.
Fill fill_of(units::Volume volume, units::Length diameter);
/// As high as wide, where the cup is not known.
Fill fill_of(units::Volume volume);

struct Grid {
  std::size_t radial = 16;
  std::size_t axial = 24;
};
/// For fitting: gel within 0.15 % of `Grid{}` at a fifth of its cost.
inline constexpr Grid coarse_grid{8, 12};

enum class CupUntil { usable, gel, peak };

struct CupRun {
  Kinetics kinetics;
  Bulk bulk;
  Cooling cooling;
  Fill fill;
  units::Temperature air;
  units::Temperature resin;         ///< as mixed
  double gel_conversion = 0.57735;  ///< at the hottest point
  double usable_rise_kelvin = 20.0;
  double usable_share = 1.0 / 3.0;            ///< of gel conversion
  CupUntil until = CupUntil::peak;            ///< where to stop
  std::optional<units::Duration> pour_after;  ///< the state at that time is wanted
  Grid grid;
  double most_kelvin_a_step = 1.0;  ///< of any part, until gel; the times hang on it
  double most_kelvin_after_gel =
      24.0;  ///< the hot front then sweeps through; moves peaks by 0.15 K
};

/// Times from mixing. `risen` is the time at which the middle has warmed by `usable_rise_kelvin` by
/// its own heat: against the same cup without reaction, so that resin warmed by the air alone does
/// not count. It never comes in a cup that loses its heat as fast as it makes it.
struct CupCourse {
  std::optional<units::Duration> risen;
  std::optional<units::Duration> part_gelled;  ///< `usable_share` of gel conversion
  std::optional<units::Duration> gel;
  units::Temperature peak;       ///< of the middle, as far as it was followed
  units::Temperature mean_peak;  ///< of the whole
  units::Duration peak_at;       ///< of the middle
  /// At `pour_after`, of the whole; null when it was not asked for or not come to.
  std::optional<double> poured_conversion;
  std::optional<double> poured_reduced_time;
  std::optional<units::Temperature> poured_temperature;
  // Heat at the end, each in kelvin of the body's mean temperature: made = stored + lost.
  double made_kelvin = 0.0;
  double stored_kelvin = 0.0;
  double lost_kelvin = 0.0;
  int steps = 0;
};

/// Follows one cup. Gel within 0.1 % of the limit of fine grids and steps (docs/models/cup.md).
CupCourse follow(const CupRun& run);

}  // namespace wetout::resin
