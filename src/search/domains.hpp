// Which starts and options are still open, and what follows from one of them going away.
#pragma once

#include <cstdint>
#include <limits>
#include <vector>

#include "model.hpp"

namespace wetout::search {

inline constexpr int open_choice = -1;
inline constexpr int absent_choice = -2;  ///< the group does not exist

enum class Truth { no, maybe, yes };

struct Domains {
  std::vector<Bits> starts = {};
  std::vector<Slot> lo = {};  ///< first open start; above hi when there is none
  std::vector<Slot> hi = {};
  std::vector<std::uint32_t> options = {};  ///< per group, a bit per open option
  std::vector<int> choice = {};             ///< per group of the problem

  [[nodiscard]] bool empty(int op) const { return lo[at(op)] > hi[at(op)]; }
  [[nodiscard]] Truth holds(const Cond& cond) const {
    Truth truth = Truth::yes;
    for (const Option& o : cond) {
      const int c = choice[at(o.group)];
      if (c == o.option) continue;
      if (c != open_choice || (options[at(o.group)] >> static_cast<unsigned>(o.option) & 1U) == 0) {
        return Truth::no;
      }
      truth = Truth::maybe;
    }
    return truth;
  }
};

/// An arc added while searching: value f of i, plus `gap`, is at most value g of j. Both take
/// place.
struct Order {
  int i = -1;
  int f = -1;
  int j = -1;
  int g = -1;
  Slot gap = 0;
  friend bool operator==(const Order&, const Order&) = default;
};

/// Arc consistency. Every function returns false when it proves that nothing fits; the domains are
/// then of no use.
class Propagator {
 public:
  explicit Propagator(const Model& model);

  /// Everything open, then consistent.
  bool init(Domains& domains);
  /// Consistent again after `changed` lost starts (empty: look at everything).
  bool run(Domains& domains, const std::vector<int>& changed,
           const std::vector<Order>& orders = {});
  bool choose(Domains& domains, int group, int option, const std::vector<Order>& orders = {});
  bool forbid(Domains& domains, int group, int option, const std::vector<Order>& orders = {});
  /// Counted operations end with a LastEnd of at most `key`.
  bool limit_last(Domains& domains, std::int64_t key);
  /// Tries each open option of each group: what fails goes, what no option supports goes.
  bool probe(Domains& domains);

  /// Least and greatest value over the open starts.
  [[nodiscard]] Slot least(const Domains& domains, int op, int f) const;
  [[nodiscard]] Slot greatest(const Domains& domains, int op, int f) const;

 private:
  bool settle(Domains& domains, const std::vector<Order>& orders);
  bool revise(Domains& domains, const Arc& arc);
  bool revise(Domains& domains, const Pairs& pairs);
  bool keep_at_most(Domains& domains, int op, int f, Slot most);
  bool keep_at_least(Domains& domains, int op, int f, Slot least);
  bool shrunk(Domains& domains, int op);
  bool wiped(Domains& domains, Option when);
  bool drop_option(Domains& domains, int group, int option);
  bool update_group(Domains& domains, int group);
  void forget();
  void queue_all();
  void queue(int op);

  const Model& model_;
  std::vector<int> dirty_;
  std::vector<bool> is_dirty_;
};

/// Choice per group of the problem, -1 where the group does not exist; what is still open matters
/// to nothing and gets its first option.
std::vector<int> settled_choices(const Model& model, const Domains& domains);

}  // namespace wetout::search
