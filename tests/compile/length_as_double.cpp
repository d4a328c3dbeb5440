// A length is read in a named unit.
#include "wetout/units/quantity.hpp"

using namespace wetout::units;

double good() {
  const double value = in_metres(metres(1.2));
  return value;
}
#ifdef WITH_BAD_LINE
double bad() {
  const double value = metres(1.2);
  return value;
}
#endif
