// Labels: what is left of a beginning of a schedule once it is forgotten how it came about.
//
// Labels with the same operations resolved (done, or left out) and the same live choices share a
// bucket and a layout of columns. In every column a smaller entry leaves more open, so that a label
// that is nowhere larger, and costs no more, makes another one superfluous.
#pragma once

#include <cstdint>
#include <limits>
#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "chain_frame.hpp"
#include "choice_sets.hpp"

namespace wetout::search {

/// How a label came about: the operation started last.
struct Record {
  int parent = -1;
  int op = -1;
  Slot start = -1;
  int set = 0;  ///< of choices
};

/// An arc with one end placed that windows alone do not carry.
struct OpenArc {
  int arc = -1;
  bool i_placed = false;
};

struct Layout {
  std::vector<int> windows = {};  ///< two columns each: first start, minus last start
  std::vector<OpenArc> arcs = {};
  std::vector<int> uses = {};         ///< two columns each, see kept_places.hpp
  std::vector<bool> open_place = {};  ///< per use: something is open at its place
  std::vector<int> pairs = {};        ///< start of the placed end; these do not compare as numbers
  int compared = 0;                   ///< columns that compare as numbers; column 0 is the end time
  /// First of the two columns of the k-th use.
  [[nodiscard]] int use_column(int k) const {
    return static_cast<int>(1 + 2 * windows.size() + arcs.size()) + 2 * k;
  }
  int stride = 0;
};

struct Bucket {
  std::vector<bool> resolved = {};
  std::vector<int> live = {};  ///< choice per group, or dead_choice
  int count_resolved = 0;
  bool ends_later = false;  ///< something that counts for LastEnd is sure to follow
  Layout layout = {};
  std::vector<bool> sure = {};  ///< per window: the operation is sure to take place
  Value least_rest = {};        ///< what the unresolved operations cost at least
  std::vector<Slot> rows = {};
  std::vector<std::int64_t> costs = {};
  std::vector<int> records = {};
  std::vector<std::int64_t> sums =
      {};                ///< of the compared columns: never less in what is dominated
  int last_to_beat = 0;  ///< the label that dominated another one last; may be gone by now
  [[nodiscard]] int size() const { return static_cast<int>(records.size()); }
};

/// What a step does to one use, as far as the buckets and the choices alone say it.
struct UseStep {
  int use = -1;
  int column = -1;        ///< of the use in the source's rows; -1: it is not among them
  bool was_open = false;  ///< something was open at its place, see kept_places.hpp
  bool was_begun = false;
  bool was_ended = false;
  bool begins = false;  ///< with the step's operation
  bool ends = false;
  bool begun = false;  ///< after the step
  bool ended = false;
};

/// From one bucket to another by starting `op` under the choices `set`.
struct Step {
  int op = -1;
  int set = 0;
  int target = -1;
  Slot latest_end = 0;                ///< what untouched operations leave
  std::vector<int> window_from = {};  ///< per window of the target: index in the source, or -1
  std::vector<int> arc_from = {};
  std::vector<int> use_from = {};  ///< per use of the target: index in `uses`, or -1
  std::vector<int> pairs_from = {};
  std::vector<std::vector<int>> window_arcs = {};  ///< arcs between `op` and the window's operation
  std::vector<int> own_arcs = {};   ///< open arcs of the source that `op` closes (index in layout)
  std::vector<int> own_pairs = {};  ///< open pairs of the source that `op` closes
  int own_window = -1;              ///< window of `op` in the source
  std::vector<int> self_arcs = {};  ///< tight items of `op` alone
  std::vector<UseStep> uses = {};   ///< at places that matter, to be looked at together
};

class LabelSpace {
 public:
  LabelSpace(const Model& model, const ChainFrame& frame, ChoiceSets& sets, const Domains& root);

  /// The bucket in which nothing is resolved but what `set` leaves out.
  int first_bucket(int set);
  [[nodiscard]] Bucket& bucket(int index) { return buckets_[at(index)]; }
  [[nodiscard]] const Bucket& bucket(int index) const { return buckets_[at(index)]; }
  [[nodiscard]] std::size_t size() const { return buckets_.size(); }

  /// The step, or nothing when the order or the choices forbid it.
  std::optional<Step> step(int source, int set, int op);

  std::vector<Record> records = {};

 private:
  int find(std::vector<bool> resolved, int set);
  [[nodiscard]] std::vector<int> live_choices(const std::vector<bool>& resolved, int set) const;
  [[nodiscard]] Layout make_layout(const std::vector<bool>& resolved, int set) const;
  void connect(Step& step, const Bucket& source, const Bucket& target) const;
  void connect_uses(Step& step, const Bucket& source, const Bucket& target) const;

  const Model& model_;
  const ChainFrame& frame_;
  ChoiceSets& sets_;
  const Domains& root_;
  std::vector<Bucket> buckets_;
  std::map<std::pair<std::vector<bool>, std::vector<int>>, int> index_;
};

}  // namespace wetout::search
