// One run of the labelling over given domains.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "chain.hpp"
#include "label_space.hpp"
#include "label_step.hpp"
#include "rest_bound.hpp"

namespace wetout::search {

class Labelling {
 public:
  Labelling(const Model& model, const Domains& root, const Budget& budget);

  /// The best schedule within the domains that is better than `incumbent`. `beam` > 0 keeps that
  /// many labels per layer only.
  std::optional<Found> run(int beam, const std::optional<Found>& incumbent);

  /// Every label was looked at: what run() returned is the best there is.
  [[nodiscard]] bool complete() const { return complete_; }
  [[nodiscard]] bool stopped() const { return stopped_; }

 private:
  struct Rows {
    const Slot* columns;
    const std::int64_t* cost;
    int record;
  };

  void expand(int bucket, int row);
  /// Every way to go on from a bucket under a set of choices.
  const std::vector<Step>& steps_from(int bucket, int set);
  void insert(int target, const Step& step, Slot start, int parent);
  void finish(int bucket, int row);
  void offer(int record, int set, const Value& cost);
  [[nodiscard]] bool hopeless(const Bucket& target);
  [[nodiscard]] bool dominates(const Bucket& bucket, const Rows& a, const Rows& b) const;
  [[nodiscard]] int compare_ties(int a, int b) const;
  [[nodiscard]] std::vector<Slot> starts_of(int record) const;
  [[nodiscard]] std::vector<int> choices_of(int set) const;
  void remove(Bucket& bucket, int row);
  void thin(const std::vector<int>& layer, int beam);
  [[nodiscard]] Rows row(const Bucket& bucket, int index) const;

  const Model& model_;
  const Domains& root_;
  Budget budget_;
  ChainFrame frame_;
  ChoiceSets sets_;
  LabelSpace space_;
  Stepper stepper_;
  RestBound rest_;
  std::optional<Found> best_;
  bool complete_ = true;
  bool stopped_ = false;
  std::map<int, std::vector<int>> layers_;  ///< buckets by how much is resolved
  std::map<std::pair<int, int>, std::vector<Step>> steps_;
  std::vector<Slot> columns_;
  Value cost_;
  std::size_t bytes_ = 0;
};

}  // namespace wetout::search
