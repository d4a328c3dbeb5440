// Exact and inexact masses are not mixed by accident.
#include "wetout/units/milligrams.hpp"

using namespace wetout::units;

auto good() { return Milligrams(5) + Milligrams::nearest(grams(1)); }
#ifdef WITH_BAD_LINE
auto bad() { return Milligrams(5) + grams(1); }
#endif
