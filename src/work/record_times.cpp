#include "record_times.hpp"

#include <algorithm>
#include <chrono>
#include <utility>

#include "wetout/base/words.hpp"
#include "wetout/time/print.hpp"
#include "wetout/time/read_near.hpp"

namespace wetout::work {
namespace {

std::vector<std::string> milestone_words() {
  std::vector<std::string> words;
  for (const resin::Milestone milestone : resin::milestones) {
    words.push_back(base::slug(resin::to_string(milestone)));
  }
  return words;
}

std::string listed(const std::vector<std::string>& words) {
  std::string list;
  for (const std::string& word : words) list += (list.empty() ? "" : ", ") + word;
  return list;
}

// The end tells it: "Z", "+02:00", "-07:00".
bool tells_offset(std::string_view text) {
  while (text.ends_with(' ')) text.remove_suffix(1);
  if (text.ends_with('Z') || text.ends_with('z')) return true;
  constexpr std::size_t offset_size = 6;
  if (text.size() < offset_size) return false;
  const char sign = text[text.size() - offset_size];
  return (sign == '+' || sign == '-') && text.find(':') < text.size() - offset_size;
}

}  // namespace

std::optional<time::Instant> RecordTimes::read(const std::optional<std::string>& text,
                                               std::string_view option) {
  if (!text) return std::nullopt;
  auto instant = time::read_near(*text, zone_, now_, time::Side::past);
  if (!instant) {
    for (base::Problem& problem : instant.error()) {
      problem.key = option;
      problem.message = std::string(option) + ": " + problem.message;
      problems_.push_back(std::move(problem));
    }
    return std::nullopt;
  }
  if (*instant > now_) {
    problems_.push_back({.code = "time.future",
                         .message = std::string(option) + ": this is still to come",
                         .key = std::string(option),
                         .found = print(*instant),
                         .expected = "a time up to now, " + print(now_)});
    return std::nullopt;
  }
  has_clock_ = has_clock_ || !tells_offset(*text);
  if (now_ - *instant > std::chrono::days(365)) {
    notices_.push_back({.code = "record.old",
                        .text = "more than a year ago: is the year meant?",
                        .subject = std::string(option) + " " + print(*instant)});
  }
  return *instant;
}

std::optional<Observed> RecordTimes::observed(const std::string& text) {
  const std::size_t equals = text.find('=');
  if (equals == std::string::npos || equals == 0 || equals + 1 == text.size()) {
    problems_.push_back({.code = "observed.form",
                         .message = "--observed: a milestone and its time belong together",
                         .key = "--observed",
                         .found = text,
                         .expected = "MILESTONE=TIME, e.g. gel=18:30"});
    return std::nullopt;
  }
  const std::vector<std::string> words = milestone_words();
  const std::string typed = text.substr(0, equals);
  const std::vector<std::size_t> found = base::matches(typed, words);
  if (found.size() != 1) {
    const auto near = base::nearest(base::slug(typed), words);
    std::vector<std::string> choices;
    for (const std::size_t i : found) choices.push_back(words[i]);
    problems_.push_back({.code = "observed.milestone",
                         .message = found.empty()
                                        ? "--observed: a film has no such milestone"
                                        : "--observed: more than one milestone begins like that",
                         .key = "--observed",
                         .found = typed,
                         .expected = "one of: " + listed(found.empty() ? words : choices),
                         .hint = found.empty() && near ? "did you mean \"" + *near + "\"?" : ""});
    return std::nullopt;
  }
  const auto at = read(text.substr(equals + 1), "--observed");
  if (!at) return std::nullopt;
  return Observed{resin::milestones[found.front()], *at};
}

std::string RecordTimes::print(time::Instant at) const { return time::print_wall(at, zone_); }

StepHistory history_of(const std::vector<joblog::EventRow>& events, const std::string& step,
                       std::string_view token) {
  using joblog::EventKind;
  StepHistory history;
  for (const joblog::EventRow& event : events) {
    if (event.step != step || event.undone_by || event.token.starts_with(token)) continue;
    switch (event.kind) {
      case EventKind::started:
        history.started = event.at;
        history.started_by = event.number;
        break;
      case EventKind::done:
        history.done = event.at;
        break;
      case EventKind::mixed:
        history.is_mixed = true;
        break;
      case EventKind::milestone:
        history.milestones[event.facts.milestone] = event.at;
        break;
      default:
        break;
    }
  }
  return history;
}

}  // namespace wetout::work
