// Boards that share people, places and rooms: one after the other by labelling, then again and
// again a few of them taken out and put back, beside a bound by spans.
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "chain.hpp"
#include "random.hpp"
#include "room_plan.hpp"
#include "run.hpp"

namespace wetout::search {

/// Two parts at least, each of them a chain.
bool many_fits(const Problem& problem, const Objective& objective);

class Many {
 public:
  Many(const Problem& problem, const Objective& objective, Run& run);

  State solve();

 private:
  struct Part {
    std::vector<int> ops;
    Objective earliest;             ///< last end, then sum of starts
    std::int64_t least = 0;         ///< last end when alone, at least
    std::vector<bool> groups = {};  ///< which groups of the problem are its own
    Model model = {};               ///< by `earliest`, alone
    std::vector<Bits> alone = {};   ///< its domains
    bool simple = true;             ///< what others take only takes starts away
  };
  using Placed = std::vector<std::optional<Found>>;  ///< per part

  bool alone();
  bool insert_all();
  void insert_by_plans(const std::vector<std::vector<int>>& orders);
  void improve();
  void polish();
  void raise_bound();
  /// Puts `order` into `placed`; false when one does not fit or the last ends of `order` would add
  /// up to more than `most`. What is in `plan` is not to be had.
  bool put(const std::vector<int>& order, Placed& placed, std::int64_t most,
           const std::vector<Taken>& plan, Random* shunning = nullptr);
  /// Spans, drawn at random, that a part is kept out of.
  std::vector<Taken> shunned(int part, Random& random) const;
  std::optional<Found> put_one(int part, const std::vector<Taken>& others,
                               const ChainOptions& options);
  ChainResult solve_part(const Model& model, const ChainOptions& options);
  [[nodiscard]] std::vector<Taken> taken(const Placed& placed, int except) const;
  [[nodiscard]] Schedule schedule(const Placed& placed) const;
  [[nodiscard]] std::int64_t last_end(int part, const Found& found) const;

  const Problem& problem_;
  const Objective& objective_;
  Run& run_;
  RoomPlanner rooms_;
  std::vector<Part> parts_;
  std::vector<std::pair<Slot, Slot>> spans_;  ///< of the work, where there is a calendar
  Placed best_;
};

}  // namespace wetout::search
