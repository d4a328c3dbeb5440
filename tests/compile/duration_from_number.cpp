// 25 of what?
#include "wetout/units/quantity.hpp"

using namespace wetout::units;

Duration good() {
  const Duration value = minutes(25);
  return value;
}
#ifdef WITH_BAD_LINE
Duration bad() {
  const Duration value = 25;
  return value;
}
#endif
