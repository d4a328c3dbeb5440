#include "wetout/learn/newsvendor.hpp"

#include "wetout/base/check.hpp"

namespace wetout::learn {

double critical_ratio(double short_cost, double left_cost) {
  base::promise(short_cost >= 0.0 && left_cost >= 0.0 && short_cost + left_cost > 0.0,
                "costs are not negative, and one is above zero");
  return short_cost / (short_cost + left_cost);
}

}  // namespace wetout::learn
