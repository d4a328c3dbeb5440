#include "extremes.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

namespace wetout::schedule {
namespace {

time::Instant at(long s) { return time::Instant{} + std::chrono::seconds(s); }

// Against every second of the range: the points lie on whole seconds.
RC_GTEST_PROP(Extremes, MeetALookAtEverySecond, ()) {
  std::vector<time::HistoryPoint> points;
  long now = *rc::gen::inRange(-50, 50);
  const int count = *rc::gen::inRange(1, 120);
  for (int i = 0; i < count; ++i) {
    points.push_back({at(now), static_cast<double>(*rc::gen::inRange(-20, 20))});
    now += *rc::gen::inRange(1, 30);
  }
  const auto history = *time::History::of(points);
  const long from = *rc::gen::inRange<long>(-100, now + 50);
  const long until = from + *rc::gen::inRange<long>(0, 2000);
  for (const auto kind : {Extremes::Kind::lowest, Extremes::Kind::highest}) {
    const Extreme found = Extremes(history, kind).over(at(from), at(until));
    double best = history.at(at(from));
    for (long s = from; s <= until; ++s) {
      const double value = history.at(at(s));
      best = kind == Extremes::Kind::lowest ? std::min(best, value) : std::max(best, value);
    }
    RC_ASSERT(std::abs(found.value - best) < 1e-12);
    RC_ASSERT(std::abs(history.at(found.at) - best) < 1e-9);
    RC_ASSERT(found.at >= at(from) && found.at <= at(until));
  }
}

}  // namespace
}  // namespace wetout::schedule
