// How hot a fill between a box and foam gets: a slab of the gap's width, the box on one side, foam
// on the other (docs/models/cup.md).
#pragma once

#include "wetout/resin/cure.hpp"

namespace wetout::resin {

struct FillSurroundings {
  double conductivity_w_per_m_k = 0.035;
  double capacity_j_per_m3_k = 36e3;  ///< 25 kg/m³ x 1450 J/(kg K)
  units::Length thickness = units::millimetres(50);
  /// What the box takes up, J/(m² K), and loses to the air in its slot, W/(m² K); 0: nothing.
  double box_heat_j_per_m2_k = 0.0;
  double box_loss_w_per_m2_k = 0.0;

  friend bool operator==(const FillSurroundings&, const FillSurroundings&) = default;
};

struct FillHeat {
  units::Temperature peak;       ///< of the fill, where it is hottest
  units::Temperature foam_peak;  ///< of the foam's first half millimetre
  units::Duration peak_at;       ///< from mixing
};

/// `gap` above 0. The resin is filled in as mixed; the foam has the air's temperature. Within 1 K
/// of fine grids; the peak itself hangs on the fit like a cup's (some 40 K where it is far above
/// 100 C).
FillHeat fill_heat(const Cure& cure, units::Length gap, const FillSurroundings& foam,
                   units::Temperature air, units::Temperature resin);

}  // namespace wetout::resin
