// A time of day alone: the one nearest to now, on the side that makes sense.
#pragma once

#include <string_view>

#include "wetout/base/problem.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::time {

enum class Side {
  past,    ///< the latest that is not after now: what was done
  coming,  ///< the next that is not before now: what is planned
};

/// As read_instant; besides, "18:30" (or "8:30", "18:30:15") alone is the latest past or the next
/// coming one on the clock of `zone`, `now` itself included on both sides. On a day whose clock
/// shows that time twice, both of them on the right side of `now`, or never, the codes are
/// "time.twice" and "time.skipped" with both readings in the hint, as of a time with its date; the
/// day before or after is not taken instead.
base::Result<Instant> read_near(std::string_view text, const Zone& zone, Instant now, Side side);

}  // namespace wetout::time
