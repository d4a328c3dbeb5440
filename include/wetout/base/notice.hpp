// Something true and worth knowing about a result that is still usable.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace wetout::base {

/// `text` holds no quantity: `value` and `limit`, in `unit` (an SI-style word such as "m", "g",
/// "min", "C", ""), are printed beside it in the reader's units, so that a stored document can be
/// printed in either system.
struct Notice {
  std::string code = {};     ///< stable word for programs, e.g. "cloth.narrow"
  std::string text = {};     ///< one sentence for people, without quantities
  std::string subject = {};  ///< id of the coat, ply, resin ... concerned; may be empty
  std::optional<double> value = {};
  std::optional<double> limit = {};
  std::string unit = {};

  friend bool operator==(const Notice&, const Notice&) = default;
};

using Notices = std::vector<Notice>;

}  // namespace wetout::base
