// What the shop has, as far as planning a coat needs it: plain data.
#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "wetout/resin/product.hpp"
#include "wetout/units/money.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::laminate {

/// What one pack holds: exactly one of the four.
struct Pack {
  std::optional<units::Mass> mass;
  std::optional<units::Volume> volume;
  std::optional<units::Length> length;
  std::optional<std::int64_t> pieces;
  std::optional<units::Money> price;
};

/// Anything bought that is not cloth.
struct Material {
  std::string id;
  std::string name;
  std::optional<units::Density> density;  ///< liquid; needed for parts of a resin
  std::optional<units::Mass> weight;      ///< of one piece: fin boxes, plugs
  bool styrene = false;                   ///< eats polystyrene foam
  std::vector<Pack> packs;
};

struct Cloth {
  std::string id;
  std::string name;
  units::ArealWeight weight;
  units::Length width;                          ///< of the roll
  std::optional<units::Density> fibre_density;  ///< else E-glass
  std::vector<Pack> packs;
};

/// What the shop says of its own losses and speeds; what is missing is taken from the defaults.
struct Losses {
  std::optional<units::Mass> left_in_cup;
  std::optional<units::Mass> brush;
  std::optional<units::LinearWeight> run_off_laminate;
  std::optional<units::LinearWeight> run_off_hotcoat;
  std::optional<units::ArealWeight> uptake_eps;
  std::optional<units::ArealWeight> uptake_xps;
  std::optional<units::ArealWeight> uptake_pu;
  std::optional<double> margin;
  std::optional<double> fibre_mass_fraction;
  std::optional<units::Length> film_hotcoat;
  std::optional<units::Length> film_gloss;
  std::optional<units::Length> film_seal;
};
struct Spreading {
  std::optional<units::Pace> laminate;
  std::optional<units::Pace> hotcoat;
  std::optional<units::Pace> gloss;
};

struct Shop {
  units::Temperature air;  ///< where nothing better is known
  units::Mass scale_step = units::grams(1);
  std::string currency;
  std::string cup;  ///< id of the default cup; may be empty
  std::vector<resin::Cup> cups;
  std::vector<Material> materials;
  std::vector<Cloth> cloths;
  std::vector<resin::Product> resins;
  Losses losses;
  Spreading pace;
  /// How many times the usual minutes other work takes, by its word ("sand"), above 0.
  std::map<std::string, double, std::less<>> step_pace;
};

}  // namespace wetout::laminate
