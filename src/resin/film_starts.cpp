// Many starts at once. Two films of one resin in one air never cross: the one that started later is
// behind for good. So the floors of a start are known without its own path wherever the path of a
// later start has already come to them; only where that does not decide is the range halved.
#include <algorithm>
#include <array>
#include <cmath>

#include "film_walk.hpp"
#include "wetout/base/check.hpp"
#include "wetout/resin/film.hpp"

namespace wetout::resin {
namespace {

constexpr std::size_t starts_a_pivot = 96;
// A bound must hold by this much, so that the errors of two paths do not matter.
constexpr double clear_kelvin = 1e-3;
constexpr double same_time_s = 0.5;

// A start whose own path was walked.
struct Pivot {
  std::size_t index = 0;
  std::vector<FilmPath> stretches;
  double full_cure_floor = 0.0;  // absolute time; infinite: later than any limit in question
  [[nodiscard]] const FilmPath* at(double time) const {
    const auto s = std::partition_point(stretches.begin(), stretches.end(),
                                        [&](const FilmPath& p) { return p.until() < time; });
    return s == stretches.end() || s->from() > time ? nullptr : &*s;
  }
};

class Starts {
 public:
  Starts(const FilmGround& ground, std::span<const double> starts, bool full_cure = true)
      : ground_(ground) {
    ClockPlaces places;
    clocks_.reserve(starts.size());
    floors_.reserve(starts.size());
    for (const double start : starts) {
      base::promise(clocks_.empty() || start >= clocks_.back().start, "starts rise");
      clocks_.push_back(clock_times(ground, start, places));
      floors_.push_back(floors_of(ground, clocks_.back()));
      floors_.back().full_cure.pending = floors_.back().full_cure.pending && full_cure;
    }
    own_paths(0, starts.size());
  }

  std::vector<FilmTimes> go() {
    if (clocks_.empty()) return {};
    Pivot early = pivot(0, std::min(starts_a_pivot, clocks_.size() - 1));
    while (early.index + 1 < clocks_.size()) {
      const std::size_t next = std::min(early.index + starts_a_pivot, clocks_.size() - 1);
      Pivot late = pivot(next, std::min(next + starts_a_pivot, clocks_.size() - 1));
      between(early, late);
      early = std::move(late);
    }
    std::vector<FilmTimes> times;
    times.reserve(clocks_.size());
    for (std::size_t i = 0; i < clocks_.size(); ++i) {
      times.push_back(together(ground_, clocks_[i], floors_[i]));
    }
    return times;
  }

 private:
  // Trim and handle come early on the path, at each start's own time: four paths side by side.
  void own_paths(std::size_t first, std::size_t last) {
    for (; first + 4 <= last; first += 4) {
      std::array<FilmPath, 4> paths{path_of(first), path_of(first + 1), path_of(first + 2),
                                    path_of(first + 3)};
      const auto pending = [&] {
        for (std::size_t l = 0; l < 4; ++l) {
          if (!early_pending(first + l)) return false;
        }
        return true;
      };
      while (pending()) {
        FilmPath::advance({&paths[0], &paths[1], &paths[2], &paths[3]});
        for (std::size_t l = 0; l < 4; ++l) look_early(first + l, paths[l]);
      }
      for (std::size_t l = 0; l < 4; ++l) finish_early(first + l, paths[l]);
    }
    for (; first < last; ++first) {
      FilmPath path = path_of(first);
      finish_early(first, path);
    }
  }

  FilmPath path_of(std::size_t index) const { return {ground_, clocks_[index].start}; }
  bool early_pending(std::size_t index) const {
    return floors_[index].trim.pending || floors_[index].handle.pending;
  }
  void look_early(std::size_t index, const FilmPath& path) {
    if (floors_[index].trim.pending) look_for(floors_[index].trim, path);
    if (floors_[index].handle.pending) look_for(floors_[index].handle, path);
  }
  void finish_early(std::size_t index, FilmPath& path) {
    while (early_pending(index)) {
      path.advance();
      look_early(index, path);
    }
  }

  // Floors of one start by its own path, which is kept. `horizon` is a later start up to whose
  // limit the floor of full cure is looked for.
  Pivot pivot(std::size_t index, std::size_t horizon) {
    Pivot pivot;
    pivot.index = index;
    Floors& floors = floors_[index];
    Floor whole = floors.full_cure;
    whole.from = clocks_[index].start;
    whole.limit = std::max(whole.limit, floors_[horizon].full_cure.limit);
    std::array<Floor, 2> both{floors.sandable, whole};
    // Starts in between ask for this path until they can be sanded.
    const double sand_until = clocks_[index].at[Milestone::sandable];
    FilmPath path(ground_, clocks_[index].start);
    walk(path, both, [&](const FilmPath& p) { pivot.stretches.push_back(p); });
    while (sand_until != never_ && path.until() < sand_until) {
      path.advance();
      pivot.stretches.push_back(path);
    }
    floors.sandable = both[0];
    pivot.full_cure_floor = both[1].found;
    settle_full_cure(index, both[1].found);
    return pivot;
  }

  void settle_full_cure(std::size_t index, double floor_at) {
    Floor& floor = floors_[index].full_cure;
    if (!floor.pending) return;
    floor.pending = false;
    const double at = std::max(floor_at, floor.from);
    floor.found = at <= floor.limit ? at : never_;
  }

  void between(const Pivot& early, const Pivot& late) {
    bool decided = true;
    for (std::size_t i = early.index + 1; i < late.index; ++i) {
      if (floors_[i].sandable.pending) decide_sandable(i, late);
      if (floors_[i].full_cure.pending) decide_full_cure(i, early, late);
      decided = decided && !floors_[i].sandable.pending && !floors_[i].full_cure.pending;
    }
    if (decided || late.index - early.index < 2) return;
    const std::size_t middle = (early.index + late.index) / 2;
    const Pivot half = pivot(middle, late.index);
    const double share = (clocks_[middle].start - clocks_[early.index].start) /
                         (clocks_[late.index].start - clocks_[early.index].start);
    const double straight =
        early.full_cure_floor + share * (late.full_cure_floor - early.full_cure_floor);
    if (std::abs(half.full_cure_floor - straight) < same_time_s) fill_in(early, late);
    between(early, half);
    between(half, late);
  }

  // Where the middle lies on the straight line between two starts, so do the others.
  void fill_in(const Pivot& early, const Pivot& late) {
    const double from = clocks_[early.index].start;
    const double slope =
        (late.full_cure_floor - early.full_cure_floor) / (clocks_[late.index].start - from);
    for (std::size_t i = early.index + 1; i < late.index; ++i) {
      settle_full_cure(i, early.full_cure_floor + slope * (clocks_[i].start - from));
    }
  }

  void decide_sandable(std::size_t index, const Pivot& late) {
    Floor& floor = floors_[index].sandable;
    const FilmPath* path = late.at(floor.from);
    if (path == nullptr) return;
    const double over = path->tg_kelvin(floor.from) - path->kelvin(floor.from) - floor.kelvin;
    if (over < clear_kelvin) return;
    floor.found = floor.from;
    floor.pending = false;
  }

  void decide_full_cure(std::size_t index, const Pivot& early, const Pivot& late) {
    const Floor& floor = floors_[index].full_cure;
    const bool reached = late.full_cure_floor + same_time_s < floor.from;
    const bool not_reached = early.full_cure_floor > floor.limit + same_time_s;
    const bool same = late.full_cure_floor - early.full_cure_floor < same_time_s;
    if (reached || not_reached || same) settle_full_cure(index, late.full_cure_floor);
  }

  static constexpr double never_ = std::numeric_limits<double>::infinity();
  const FilmGround& ground_;
  std::vector<ClockTimes> clocks_;
  std::vector<Floors> floors_;
};

}  // namespace

std::vector<FilmTimes> Film::times(std::span<const time::Instant> starts) const {
  std::vector<double> begin;
  begin.reserve(starts.size());
  for (const time::Instant start : starts) begin.push_back(seconds(start));
  return Starts(*ground_, begin).go();
}

std::vector<FilmTimes> Film::times(std::span<const time::Instant> starts,
                                   const std::vector<bool>& followed) const {
  base::promise(followed.size() == starts.size(), "every start is followed or not");
  std::vector<FilmTimes> times;
  times.reserve(starts.size());
  ClockPlaces places;
  while (times.size() < starts.size()) {
    const std::size_t first = times.size();
    if (!followed[first]) {
      times.push_back(
          together(*ground_, clock_times(*ground_, seconds(starts[first]), places), Floors{}));
      continue;
    }
    // Starts far apart have little in common: each run by itself.
    std::vector<double> run;
    for (std::size_t i = first; i < starts.size() && followed[i]; ++i) {
      run.push_back(seconds(starts[i]));
    }
    for (FilmTimes& one : Starts(*ground_, run, false).go()) times.push_back(std::move(one));
  }
  return times;
}

}  // namespace wetout::resin
