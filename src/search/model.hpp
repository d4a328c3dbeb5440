// A problem made ready for the engines: every lag is "this value of one start is at most that value
// of another", what one start alone decides is folded into its domain.
#pragma once

#include <cstdint>
#include <deque>
#include <vector>

#include "times.hpp"
#include "wetout/search/objective.hpp"
#include "wetout/search/problem.hpp"

namespace wetout::search {

/// A slot for each start: table[s] + add, or s + add.
struct Fn {
  const Slot* table = nullptr;
  Slot add = 0;
  bool rising = true;  ///< never falls as the start grows
  Slot least = 0;      ///< of value - start, over the allowed starts
  Slot most = 0;

  [[nodiscard]] Slot operator()(Slot start) const {
    return table == nullptr ? start + add : table[start] + add;
  }
};

/// All of these must be chosen; ancestors included. Empty: always.
using Cond = std::vector<Option>;

/// Value f of operation i is at most value g of operation j.
struct Arc {
  int i = -1;
  int f = -1;
  int j = -1;
  int g = -1;
  Slot scale = 0;       ///< above 0: g - f is an item of the tight counts
  Cond cond = {};       ///< with those of both operations
  Cond without_i = {};  ///< cond less what operation i needs anyway
  Cond without_j = {};
};

/// Starts that go together.
struct Pairs {
  int a = -1;
  int b = -1;
  std::vector<Bits> of_a = {};  ///< for each start of a, starts of b
  std::vector<Bits> of_b = {};
  Cond cond = {};
  Cond without_a = {};
  Cond without_b = {};
};

/// A place kept from value `from` of operation a to value `to` of operation b. Places are resources
/// first, then rooms.
struct Use {
  int place = -1;
  int what = 0;  ///< amount of the resource, or mode of the room
  int a = -1;
  int from = -1;
  int b = -1;
  int to = -1;
  Cond cond = {};
};

struct Op {
  int id = -1;   ///< index in the problem
  int end = -1;  ///< value: end of the attended part
  Bits domain = {};
  Option when = {};
  Cond cond = {};
  std::vector<const std::uint8_t*> tightness = {};
  std::vector<int> arcs = {};
  std::vector<int> pairs = {};
  std::vector<int> uses = {};
  int end_set = -1;    ///< of LastEnd
  int visit_set = -1;  ///< of Visits
  Fn cost = {};        ///< of Sum
};

struct Place {
  bool room = false;
  int count = 0;  ///< of a resource
};

/// Where each term stands in the additive part of a value; -1: there is no such term.
struct Goal {
  int last_end = -1;
  int tight = -1;
  int visits = -1;
  int sum = -1;
  int width = 0;  ///< of the additive part
  bool starts = false;
  bool choices = false;
  int calendar = -1;  ///< of LastEnd
  int end_sets = 0;
  int levels = 0;
  int per_scale = 10;
  Slot gap = 0;
  int visit_sets = 0;
};

/// A place already kept by somebody else.
struct Taken {
  int place = -1;
  int what = 0;
  Slot from = 0;
  Slot to = 0;
};

struct Model {
  const Problem* problem = nullptr;
  Slot horizon = 0;
  std::vector<Fn> fn = {};
  std::vector<Op> ops = {};
  std::vector<Arc> arcs = {};
  std::vector<Pairs> pairs = {};
  std::vector<Use> uses = {};
  std::vector<Place> places = {};
  std::vector<Cond> group_cond = {};  ///< when each group of the problem exists
  std::vector<bool> group_here = {};  ///< something of this model depends on it
  std::vector<int> order = {};        ///< operations by id, for Starts
  Goal goal = {};
  std::deque<std::vector<Slot>> own_tables = {};

  Model() = default;
  Model(const Model&) = delete;
  Model& operator=(const Model&) = delete;
  Model(Model&&) = default;
  Model& operator=(Model&&) = default;
  ~Model() = default;

  [[nodiscard]] Slot time(int f, Slot start) const { return fn[at(f)](start); }
  [[nodiscard]] Slot end(int op, Slot start) const { return time(ops[at(op)].end, start); }
  [[nodiscard]] std::int64_t key(int op, Slot start) const {
    return end_key(*problem, goal.calendar, start, end(op, start));
  }
};

/// The model of the operations `subset` (indices in the problem, rising), with places taken by
/// others. Both the problem and the objective stay alive longer than the model.
Model compile(const Problem& problem, const Objective& objective, const std::vector<int>& subset,
              const std::vector<Taken>& taken);

/// All operations.
Model compile(const Problem& problem, const Objective& objective);

/// Every option that `when` needs, itself included.
Cond closure(const Problem& problem, Option when);

/// Index of a room among the places.
int place_of_room(const Problem& problem, int room);

}  // namespace wetout::search
