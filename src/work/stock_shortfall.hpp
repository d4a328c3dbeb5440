// What runs short of a material, and when: needs in the order of their time, lots as booking would
// take them.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "wetout/joblog/stock.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::work {

/// Something a board still needs.
struct OpenNeed {
  std::string material;  ///< slug
  joblog::MaterialUnit unit = joblog::MaterialUnit::milligram;
  std::int64_t quantity = 0;  ///< above zero
  std::string job;            ///< slug
  std::string coat;           ///< id
  /// When the coat is to be done; nothing where no schedule says.
  std::optional<time::Instant> when;
};

struct Shortfall {
  std::int64_t planned = 0;       ///< of all needs
  std::int64_t missing = 0;       ///< what the shelf has not for them
  std::optional<OpenNeed> first;  ///< the first need that is not met in full
  std::vector<std::string> jobs;  ///< that something is missing for, by their first need
};

/// Needs without a time come first: their board has been begun. A lot counts up to its last day, on
/// the clock of the shop; a need whose time has passed is of `now`. What lots are overdrawn by is
/// taken from the others first; below nothing there is nothing.
Shortfall shortfall(const std::vector<joblog::LotStock>& lots, std::vector<OpenNeed> needs,
                    time::Instant now, const time::Zone& zone);

}  // namespace wetout::work
