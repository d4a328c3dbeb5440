// What a reader said when it refused, for EXPECT_EQ.
#pragma once

#include <string>

#include "wetout/base/problem.hpp"

namespace wetout::units {

template <class T>
base::Problem refusal(const base::Result<T>& result) {
  if (result) return {.code = "(read)"};
  return result.error().at(0);
}

template <class T>
std::string code_of(const base::Result<T>& result) {
  return refusal(result).code;
}

}  // namespace wetout::units
