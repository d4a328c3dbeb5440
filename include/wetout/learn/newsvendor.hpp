// How much more than expected to mix.
#pragma once

#include "wetout/learn/robust_fit.hpp"

namespace wetout::learn {

/// The share of cases that should be enough, when one unit too little costs `short_cost` and one
/// too many `left_cost`: short_cost / (short_cost + left_cost). Both not negative, not both zero.
/// Source: Arrow, Harris and Marschak 1951 [arrow1951].
double critical_ratio(double short_cost, double left_cost);

/// How much to have where running short costs `short_cost`, however little is lacking, and a unit
/// left over `left_cost`: the quantity, not below what is expected, at which the last unit costs as
/// much as it saves,
///
///     short_cost · density = left_cost · chance that it is enough.
///
/// Both costs above zero. Accuracy 1e-9 of the spread.
double best_quantity(const Prediction& demand, double short_cost, double left_cost);

}  // namespace wetout::learn
