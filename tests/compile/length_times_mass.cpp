// A product that has no name here is a slip.
#include "wetout/units/quantity.hpp"

using namespace wetout::units;

auto good() { return metres(1) * metres(2); }
#ifdef WITH_BAD_LINE
auto bad() { return metres(1) * grams(2); }
#endif
