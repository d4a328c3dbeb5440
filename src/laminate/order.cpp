#include "wetout/laminate/order.hpp"

#include <algorithm>
#include <string>

#include "wetout/base/words.hpp"

namespace wetout::laminate {
namespace {

using Matrix = std::vector<std::vector<bool>>;  // before[i][j]: i precedes j

bool is_film(CoatKind kind) { return kind == CoatKind::hotcoat || kind == CoatKind::gloss; }

std::string key_of(std::size_t i) { return "coat[" + std::to_string(i) + "].after"; }

// What `after` says, closed under "and what that comes after".
base::Result<Matrix> wishes(const std::vector<CoatSpec>& coats) {
  const std::size_t n = coats.size();
  std::vector<std::string> ids;
  for (const CoatSpec& coat : coats) ids.push_back(coat.id);
  Matrix before(n, std::vector<bool>(n, false));
  base::Problems problems;
  for (std::size_t j = 0; j < n; ++j) {
    for (const std::string& wanted : coats[j].after) {
      const auto found = std::find(ids.begin(), ids.end(), wanted);
      if (found == ids.end()) {
        const auto near = base::nearest(wanted, ids);
        problems.push_back({.code = "coat.after_unknown",
                            .message = "no coat of this board is called \"" + wanted + "\"",
                            .key = key_of(j),
                            .found = wanted,
                            .expected = "the name of another coat of this file",
                            .hint = near ? "did you mean \"" + *near + "\"?" : ""});
        continue;
      }
      before[static_cast<std::size_t>(found - ids.begin())][j] = true;
    }
  }
  if (!problems.empty()) return base::fail(std::move(problems));
  for (std::size_t k = 0; k < n; ++k) {
    for (std::size_t i = 0; i < n; ++i) {
      for (std::size_t j = 0; j < n; ++j) {
        if (before[i][k] && before[k][j]) before[i][j] = true;
      }
    }
  }
  return before;
}

}  // namespace

base::Result<std::vector<std::size_t>> order_of_coats(const std::vector<CoatSpec>& coats) {
  const std::size_t n = coats.size();
  const auto wished = wishes(coats);
  if (!wished) return tl::unexpected(wished.error());
  Matrix before = *wished;
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = i + 1; j < n; ++j) {
      if (coats[i].face == coats[j].face) before[i][j] = true;
    }
  }
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = 0; j < n; ++j) {
      const bool rule = coats[i].kind == CoatKind::laminate && is_film(coats[j].kind);
      // Within a face the file's order stands; across faces `after` may say otherwise.
      if (rule && coats[i].face != coats[j].face && !(*wished)[j][i]) before[i][j] = true;
    }
  }

  std::vector<std::size_t> order;
  std::vector<bool> done(n, false);
  while (order.size() < n) {
    std::size_t next = n;
    for (std::size_t j = 0; j < n && next == n; ++j) {
      if (done[j]) continue;
      bool free = true;
      for (std::size_t i = 0; i < n && free; ++i) free = done[i] || !before[i][j];
      if (free) next = j;
    }
    if (next == n) {
      std::string loop;
      std::size_t first = n;
      for (std::size_t j = 0; j < n; ++j) {
        if (done[j]) continue;
        if (first == n || (coats[first].after.empty() && !coats[j].after.empty())) first = j;
        loop += (loop.empty() ? "" : ", ") + coats[j].id;
      }
      return base::fail({.code = "coat.order_loop",
                         .message = "these coats wait for each other: " + loop,
                         .key = key_of(first),
                         .found = coats[first].after.empty()
                                      ? coats[first].id
                                      : "after " + coats[first].after.front(),
                         .expected = "an order in which each coat can go on: within a face file "
                                     "order, laminates of both faces before hotcoats, then `after`",
                         .hint = "move a coat in the file, or take one `after` away"});
    }
    done[next] = true;
    order.push_back(next);
  }
  return order;
}

}  // namespace wetout::laminate
