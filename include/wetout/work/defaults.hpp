// What an action takes for granted where nobody names a board.
#pragma once

#include "wetout/base/cited.hpp"
#include "wetout/units/quantity.hpp"

namespace wetout::work {

struct WorkDefaults {
  using S = base::Standing;

  base::Default<units::Duration> wet_out{
      "weather.wet_out",
      units::minutes(30),
      units::minutes(10),
      units::minutes(90),
      {"", "one laminate, from the start to spread", S::assumed}};
  base::Default<units::Length> core_thickness{"weather.core_thickness",
                                              units::millimetres(60),
                                              units::millimetres(45),
                                              units::millimetres(80),
                                              {"", "a board's middle", S::assumed}};
};

}  // namespace wetout::work
