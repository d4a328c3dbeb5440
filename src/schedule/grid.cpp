#include "wetout/schedule/grid.hpp"

namespace wetout::schedule {
namespace {

using Steps = std::chrono::duration<std::int64_t, std::ratio<300>>;

std::int64_t floor_steps(std::chrono::seconds span, std::chrono::seconds step) {
  const std::int64_t whole = span / step;
  return span % step < std::chrono::seconds(0) ? whole - 1 : whole;
}

}  // namespace

time::Instant on_grid_after(time::Instant instant) { return std::chrono::ceil<Steps>(instant); }
time::Instant on_grid_before(time::Instant instant) { return std::chrono::floor<Steps>(instant); }

Slot Grid::not_before(time::Instant instant) const {
  return -static_cast<Slot>(floor_steps(origin - instant, step));
}
Slot Grid::not_after(time::Instant instant) const {
  return static_cast<Slot>(floor_steps(instant - origin, step));
}

}  // namespace wetout::schedule
