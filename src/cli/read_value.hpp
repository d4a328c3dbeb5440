// Whether a value is what its argument asks for.
#pragma once

#include <string>
#include <string_view>

#include "describe.hpp"
#include "wetout/base/problem.hpp"

namespace wetout::cli {

/// "3": whole, from 1 to 1 000 000. Code "count.bad".
base::Result<int> read_count(std::string_view text);

/// What is wrong with `text` as a value of `argument`; empty when nothing is.
base::Problems check_value(const Argument& argument, std::string_view text);

/// What a value of `argument` should be, with an example.
std::string expected(const Argument& argument);

/// Names the argument that a reader's problem belongs to.
void place(base::Problem& problem, std::string_view name);

}  // namespace wetout::cli
