#include "record_step.hpp"

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

#include "wetout/base/words.hpp"

namespace wetout::work {
namespace {

using schedule::StepName;
using schedule::StepWord;

std::string listed(const std::vector<std::string>& words) {
  std::string list;
  for (const std::string& word : words) list += (list.empty() ? "" : ", ") + word;
  return list;
}

std::vector<std::string> board_words() {
  std::vector<std::string> words;
  for (const StepWord word : schedule::step_words) {
    if (schedule::is_of_board(word)) words.emplace_back(schedule::to_string(word));
  }
  return words;
}

std::vector<std::string> coat_words() {
  std::vector<std::string> words;
  for (const StepWord word : schedule::step_words) {
    if (!schedule::is_of_board(word)) words.emplace_back(schedule::to_string(word));
  }
  return words;
}

std::vector<std::string> coats_of(const JobOfRecord& job) {
  std::vector<std::string> ids;
  if (!job.plan) return ids;
  for (const laminate::CoatNeed& coat : job.plan->plan.coats) ids.push_back(coat.id);
  return ids;
}

base::Result<std::string> one_of(std::string_view typed, const std::vector<std::string>& words,
                                 std::string_view kind, const std::string& unknown) {
  const std::vector<std::size_t> found = base::matches(typed, words);
  if (found.size() == 1) return words[found.front()];
  std::vector<std::string> choices;
  for (const std::size_t i : found) choices.push_back(words[i]);
  if (found.empty()) choices = words;
  const auto near = base::nearest(base::slug(typed), words);
  return base::fail({.code = std::string(kind) + (found.empty() ? ".unknown" : ".ambiguous"),
                     .message = found.empty()
                                    ? unknown
                                    : "more than one " + std::string(kind) + " begins like that",
                     .key = "STEP",
                     .found = std::string(typed),
                     .expected = "one of: " + listed(choices),
                     .hint = found.empty() && near ? "did you mean \"" + *near + "\"?" : ""});
}

base::Result<std::string> coat_meant(const JobOfRecord& job, std::string_view typed) {
  if (job.plan) {
    return one_of(typed, coats_of(job), "coat", "the plan of " + job.slug + " has no such coat");
  }
  std::string slug = base::slug(typed);
  if (base::is_slug(slug)) return slug;
  return base::fail({.code = "coat.unknown",
                     .message = "this cannot be the name of a coat",
                     .key = "STEP",
                     .found = std::string(typed),
                     .expected = "letters a-z, digits and hyphens, e.g. \"bottom-lam\""});
}

// What may stand behind a word: minutes of a watch, and what a schedule calls its steps.
bool is_detail(StepWord word, std::string_view detail) {
  switch (word) {
    case StepWord::watch:
      return detail.size() <= 3 && detail.find_first_not_of("0123456789") == std::string_view::npos;
    case StepWord::scuff:
      return detail == "laps";
    case StepWord::feather:
      return detail == "edge";
    case StepWord::wash:
      return detail == "sand";
    default:
      return false;
  }
}

bool is_scheduled(const JobOfRecord& job, const StepName& step) {
  if (!job.steps) return false;
  return std::any_of(job.steps->begin(), job.steps->end(), [&](const joblog::ScheduledStep& one) {
    return one.step == schedule::to_string(step);
  });
}

// "trim", "wat-30", "scuff laps".
base::Result<StepName> word_meant(const JobOfRecord& job, const std::string& coat,
                                  std::string_view typed) {
  const std::string slug = base::slug(typed);
  const std::size_t hyphen = slug.find('-');
  const std::string_view bare = std::string_view(slug).substr(0, hyphen);
  if (const auto board = schedule::read_step_word(bare); board && schedule::is_of_board(*board)) {
    return base::fail({.code = "step.unknown",
                       .message = std::string(bare) + " is done to the whole board, not to a coat",
                       .key = "STEP",
                       .found = coat + "/" + std::string(typed),
                       .expected = std::string(bare)});
  }
  auto word = one_of(bare, coat_words(), "step", "there is no such step of a coat");
  if (!word) {
    for (base::Problem& problem : word.error()) problem.found = typed;
    return tl::unexpected(word.error());
  }
  StepName step{coat, schedule::read_step_word(*word).value(), ""};
  if (hyphen == std::string::npos) return step;
  step.detail = slug.substr(hyphen + 1);
  if (is_detail(step.word, step.detail) || is_scheduled(job, step)) return step;
  return base::fail({.code = "step.unknown",
                     .message = "there is no such " + *word,
                     .key = "STEP",
                     .found = std::string(typed),
                     .expected = step.word == StepWord::watch ? "watch-15, watch-30, watch-60"
                                                              : std::string(*word)});
}

// A word alone: of the board, or a coat, which is then its wet.
base::Result<StepName> alone(const JobOfRecord& job, std::string_view typed) {
  const std::string slug = base::slug(typed);
  if (const auto word = schedule::read_step_word(slug); word && schedule::is_of_board(*word)) {
    return StepName{"", *word, ""};
  }
  if (!job.plan) {
    auto coat = coat_meant(job, typed);
    if (!coat) return tl::unexpected(coat.error());
    return StepName{std::move(*coat), StepWord::wet, ""};
  }
  std::vector<std::string> all = coats_of(job);
  const std::size_t coats = all.size();
  for (std::string& word : board_words()) all.push_back(std::move(word));
  const std::vector<std::size_t> found = base::matches(typed, all);
  if (found.size() == 1 && found.front() >= coats) {
    return StepName{"", schedule::read_step_word(all[found.front()]).value(), ""};
  }
  auto coat = one_of(typed, all, "coat", "the plan of " + job.slug + " has no such coat or step");
  if (!coat) {
    const auto word = schedule::read_step_word(slug);
    for (base::Problem& problem : coat.error()) {
      if (word) problem.hint = "say of which coat: " + all.front() + "/" + slug;
    }
    return tl::unexpected(coat.error());
  }
  return StepName{std::move(*coat), StepWord::wet, ""};
}

}  // namespace

base::Result<StepName> step_meant(const JobOfRecord& job, std::string_view typed) {
  const std::size_t slash = typed.find('/');
  if (slash == std::string_view::npos) return alone(job, typed);
  const std::string_view first = typed.substr(0, slash);
  const std::string_view rest = typed.substr(slash + 1);
  // "sandpiper/weigh", "sandpiper/bottom-lam/trim": the job once more.
  if (base::slug(first) == job.slug) return step_meant(job, rest);
  auto coat = coat_meant(job, first);
  if (!coat) return tl::unexpected(coat.error());
  return word_meant(job, *coat, rest);
}

const laminate::CoatNeed* coat_of(const JobOfRecord& job, const StepName& step) {
  if (!job.plan || step.coat.empty()) return nullptr;
  for (const laminate::CoatNeed& coat : job.plan->plan.coats) {
    if (coat.id == step.coat) return &coat;
  }
  return nullptr;
}

}  // namespace wetout::work
