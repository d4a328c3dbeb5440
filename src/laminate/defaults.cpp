#include "wetout/laminate/defaults.hpp"

namespace wetout::laminate {

const Defaults& defaults() {
  static const Defaults values;
  return values;
}

std::string_view model_version() { return "3"; }

}  // namespace wetout::laminate
