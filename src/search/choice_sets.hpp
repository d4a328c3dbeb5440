// Sets of decisions taken so far, with the starts they leave open. Each set is worked out once.
#pragma once

#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "domains.hpp"

namespace wetout::search {

class ChoiceSets {
 public:
  explicit ChoiceSets(const Model& model);

  /// Forgets everything; set 0 is `root`, consistent.
  void restart(Domains root);

  [[nodiscard]] const Domains& domains(int set) const { return entries_[at(set)].domains; }
  /// Per operation: it does not take place.
  [[nodiscard]] const std::vector<bool>& absent(int set) const { return entries_[at(set)].absent; }
  [[nodiscard]] std::size_t size() const { return entries_.size(); }

  /// The sets that decide everything that touches `op` and let it take place.
  const std::vector<int>& with(int set, int op);
  /// The first set (by its choices) that decides everything and in which no operation outside
  /// `resolved` takes place.
  std::optional<int> finished(int set, const std::vector<bool>& resolved);
  /// The groups that touch `op`, parents first.
  [[nodiscard]] const std::vector<int>& touching(int op) const { return touching_[at(op)]; }

 private:
  struct Entry {
    Domains domains;
    std::vector<bool> absent;
    std::map<int, std::vector<int>> with;
  };

  int add(Domains domains);
  std::optional<int> decide(int set, int group, int option);
  void branch(int set, int op, std::size_t next, std::vector<int>& out);

  const Model& model_;
  Propagator propagator_;
  std::vector<Entry> entries_;
  std::map<std::vector<int>, int> by_choice_;
  std::map<std::pair<int, std::pair<int, int>>, int> decided_;  ///< -1: nothing fits
  std::vector<std::vector<int>> touching_;
};

}  // namespace wetout::search
