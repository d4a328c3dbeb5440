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

std::size_t first_column(const Layout& layout, int k) {
  return 1 + 2 * layout.windows.size() + layout.arcs.size() + 2 * at(k);
}

}  // namespace

bool KeptPlaces::step(const Slot* row, const Bucket& source, const Step& step, const Bucket& target,
                      Slot start) {
  const Slot end = model_.end(step.op, start);
  intervals_.clear();
  for (std::size_t k = 0; k < step.uses.size(); ++k) {
    const Use& use = model_.uses[at(step.uses[k])];
    const Kept kept = after(row, source, step, target, start, step.uses[k], step.use_column[k]);
    if (kept.none || !kept.begun) continue;
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

void KeptPlaces::columns(const Slot* row, const Bucket& source, const Step& step,
                         const Bucket& target, Slot start, std::vector<Slot>& columns) const {
  for (std::size_t k = 0; k < target.layout.uses.size(); ++k) {
    const Kept kept =
        after(row, source, step, target, start, target.layout.uses[k], step.use_from[k]);
    encode(kept, target.layout.open_place[k], columns[0],
           columns.data() + first_column(target.layout, static_cast<int>(k)));
  }
}

KeptPlaces::Kept KeptPlaces::decode(const Slot* row, const Bucket& source, int column) const {
  Kept kept;
  if (column < 0) return kept;
  const Use& use = model_.uses[at(source.layout.uses[at(column)])];
  const Slot* at_column = row + first_column(source.layout, column);
  const Slot from = at_column[0];
  const Slot to = at_column[1];
  kept.begun = source.resolved[at(use.a)];
  kept.ended = source.resolved[at(use.b)];
  if (source.layout.open_place[at(column)]) {
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

KeptPlaces::Kept KeptPlaces::after(const Slot* row, const Bucket& source, const Step& step,
                                   const Bucket& target, Slot start, int index, int column) const {
  const Use& use = model_.uses[at(index)];
  if (sets_.domains(step.set).holds(use.cond) != Truth::yes) return {};
  Kept kept = decode(row, source, column);
  const bool begins = use.a == step.op;
  const bool ends = use.b == step.op;
  if (!begins && !ends) return kept;
  // Its end is past, and it only begins.
  if (begins && !ends && source.resolved[at(use.b)] && kept.none) return {};
  kept.none = false;
  kept.begun = target.resolved[at(use.a)];
  kept.ended = target.resolved[at(use.b)];
  if (begins) kept.from = model_.time(use.from, start);
  if (ends) kept.to = model_.time(use.to, start);
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
