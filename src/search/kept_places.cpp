#include "kept_places.hpp"

#include <algorithm>

namespace wetout::search {
namespace {

constexpr Slot large = Slot{1} << 30;
/// On a settled place: kept already, or not at all.
constexpr Slot already = large;
/// On a place with something open: kept until an operation that is not done.
constexpr Slot still_open = large;
/// On a place with something open: nothing that matters.
constexpr Slot nothing = -large;

}  // namespace

bool KeptPlaces::step(const Slot* row, const Step& step, Slot start) {
  const Slot end = model_.end(step.op, start);
  intervals_.clear();
  kept_.clear();
  for (const UseStep& one : step.uses) {
    const Kept kept = after(row, one, start);
    kept_.push_back(kept);
    if (kept.none || !kept.begun) continue;
    const Use& use = model_.uses[at(one.use)];
    // What is open goes on at least until this operation ends.
    const Slot to = kept.ended ? kept.to : end;
    if (to > kept.from) intervals_.push_back({use.place, use.what, kept.from, to});
  }
  return fits();
}

bool KeptPlaces::fits() const {
  for (const Interval& a : intervals_) {
    const Place& place = model_.places[at(a.place)];
    int used = 0;
    for (const Interval& b : intervals_) {
      if (a.place != b.place) continue;
      if (place.room) {
        if (a.what != b.what && a.from < b.to && b.from < a.to) return false;
      } else if (b.from <= a.from && a.from < b.to) {
        used += b.what;
      }
    }
    if (!place.room && used > place.count) return false;
  }
  return true;
}

void KeptPlaces::columns(const Step& step, const Layout& target, std::vector<Slot>& columns) const {
  for (std::size_t k = 0; k < target.uses.size(); ++k) {
    const int from = step.use_from[k];
    encode(from < 0 ? Kept{} : kept_[at(from)], target.open_place[k], columns[0],
           columns.data() + target.use_column(static_cast<int>(k)));
  }
}

KeptPlaces::Kept KeptPlaces::decode(const Slot* row, const UseStep& use) {
  Kept kept;
  if (use.column < 0) return kept;
  const Slot from = row[use.column];
  const Slot to = row[use.column + 1];
  kept.begun = use.was_begun;
  kept.ended = use.was_ended;
  if (use.was_open) {
    kept.none = from == nothing && to == nothing;
    kept.from = -from;
    kept.to = to;
  } else {
    // Cut at the label's time: what is opened from now on begins later than that.
    kept.from = from == already ? row[0] : -from;
    kept.to = to;
    kept.none = kept.begun && (!kept.ended || kept.to <= kept.from);
  }
  return kept;
}

KeptPlaces::Kept KeptPlaces::after(const Slot* row, const UseStep& use, Slot start) const {
  Kept kept = decode(row, use);
  if (!use.begins && !use.ends) return kept;
  // Its end is past, and it only begins.
  if (use.begins && !use.ends && use.was_ended && kept.none) return {};
  kept.none = false;
  kept.begun = use.begun;
  kept.ended = use.ended;
  if (use.begins) kept.from = model_.time(model_.uses[at(use.use)].from, start);
  if (use.ends) kept.to = model_.time(model_.uses[at(use.use)].to, start);
  if (kept.begun && kept.ended && kept.to <= kept.from) return {};
  return kept;
}

void KeptPlaces::encode(const Kept& kept, bool open_place, Slot time, Slot* columns) {
  if (open_place) {
    const bool past = kept.ended && kept.to <= time;
    columns[0] = kept.none || past || !kept.begun ? nothing : -kept.from;
    columns[1] = kept.none || past ? nothing : (kept.ended ? kept.to : still_open);
    return;
  }
  const bool later = !kept.none && kept.begun && kept.from > time;
  columns[0] = later ? -kept.from : already;
  columns[1] = kept.none || !kept.ended ? time : std::max(kept.to, time);
}

}  // namespace wetout::search
