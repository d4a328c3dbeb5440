// [hours], [[person]], [[resource]]: who works when, and what boards share.
#include <algorithm>
#include <array>
#include <chrono>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "shop_parts.hpp"
#include "wetout/time/print.hpp"
#include "wetout/time/read.hpp"

namespace wetout::files {
namespace {

constexpr std::array<std::string_view, 7> days = {"mon", "tue", "wed", "thu", "fri", "sat", "sun"};

std::vector<time::DaySpan> day(Fields& hours, std::string_view key) {
  std::vector<time::DaySpan> spans;
  for (const toml::node* node : hours.list(key, R"(["18:00-22:00"])")) {
    const auto text = hours.text_in(*node, key, "18:00-22:00");
    if (!text) continue;
    base::Result<time::DaySpan> span = time::read_day_span(*text);
    if (!span) {
      for (base::Problem& problem : span.error()) hours.wrong_node(*node, key, std::move(problem));
      continue;
    }
    const auto over = std::find_if(spans.begin(), spans.end(), [&](const time::DaySpan& other) {
      return span->from < other.until && other.from < span->until;
    });
    if (over != spans.end()) {
      hours.wrong_node(*node, key,
                       {.code = "span.overlap",
                        .message = "this span overlaps " + time::print(*over),
                        .expected = "spans of a day that do not overlap"});
    }
    // A day holds no more than a few spans; a list of thousands would be slow to compare.
    constexpr std::size_t most_compared = 100;
    if (spans.size() < most_compared) spans.push_back(*span);
  }
  std::sort(spans.begin(), spans.end(),
            [](const time::DaySpan& a, const time::DaySpan& b) { return a.from < b.from; });
  return spans;
}

std::vector<time::DateRange> off(Fields& hours) {
  std::vector<time::DateRange> ranges;
  for (const toml::node* node : hours.list("off", R"(["2026-06-21", "2026-07-03/2026-07-05"])")) {
    if (const auto* date = node->as_date()) {  // TOML's own: it exists, or had not parsed
      const toml::date& d = date->get();
      const time::Date day{std::chrono::year(d.year), std::chrono::month(d.month),
                           std::chrono::day(d.day)};
      ranges.push_back({day, day});
      continue;
    }
    const auto text = hours.text_in(*node, "off", "2026-06-21");
    if (!text) continue;
    base::Result<time::DateRange> range = time::read_date_range(*text);
    if (range) {
      ranges.push_back(*range);
      continue;
    }
    for (base::Problem& problem : range.error()) {
      hours.wrong_node(*node, "off", std::move(problem));
    }
  }
  return ranges;
}

// The days that are named take the place of those in `known`.
void calendar(Fields hours, schedule::WeekHours& known) {
  for (std::size_t i = 0; i < days.size(); ++i) {
    if (hours.has(days[i])) known.days[i] = day(hours, days[i]);
  }
  if (hours.has("off")) known.off = off(hours);
  for (const std::string_view key : days) hours.know(key);
  hours.know("off");
  hours.done();
}

std::vector<schedule::Person> people(Fields& root, const schedule::WeekHours& usual) {
  std::vector<schedule::Person> all;
  Ids ids("person");
  for (Fields& person : root.subtables("person", "[[person]]")) {
    const Named named = read_named(person, "first");
    schedule::Person one{named.id, usual};
    if (auto hours = person.subtable("hours", R"({ sat = ["08:00-18:00"] })")) {
      calendar(std::move(*hours), one.hours);
    }
    person.done();
    ids.add(person, named.id);
    all.push_back(std::move(one));
  }
  if (all.empty()) all.push_back({"one", usual});
  return all;
}

std::vector<schedule::SharedThing> resources(Fields& root) {
  std::vector<schedule::SharedThing> all;
  Ids ids("resource");
  for (Fields& resource : root.subtables("resource", "[[resource]]")) {
    const Named named = read_named(resource, "stand");
    const auto count = resource.whole("count", 1, 1000, "2");
    resource.done();
    ids.add(resource, named.id);
    all.push_back({named.id, static_cast<int>(count.value_or(1))});
  }
  return all;
}

}  // namespace

void read_hours(Fields& root, ShopFile& shop) {
  schedule::WeekHours usual;
  if (auto hours = root.subtable("hours", "[hours]")) calendar(std::move(*hours), usual);
  shop.people = people(root, usual);
  shop.shared = resources(root);
}

}  // namespace wetout::files
