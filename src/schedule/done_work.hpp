// What has been done, as far as it still stands in the way of what has not: films, stands, dust.
#pragma once

#include <optional>
#include <vector>

#include "wetout/schedule/setting.hpp"

namespace wetout::schedule {

struct DoneWork {
  std::vector<std::vector<std::optional<FilmSpans>>> films;  ///< of each wet that was done
  /// Of each of them. A board stands once, however many of its films are soft; and where more
  /// boards stand than there are stands for, those hold them that do so longest.
  std::vector<std::vector<bool>> holds_stand;
  int lying = 0;         ///< boards that can be handled and wait for a coat
  double settled_s = 0;  ///< seconds after the grid's origin at which all dust has settled
};

DoneWork done_work(const Setting& setting);

}  // namespace wetout::schedule
