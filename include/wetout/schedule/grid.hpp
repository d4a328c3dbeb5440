// The grid of starts: five minutes, but where a test wants a coarse one.
#pragma once

#include <chrono>

#include "wetout/search/bits.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::schedule {

using search::Slot;

inline constexpr std::chrono::seconds grid_step{300};

/// Slot 0 is `origin`, with the usual step a whole multiple of it in UTC.
struct Grid {
  time::Instant origin;
  Slot slots = 0;
  std::chrono::seconds step = grid_step;

  [[nodiscard]] time::Instant at(Slot slot) const { return origin + slot * step; }
  [[nodiscard]] double step_s() const { return static_cast<double>(step.count()); }
  [[nodiscard]] double seconds(time::Instant instant) const {
    return static_cast<double>((instant - origin).count());
  }
  /// The first slot not before an instant, the last one not after it. Anywhere, also outside.
  [[nodiscard]] Slot not_before(time::Instant instant) const;
  [[nodiscard]] Slot not_after(time::Instant instant) const;
};

/// The first instant of a grid that is not before `instant`, and the last not after it.
time::Instant on_grid_after(time::Instant instant);
time::Instant on_grid_before(time::Instant instant);

}  // namespace wetout::schedule
