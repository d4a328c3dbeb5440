#include "label_step.hpp"

#include <algorithm>

namespace wetout::search {
namespace {

std::size_t window_column(std::size_t k) { return 1 + 2 * k; }
std::size_t arc_column(const Layout& layout, std::size_t k) {
  return 1 + 2 * layout.windows.size() + k;
}
std::size_t pairs_column(const Layout& layout, std::size_t k) { return at(layout.compared) + k; }

const Slot* row_of(const Bucket& bucket, int row) {
  return bucket.rows.data() + at(row) * at(bucket.layout.stride);
}

}  // namespace

Stepper::Stepper(const Model& model, ChoiceSets& sets, const Domains& root)
    : model_(model), sets_(sets), places_(model) {
  const Propagator propagator(model);
  for (const Arc& arc : model.arcs) {
    least_g_.push_back(root.empty(arc.j) ? 0 : propagator.least(root, arc.j, arc.g));
    greatest_f_.push_back(root.empty(arc.i) ? 0 : propagator.greatest(root, arc.i, arc.f));
  }
}

std::pair<Slot, Slot> Stepper::range(const Bucket& source, int row, const Step& step) const {
  const Slot* columns = row_of(source, row);
  const Domains& domains = sets_.domains(step.set);
  Slot first = std::max(columns[0], domains.lo[at(step.op)]);
  Slot last = std::min(domains.hi[at(step.op)], step.latest_end - 1);
  for (std::size_t k = 0; k < source.layout.windows.size(); ++k) {
    const int op = source.layout.windows[k];
    const Slot latest = -columns[window_column(k) + 1];
    if (op == step.op) {
      first = std::max(first, columns[window_column(k)]);
      last = std::min(last, latest);
    } else if (domains.holds(model_.ops[at(op)].cond) == Truth::yes) {
      last = std::min(last, latest - 1);
    }
  }
  return {first, last};
}

bool Stepper::make(const Bucket& source, int row, const Step& step, const Bucket& target,
                   Slot start, std::vector<Slot>& columns, Value& cost) {
  const Slot* from = row_of(source, row);
  if (model_.end(step.op, start) > step.latest_end) return false;
  if (!own_rules(from, source, step, start)) return false;
  columns.resize(at(target.layout.stride));
  columns[0] = model_.end(step.op, start);
  if (!windows(from, step, target, start, columns)) return false;
  if (!places_.step(from, step, start)) return false;
  arcs(from, source, step, target, start, columns);
  places_.columns(step, target.layout, columns);
  for (std::size_t k = 0; k < target.layout.pairs.size(); ++k) {
    const int old = step.pairs_from[k];
    columns[pairs_column(target.layout, k)] =
        old < 0 ? start : from[pairs_column(source.layout, at(old))];
  }
  const auto width = at(model_.goal.width);
  cost.assign(source.costs.begin() + static_cast<std::ptrdiff_t>(at(row) * width),
              source.costs.begin() + static_cast<std::ptrdiff_t>((at(row) + 1) * width));
  add_cost(from, source, step, start, cost);
  return true;
}

bool Stepper::own_rules(const Slot* row, const Bucket& source, const Step& step, Slot start) const {
  for (const int k : step.own_arcs) {
    const OpenArc& open = source.layout.arcs[at(k)];
    const Arc& arc = model_.arcs[at(open.arc)];
    const Slot known = row[arc_column(source.layout, at(k))];
    if (open.i_placed ? known > model_.time(arc.g, start) : model_.time(arc.f, start) > -known) {
      return false;
    }
  }
  for (const int k : step.own_pairs) {
    const Pairs& pairs = model_.pairs[at(source.layout.pairs[at(k)])];
    const Slot other = row[pairs_column(source.layout, at(k))];
    const auto& rows = pairs.a == step.op ? pairs.of_b : pairs.of_a;
    if (!rows[at(other)].test(start)) return false;
  }
  return true;
}

bool Stepper::windows(const Slot* row, const Step& step, const Bucket& target, Slot start,
                      std::vector<Slot>& columns) const {
  const Domains& domains = sets_.domains(step.set);
  const Slot time = columns[0];
  for (std::size_t k = 0; k < target.layout.windows.size(); ++k) {
    const int op = target.layout.windows[k];
    const Bits& starts = domains.starts[at(op)];
    const int old = step.window_from[k];
    Slot first = old < 0 ? domains.lo[at(op)] : row[window_column(at(old))];
    Slot last = old < 0 ? domains.hi[at(op)] : -row[window_column(at(old)) + 1];
    first = std::max(first, time);
    for (const int a : step.window_arcs[k]) {
      const Arc& arc = model_.arcs[at(a)];
      if (arc.j == op) {
        const Slot least = model_.time(arc.f, start);
        const Fn& g = model_.fn[at(arc.g)];
        if (g.table == nullptr) {
          first = std::max(first, least - g.add);
        } else {
          Slot s = starts.next(first);
          while (s >= 0 && g(s) < least) s = starts.next(s + 1);
          first = s < 0 ? no_start : s;
        }
      } else {
        const Slot most = model_.time(arc.g, start);
        const Fn& f = model_.fn[at(arc.f)];
        if (f.table == nullptr) {
          last = std::min(last, most - f.add);
        } else {
          Slot s = starts.previous(last);
          while (s >= 0 && f(s) > most) s = starts.previous(s - 1);
          last = s;
        }
      }
    }
    first = starts.next(first);
    last = starts.previous(last);
    if (first < 0 || last < first) {
      if (domains.holds(model_.ops[at(op)].cond) == Truth::yes) return false;
      first = no_start;
      last = -no_start;
    }
    columns[window_column(k)] = first;
    columns[window_column(k) + 1] = -last;
  }
  return true;
}

void Stepper::arcs(const Slot* row, const Bucket& source, const Step& step, const Bucket& target,
                   Slot start, std::vector<Slot>& columns) const {
  for (std::size_t k = 0; k < target.layout.arcs.size(); ++k) {
    const OpenArc& open = target.layout.arcs[k];
    const Arc& arc = model_.arcs[at(open.arc)];
    const int old = step.arc_from[k];
    Slot known = 0;
    if (old >= 0) {
      known = row[arc_column(source.layout, at(old))];
    } else {
      known = open.i_placed ? model_.time(arc.f, start) : -model_.time(arc.g, start);
    }
    // Beyond what can bind or count, more room is no better.
    Slot spare = 0;
    if (arc.scale > 0 && model_.goal.tight >= 0) {
      spare = (arc.scale * model_.goal.levels) / model_.goal.per_scale + 1;
    }
    const int op = open.i_placed ? arc.j : arc.i;
    Slot least = open.i_placed ? least_g_[at(open.arc)] : -greatest_f_[at(open.arc)];
    const Fn& fn = model_.fn[at(open.i_placed ? arc.g : arc.f)];
    if (fn.rising) {
      for (std::size_t w = 0; w < target.layout.windows.size(); ++w) {
        if (target.layout.windows[w] != op) continue;
        const Slot edge =
            open.i_placed ? columns[window_column(w)] : -columns[window_column(w) + 1];
        if (edge >= 0 && edge < model_.horizon) least = open.i_placed ? fn(edge) : -fn(edge);
      }
    }
    columns[arc_column(target.layout, k)] = std::max(known, least - spare);
  }
}

void Stepper::add_cost(const Slot* row, const Bucket& source, const Step& step, Slot start,
                       Value& cost) const {
  const Goal& goal = model_.goal;
  const Op& op = model_.ops[at(step.op)];
  if (goal.last_end >= 0 && op.end_set >= 0) {
    auto& last = cost[at(goal.last_end)];
    last = std::max(last, model_.key(step.op, start));
  }
  if (goal.tight >= 0) {
    const auto count = [&](int level) {
      if (level < goal.levels) ++cost[at(goal.tight + level)];
    };
    for (const auto* level : op.tightness) count(level[start]);
    for (const int k : step.own_arcs) {
      const OpenArc& open = source.layout.arcs[at(k)];
      const Arc& arc = model_.arcs[at(open.arc)];
      if (arc.scale <= 0) continue;
      const Slot known = row[arc_column(source.layout, at(k))];
      const Slot left =
          open.i_placed ? model_.time(arc.g, start) - known : -known - model_.time(arc.f, start);
      count(level_of(left, arc.scale, goal.per_scale));
    }
    for (const int a : step.self_arcs) {
      const Arc& arc = model_.arcs[at(a)];
      count(level_of(model_.time(arc.g, start) - model_.time(arc.f, start), arc.scale,
                     goal.per_scale));
    }
  }
  if (goal.visits >= 0) {
    auto& visits = cost[at(goal.visits)];
    if (visits == 0 || start - row[0] >= goal.gap) ++visits;
  }
  if (goal.sum >= 0) cost[at(goal.sum)] += op.cost(start);
}

}  // namespace wetout::search
