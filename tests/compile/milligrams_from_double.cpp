// Milligrams are counted, not measured; nearest() says that it rounds.
#include "wetout/units/milligrams.hpp"

using namespace wetout::units;

auto good() { return Milligrams(5); }
#ifdef WITH_BAD_LINE
auto bad() { return Milligrams(5.5); }
#endif
