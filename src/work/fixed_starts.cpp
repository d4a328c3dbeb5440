#include "fixed_starts.hpp"

#include <algorithm>
#include <set>
#include <utility>

#include "wetout/base/words.hpp"
#include "wetout/time/print.hpp"
#include "wetout/time/read_near.hpp"

namespace wetout::work {
namespace {

using time::Instant;

// Every name a step may be called by.
struct Names {
  std::vector<std::string> ids;
  std::vector<std::pair<std::size_t, schedule::StepName>> of;  // board and step of each

  void add(std::string name, std::size_t board, const schedule::StepName& step) {
    ids.push_back(std::move(name));
    of.emplace_back(board, step);
  }
};

base::Result<Names> names_of(const schedule::Asked& asked, const schedule::StepDefaults& defaults) {
  Names names;
  for (std::size_t b = 0; b < asked.boards.size(); ++b) {
    const auto steps = schedule::steps_of(asked.boards[b].work, asked.shop, defaults);
    if (!steps) return tl::unexpected(steps.error());
    for (const schedule::Step& step : steps->steps) {
      for (const std::string& job : {asked.boards[b].work.job + "/", std::string()}) {
        if (job.empty() && asked.boards.size() > 1) continue;
        names.add(job + to_string(step.name), b, step.name);
        if (step.is_wet()) names.add(job + step.name.coat, b, step.name);
      }
    }
  }
  return names;
}

// A job may be named by its beginning, before a slash.
std::string with_whole_job(const std::string& typed, const schedule::Asked& asked) {
  const std::size_t slash = typed.find('/');
  if (slash == std::string::npos) return typed;
  std::vector<std::string> jobs;
  for (const schedule::BoardAsked& board : asked.boards) jobs.push_back(board.work.job);
  const auto found = base::matches(typed.substr(0, slash), jobs);
  return found.size() == 1 ? jobs[found.front()] + typed.substr(slash) : typed;
}

// The one that is meant, as an index of the names.
base::Result<std::size_t> meant(const std::string& typed, const Names& names) {
  // A slash tells parts of a name apart as a hyphen does.
  const auto hyphened = [](std::string name) {
    std::replace(name.begin(), name.end(), '/', '-');
    return name;
  };
  std::vector<std::string> ids;
  for (const std::string& id : names.ids) ids.push_back(hyphened(id));
  std::vector<std::size_t> found = base::matches(hyphened(typed), ids);
  // A coat alone is its wet, though every step of it begins so.
  if (found.size() > 1) {
    std::vector<std::size_t> wets;
    for (const std::size_t i : found) {
      if (names.of[i].second.word == schedule::StepWord::wet) wets.push_back(i);
    }
    if (typed.find('/') == std::string::npos || !wets.empty()) found = wets;
  }
  std::set<std::pair<std::size_t, std::string>> different;
  for (const std::size_t i : found) {
    different.emplace(names.of[i].first, to_string(names.of[i].second));
  }
  if (different.size() == 1) return found.front();
  if (different.empty()) {
    const auto near = base::nearest(typed, names.ids);
    return base::fail({.code = "step.unknown",
                       .message = "there is no such step",
                       .key = "--fix",
                       .found = typed,
                       .expected = "a step such as \"" + names.ids.front() + "\"",
                       .hint = near ? "did you mean \"" + *near + "\"?" : ""});
  }
  std::string list;
  for (const auto& [board, name] : different) list += (list.empty() ? "" : ", ") + name;
  return base::fail({.code = "step.ambiguous",
                     .message = "several steps begin so",
                     .key = "--fix",
                     .found = typed,
                     .expected = list});
}

base::Result<Instant> when(const std::string& text, Instant now, const schedule::Asked& asked) {
  auto at = time::read_near(text, asked.zone, now, time::Side::coming);
  if (!at) {
    for (base::Problem& problem : at.error()) problem.key = "--fix";
    return at;
  }
  if (*at >= asked.from && *at < asked.until) return at;
  return base::fail({.code = "fix.outside",
                     .message = "this start lies outside the time that is planned",
                     .key = "--fix",
                     .found = time::print_wall(*at, asked.zone),
                     .expected = time::print_wall(asked.from, asked.zone) + " to " +
                                 time::print_wall(asked.until, asked.zone)});
}

}  // namespace

base::Problems read_fixed_starts(const std::vector<std::string>& texts, Instant now,
                                 const schedule::StepDefaults& defaults, schedule::Asked& asked) {
  if (texts.empty()) return {};
  const auto names = names_of(asked, defaults);
  if (!names) return names.error();
  base::Problems problems;
  const auto wrong = [&](const base::Problems& more) {
    problems.insert(problems.end(), more.begin(), more.end());
  };
  for (const std::string& text : texts) {
    const std::size_t equals = text.find('=');
    if (equals == std::string::npos || equals == 0) {
      wrong({{.code = "fix.bad",
              .message = "a fixed start is a step, an equals sign and a time",
              .key = "--fix",
              .found = text,
              .expected = "e.g. \"deck-lam=2026-06-14 18:30\""}});
      continue;
    }
    const auto at = when(text.substr(equals + 1), now, asked);
    if (!at) wrong(at.error());
    const auto step = meant(with_whole_job(text.substr(0, equals), asked), *names);
    if (!step) wrong(step.error());
    if (!at || !step) continue;
    const auto& [board, name] = names->of[*step];
    asked.boards[board].fixed.push_back({name, *at});
  }
  return problems;
}

}  // namespace wetout::work
