#include "wetout/base/words.hpp"

#include <algorithm>
#include <cstddef>

namespace wetout::base {
namespace {

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

bool is_word(char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'); }

// Optimal string alignment: the slips of a hand on a keyboard. Three rows of its table at a time.
std::size_t edits(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replace = last[j - 1] + (lower(a[i - 1]) == lower(b[j - 1]) ? 0 : 1);
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, replace});
      if (i > 1 && j > 1 && lower(a[i - 1]) == lower(b[j - 2]) &&
          lower(a[i - 2]) == lower(b[j - 1])) {
        row[j] = std::min(row[j], before[j - 2] + 1);
      }
    }
    before.swap(last);
    last.swap(row);
  }
  return last[b.size()];
}

}  // namespace

std::optional<std::string> nearest(std::string_view typed,
                                   const std::vector<std::string>& candidates) {
  // A pasted page is no slip of the hand, and the table of edits grows with its length.
  constexpr std::size_t longest_slip = 80;
  if (typed.empty() || typed.size() > longest_slip) return std::nullopt;
  std::optional<std::string> best;
  std::size_t best_edits = std::max<std::size_t>(1, typed.size() / 3) + 1;
  for (const std::string& candidate : candidates) {
    // As many letters must be put in or left out as the lengths differ.
    const std::size_t apart =
        std::max(typed.size(), candidate.size()) - std::min(typed.size(), candidate.size());
    if (apart >= best_edits) continue;
    const std::size_t n = edits(typed, candidate);
    if (n < best_edits) {
      best_edits = n;
      best = candidate;
    }
  }
  return best;
}

std::string slug(std::string_view name) {
  std::string out;
  for (const char raw : name) {
    const char c = lower(raw);
    if (is_word(c)) {
      out += c;
    } else if (!out.empty() && out.back() != '-') {
      out += '-';
    }
  }
  while (!out.empty() && out.back() == '-') out.pop_back();
  return out;
}

bool is_slug(std::string_view id) { return !id.empty() && id.size() <= 64 && slug(id) == id; }

const std::vector<std::string>& reserved_words() {
  static const std::vector<std::string> words = {"list",    "show", "diff",  "rename",
                                                 "archive", "undo", "import"};
  return words;
}

bool is_reserved(std::string_view id) {
  const std::vector<std::string>& words = reserved_words();
  return std::find(words.begin(), words.end(), id) != words.end();
}

std::vector<std::size_t> matches(std::string_view typed, const std::vector<std::string>& ids) {
  const std::string wanted = slug(typed);
  std::vector<std::size_t> found;
  if (wanted.empty()) return found;
  for (std::size_t i = 0; i < ids.size(); ++i) {
    if (ids[i] == wanted) return {i};
    if (std::string_view(ids[i]).substr(0, wanted.size()) == wanted) found.push_back(i);
  }
  return found;
}

}  // namespace wetout::base
