// What a clock on the wall shows is an instant only together with a zone.
#include "wetout/time/zone.hpp"

using namespace wetout::time;

WallReading good(WallTime wall, const Zone& zone) { return zone.read(wall); }
#ifdef WITH_BAD_LINE
Instant bad(WallTime wall) {
  const Instant instant = wall;
  return instant;
}
#endif
