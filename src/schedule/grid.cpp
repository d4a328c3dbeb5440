#include "wetout/schedule/grid.hpp"

namespace wetout::schedule {
namespace {

using Steps = std::chrono::duration<std::int64_t, std::ratio<300>>;

}  // namespace

time::Instant on_grid_after(time::Instant instant) { return std::chrono::ceil<Steps>(instant); }
time::Instant on_grid_before(time::Instant instant) { return std::chrono::floor<Steps>(instant); }

Slot Grid::not_before(time::Instant instant) const {
  return static_cast<Slot>(std::chrono::ceil<Steps>(instant - origin).count());
}
Slot Grid::not_after(time::Instant instant) const {
  return static_cast<Slot>(std::chrono::floor<Steps>(instant - origin).count());
}

}  // namespace wetout::schedule
