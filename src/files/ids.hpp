// Ids: given or made from the name, slugs, never the same twice.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>

#include "fields.hpp"

namespace wetout::files {

struct Named {
  std::string id;    ///< empty when there is none to be had; a problem says why
  std::string name;  ///< the id when no name is given
};

/// Reads `id` and `name`. One of the two must be there unless `may_be_unnamed`.
Named read_named(Fields& fields, std::string_view example, bool may_be_unnamed = false);

/// Ids of things that must differ from each other.
class Ids {
 public:
  /// `what` for messages: "coat".
  explicit Ids(std::string_view what) : what_(what) {}
  /// False, with a problem that names both lines, when the id is taken.
  bool add(Fields& fields, const std::string& id);
  [[nodiscard]] bool has(const std::string& id) const { return lines_.contains(id); }

 private:
  std::string_view what_;
  std::unordered_map<std::string, int> lines_;
};

/// The nearest of `candidates` as a question, or nothing; not among thousands, where it would be
/// slow and little help.
std::string did_you_mean(std::string_view typed, const std::vector<std::string>& candidates);
/// "quart, bucket", cut when there are many; `otherwise` when there are none.
std::string listed(const std::vector<std::string>& candidates, std::string_view otherwise);

}  // namespace wetout::files
