// What was recorded of each coat, in terms of its materials.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "wetout/joblog/events.hpp"
#include "wetout/laminate/plan.hpp"
#include "wetout/units/milligrams.hpp"

namespace wetout::work {

struct CoatFacts {
  std::map<std::string, std::int64_t> mixed;  ///< by material, milligrams
  units::Milligrams mixed_in_all, left, spilled;
  bool done = false;  ///< said so, or something was done that comes after it
};

/// By coat, of events that were not taken back. Resin that is mixed to fill pinholes is no coat's.
/// What was mixed without its parts, or above them, is shared as planned.
std::map<std::string, CoatFacts> coat_facts(const std::vector<joblog::EventRow>& events,
                                            const laminate::Plan& plan);

/// True when work on the board has begun: something was mixed, started or done.
bool has_begun(const std::vector<joblog::EventRow>& events);

}  // namespace wetout::work
