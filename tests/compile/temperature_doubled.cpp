// Twice 20 °C has no meaning; twice a difference has.
#include "wetout/units/temperature.hpp"

using namespace wetout::units;

auto good() { return TempDelta::kelvin(5) * 2.0; }
#ifdef WITH_BAD_LINE
auto bad() { return Temperature::celsius(20) * 2.0; }
#endif
