#include "wetout/base/cited.hpp"

#include "wetout/base/check.hpp"

namespace wetout::base {

std::string_view to_string(Standing standing) {
  switch (standing) {
    case Standing::standard:
      return "standard";
    case Standing::practice:
      return "practice";
    case Standing::memory:
      return "memory";
    case Standing::assumed:
      return "assumed";
    case Standing::sheet:
      return "sheet";
    case Standing::fitted:
      return "fitted";
    case Standing::demo:
      return "demo";
  }
  broken_promise("standing outside its list");
}

}  // namespace wetout::base
