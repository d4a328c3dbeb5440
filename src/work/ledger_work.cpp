#include "ledger_work.hpp"

#include <algorithm>
#include <chrono>
#include <optional>

#include "wetout/schedule/step_word.hpp"

namespace wetout::work {
namespace {

using joblog::EventKind;
using schedule::StepWord;

struct Times {
  std::string step;
  std::optional<joblog::Instant> started, done;
};

// What goes on by itself takes nobody's time, and a ride is no work.
bool is_attended(const std::string& step) {
  const auto name = schedule::read_step_name(step);
  return name && name->word != StepWord::acclimatise && name->word != StepWord::spackle &&
         name->word != StepWord::ride;
}

}  // namespace

std::vector<WorkedStep> worked_steps(const std::vector<joblog::EventRow>& events,
                                     const std::vector<joblog::JobWork>& booked) {
  std::vector<Times> all;
  for (const joblog::EventRow& event : events) {
    const bool counts = event.kind == EventKind::started || event.kind == EventKind::done;
    if (!counts || event.undone_by || !is_attended(event.step)) continue;
    auto times = std::find_if(all.begin(), all.end(),
                              [&](const Times& one) { return one.step == event.step; });
    if (times == all.end()) times = all.insert(all.end(), Times{event.step, {}, {}});
    (event.kind == EventKind::started ? times->started : times->done) = event.at;
  }
  std::vector<WorkedStep> worked;
  for (const Times& times : all) {
    if (!times.started || !times.done || *times.done <= *times.started) continue;
    const auto minutes = std::chrono::round<std::chrono::minutes>(*times.done - *times.started);
    constexpr std::chrono::hours longest{12};
    const bool is_booked = std::any_of(
        booked.begin(), booked.end(),
        [&](const joblog::JobWork& work) { return work.step == times.step && work.minutes != 0; });
    if (minutes.count() == 0 || minutes > longest || is_booked) continue;
    worked.push_back({times.step, *times.done, minutes.count()});
  }
  return worked;
}

}  // namespace wetout::work
