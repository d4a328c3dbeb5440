// [hours], [[person]], [[resource]]: read like everything else, so that a slip in them is
// found today and not when a schedule first needs them.
#include <algorithm>
#include <array>
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

void day(Fields& hours, std::string_view key) {
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
}

void off(Fields& hours) {
  for (const toml::node* node : hours.list("off", R"(["2026-06-21", "2026-07-03/2026-07-05"])")) {
    if (node->is_date()) continue;  // TOML's own dates: they exist, or the file had not parsed
    const auto text = hours.text_in(*node, "off", "2026-06-21");
    if (!text) continue;
    base::Result<time::DateRange> range = time::read_date_range(*text);
    if (range) continue;
    for (base::Problem& problem : range.error()) {
      hours.wrong_node(*node, "off", std::move(problem));
    }
  }
}

void calendar(Fields hours) {
  for (const std::string_view key : days) day(hours, key);
  off(hours);
  hours.done();
}

void people(Fields& root) {
  Ids ids("person");
  for (Fields& person : root.subtables("person", "[[person]]")) {
    const Named named = read_named(person, "first");
    if (auto hours = person.subtable("hours", R"({ sat = ["08:00-18:00"] })")) {
      calendar(std::move(*hours));
    }
    person.done();
    ids.add(person, named.id);
  }
}

void resources(Fields& root) {
  Ids ids("resource");
  for (Fields& resource : root.subtables("resource", "[[resource]]")) {
    const Named named = read_named(resource, "stand");
    resource.whole("count", 1, 1000, "2");
    resource.done();
    ids.add(resource, named.id);
  }
}

}  // namespace

void check_hours(Fields& root) {
  if (auto hours = root.subtable("hours", "[hours]")) calendar(std::move(*hours));
  people(root);
  resources(root);
}

}  // namespace wetout::files
