// Words typed by people: near misses, ids made from names, loose matching.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wetout::base {

/// The candidate nearest to `typed` by edits (insert, delete, replace, swap of neighbours), or
/// nothing when even the nearest is more than a third of the word away.
std::optional<std::string> nearest(std::string_view typed,
                                   const std::vector<std::string>& candidates);

/// "Bottom Lam #2" -> "bottom-lam-2": a-z, 0-9 and single hyphens. Empty when nothing is left.
std::string slug(std::string_view name);

/// True when `id` is what slug() can return and is not longer than 64 characters.
bool is_slug(std::string_view id);

/// Words that follow a command in the same place as an id, and so cannot be one.
const std::vector<std::string>& reserved_words();
bool is_reserved(std::string_view id);

/// Indices of the ids that `typed` may mean: an exact match alone, else every id that begins with
/// it; case, spaces, underscores and hyphens are equal.
std::vector<std::size_t> matches(std::string_view typed, const std::vector<std::string>& ids);

}  // namespace wetout::base
