#include "wetout/base/check.hpp"

#include <algorithm>
#include <set>
#include <string>

#include "times.hpp"
#include "wetout/search/objective.hpp"
#include "wetout/search/problem.hpp"

namespace wetout::search {
namespace {

constexpr Slot largest = Slot{1} << 28;

class Checker {
 public:
  explicit Checker(const Problem& problem) : problem_(problem) {}

  void run() {
    need(problem_.horizon > 0 && problem_.horizon < largest, "horizon");
    groups();
    calendars();
    for (std::size_t i = 0; i < problem_.ops.size(); ++i) operation(i);
    for (const Lag& lag : problem_.lags) {
      ref(lag.from, "lag");
      ref(lag.to, "lag");
      when(lag.when, "lag");
      need(lag.scale >= 0, "scale of a lag");
      need(lag.min || lag.max, "lag without minimum and maximum");
      for (const auto* map : {&lag.min, &lag.max}) {
        if (*map) size(**map, "lag");
      }
    }
    for (const Relation& relation : problem_.relations) {
      ref({relation.a, at_start}, "relation");
      ref({relation.b, at_start}, "relation");
      when(relation.when, "relation");
      need(static_cast<bool>(relation.allowed), "relation without a function");
    }
    for (const Resource& resource : problem_.resources) {
      need(resource.count >= 0, "count of resource " + resource.id);
      calendar(resource.calendar, "resource " + resource.id);
      for (const Away& away : resource.away) {
        need(away.amount > 0 && away.from < away.until, "absence of resource " + resource.id);
      }
    }
    for (const Hold& hold : problem_.holds) {
      need(hold.resource >= 0 && at(hold.resource) < problem_.resources.size(),
           "resource of a hold");
      need(hold.amount >= 0, "amount of a hold");
      ref(hold.from, "hold");
      ref(hold.to, "hold");
      when(hold.when, "hold");
    }
    for (const RoomMode& mode : problem_.modes) {
      need(mode.room >= 0 && mode.mode >= 0, "room mode");
      need(mode.after >= 0 && mode.after < largest, "time after a room mode");
      ref(mode.from, "room mode");
      ref(mode.to, "room mode");
      when(mode.when, "room mode");
    }
  }

 private:
  static void need(bool holds, const std::string& what) {
    base::promise(holds, "search: malformed " + what);
  }

  void groups() const {
    for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
      const Group& group = problem_.groups[g];
      need(group.options > 0 && group.options <= 32, "options of group " + group.id);
      when(group.when, "group " + group.id);
      need(group.when.group < static_cast<int>(g), "order of group " + group.id);
    }
  }

  void calendars() const {
    for (const Calendar& calendar : problem_.calendars) {
      Slot last = -largest;
      for (const auto& [from, to] : calendar.spans) {
        need(from > last && to > from && to < largest, "calendar");
        last = to;
      }
    }
  }

  void operation(std::size_t i) const {
    const Operation& op = problem_.ops[i];
    const std::string name = "operation " + op.id;
    need(op.allowed.size() == 0 || op.allowed.size() == problem_.horizon, name + ", allowed");
    calendar(op.calendar, name);
    when(op.when, name);
    size(op.attended, name + ", attended end");
    not_before_start(op, op.attended, name + ", attended end");
    for (const Event& event : op.events) {
      size(event.at, name + ", event " + event.name);
      not_before_start(op, event.at, name + ", event " + event.name);
    }
    for (const Tightness& item : op.tightness) {
      need(item.level.size() == at(problem_.horizon), name + ", tightness");
    }
  }

  void not_before_start(const Operation& op, const Map& map, const std::string& what) const {
    if (const auto* offset = std::get_if<Slot>(&map)) {
      need(*offset >= 0, what);
      return;
    }
    for (Slot s = 0; s < problem_.horizon; ++s) {
      if (op.allowed.size() == 0 || op.allowed.test(s)) need(value(map, s) >= s, what);
    }
  }

  void size(const Map& map, const std::string& what) const {
    if (const auto* offset = std::get_if<Slot>(&map)) {
      need(*offset > -largest && *offset < largest, what);
      return;
    }
    const auto& table = std::get<Table>(map).at;
    need(table.size() == at(problem_.horizon), what + ", size of the table");
    need(
        std::all_of(table.begin(), table.end(), [](Slot s) { return s > -largest && s < largest; }),
        what + ", magnitude");
  }

  void ref(EventRef event, const std::string& what) const {
    need(event.op >= 0 && at(event.op) < problem_.ops.size(), "operation of a " + what);
    const Operation& op = problem_.ops[at(event.op)];
    need(event.event == at_start || event.event == at_end ||
             (event.event >= 0 && at(event.event) < op.events.size()),
         "event of a " + what + " of operation " + op.id);
  }

  void when(Option option, const std::string& what) const {
    if (option.group < 0) return;
    need(at(option.group) < problem_.groups.size() && option.option >= 0 &&
             option.option < problem_.groups[at(option.group)].options,
         "option of " + what);
  }

  void calendar(int index, const std::string& what) const {
    need(index < static_cast<int>(problem_.calendars.size()), "calendar of " + what);
  }

  const Problem& problem_;
};

void check_sets(const std::vector<std::vector<int>>& sets, const Problem& problem) {
  std::set<int> seen;
  for (const auto& set : sets) {
    for (const int op : set) {
      base::promise(op >= 0 && at(op) < problem.ops.size() && seen.insert(op).second,
                    "search: malformed set of an objective");
    }
  }
}

}  // namespace

void check(const Problem& problem) { Checker(problem).run(); }

void check(const Objective& objective, const Problem& problem) {
  int rank = 0;
  std::set<std::size_t> kinds;
  for (const Term& term : objective.terms) {
    const int now =
        std::holds_alternative<Choices>(term) ? 2 : (std::holds_alternative<Starts>(term) ? 1 : 0);
    base::promise(now > rank || (now == 0 && rank == 0),
                  "search: only Choices may follow Starts, nothing may follow Choices");
    rank = now;
    base::promise(kinds.insert(term.index()).second, "search: a term of an objective twice");
    if (const auto* ends = std::get_if<LastEnd>(&term)) {
      check_sets(ends->sets, problem);
      base::promise(ends->calendar < static_cast<int>(problem.calendars.size()),
                    "search: malformed calendar of an objective");
    } else if (const auto* counts = std::get_if<TightCounts>(&term)) {
      base::promise(counts->levels > 0 && counts->levels < not_tight && counts->per_scale > 0,
                    "search: malformed levels of an objective");
    } else if (const auto* visits = std::get_if<Visits>(&term)) {
      check_sets(visits->sets, problem);
      base::promise(visits->gap > 0, "search: malformed gap of an objective");
    } else if (const auto* sum = std::get_if<Sum>(&term)) {
      base::promise(sum->cost.empty() || sum->cost.size() == problem.ops.size(),
                    "search: malformed cost of an objective");
      for (const Map& map : sum->cost) {
        const auto* table = std::get_if<Table>(&map);
        base::promise(table == nullptr || table->at.size() == at(problem.horizon),
                      "search: malformed cost of an objective");
      }
    }
  }
}

}  // namespace wetout::search
