// Gauss-Legendre quadrature on one panel (nodes and weights: abramowitz1964, table 25.4).
#pragma once

namespace wetout::resin {

/// Exact for polynomials of degree 7.
template <class F>
double gauss4(double a, double b, F&& f) {
  const double half = 0.5 * (b - a);
  const double middle = 0.5 * (a + b);
  constexpr double x1 = 0.33998104358485626, x2 = 0.86113631159405258;
  constexpr double w1 = 0.65214515486254614, w2 = 0.34785484513745386;
  return half * (w1 * (f(middle - half * x1) + f(middle + half * x1)) +
                 w2 * (f(middle - half * x2) + f(middle + half * x2)));
}

/// Exact for polynomials of degree 9.
template <class F>
double gauss5(double a, double b, F&& f) {
  const double half = 0.5 * (b - a);
  const double middle = 0.5 * (a + b);
  constexpr double x1 = 0.53846931010568309, x2 = 0.90617984593866399;
  constexpr double w0 = 0.56888888888888889, w1 = 0.47862867049936647, w2 = 0.23692688505618909;
  return half * (w0 * f(middle) + w1 * (f(middle - half * x1) + f(middle + half * x1)) +
                 w2 * (f(middle - half * x2) + f(middle + half * x2)));
}

}  // namespace wetout::resin
