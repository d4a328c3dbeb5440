#include "who.hpp"

#include <algorithm>

namespace wetout::schedule {
namespace {

using Placed = PlacedStep::State;

// Trying all ways ends for any week of a shop; a limit is a limit.
constexpr int most_tries = 100000;

std::size_t u(int i) { return static_cast<std::size_t>(i); }

class People {
 public:
  People(const Setting& setting, const std::vector<std::vector<int>>& only,
         std::vector<PlacedStep>& steps)
      : people_(setting.people), only_(only) {
    for (PlacedStep& step : steps) {
      if (step.state != Placed::done) steps_.push_back(&step);
    }
  }

  bool share_out() {
    if (people_.size() > 1 && place(0)) return true;
    // One person; or steps that cannot be shared out: whoever is free does the next.
    bool all = true;
    for (PlacedStep* step : steps_) step->person = -1;
    for (PlacedStep* step : steps_) {
      for (int person = 0; u(person) < people_.size() && step->person < 0; ++person) {
        if (people_.size() == 1 || free(*step, person)) step->person = person;
      }
      all = all && step->person >= 0;
    }
    return all;
  }

 private:
  [[nodiscard]] bool there(const PlacedStep& step, int person) const {
    if (step.state == Placed::fixed) return true;
    const int one = only_[u(step.board)][u(step.step)];
    if (one >= 0 && one != person) return false;
    const auto& spans = people_[u(person)].spans;
    return std::any_of(spans.begin(), spans.end(), [&](const WorkingSpan& span) {
      return span.from <= step.start && step.attended_until <= span.until;
    });
  }
  [[nodiscard]] bool free(const PlacedStep& step, int person) const {
    return there(step, person) &&
           std::none_of(steps_.begin(), steps_.end(), [&](const PlacedStep* other) {
             return other != &step && other->person == person &&
                    other->start < step.attended_until && step.start < other->attended_until;
           });
  }
  // With hours of their own a step may have to go to the one who has the time: all are tried.
  bool place(std::size_t next) {
    if (next == steps_.size()) return true;
    PlacedStep& step = *steps_[next];
    for (int person = 0; u(person) < people_.size(); ++person) {
      if (!free(step, person)) continue;
      step.person = person;
      if (place(next + 1)) return true;
      step.person = -1;
      if (--tries_ <= 0) return false;
    }
    return false;
  }

  const std::vector<PersonSpans>& people_;
  const std::vector<std::vector<int>>& only_;
  std::vector<PlacedStep*> steps_;
  int tries_ = most_tries;
};

}  // namespace

bool share_out(const Setting& setting, const std::vector<std::vector<int>>& only,
               std::vector<PlacedStep>& steps) {
  return People(setting, only, steps).share_out();
}

}  // namespace wetout::schedule
