// Stands in for src/laminate/defaults.cpp in a build whose model was changed on purpose.
#include "wetout/laminate/defaults.hpp"

namespace wetout::laminate {

const Defaults& defaults() {
  static const Defaults values = [] {
    Defaults changed;
    changed.film_hotcoat.value = units::millimetres(0.25);
    changed.fibre_mass_fraction.value = 0.42;
    changed.margin.value = 0.15;
    return changed;
  }();
  return values;
}

std::string_view model_version() { return "changed"; }

}  // namespace wetout::laminate
