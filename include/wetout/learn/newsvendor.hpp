// How much more than expected to mix.
#pragma once

namespace wetout::learn {

/// The share of cases that should be enough, when one unit too little costs `short_cost` and one
/// too many `left_cost`: short_cost / (short_cost + left_cost). Both not negative, not both zero.
/// Source: Arrow, Harris and Marschak 1951 [arrow1951].
double critical_ratio(double short_cost, double left_cost);

}  // namespace wetout::learn
