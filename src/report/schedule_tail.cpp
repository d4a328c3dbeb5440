#include "schedule_tail.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <numeric>
#include <optional>
#include <utility>

#include "phrases.hpp"
#include "schedule_fields.hpp"
#include "weather_chart.hpp"
#include "wetout/time/print.hpp"

namespace wetout::report {
namespace {

using layout::plain;
using layout::whole;
using time::Instant;
using time::WallTime;

constexpr std::string_view json_has_all = "--json has them all";

std::string counted(int n, std::string_view one) {
  return fmt::format("{} {}{}", n, one, n == 1 ? "" : "s");
}

int tight_items(const ScheduleObjective& objective) {
  return std::accumulate(objective.tight.begin(), objective.tight.end(), 0);
}

std::string order_text(std::string_view prefer) {
  if (prefer == "slack") return "room to spare, then the finish, then visits";
  if (prefer == "visits") return "visits, then the finish, then room to spare";
  return "the finish, then room to spare, then visits";
}

}  // namespace

void add_choices(layout::Page& page, const ScheduleView& view) {
  bool first = true;
  for (const ScheduleChoice& choice : view.document.choices) {
    if (choice.text.empty() || !choice.chosen) continue;
    if (first) page.heading("What was chosen", "");
    first = false;
    std::string text = plain(choice.text);
    if (!view.one_job()) text = plain(choice.group.substr(0, choice.group.find('/'))) + ": " + text;
    page.item("- ", text);
  }
}

void add_quality(layout::Page& page, const ScheduleView& view) {
  const ScheduleDocument& document = view.document;
  if (!document.objective) return;
  page.heading("How good it is", "preferred: " + plain(document.prefer));
  const int tight = tight_items(*document.objective);
  std::string text = tight == 0
                         ? "No limit or window is tight."
                         : fmt::format(
                               "{} or {} tight: less than half of what is "
                               "comfortable is left.",
                               counted(tight, "limit"), tight == 1 ? "window is" : "windows are");
  if (tight > 0 && document.objective->tight.front() > 0) {
    text += fmt::format(" {} of them less than a tenth.", document.objective->tight.front());
  }
  page.item("", text);
  const std::string compared = order_text(document.prefer);
  if (document.optimal) {
    page.item("", "Proved: no schedule of this model is better. Compared were " + compared + ".");
    return;
  }
  std::string open = "Not proved the best. Compared were " + compared + ".";
  if (document.stopped) {
    open += *document.stopped == "interrupted" ? " The search was interrupted."
                                               : " The time for the search was up.";
  }
  page.item("", open);
  std::string bound;
  if (document.bound) {
    bound = "Nothing finishes in working hours before those of " +
            whole(view.wall.full(instant_of(*document.bound))) + ".";
  }
  if (document.gap) {
    if (!bound.empty()) bound += " ";
    bound += fmt::format("All finish times together are at most {} above what is possible.",
                         whole(units::print_percent(*document.gap)));
  }
  if (!bound.empty() && !document.bound_leaves_out.empty()) {
    bound += " The bound leaves out: " + plain(document.bound_leaves_out) + ".";
  }
  if (!bound.empty()) page.item("", bound);
}

void add_alternatives(layout::Page& page, const ScheduleView& view) {
  const ScheduleDocument& document = view.document;
  if (document.alternatives.empty()) return;
  page.heading("Other schedules", "");
  for (const Alternative& other : document.alternatives) {
    std::vector<std::string> each;
    const auto against = [&](int here, int there, std::string_view one) {
      std::string text = counted(there, one);
      if (document.objective && here != there) text += fmt::format(" instead of {}", here);
      each.push_back(whole(text));
    };
    each.push_back("finished " + whole(view.wall.full(instant_of(other.finish))));
    const ScheduleObjective here = document.objective.value_or(ScheduleObjective{});
    against(tight_items(here), tight_items(other.objective), "tight item");
    against(here.visits, other.objective.visits, "visit");
    std::vector<std::string> moved;
    for (const StepStart& step : other.starts) {
      const Entry* entry = view.find(step.id);
      const bool same = entry != nullptr && entry->timed->start == step.start;
      if (same || !step.id.ends_with("/wet")) continue;
      moved.push_back(
          whole(plain(view.step_label(step.id)) + " " + view.wall.full(instant_of(step.start))));
    }
    std::string text = plain(other.what) + ": " + joined(each, ", ");
    if (!moved.empty()) text += "; " + joined(moved, ", ");
    page.item("- ", text);
  }
}

void add_changes(layout::Page& page, const ScheduleView& view) {
  const ScheduleDocument& document = view.document;
  if (!document.changed_since) return;
  page.heading(fmt::format("Since schedule {}", *document.changed_since), "");
  if (document.changed.empty()) return page.item("", "Nothing has moved.");
  // Steps that move for one reason stand together; looks go with their wet.
  std::vector<std::pair<std::string, std::vector<std::string>>> reasons;
  constexpr std::size_t most = 8;
  bool all = true;
  for (const ChangedStep& step : document.changed) {
    auto reason = std::find_if(reasons.begin(), reasons.end(),
                               [&](const auto& one) { return one.first == step.why; });
    if (reason == reasons.end()) reason = reasons.insert(reasons.end(), {step.why, {}});
    if (reason->second.size() == most) {
      all = false;
      continue;
    }
    Spoken spoken;
    const auto when = [&](const std::string& at) { return view.wall.when(instant_of(at), spoken); };
    std::string times = step.was ? when(*step.was) : "";
    if (step.now) times += (step.was ? " -> " : "") + when(*step.now);
    if (!step.now) times = "(was " + times + ")";
    reason->second.push_back(plain(view.step_label(step.id)) + " " + whole(times));
  }
  for (const auto& [why, steps] : reasons) {
    page.item("- ", (why.empty() ? "" : plain(why) + ": ") + joined(steps, ", "));
  }
  if (!all) page.item("", fmt::format("Further steps moved: {}.", json_has_all));
}

// --- windows

namespace {

/// The starts of one coat on one day that are not closed by hours or by the order of the work.
struct WindowDay {
  WallTime day;
  std::vector<std::string> pieces;
};

std::vector<WindowDay> days_of(const ScheduleView& view, const std::vector<const CoatWindow*>& all,
                               const Entry* planned) {
  std::vector<WindowDay> out;
  for (const CoatWindow* window : all) {
    if (window->limit == "hours" || window->limit == "order" || window->limit == "later") continue;
    const Instant until = instant_of(window->to);
    for (Instant from = instant_of(window->from); from < until;) {
      const WallTime day = view.wall.day(from);
      const auto midnight = view.wall.instant(day + std::chrono::days(1));
      const Instant to = midnight && *midnight > from ? std::min(until, *midnight) : until;
      if (out.empty() || out.back().day != day) out.push_back({day, {}});
      const bool good = window->ok == schedule::State::good;
      std::string piece =
          whole(view.wall.span(from, to)) + " " + (good ? "good" : plain(window->reason));
      if (planned != nullptr && planned->start >= from && planned->start < to) {
        piece += " " + whole("(planned " + view.wall.clock(planned->start) + ")");
      }
      out.back().pieces.push_back(std::move(piece));
      from = to;
    }
  }
  return out;
}

constexpr std::size_t date_columns = 12;

std::string coat_of(const ScheduleView& view, std::string_view wet) {
  const std::string label = view.step_label(wet);
  return label.substr(0, label.rfind('/'));
}

}  // namespace

void add_windows(layout::Page& page, const ScheduleView& view) {
  std::vector<std::pair<std::string, std::vector<const CoatWindow*>>> coats;
  for (const CoatWindow& window : view.document.windows) {
    const std::string id = window.job + "/" + window.coat + "/" + window.step;
    if (coats.empty() || coats.back().first != id) coats.push_back({id, {}});
    coats.back().second.push_back(&window);
  }
  constexpr std::ptrdiff_t most_before = 3, most_after = 1;  // days beside that of the start
  constexpr std::size_t most_label = 28;
  std::size_t label_columns = 0;
  for (const auto& [id, windows] : coats) {
    label_columns = std::max(label_columns, layout::columns(plain(coat_of(view, id))) + 2);
  }
  label_columns = std::min(label_columns, most_label);
  bool all = true, first = true;
  for (const auto& [id, windows] : coats) {
    const Entry* chosen = view.find(id);
    const std::vector<WindowDay> days = days_of(view, windows, chosen);
    if (days.empty()) continue;
    const auto planned = std::find_if(days.begin(), days.end(), [&](const WindowDay& one) {
      return chosen != nullptr && one.day >= chosen->day;
    });
    auto begin = days.begin(), end = days.end();
    if (planned != days.end()) {
      begin = planned - std::min(planned - begin, most_before);
      end = planned + std::min(end - planned, most_after + 1);
    } else {
      end = begin + std::min(end - begin, most_before + most_after);
    }
    all = all && begin == days.begin() && end == days.end();
    if (first)
      page.heading("When each coat could start", view.entries.empty()
                                                     ? "in working hours"
                                                     : "in working hours, after what comes first");
    first = false;
    std::string label = layout::left(plain(coat_of(view, id)), label_columns);
    for (auto day = begin; day != end; ++day) {
      page.item(label + layout::left(WallClock::date(day->day), date_columns),
                joined(day->pieces, ", "));
      label.assign(label_columns, ' ');
    }
  }
  if (!all) page.item("", fmt::format("Further days: {}.", json_has_all));
}

// --- nothing fits

namespace {

// As it is typed, and where.
std::vector<std::string> typed(const WallClock& wall, std::string_view change,
                               const std::string& value) {
  std::string shown = plain(value);
  if (change == "until" && value.find('T') != std::string::npos) {
    // Read on the shop's wall, and shorter there.
    const std::string local = time::rfc3339(instant_of(value), wall.zone());
    shown = local.substr(0, 10) + " " + local.substr(11, 5);
  }
  if (change == "heater") {
    return {"in the shop file, under [room]:", "kind = \"heated\"",
            fmt::format("heater = {{ kind = \"electric\", minimum = \"{}\" }}", shown)};
  }
  if (change == "hardener") {
    return {"in the job file, under that [[coat]]:", fmt::format("resin = \"{}\"", shown)};
  }
  return {fmt::format("--{} \"{}\"", change, shown)};
}

void add_change(layout::Page& page, const ScheduleView& view, const std::string& label,
                const SmallestChange& change) {
  constexpr std::size_t label_columns = 10;
  const std::string start = layout::left(label, label_columns), below(label_columns, ' ');
  page.item(start, plain(change.text));
  for (const std::string& type : typed(view.wall, change.change, change.value)) {
    const bool fits = layout::columns(type) + label_columns <= layout::page_columns;
    page.item(below, fits ? whole(type) : type);
  }
  page.item(below, "then finished " + whole(view.wall.full(instant_of(change.finish))));
}

}  // namespace

void add_impossible(layout::Page& page, const ScheduleView& view) {
  const ScheduleDocument& document = view.document;
  const std::string span =
      fmt::format("from {} until {}.", whole(view.wall.full(instant_of(document.horizon.from))),
                  whole(view.wall.full(instant_of(document.horizon.until))));
  if (!document.impossible) {
    if (!view.entries.empty()) return;
    page.blank();
    page.item("", "NOTHING FOUND " + span);
    page.blank();
    page.item("Why       ", document.stopped == "interrupted" ? "the search was interrupted"
                                                              : "the time for the search was up");
    return page.item("          ",
                     "there may be a schedule: --time-limit looks longer, fewer boards are found "
                     "sooner");
  }
  const Impossible& none = *document.impossible;
  page.blank();
  page.item("", "NOTHING FITS " + span);
  page.blank();
  page.item("Why       ", plain(none.why));
  if (none.change && none.value && none.text && none.finish) {
    page.blank();
    add_change(page, view, "Smallest", {*none.change, *none.value, *none.text, *none.finish});
  } else {
    page.item("Smallest  ",
              "no single change of hours, heater, hardener or time was found to help");
  }
  for (const SmallestChange& other : none.others) {
    page.blank();
    add_change(page, view, "Or", other);
  }
}

}  // namespace wetout::report
