#include "wetout/base/check.hpp"

#include <stdexcept>
#include <string>

namespace wetout::base {

void broken_promise(std::string_view what) {
  throw std::logic_error("bug in wetout: " + std::string(what));
}

}  // namespace wetout::base
