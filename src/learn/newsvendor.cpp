#include "wetout/learn/newsvendor.hpp"

#include <boost/math/distributions/students_t.hpp>
#include <boost/math/tools/roots.hpp>

#include "wetout/base/check.hpp"

namespace wetout::learn {

double critical_ratio(double short_cost, double left_cost) {
  base::promise(short_cost >= 0.0 && left_cost >= 0.0 && short_cost + left_cost > 0.0,
                "costs are not negative, and one is above zero");
  return short_cost / (short_cost + left_cost);
}

double best_quantity(const Prediction& demand, double short_cost, double left_cost) {
  base::promise(short_cost > 0.0 && left_cost > 0.0, "both costs are above zero");
  const boost::math::students_t student(demand.freedom);
  // What one more unit saves, less what it costs; falls from the middle on.
  const auto gain = [&](double z) {
    return short_cost * pdf(student, z) / demand.spread - left_cost * cdf(student, z);
  };
  if (gain(0.0) <= 0.0) return demand.value;
  double high = 1.0;
  while (gain(high) > 0.0) high *= 2.0;
  const auto [below, above] =
      boost::math::tools::bisect(gain, 0.0, high, [](double a, double b) { return b - a < 1e-10; });
  return demand.value + demand.spread * (below + above) / 2.0;
}

}  // namespace wetout::learn
