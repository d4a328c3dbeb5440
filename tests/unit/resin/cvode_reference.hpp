// The same equations by SUNDIALS' CVODE (hindmarsh2005), as an outside reference: conversion along
// a path, and the cup on the same grid.
#pragma once

#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_band.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_band.h>
#include <sunmatrix/sunmatrix_dense.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <stdexcept>
#include <vector>

#include "wetout/resin/cup.hpp"
#include "wetout/resin/cure.hpp"
#include "wetout/resin/defaults.hpp"
#include "wetout/time/history.hpp"

namespace wetout::resin::cvode {

inline void must(int flag) {
  if (flag < 0) throw std::runtime_error("CVODE failed");
}

/// y' = f(t, y), banded or dense by difference quotients.
class Solver {
 public:
  using Slope = std::function<void(double, const double*, double*)>;

  Solver(std::vector<double> start, double at, Slope slope, double rtol, double atol,
         sunindextype half_band = 0)
      : slope_(std::move(slope)) {
    must(SUNContext_Create(nullptr, &context_));
    const auto n = static_cast<sunindextype>(start.size());
    y_ = N_VNew_Serial(n, context_);
    std::copy(start.begin(), start.end(), N_VGetArrayPointer(y_));
    memory_ = CVodeCreate(CV_BDF, context_);
    must(CVodeInit(memory_, &Solver::call, at, y_));
    must(CVodeSetUserData(memory_, this));
    must(CVodeSStolerances(memory_, rtol, atol));
    must(CVodeSetMaxNumSteps(memory_, 10000000));
    if (half_band > 0) {
      matrix_ = SUNBandMatrix(n, half_band, half_band, context_);
      linear_ = SUNLinSol_Band(y_, matrix_, context_);
    } else {
      matrix_ = SUNDenseMatrix(n, n, context_);
      linear_ = SUNLinSol_Dense(y_, matrix_, context_);
    }
    must(CVodeSetLinearSolver(memory_, linear_, matrix_));
  }
  Solver(const Solver&) = delete;
  Solver& operator=(const Solver&) = delete;
  ~Solver() {
    CVodeFree(&memory_);
    SUNLinSolFree(linear_);
    SUNMatDestroy(matrix_);
    N_VDestroy(y_);
    SUNContext_Free(&context_);
  }

  /// Exactly to `until`, not looking beyond it.
  void run_to(double until) {
    double at = 0.0;
    must(CVodeSetStopTime(memory_, until));
    must(CVode(memory_, until, y_, &at, CV_NORMAL));
  }
  /// One step of its own; the time reached.
  double one_step() {
    double at = 0.0;
    must(CVode(memory_, 1e30, y_, &at, CV_ONE_STEP));
    return at;
  }
  void interpolate(double at) { must(CVodeGetDky(memory_, at, 0, y_)); }
  double last_step() const {
    double h = 0.0;
    must(CVodeGetLastStep(memory_, &h));
    return h;
  }
  /// After a kink of the right side.
  void restart(double at) { must(CVodeReInit(memory_, at, y_)); }
  const double* y() const { return N_VGetArrayPointer(y_); }

 private:
  static int call(double t, N_Vector y, N_Vector slope, void* self) {
    static_cast<Solver*>(self)->slope_(t, N_VGetArrayPointer(y), N_VGetArrayPointer(slope));
    return 0;
  }
  Slope slope_;
  SUNContext context_ = nullptr;
  N_Vector y_ = nullptr;
  void* memory_ = nullptr;
  SUNMatrix matrix_ = nullptr;
  SUNLinearSolver linear_ = nullptr;
};

/// Conversions at some times (seconds after the air's first point) of a film that starts at
/// `start`.
inline std::vector<double> path(const Cure& cure, const time::History& air, double start,
                                const std::vector<double>& at, double rtol) {
  const Kinetics& k = cure.kinetics;
  const auto slope = [&](double t, const double* y, double* out) {
    const auto kelvin = units::Temperature::kelvin(air.at_seconds(t));
    const double a = std::clamp(y[0], 0.0, 1.0);
    *out = rate_constant(k, kelvin) * chemical_rate(a, k.r, k.m, k.n) *
           vitrification_factor(cure.glass, a, kelvin);
  };
  Solver solver({0.0}, start, slope, rtol, rtol * 1e-2);
  std::vector<double> found;
  double now = start;
  std::size_t next = 0;
  const auto points = air.points();
  std::size_t kink = 0;
  while (next < at.size()) {
    while (kink < points.size() &&
           static_cast<double>((points[kink].at - air.first()).count()) <= now + 1e-6) {
      ++kink;
    }
    const double stop = kink < points.size()
                            ? static_cast<double>((points[kink].at - air.first()).count())
                            : at.back() + 1.0;
    while (next < at.size() && at[next] <= stop) {
      if (at[next] > now + 1e-9) {
        solver.run_to(at[next]);
        now = at[next];
      }
      found.push_back(solver.y()[0]);
      ++next;
    }
    if (next < at.size()) {
      if (stop > now + 1e-9) solver.run_to(stop);
      now = stop;
      solver.restart(now);
    }
  }
  return found;
}

struct CupReference {
  double gel_s = 0.0;
  double peak_kelvin = 0.0;
};

/// The cup on the grid of `run`, band solver. The peak is followed until the middle has reacted.
inline CupReference cup(const CupRun& run, double rtol, bool to_peak) {
  const std::size_t nr = run.grid.radial, nz = run.grid.axial, cells = nr * nz;
  const double cp = run.bulk.heat_capacity_j_per_kg_k;
  const double capacity = cp * units::in_kilograms_per_cubic_metre(run.bulk.density);
  const double conductivity = run.bulk.conductivity_w_per_m_k;
  const Chain r = from_middle(Shape::cylinder, units::in_metres(run.fill.diameter) / 2.0, nr,
                              conductivity, capacity, run.cooling.side);
  const Chain z = across(units::in_metres(run.fill.height), nz, conductivity, capacity,
                         run.cooling.base, run.cooling.top);
  const double air = run.air.in_kelvin();
  const double rise = run.bulk.heat_j_per_kg / cp;
  const Kinetics& k = run.kinetics;
  const auto slope = [&](double, const double* y, double* out) {
    for (std::size_t j = 0; j < nz; ++j) {
      for (std::size_t i = 0; i < nr; ++i) {
        const std::size_t c = j * nr + i;
        const auto t = [&](std::size_t cell) { return y[2 * cell]; };
        const double to_left = i > 0 ? t(c - 1) : air, to_right = i + 1 < nr ? t(c + 1) : air;
        const double to_low = j > 0 ? t(c - nr) : air, to_high = j + 1 < nz ? t(c + nr) : air;
        const double a = std::clamp(y[2 * c + 1], 0.0, 1.0);
        const double rate =
            rate_constant(k, units::Temperature::kelvin(t(c))) * chemical_rate(a, k.r, k.m, k.n);
        out[2 * c + 1] = rate;
        out[2 * c] =
            rise * rate +
            (r.conductance[i] * (to_left - t(c)) + r.conductance[i + 1] * (to_right - t(c))) /
                r.capacity[i] +
            (z.conductance[j] * (to_low - t(c)) + z.conductance[j + 1] * (to_high - t(c))) /
                z.capacity[j];
      }
    }
  };
  std::vector<double> start(2 * cells, 0.0);
  for (std::size_t c = 0; c < cells; ++c) start[2 * c] = run.resin.in_kelvin();
  Solver solver(start, 0.0, slope, rtol, rtol, static_cast<sunindextype>(2 * nr + 1));
  const auto middle = [&](std::size_t what) {
    const double* y = solver.y();
    const auto v = [&](std::size_t j, std::size_t i) { return y[2 * (j * nr + i) + what]; };
    const auto axis = [&](std::size_t j) { return (9.0 * v(j, 0) - v(j, 1)) / 8.0; };
    const double near = 0.5 * (axis(nz / 2 - 1) + axis(nz / 2));
    const double far = 0.5 * (axis(nz / 2 - 2) + axis(nz / 2 + 1));
    return (9.0 * near - far) / 8.0;
  };
  const auto furthest = [&] {
    double most = middle(1);
    for (std::size_t c = 0; c < cells; ++c) most = std::max(most, solver.y()[2 * c + 1]);
    return most;
  };
  CupReference answer;
  for (;;) {
    const double now = solver.one_step();
    if (answer.gel_s == 0.0 && furthest() >= run.gel_conversion) {
      double low = now - solver.last_step(), high = now;
      for (int i = 0; i < 40; ++i) {
        const double half = 0.5 * (low + high);
        solver.interpolate(half);
        (furthest() >= run.gel_conversion ? high : low) = half;
      }
      answer.gel_s = high;
      solver.interpolate(now);
      if (!to_peak) return answer;
    }
    const double t = middle(0);
    answer.peak_kelvin = std::max(answer.peak_kelvin, t);
    if (answer.gel_s > 0.0 && t < answer.peak_kelvin - 5.0 && middle(1) > 0.9) return answer;
  }
}

}  // namespace wetout::resin::cvode
