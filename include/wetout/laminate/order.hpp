// Which coat may follow which.
#pragma once

#include <cstddef>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/laminate/coat.hpp"

namespace wetout::laminate {

/// Indices of the coats in the order they go on. Within a face coats keep file order; every
/// laminate of both faces precedes the first hotcoat or gloss, unless `after` puts it later;
/// `after` is obeyed. Coats that are free of each other keep file order. Problems:
/// "coat.after_unknown", "coat.order_loop" (names every coat of the loop), keys "coat[i].after".
base::Result<std::vector<std::size_t>> order_of_coats(const std::vector<CoatSpec>& coats);

}  // namespace wetout::laminate
