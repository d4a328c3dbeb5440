// A resin as its data sheet prints it: plain data.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "wetout/base/cited.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/read.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::resin {

enum class Chemistry { epoxy, polyester };
enum class By { mass, volume };
enum class PotLifeMeans { gel, usable };

/// Parts as printed. Both may be given; mass wins on the scale.
struct Parts {
  By by = By::mass;
  double a = 1.0;
  double b = 1.0;
};

/// A time at an air temperature, a range as printed. `mass` only for pot life.
struct SheetTime {
  units::Temperature air;
  units::DurationRange time;
  std::optional<units::Mass> mass;
};
struct SheetWindow {
  units::Temperature air;
  units::DurationRange from;
  std::optional<units::DurationRange> until;
};
/// Polyester: gel time of a film for a dose of catalyst at a temperature.
struct CatalystTime {
  units::Temperature air;
  double dose = 0.0;  ///< share of the resin, by mass
  units::DurationRange gel;
};

struct Product {
  std::string id;
  std::string name;
  Chemistry chemistry = Chemistry::epoxy;
  std::string part_a;  ///< material ids
  std::string part_b;
  units::Density density_a;  ///< liquid, of the two materials
  units::Density density_b;
  std::optional<Parts> by_mass;  ///< at least one of the two for an epoxy
  std::optional<Parts> by_volume;
  std::optional<double> tolerance;  ///< share of part B, e.g. 0.03
  std::optional<units::Density> cured_density;
  std::optional<units::Temperature> lowest_air;
  std::optional<units::Temperature> highest_air;
  std::optional<double> humidity_limit;  ///< share
  std::optional<units::Temperature> tg;
  std::string family;  ///< wet on wet only within a family; empty: the resin's id
  PotLifeMeans pot_life_means = PotLifeMeans::gel;
  /// Against what its makers print; every line here is told at it already. See resin::at_speed().
  std::optional<double> speed;
  std::optional<double> speed_spread;  ///< of `speed`, as records left it: a share
  bool styrene = false;  ///< polyesters always; an epoxy never
  bool waxed = false;    ///< polyester: sanding (waxed) or laminating resin
  bool light_cured = false;
  std::vector<SheetTime> pot_life, gel, tack_free, handle, sand, full_cure, trim;
  std::vector<SheetWindow> recoat;
  std::vector<CatalystTime> catalyst;         ///< polyester
  std::optional<double> dose_low, dose_high;  ///< polyester: the sheet's range
};

/// Something poured into: cup, bucket, tray.
struct Cup {
  std::string id;
  units::Volume holds;
  units::Length diameter;
};

}  // namespace wetout::resin
