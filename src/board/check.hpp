// Is this a board? Everything that is wrong with a spec, at once.
#pragma once

#include "wetout/base/problem.hpp"
#include "wetout/board/spec.hpp"

namespace wetout::board {

/// Problems that can be seen without building the shape. Empty: Form may be built.
base::Problems check(const Spec& spec);

class Form;
/// Problems of the built shape: thickness above width.
base::Problems check(const Spec& spec, const Form& form);

}  // namespace wetout::board
