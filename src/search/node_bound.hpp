// The value that no schedule within some domains goes below.
#pragma once

#include "domains.hpp"

namespace wetout::search {

/// Lexicographic lower bound of the whole value: additive part, starts, choices, term by term.
Value node_bound(const Model& model, const Propagator& propagator, const Domains& domains);

/// The whole value when every operation that takes place starts at its first open start. Every
/// choice that matters is taken.
Value value_at_first(const Model& model, const Domains& domains);

}  // namespace wetout::search
