// Boards that share people, stands, racks and a room, as an integer program in GLPK (libglpk-dev,
// for tests only). One binary for each step, start and person; one for each option.
#pragma once

#include <cstdint>
#include <optional>

#include "wetout/schedule/setting.hpp"

namespace wetout::schedule::sample {

/// The least total of the slots at which the last steps of the boards end; 0 for a board of which
/// nothing is left. Nothing where nothing keeps the rules.
std::optional<std::int64_t> least_total(const Setting& setting);

}  // namespace wetout::schedule::sample
