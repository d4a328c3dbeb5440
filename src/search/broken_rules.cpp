#include <algorithm>
#include <string>

#include "times.hpp"
#include "wetout/search/objective.hpp"

namespace wetout::search {
namespace {

/// Something kept from one slot to another.
struct Kept {
  int where;  ///< resource or room
  int what;   ///< amount or mode
  Slot from;
  Slot to;
  std::string by;
};

class Rules {
 public:
  Rules(const Problem& problem, const Schedule& schedule)
      : problem_(problem), schedule_(schedule) {}

  std::vector<std::string> run() {
    if (schedule_.start.size() != problem_.ops.size() ||
        schedule_.choice.size() != problem_.groups.size()) {
      return {"a start or a choice is missing"};
    }
    choices();
    operations();
    if (!broken_.empty()) return broken_;
    lags();
    relations();
    holds();
    modes();
    return broken_;
  }

 private:
  void choices() {
    for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
      const Group& group = problem_.groups[g];
      const int choice = schedule_.choice[g];
      const bool exists = chosen(schedule_, group.when);
      if (exists ? choice < 0 || choice >= group.options : choice != -1) {
        broken_.push_back("choice of group " + group.id);
      }
    }
  }

  void operations() {
    for (std::size_t i = 0; i < problem_.ops.size(); ++i) {
      const Operation& op = problem_.ops[i];
      const auto start = schedule_.start[i];
      if (start.has_value() != chosen(schedule_, op.when)) {
        broken_.push_back(op.id + " takes place against the choices");
        continue;
      }
      if (!start) continue;
      if (*start < 0 || *start >= problem_.horizon ||
          (op.allowed.size() != 0 && !op.allowed.test(*start))) {
        broken_.push_back(op.id + " starts where it may not");
        continue;
      }
      const Slot end = value(op.attended, *start);
      if (!in_span(op.calendar, *start, std::max(end, *start + 1))) {
        broken_.push_back(op.id + " leaves its calendar");
      }
    }
  }

  void lags() {
    for (const Lag& lag : problem_.lags) {
      if (!exists(lag.when, lag.from, lag.to)) continue;
      const Slot to = time(lag.to);
      if (lag.min && to < bound(lag, *lag.min)) broken_.push_back(between(lag) + " too soon");
      if (lag.max && to > bound(lag, *lag.max)) broken_.push_back(between(lag) + " too late");
    }
  }

  void relations() {
    for (const Relation& relation : problem_.relations) {
      if (!exists(relation.when, {relation.a}, {relation.b})) continue;
      const Slot a = *schedule_.start[at(relation.a)];
      if (!relation.allowed(a).test(*schedule_.start[at(relation.b)])) {
        broken_.push_back(id(relation.a) + " and " + id(relation.b) + " do not go together");
      }
    }
  }

  void holds() {
    std::vector<Kept> kept;
    for (const Hold& hold : problem_.holds) {
      if (!exists(hold.when, hold.from, hold.to)) continue;
      const Kept k{hold.resource, hold.amount, time(hold.from), time(hold.to), id(hold.from.op)};
      if (k.to <= k.from) continue;
      const Resource& resource = problem_.resources[at(k.where)];
      if (!in_span(resource.calendar, k.from, k.to)) {
        broken_.push_back(k.by + " holds " + resource.id + " outside its calendar");
      }
      kept.push_back(k);
    }
    for (const Kept& now : kept) {
      int used = 0;
      for (const Kept& k : kept) {
        if (k.where == now.where && k.from <= now.from && now.from < k.to) used += k.what;
      }
      const Resource& resource = problem_.resources[at(now.where)];
      if (used > resource.count || away_too(now, kept))
        broken_.push_back(now.by + " finds no free " + resource.id);
    }
  }

  // More held than is there when some go away in the middle.
  [[nodiscard]] bool away_too(const Kept& now, const std::vector<Kept>& kept) const {
    const Resource& resource = problem_.resources[at(now.where)];
    const auto held = [&](Slot slot) {
      int used = 0;
      for (const Kept& k : kept) {
        if (k.where == now.where && k.from <= slot && slot < k.to) used += k.what;
      }
      for (const Away& away : resource.away) {
        if (away.from <= slot && slot < away.until) used += away.amount;
      }
      return used;
    };
    for (const Away& away : resource.away) {
      const Slot from = std::max(now.from, away.from);
      if (from < std::min(now.to, away.until) && held(from) > resource.count) return true;
    }
    return false;
  }

  void modes() {
    std::vector<Kept> kept;
    for (const RoomMode& mode : problem_.modes) {
      if (!exists(mode.when, mode.from, mode.to)) continue;
      const Kept k{mode.room, mode.mode, time(mode.from), time(mode.to) + mode.after,
                   id(mode.from.op)};
      if (k.to > k.from) kept.push_back(k);
    }
    for (const Kept& a : kept) {
      for (const Kept& b : kept) {
        if (a.where == b.where && a.what < b.what && a.from < b.to && b.from < a.to) {
          broken_.push_back(a.by + " and " + b.by + " need the room in different modes");
        }
      }
    }
  }

  [[nodiscard]] bool in_span(int calendar, Slot from, Slot to) const {
    if (calendar < 0) return true;
    const auto& spans = problem_.calendars[at(calendar)].spans;
    return std::any_of(spans.begin(), spans.end(),
                       [&](const auto& span) { return span.first <= from && to <= span.second; });
  }

  [[nodiscard]] bool exists(Option when, EventRef a, EventRef b) const {
    return schedule_.start[at(a.op)] && schedule_.start[at(b.op)] && chosen(schedule_, when);
  }

  [[nodiscard]] Slot time(EventRef ref) const {
    return time_of(problem_, ref, *schedule_.start[at(ref.op)]);
  }

  [[nodiscard]] Slot bound(const Lag& lag, const Map& map) const {
    if (const auto* offset = std::get_if<Slot>(&map)) return time(lag.from) + *offset;
    return value(map, *schedule_.start[at(lag.from.op)]);
  }

  [[nodiscard]] const std::string& id(int op) const { return problem_.ops[at(op)].id; }
  [[nodiscard]] std::string between(const Lag& lag) const {
    return id(lag.to.op) + " after " + id(lag.from.op);
  }

  const Problem& problem_;
  const Schedule& schedule_;
  std::vector<std::string> broken_;
};

}  // namespace

std::vector<std::string> broken_rules(const Problem& problem, const Schedule& schedule) {
  return Rules(problem, schedule).run();
}

}  // namespace wetout::search
