#include "say.hpp"

#include "wetout/base/shown.hpp"

namespace wetout::files {

std::string enclosed(std::string_view text, char mark) {
  std::string out(1, mark);
  out.append(text).push_back(mark);
  return out;
}

std::string quoted(std::string_view typed) { return enclosed(base::shown(typed), '"'); }

}  // namespace wetout::files
