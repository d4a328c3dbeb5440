// Hours that are said on the command line instead of those of the shop file.
#include <algorithm>
#include <array>

#include "wetout/base/words.hpp"
#include "wetout/schedule/hours.hpp"
#include "wetout/time/print.hpp"

namespace wetout::schedule {
namespace {

constexpr std::array<std::string_view, 7> days = {"mon", "tue", "wed", "thu", "fri", "sat", "sun"};
constexpr std::string_view example =
    "\"18:00-22:00\" (every day), \"sat 08:00-12:00 14:00-18:00\" or \"2026-06-15 18:00-22:45\"";

base::Problem bad(std::string_view text, std::string message) {
  return {.code = "hours.bad",
          .message = std::move(message),
          .found = std::string(text),
          .expected = std::string(example)};
}

std::vector<std::string_view> words_of(std::string_view text) {
  std::vector<std::string_view> words;
  while (true) {
    const std::size_t from = text.find_first_not_of(" ,\t");
    if (from == std::string_view::npos) return words;
    text.remove_prefix(from);
    const std::size_t length = std::min(text.find_first_of(" ,\t"), text.size());
    words.push_back(text.substr(0, length));
    text.remove_prefix(length);
  }
}

}  // namespace

base::Result<HoursInstead> read_hours_instead(std::string_view text) {
  HoursInstead hours;
  std::vector<std::string_view> words = words_of(text);
  if (words.empty()) return base::fail(bad(text, "there are no hours in it"));
  const std::string first = base::slug(words.front());
  const auto day = std::find_if(days.begin(), days.end(), [&](std::string_view name) {
    return first.size() >= 3 && first.substr(0, 3) == name;
  });
  if (day != days.end()) {
    hours.weekday = static_cast<int>(day - days.begin());
  } else if (words.front().find(':') == std::string_view::npos) {
    const auto date = time::read_date(words.front());
    if (!date) return tl::unexpected(date.error());
    hours.date = *date;
  }
  if (hours.weekday || hours.date) words.erase(words.begin());
  if (words.empty()) return base::fail(bad(text, "a day needs hours"));
  for (const std::string_view word : words) {
    const auto span = time::read_day_span(word);
    if (!span) return tl::unexpected(span.error());
    for (const time::DaySpan& other : hours.spans) {
      if (span->from < other.until && other.from < span->until) {
        return base::fail({.code = "span.overlap",
                           .message = "this span overlaps " + time::print(other),
                           .found = std::string(word),
                           .expected = "spans of a day that do not overlap"});
      }
    }
    hours.spans.push_back(*span);
  }
  std::sort(hours.spans.begin(), hours.spans.end(),
            [](const time::DaySpan& a, const time::DaySpan& b) { return a.from < b.from; });
  return hours;
}

std::string print(const HoursInstead& hours) {
  std::string text;
  if (hours.date) text = time::print(*hours.date);
  if (hours.weekday) text = days[static_cast<std::size_t>(*hours.weekday)];
  for (const time::DaySpan& span : hours.spans) {
    if (!text.empty()) text += " ";
    text += time::print(span);
  }
  return text;
}

void put_instead(const HoursInstead& instead, WeekHours& hours) {
  if (instead.date) {
    hours.single[*instead.date] = instead.spans;
  } else if (instead.weekday) {
    hours.days[static_cast<std::size_t>(*instead.weekday)] = instead.spans;
  } else {
    hours.days.fill(instead.spans);
  }
}

}  // namespace wetout::schedule
