// The rules of a setting as docs/models/schedule.md says them, in seconds rather than slots, with
// nothing of the translation into a search problem: what brute force and integer programs ask.
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "wetout/schedule/setting.hpp"

namespace wetout::schedule::sample {

/// From start to end on one slot's start, in seconds after the grid's origin.
struct Stretch {
  double from = 0.0, to = 0.0;
  [[nodiscard]] bool meets(const Stretch& other) const {
    return from < to && other.from < other.to && from < other.to && other.from < to;
  }
};

class Rules {
 public:
  explicit Rules(const Setting& setting);

  [[nodiscard]] const Setting& setting() const { return s_; }
  [[nodiscard]] const Step& step(int b, int i) const;
  [[nodiscard]] const BoardSetting& board(int b) const {
    return s_.boards[static_cast<std::size_t>(b)];
  }
  [[nodiscard]] const std::optional<Fact>& fact(int b, int i) const;

  /// Still to be done, in order; some only under an option.
  [[nodiscard]] const std::vector<int>& open(int b) const {
    return open_[static_cast<std::size_t>(b)];
  }
  /// Of each group: the option that has been decided, -1 where there is a choice, 0 where nothing
  /// depends on it any more.
  [[nodiscard]] const std::vector<int>& decided(int b) const {
    return decided_[static_cast<std::size_t>(b)];
  }
  [[nodiscard]] bool is_to_come(int b, int i) const;

  [[nodiscard]] Stretch attended(int b, int i, Slot start) const;
  /// Hours of somebody, limits of the film, fixed start, what has been done.
  [[nodiscard]] bool may_start(int b, int i, Slot start) const;
  /// Who is there all the time; everybody for a fixed start.
  [[nodiscard]] bool is_there(int person, int b, int i, Slot start) const;

  /// The moment of a step that was started at a slot, or, if it has been done, as it was.
  [[nodiscard]] double moment(int b, int i, Moment moment, Slot start) const;
  /// Between two steps that both take place, `when` being chosen. What has been done: any start.
  [[nodiscard]] bool keeps(int b, const Link& link, Slot from, Slot to) const;

  /// Of a wet: on its stand, and the room clean. Of dry abrasion: the room dusty. Empty otherwise.
  /// Of a board's films that are there already the last one only is on the stand.
  [[nodiscard]] Stretch on_stand(int b, int i, Slot start) const;
  [[nodiscard]] Stretch clean(int b, int i, Slot start) const;
  [[nodiscard]] Stretch dusty(int b, int i, Slot start) const;

  /// How many tenths of its scale each limit of a wet has left, where that is less than five.
  [[nodiscard]] std::vector<int> limit_levels(int b, int i, Slot start) const;
  /// Likewise of a tight link.
  [[nodiscard]] int window_level(int b, const Link& link, Slot from, Slot to) const;
  /// Spans in which anybody works; those that touch are one.
  [[nodiscard]] const std::vector<Stretch>& spans() const { return spans_; }
  /// The start of the last span that begins before the end of a step.
  [[nodiscard]] Slot span_of(int b, int i, Slot start) const;

 private:
  [[nodiscard]] Verdict verdict(int b, int i, Slot start) const;
  void find_decided(int b);

  const Setting& s_;
  std::vector<std::vector<int>> open_, decided_;
  std::vector<Stretch> spans_;
};

}  // namespace wetout::schedule::sample
