// An area and a mass have no sum.
#include "wetout/units/quantity.hpp"

using namespace wetout::units;

auto good() { return square_metres(1) + square_metres(2); }
#ifdef WITH_BAD_LINE
auto bad() { return square_metres(1) + grams(2); }
#endif
