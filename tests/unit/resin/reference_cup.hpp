// A second, slow cup to compare with: the method of lines on conversion and temperature, explicit
// Runge-Kutta at small steps, two activation energies. It shares no code with the library.
#pragma once

#include <cmath>
#include <cstddef>
#include <vector>

namespace wetout::resin::reference {

struct Resin {
  double k1, e1, k2, e2;  // 1/s at 298.15 K, J/mol
  double m, n;
  double heat;  // J/kg
  [[nodiscard]] double rate(double a, double kelvin) const {
    const double x = (1.0 / 298.15 - 1.0 / kelvin) / 8.314462618;
    const double c = std::fmin(std::fmax(a, 0.0), 1.0);
    return (k1 * std::exp(e1 * x) + k2 * std::exp(e2 * x) * std::pow(c, m)) * std::pow(1.0 - c, n);
  }
};

struct Answer {
  double gel_s = 0.0;    // first cell or middle to the gel point
  double risen_s = 0.0;  // the middle is 20 K warmer than at first (resin as warm as the air)
  double gel_middle_k = 0.0;
};

// Diameter and height in m; h of side, base, top in W/(m2 K).
inline Answer cup(const Resin& resin, double diameter, double height, double air_k, double start_k,
                  double gel, std::size_t nr, std::size_t nz, double density = 1100.0,
                  double h_side = 10.0, double h_base = 8.0, double h_top = 10.0) {
  constexpr double cp = 1900.0, k = 0.2;
  const double dr = diameter / 2.0 / static_cast<double>(nr);
  const double dz = height / static_cast<double>(nz);
  const std::size_t cells = nr * nz;
  std::vector<double> t(cells, start_k), a(cells, 0.0);
  using Vec = std::vector<double>;
  const auto slopes = [&](const Vec& tt, const Vec& aa, Vec& dt, Vec& da) {
    for (std::size_t j = 0; j < nz; ++j) {
      for (std::size_t i = 0; i < nr; ++i) {
        const std::size_t c = j * nr + i;
        const double inner = dr * static_cast<double>(i), outer = inner + dr;
        const double ring = 0.5 * (outer * outer - inner * inner);
        double flux = 0.0;  // W per radian
        if (i > 0) flux += k * inner * dz * (tt[c - 1] - tt[c]) / dr;
        flux += i + 1 < nr ? k * outer * dz * (tt[c + 1] - tt[c]) / dr
                           : outer * dz * (air_k - tt[c]) / (dr / 2 / k + 1 / h_side);
        flux += j > 0 ? k * ring * (tt[c - nr] - tt[c]) / dz
                      : ring * (air_k - tt[c]) / (dz / 2 / k + 1 / h_base);
        flux += j + 1 < nz ? k * ring * (tt[c + nr] - tt[c]) / dz
                           : ring * (air_k - tt[c]) / (dz / 2 / k + 1 / h_top);
        da[c] = resin.rate(aa[c], tt[c]);
        dt[c] = flux / (density * cp * ring * dz) + resin.heat / cp * da[c];
      }
    }
  };
  // On the axis, half way up, from the cells around (nr >= 2, nz even and >= 4).
  const auto middle = [&](const Vec& v) {
    const auto axis = [&](std::size_t j) { return (9 * v[j * nr] - v[j * nr + 1]) / 8; };
    const double near = (axis(nz / 2 - 1) + axis(nz / 2)) / 2;
    const double far = (axis(nz / 2 - 2) + axis(nz / 2 + 1)) / 2;
    return (9 * near - far) / 8;
  };
  const auto furthest = [&] {
    double most = middle(a);
    for (const double x : a) most = std::fmax(most, x);
    return most;
  };
  const double smallest = std::fmin(dr, dz);
  const double stable = 0.2 * smallest * smallest * density * cp / k;
  Answer answer;
  Vec k1t(cells), k1a(cells), k2t(cells), k2a(cells), mt(cells), ma(cells);
  double time = 0.0, last_rise = 0.0, last_gel = 0.0, step = 1e-3;
  while (answer.gel_s == 0.0) {
    // The midpoint rule.
    slopes(t, a, k1t, k1a);
    double fastest = 1e-9;
    for (std::size_t c = 0; c < cells; ++c) fastest = std::fmax(fastest, std::fabs(k1t[c]));
    step = std::fmin(std::fmin(step * 1.2, stable), 0.1 / fastest);
    for (std::size_t c = 0; c < cells; ++c) {
      mt[c] = t[c] + 0.5 * step * k1t[c];
      ma[c] = a[c] + 0.5 * step * k1a[c];
    }
    slopes(mt, ma, k2t, k2a);
    for (std::size_t c = 0; c < cells; ++c) {
      t[c] += step * k2t[c];
      a[c] += step * k2a[c];
    }
    time += step;
    const double rise = middle(t) - start_k - 20.0, done = furthest() - gel;
    if (answer.risen_s == 0.0 && rise >= 0.0) {
      answer.risen_s = time - step * rise / (rise - last_rise);
    }
    if (done >= 0.0) answer.gel_s = time - step * done / (done - last_gel);
    last_rise = rise;
    last_gel = done;
  }
  answer.gel_middle_k = middle(t);
  return answer;
}

}  // namespace wetout::resin::reference
