#include "wetout/schedule/step_word.hpp"

namespace wetout::schedule {
namespace {

constexpr std::array<std::string_view, step_word_count> words = {
    "acclimatise", "spackle", "artwork", "prepare", "wet",  "watch", "trim",   "peel",  "flip",
    "feather",     "wash",    "scuff",   "open",    "sand", "spot",  "polish", "weigh", "ride"};

// "scuff-laps" is scuff, with "laps".
bool read_word(std::string_view text, StepName& name) {
  const std::size_t hyphen = text.find('-');
  const auto word = read_step_word(text.substr(0, hyphen));
  if (!word) return false;
  name.word = *word;
  if (hyphen != std::string_view::npos) name.detail = text.substr(hyphen + 1);
  return hyphen == std::string_view::npos || !name.detail.empty();
}

}  // namespace

std::string_view to_string(StepWord word) { return words[static_cast<std::size_t>(word)]; }

std::optional<StepWord> read_step_word(std::string_view text) {
  for (const StepWord word : step_words) {
    if (to_string(word) == text) return word;
  }
  return std::nullopt;
}

bool is_of_board(StepWord word) {
  switch (word) {
    case StepWord::acclimatise:
    case StepWord::spackle:
    case StepWord::artwork:
    case StepWord::spot:
    case StepWord::weigh:
    case StepWord::ride:
      return true;
    default:
      return false;
  }
}

bool has_own_pace(StepWord word) {
  switch (word) {
    case StepWord::prepare:
    case StepWord::trim:
    case StepWord::feather:
    case StepWord::wash:
    case StepWord::scuff:
    case StepWord::open:
    case StepWord::sand:
    case StepWord::polish:
      return true;
    default:
      return false;
  }
}

std::string to_string(const StepName& name) {
  std::string text = name.coat.empty() ? "" : name.coat + "/";
  text += to_string(name.word);
  if (!name.detail.empty()) text += "-" + name.detail;
  return text;
}

std::optional<StepName> read_step_name(std::string_view text) {
  StepName name;
  const std::size_t slash = text.find('/');
  if (slash == std::string_view::npos) {
    if (read_word(text, name) && is_of_board(name.word)) return name;
    if (text.empty()) return std::nullopt;
    return StepName{std::string(text), StepWord::wet, ""};
  }
  name.coat = text.substr(0, slash);
  if (name.coat.empty() || !read_word(text.substr(slash + 1), name)) return std::nullopt;
  if (is_of_board(name.word)) return std::nullopt;
  return name;
}

}  // namespace wetout::schedule
