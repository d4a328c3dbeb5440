// Lists of coats with everything in them, the same on every machine.
#pragma once

#include <cstdint>
#include <vector>

#include "search/random_problem.hpp"
#include "wetout/laminate/coat.hpp"

namespace wetout::schedule::sample {

using search::test::Random;

/// One to about ten coats on one or both faces, in an order that can be gone on in.
std::vector<laminate::CoatSpec> random_coats(Random& random);

}  // namespace wetout::schedule::sample
