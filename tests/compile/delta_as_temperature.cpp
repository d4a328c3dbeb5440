// A difference is not a point on the scale.
#include "wetout/units/temperature.hpp"

using namespace wetout::units;

Temperature good() {
  const Temperature value = Temperature::kelvin(3);
  return value;
}
#ifdef WITH_BAD_LINE
Temperature bad() {
  const Temperature value = TempDelta::kelvin(3);
  return value;
}
#endif
