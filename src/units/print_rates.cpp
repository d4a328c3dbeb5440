// Amounts per length and per area of what is spread.
#include "wetout/units/print.hpp"

namespace wetout::units {

std::string print(LinearWeight weight, System system) {
  if (system == System::metric) return print_number(in_grams_per_metre(weight), 1) + " g/m";
  const Mass per_foot = weight * feet(1);
  return print_number(in_ounces(per_foot), 2) + " oz/ft";
}

std::string print(Pace pace, System system) {
  if (system == System::metric) {
    return print_number(in_minutes_per_square_metre(pace), 1) + " min/m²";
  }
  const Duration per_square_foot = pace * (feet(1) * feet(1));
  return print_number(in_minutes(per_square_foot), 2) + " min/ft²";
}

}  // namespace wetout::units
