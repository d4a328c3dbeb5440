// 20 °C + 20 °C has no meaning; a difference may be added.
#include "wetout/units/temperature.hpp"

using namespace wetout::units;

auto good() { return Temperature::celsius(20) + TempDelta::kelvin(5); }
#ifdef WITH_BAD_LINE
auto bad() { return Temperature::celsius(20) + Temperature::celsius(5); }
#endif
