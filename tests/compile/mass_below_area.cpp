// A mass is neither more nor less than an area.
#include "wetout/units/quantity.hpp"

using namespace wetout::units;

auto good() { return grams(1) < grams(2); }
#ifdef WITH_BAD_LINE
auto bad() { return grams(1) < square_metres(2); }
#endif
