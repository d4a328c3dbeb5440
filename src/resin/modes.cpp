#include "modes.hpp"

#include <cmath>

#include "wetout/base/check.hpp"

namespace wetout::resin {
namespace {

// Jacobi's rotations (golub2013, section 8.5): eigenvalues of a symmetric matrix stay on its
// diagonal, eigenvectors in the columns of `vectors`. Chains are short, and known once a cup.
void diagonalise(std::size_t n, std::vector<double>& a, std::vector<double>& vectors) {
  vectors.assign(n * n, 0.0);
  for (std::size_t i = 0; i < n; ++i) vectors[i * n + i] = 1.0;
  for (int sweep = 0; sweep < 60; ++sweep) {
    double off = 0.0, on = 0.0;
    for (std::size_t i = 0; i < n; ++i) {
      on += a[i * n + i] * a[i * n + i];
      for (std::size_t j = i + 1; j < n; ++j) off += a[i * n + j] * a[i * n + j];
    }
    if (off <= 1e-30 * on) return;
    for (std::size_t p = 0; p + 1 < n; ++p) {
      for (std::size_t q = p + 1; q < n; ++q) {
        const double apq = a[p * n + q];
        if (apq == 0.0) continue;
        const double theta = 0.5 * (a[q * n + q] - a[p * n + p]) / apq;
        const double t = (theta < 0.0 ? -1.0 : 1.0) / (std::abs(theta) + std::hypot(theta, 1.0));
        const double c = 1.0 / std::hypot(t, 1.0), s = t * c;
        for (std::size_t k = 0; k < n; ++k) {
          const double x = a[k * n + p], y = a[k * n + q];
          a[k * n + p] = c * x - s * y;
          a[k * n + q] = s * x + c * y;
        }
        for (std::size_t k = 0; k < n; ++k) {
          const double x = a[p * n + k], y = a[q * n + k];
          a[p * n + k] = c * x - s * y;
          a[q * n + k] = s * x + c * y;
        }
        for (std::size_t k = 0; k < n; ++k) {
          const double x = vectors[k * n + p], y = vectors[k * n + q];
          vectors[k * n + p] = c * x - s * y;
          vectors[k * n + q] = s * x + c * y;
        }
      }
    }
  }
  base::broken_promise("Jacobi's rotations converge");
}

}  // namespace

Modes modes_of(const Chain& chain) {
  const std::size_t n = chain.capacity.size();
  base::promise(n > 0 && chain.conductance.size() == n + 1, "a chain has one more face than cells");
  // With the roots of the capacities on both sides L is symmetric.
  std::vector<double> a(n * n, 0.0), vectors;
  std::vector<double> root(n);
  for (std::size_t i = 0; i < n; ++i) root[i] = std::sqrt(chain.capacity[i]);
  for (std::size_t i = 0; i < n; ++i) {
    a[i * n + i] = (chain.conductance[i] + chain.conductance[i + 1]) / chain.capacity[i];
    if (i + 1 == n) continue;
    const double off = -chain.conductance[i + 1] / (root[i] * root[i + 1]);
    a[i * n + i + 1] = off;
    a[(i + 1) * n + i] = off;
  }
  diagonalise(n, a, vectors);
  Modes modes;
  modes.shape.resize(n * n);
  modes.weight.resize(n * n);
  for (std::size_t k = 0; k < n; ++k) {
    modes.fading.push_back(std::max(0.0, a[k * n + k]));
    for (std::size_t i = 0; i < n; ++i) {
      modes.shape[i * n + k] = vectors[i * n + k] / root[i];
      modes.weight[k * n + i] = vectors[i * n + k] * root[i];
    }
  }
  return modes;
}

}  // namespace wetout::resin
