// A length names its unit.
#include "wetout/units/quantity.hpp"

using namespace wetout::units;

Length good() {
  const Length value = metres(1.2);
  return value;
}
#ifdef WITH_BAD_LINE
Length bad() {
  const Length value = 1.2;
  return value;
}
#endif
