// When each step may begin.
#include <algorithm>

#include "job_sheet_parts.hpp"
#include "layout.hpp"
#include "weather_chart.hpp"

namespace wetout::report {
namespace {

using layout::plain;
using time::Instant;

// Of a coat: the starts around the planned one, as far as they are open without a break.
StepWindow of_starts(const std::vector<const CoatWindow*>& all, Instant start) {
  StepWindow out;
  const auto holds = [&](const CoatWindow* one) {
    return one->ok != schedule::State::refuse && instant_of(one->from) <= start &&
           start < instant_of(one->to);
  };
  const auto here = std::find_if(all.begin(), all.end(), holds);
  if (here == all.end()) return out;
  if ((*here)->ok == schedule::State::notice) out.notice = (*here)->reason;
  auto first = here, last = here;
  const auto meets = [](const CoatWindow* a, const CoatWindow* b) { return a->to == b->from; };
  while (first != all.begin() && (*std::prev(first))->ok != schedule::State::refuse &&
         meets(*std::prev(first), *first)) {
    --first;
  }
  while (std::next(last) != all.end() && (*std::next(last))->ok != schedule::State::refuse &&
         meets(*last, *std::next(last))) {
    ++last;
  }
  out.from = instant_of((*first)->from);
  out.until = instant_of((*last)->to);
  if (first != all.begin()) out.before = (*std::prev(first))->reason;
  if (std::next(last) != all.end()) out.after = (*std::next(last))->reason;
  return out;
}

std::string word_of(std::string event) {
  std::replace(event.begin(), event.end(), '_', ' ');
  return event;
}

// Of other work: from when a film allows it, until its window closes.
StepWindow of_films(const ScheduleView& view, const Entry& entry) {
  StepWindow out;
  for (const StepAfter& after : entry.told->after) {
    if (!after.min_lag || !view.holds(after) || after.of != "start") continue;
    const Entry* film = view.find(after.id);
    if (film == nullptr) continue;
    const auto reached = ScheduleView::at(*film, after.event);
    if (!reached) continue;
    const Instant from =
        *reached + std::chrono::seconds(static_cast<long long>(units::in_seconds(*after.min_lag)));
    if (out.from && *out.from >= from) continue;
    out.from = from;
    out.before = plain(view.coat_label(*film)) + " " + word_of(after.event);
  }
  for (const ClosingWindow& closing : view.closings) {
    if (closing.step != &entry || (out.until && *out.until <= closing.at)) continue;
    out.until = closing.at;
    out.after = std::string(closing.trim ? "trim" : "recoat") + " window of " +
                plain(view.coat_label(*closing.film)) + " closes";
  }
  return out;
}

}  // namespace

StepWindow window_of(const ScheduleView& view, const Entry& entry) {
  if (entry.told == nullptr || entry.is_done()) return {};
  if (!entry.is_wet()) return of_films(view, entry);
  std::vector<const CoatWindow*> all;
  for (const CoatWindow& window : view.document.windows) {
    if (window.job == entry.job && window.coat == entry.coat) all.push_back(&window);
  }
  return of_starts(all, entry.start);
}

ScheduleDocument of_one_job(const ScheduleDocument& document, std::string_view job) {
  ScheduleDocument one = document;
  std::erase_if(one.jobs, [&](const auto& each) { return each.id != job; });
  std::erase_if(one.steps, [&](const auto& each) { return each.job != job; });
  std::erase_if(one.windows, [&](const auto& each) { return each.job != job; });
  const std::string begin = std::string(job) + "/";
  std::erase_if(one.timeline, [&](const auto& each) { return !each.id.starts_with(begin); });
  // Of steps of other boards.
  std::erase_if(one.notices, [&](const base::Notice& notice) {
    const std::string whose = notice.subject.substr(0, notice.subject.find('/'));
    return whose != notice.subject && whose != job;
  });
  return one;
}

}  // namespace wetout::report
