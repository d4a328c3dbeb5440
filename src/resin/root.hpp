// A root between two points (Illinois: dowell1971).
#pragma once

#include <cmath>

namespace wetout::resin {

/// `fa` and `fb` of opposite sign (or already within `met`): x with |f(x)| <= met, or the last of
/// 60 tries.
template <class F>
double root(double a, double fa, double b, double fb, double met, F&& f) {
  if (std::abs(fa) <= met) return a;
  if (std::abs(fb) <= met) return b;
  for (int i = 0; i < 60; ++i) {
    const double c = b - fb * (b - a) / (fb - fa);
    const double fc = f(c);
    if ((fc < 0.0) == (fb < 0.0)) {
      fa *= 0.5;
    } else {
      a = b;
      fa = fb;
    }
    b = c;
    fb = fc;
    if (std::abs(fc) <= met) break;
  }
  return b;
}

}  // namespace wetout::resin
