#include "quadrature.hpp"

#include <math.h>

#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/quadrature/gauss_kronrod.hpp>

namespace wetout::board {
namespace {

template <std::size_t n>
Rule<n> make_rule() {
  using Kronrod = boost::math::quadrature::gauss_kronrod<double, n>;
  using Gauss = boost::math::quadrature::gauss<double, n / 2>;
  constexpr std::size_t middle = n / 2;
  // Both tables go from the middle outward; Gauss' points are every second of Kronrod's, and the
  // middle is one of them when their number is odd.
  constexpr std::size_t first = middle % 2 == 1 ? 0 : 1;
  Rule<n> rule{};
  for (std::size_t i = 0; i <= middle; ++i) {
    const double t = Kronrod::abscissa()[i] / 2.0;
    const double fine = Kronrod::weights()[i] / 2.0;
    const double coarse =
        i >= first && (i - first) % 2 == 0 ? Gauss::weights()[(i - first) / 2] / 2.0 : 0.0;
    rule.at[middle - i] = 0.5 - t;
    rule.at[middle + i] = 0.5 + t;
    rule.fine[middle - i] = rule.fine[middle + i] = fine;
    rule.coarse[middle - i] = rule.coarse[middle + i] = coarse;
  }
  return rule;
}

}  // namespace

const Rule<rule_size>& gauss_kronrod() {
  static const Rule<rule_size> rule = make_rule<rule_size>();
  return rule;
}

const Rule<small_size>& small_gauss_kronrod() {
  static const Rule<small_size> rule = make_rule<small_size>();
  return rule;
}

}  // namespace wetout::board
