#include "film_walk.hpp"

#include <algorithm>
#include <cmath>

#include "root.hpp"

namespace wetout::resin {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();

double latest_of(const ClockTimes& clock) {
  double latest = clock.start;
  for (const Milestone m : milestones) {
    if (clock.at[m] != never) latest = std::max(latest, clock.at[m]);
  }
  return latest;
}

}  // namespace

ClockTimes clock_times(const FilmGround& ground, double start, ClockPlaces& places) {
  ClockTimes times;
  times.start = start;
  const double age = ground.clock.age(start, places.start);
  for (const Milestone m : milestones) {
    const auto& own = ground.cure.ages[m];
    times.at[m] = own ? ground.clock.when(age + units::in_seconds(*own), places.at[m]) : never;
  }
  return times;
}

Floors floors_of(const FilmGround& ground, const ClockTimes& clock) {
  const Cure& cure = ground.cure;
  Floors floors;
  // Neither is looked for longer than all else together.
  const double long_enough = clock.start + cure.patience * (latest_of(clock) - clock.start);
  const auto late = [&](double at) { return clock.start + cure.patience * (at - clock.start); };
  const auto above = [&](double kelvin, double from, double limit, bool wanted) {
    return Floor{Floor::Kind::above_air, kelvin, from, limit, never, wanted};
  };
  floors.trim =
      above(-cure.trim_below_kelvin, clock.start, long_enough, !cure.ages[Milestone::trim_until]);
  floors.handle = above(0.0, clock.start, long_enough, !cure.ages[Milestone::handle]);
  const double sand = clock.at[Milestone::sandable];
  floors.sandable = above(cure.sandable_above_kelvin, sand, late(sand), sand != never);
  const double full = clock.at[Milestone::full_cure];
  floors.full_cure = {Floor::Kind::fixed,
                      cure.full_cure_tg.value_or(units::Temperature::kelvin(0)).in_kelvin(),
                      full,
                      late(full),
                      never,
                      full != never && cure.full_cure_tg.has_value()};
  return floors;
}

void look_for(Floor& floor, const FilmPath& path) {
  const double a = std::max(path.from(), floor.from);
  const double b = std::min(path.until(), floor.limit);
  const auto over = [&](double t) {
    const bool fixed = floor.kind == Floor::Kind::fixed;
    return path.tg_kelvin(t) - floor.kelvin - (fixed ? 0.0 : path.kelvin(t));
  };
  const auto at_end = [&] {
    const bool known = b == path.until() && floor.kind == Floor::Kind::above_air;
    return known ? path.above_air_at_end() - floor.kelvin : over(b);
  };
  const auto found = [&](double at) {
    floor.found = at;
    floor.pending = false;
  };
  if (a <= b) {
    // Where the stretch before ended below it, its beginning need not be looked at.
    const bool first_look = floor.from >= path.from();
    if (first_look && over(a) >= 0.0) return found(a);
    const double end = at_end();
    if (end >= 0.0) {
      const double start = over(a);
      return found(start >= 0.0 ? a : std::clamp(root(a, start, b, end, 1e-7, over), a, b));
    }
  }
  if (path.until() >= floor.limit) floor.pending = false;
}

FilmTimes together(const FilmGround& ground, const ClockTimes& clock, const Floors& floors) {
  const Cure& cure = ground.cure;
  FilmTimes times;
  PerMilestone<double> at = clock.at;
  const auto after = [&](Milestone m, double other) { at[m] = std::max(at[m], other); };
  const auto printed = [&](Milestone m) { return cure.ages[m].has_value(); };
  using enum Milestone;

  if (!printed(trim_until)) at[trim_until] = floors.trim.found;
  if (printed(gel)) after(trim_until, at[gel]);
  if (!printed(handle)) at[handle] = floors.handle.found;
  if (printed(tack_free)) after(handle, at[tack_free]);
  if (printed(recoat_until) && cure.recoat_longest) {
    const double longest = clock.start + units::in_seconds(*cure.recoat_longest);
    at[recoat_until] = std::min(
        at[recoat_until], printed(recoat_from) ? std::max(longest, at[recoat_from]) : longest);
  }
  if (printed(sandable)) after(sandable, floors.sandable.found);
  if (printed(full_cure)) {
    if (cure.full_cure_tg) after(full_cure, floors.full_cure.found);
    if (printed(sandable)) after(full_cure, at[sandable]);
  }
  for (const Milestone m : milestones) {
    if (!printed(m) && m != trim_until && m != handle) continue;
    times[m] = MilestoneTime{at[m] != never, at[m] != never ? at[m] - clock.start : 0.0};
  }
  return times;
}

}  // namespace wetout::resin
