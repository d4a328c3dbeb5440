#include "rules.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

namespace wetout::schedule::sample {
namespace {

std::size_t u(int i) { return static_cast<std::size_t>(i); }

bool from_start(resin::Milestone m) {
  return m == resin::Milestone::trim_until || m == resin::Milestone::recoat_until;
}

}  // namespace

Rules::Rules(const Setting& setting) : s_(setting) {
  for (int b = 0; u(b) < s_.boards.size(); ++b) {
    std::vector<int>& open = open_.emplace_back();
    decided_.emplace_back();
    find_decided(b);
    for (int i = 0; u(i) < board(b).steps.steps.size(); ++i) {
      const When when = step(b, i).when;
      const bool never = when.group >= 0 && decided(b)[u(when.group)] >= 0 &&
                         decided(b)[u(when.group)] != when.option;
      if (is_to_come(b, i) && !never) open.push_back(i);
    }
  }
  for (const PersonSpans& person : s_.people) {
    for (const WorkingSpan& span : person.spans) {
      const Slot from = std::max(s_.begin, s_.grid.not_before(span.from));
      const Slot until = std::min(s_.grid.slots, s_.grid.not_after(span.until));
      if (from < until) spans_.push_back({from * s_.grid.step_s(), until * s_.grid.step_s()});
    }
  }
  std::sort(spans_.begin(), spans_.end(),
            [](const Stretch& a, const Stretch& b) { return a.from < b.from; });
  std::vector<Stretch> joined;
  for (const Stretch& span : spans_) {
    if (!joined.empty() && span.from <= joined.back().to) {
      joined.back().to = std::max(joined.back().to, span.to);
    } else {
      joined.push_back(span);
    }
  }
  spans_ = std::move(joined);
}

// An option is decided by the step of it that was done, else by one that has a fixed start. Where
// nothing is left that would ask, there is no choice.
void Rules::find_decided(int b) {
  const BoardSteps& steps = board(b).steps;
  for (int g = 0; u(g) < steps.groups.size(); ++g) {
    int decided = -1, wanted = -1;
    bool asked = false;
    for (int i = 0; u(i) < steps.steps.size(); ++i) {
      if (step(b, i).when.group != g) continue;
      if (fact(b, i)) decided = step(b, i).when.option;
      if (board(b).fixed[u(i)] && wanted < 0) wanted = step(b, i).when.option;
      asked = asked || is_to_come(b, i);
    }
    for (const Link& link : steps.links) {
      asked = asked || (link.when.group == g && is_to_come(b, link.to));
    }
    if (decided < 0) decided = wanted;
    decided_[u(b)].push_back(decided < 0 && !asked ? 0 : decided);
  }
}

const Step& Rules::step(int b, int i) const { return board(b).steps.steps[u(i)]; }
const std::optional<Fact>& Rules::fact(int b, int i) const { return board(b).facts[u(i)]; }
bool Rules::is_to_come(int b, int i) const { return !fact(b, i) && !board(b).passed[u(i)]; }

Stretch Rules::attended(int b, int i, Slot start) const {
  const double steps = std::ceil(units::in_seconds(step(b, i).attended) / s_.grid.step_s() - 1e-9);
  return {start * s_.grid.step_s(), (start + steps) * s_.grid.step_s()};
}

bool Rules::is_there(int person, int b, int i, Slot start) const {
  if (board(b).fixed[u(i)]) return true;
  const Stretch work = attended(b, i, start);
  const auto& spans = s_.people[u(person)].spans;
  return std::any_of(spans.begin(), spans.end(), [&](const WorkingSpan& span) {
    return s_.grid.seconds(span.from) <= work.from && work.to <= s_.grid.seconds(span.until);
  });
}

bool Rules::may_start(int b, int i, Slot start) const {
  if (start < s_.begin) return false;
  if (const auto& fixed = board(b).fixed[u(i)]) {
    const double at = s_.grid.seconds(*fixed);
    return start * s_.grid.step_s() <= at && at < (start + 1) * s_.grid.step_s();
  }
  const Stretch work = attended(b, i, start);
  if (work.to > s_.grid.slots * s_.grid.step_s()) return false;
  bool somebody = false;
  for (int p = 0; u(p) < s_.people.size(); ++p) somebody = somebody || is_there(p, b, i, start);
  if (!somebody) return false;
  for (const auto& done : board(b).facts) {
    if (done && work.from < s_.grid.seconds(done->end)) return false;
  }
  return !step(b, i).is_wet() || verdict(b, i, start).state != State::refuse;
}

double Rules::moment(int b, int i, Moment moment, Slot start) const {
  const auto m = milestone(moment);
  if (const auto& done = fact(b, i)) {
    if (m) return film_of(s_, board(b), step(b, i).coat, done->start, done->end, &*done)[*m];
    return s_.grid.seconds(moment == Moment::start ? done->start : done->end);
  }
  const Stretch work = attended(b, i, start);
  if (moment == Moment::start) return work.from;
  if (moment == Moment::end) return work.to;
  const auto& films = s_.films.at(board(b).resins[u(step(b, i).coat)])->at;
  const double begun = from_start(*m) ? work.from : work.to;
  return films[static_cast<std::size_t>(begun / s_.grid.step_s() + 0.5)][*m];
}

bool Rules::keeps(int b, const Link& link, Slot from, Slot to) const {
  const Stretch work = attended(b, link.to, to);
  const double end = link.to_end ? work.to : work.from;
  if (link.good_film) {
    return fact(b, link.from).has_value() || verdict(b, link.from, from).state != State::notice;
  }
  const double at = moment(b, link.from, link.moment, from);
  if (link.min && end < at + units::in_seconds(*link.min)) return false;
  return !link.max || at >= never || end <= at + units::in_seconds(*link.max);
}

Stretch Rules::on_stand(int b, int i, Slot start) const {
  if (!step(b, i).is_wet()) return {};
  const double until = moment(b, i, Moment::handle, start);
  if (fact(b, i)) {
    for (const int other : board(b).steps.wets) {
      if (other == i || !fact(b, other)) continue;
      const double later = moment(b, other, Moment::handle, 0);
      if (later > until || (later == until && other > i)) return {};
    }
  }
  return {moment(b, i, Moment::start, start), until};
}

Stretch Rules::clean(int b, int i, Slot start) const {
  if (!step(b, i).is_wet() || s_.sanding_room) return {};
  return {moment(b, i, Moment::start, start), moment(b, i, Moment::tack_free, start)};
}

Stretch Rules::dusty(int b, int i, Slot start) const {
  if (!step(b, i).dusty || s_.sanding_room) return {};
  return {moment(b, i, Moment::start, start),
          moment(b, i, Moment::end, start) + s_.defaults.dust_settles.value * 60.0};
}

Verdict Rules::verdict(int b, int i, Slot start) const {
  const int coat = step(b, i).coat;
  const auto at = [&](double seconds) {
    return s_.grid.origin + std::chrono::seconds(std::llround(std::min(seconds, 1e9)));
  };
  const Stretch work = attended(b, i, start);
  return board(b).limits->verdict({at(work.from), at(work.to), at(moment(b, i, Moment::gel, start)),
                                   at(moment(b, i, Moment::tack_free, start))},
                                  board(b).rules[u(coat)]);
}

std::vector<int> Rules::limit_levels(int b, int i, Slot start) const {
  std::vector<int> levels;
  if (!step(b, i).is_wet()) return levels;
  const Verdict found = verdict(b, i, start);
  // Of a fixed start that the limits refuse there is nothing to spare that could be counted.
  if (found.state == State::refuse) return levels;
  for (const std::uint8_t level : found.tightness) {
    if (level < 5) levels.push_back(level);
  }
  return levels;
}

int Rules::window_level(int b, const Link& link, Slot from, Slot to) const {
  const Stretch work = attended(b, link.to, to);
  const double until = moment(b, link.from, link.moment, from) + units::in_seconds(*link.max);
  if (until >= never) return 5;
  const double step = s_.grid.step_s();
  const double scale = std::ceil(s_.defaults.window_scale.value * 60.0 / step);
  const double left = std::floor((until - (link.to_end ? work.to : work.from)) / step);
  return std::min(5, static_cast<int>(std::floor(10.0 * left / scale)));
}

Slot Rules::span_of(int b, int i, Slot start) const {
  const Stretch work = attended(b, i, start);
  double found = 0.0;
  for (const Stretch& span : spans_) {
    if (span.from < work.to) found = span.from;
  }
  return static_cast<Slot>(found / s_.grid.step_s() + 0.5);
}

}  // namespace wetout::schedule::sample
