// What an exception that reached the top means for the user.
#pragma once

#include <exception>

#include "wetout/base/problem.hpp"

namespace wetout::cli {

/// base::EnvironmentError with its word and hint, std::logic_error as a bug in wetout, anything
/// else by what it says. All of them end the program with exit_environment.
base::Problem trouble(const std::exception_ptr& thrown);

}  // namespace wetout::cli
