#include "wetout/resin/reacting_body.hpp"

#include <algorithm>
#include <cmath>

#include "modes.hpp"
#include "wetout/resin/defaults.hpp"

namespace wetout::resin {
namespace {

// exp(x) for the small x of a step; the last term left out is below 1e-8 at 0.2.
double exp_of_step(double x) {
  if (std::abs(x) > 0.2) return std::exp(x);
  return 1.0 + x * (1.0 + x * (1.0 / 2 + x * (1.0 / 6 + x * (1.0 / 24 + x * (1.0 / 120)))));
}

// c = a b, with a of m rows and k columns, b of k rows and n columns. Four rows of b at a time, so
// that c is seldom stored.
void multiply(std::size_t m, std::size_t k, std::size_t n, const std::vector<double>& a,
              const std::vector<double>& b, std::vector<double>& c) {
  for (std::size_t row = 0; row < m; ++row) {
    double* out = &c[row * n];
    for (std::size_t i = 0; i < n; ++i) out[i] = 0.0;
    std::size_t l = 0;
    for (; l + 4 <= k; l += 4) {
      const double* by = &a[row * k + l];
      const double* b0 = &b[l * n];
      const double *b1 = b0 + n, *b2 = b1 + n, *b3 = b2 + n;
      for (std::size_t i = 0; i < n; ++i) {
        out[i] += by[0] * b0[i] + by[1] * b1[i] + by[2] * b2[i] + by[3] * b3[i];
      }
    }
    for (; l < k; ++l) {
      const double by = a[row * k + l];
      for (std::size_t i = 0; i < n; ++i) out[i] += by * b[l * n + i];
    }
  }
}

std::vector<double> transpose(std::size_t n, const std::vector<double>& a) {
  std::vector<double> t(n * n);
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = 0; j < n; ++j) t[j * n + i] = a[i * n + j];
  }
  return t;
}

// From a cell's middle through half of it and out of the face.
double outward(double area, double half_cell_m, double conductivity, double h) {
  if (h == insulated) return 0.0;
  return area / (half_cell_m / conductivity + 1.0 / h);
}

}  // namespace

Chain from_middle(Shape shape, double half_width_m, std::size_t cells, double conductivity_w_mk,
                  double capacity_j_m3k, double h) {
  const double width = half_width_m / static_cast<double>(cells);
  const auto area = [&](double x) {
    return shape == Shape::slab ? 1.0 : shape == Shape::cylinder ? x : x * x;
  };
  const auto inside = [&](double x) {
    return shape == Shape::slab ? x : shape == Shape::cylinder ? x * x / 2.0 : x * x * x / 3.0;
  };
  Chain chain;
  chain.conductance.push_back(0.0);
  for (std::size_t i = 0; i < cells; ++i) {
    const double near = width * static_cast<double>(i);
    const double far = near + width;
    chain.capacity.push_back(capacity_j_m3k * (inside(far) - inside(near)));
    chain.conductance.push_back(i + 1 < cells
                                    ? area(far) * conductivity_w_mk / width
                                    : outward(area(far), width / 2.0, conductivity_w_mk, h));
  }
  return chain;
}

Chain across(double width_m, std::size_t cells, double conductivity_w_mk, double capacity_j_m3k,
             double h_low, double h_high) {
  const double width = width_m / static_cast<double>(cells);
  Chain chain;
  chain.capacity.assign(cells, capacity_j_m3k * width);
  chain.conductance.assign(cells + 1, conductivity_w_mk / width);
  chain.conductance.front() = outward(1.0, width / 2.0, conductivity_w_mk, h_low);
  chain.conductance.back() = outward(1.0, width / 2.0, conductivity_w_mk, h_high);
  return chain;
}

ReactingBody::Direction::Direction(const Chain& chain, bool transposed)
    : capacity(chain.capacity),
      low_loss(chain.conductance.front()),
      high_loss(chain.conductance.back()),
      loss_per_s(0.0) {
  Modes modes = modes_of(chain);
  const std::size_t n = modes.size();
  fading = std::move(modes.fading);
  even.assign(n, 0.0);
  double warmth = 0.0, all = 0.0;
  for (std::size_t k = 0; k < n; ++k) {
    for (std::size_t i = 0; i < n; ++i) even[k] += modes.weight[k * n + i];
    // Mean warmth while 1 K/s is fed in evenly.
    for (std::size_t i = 0; i < n; ++i) {
      if (low_loss + high_loss > 0.0) {
        warmth += capacity[i] * modes.shape[i * n + k] * even[k] / fading[k];
      }
    }
  }
  for (const double c : capacity) all += c;
  if (warmth > 0.0) loss_per_s = all / warmth;
  to_modes = transposed ? transpose(n, modes.weight) : std::move(modes.weight);
  to_cells = transposed ? transpose(n, modes.shape) : std::move(modes.shape);
}

ReactingBody::ReactingBody(const Reactant& reactant, const Chain& first, const Chain& second,
                           units::Temperature air, units::Temperature start, ResinCells resin)
    : reactant_(reactant),
      first_(first, true),
      second_(second, false),
      resin_(resin),
      air_(air.in_kelvin()),
      start_(start.in_kelvin()),
      e_over_r_(reactant.kinetics.energy_j_per_mol / gas_constant_j_per_mol_k.value),
      inverse_reference_(1.0 / reactant.kinetics.reference.in_kelvin()),
      loss_per_s_(first_.loss_per_s + second_.loss_per_s) {
  const std::size_t n = first_.size(), m = second_.size();
  double first_sum = 0.0, second_sum = 0.0;
  for (const double c : first_.capacity) first_sum += c;
  for (const double c : second_.capacity) second_sum += c;
  capacity_ = first_sum * second_sum;
  now_.warmer.assign(n * m, start_ - air_);
  for (std::size_t c = 0; c < n * m; ++c) {
    if (!reacts(c)) now_.warmer[c] = 0.0;
  }
  start_warmth_ = mean(now_.warmer);
  now_.reduced_time.assign(n * m, 0.0);
  now_.conversion.assign(n * m, 0.0);
  now_.modes.resize(n * m);
  work_.resize(n * m);
  left_.resize(n * m);
  fed_.resize(n * m);
  to_modes();
  for (std::size_t j = 0; j < m; ++j) {
    for (std::size_t i = 0; i < n; ++i) {
      slowness_.push_back(1.0 / (first_.fading[i] + second_.fading[j]));
    }
  }
  if (start_ != air_) find_inert_middle();
}

// The middle of each mode times its part in the even start.
void ReactingBody::find_inert_middle() {
  const std::size_t n = first_.size(), m = second_.size();
  inert_middle_.assign(n * m, 0.0);
  std::vector<double> shape(n * m);
  for (std::size_t l = 0; l < m; ++l) {
    for (std::size_t k = 0; k < n; ++k) {
      for (std::size_t j = 0; j < m; ++j) {
        for (std::size_t i = 0; i < n; ++i) {
          shape[j * n + i] = first_.to_cells[k * n + i] * second_.to_cells[j * m + l];
        }
      }
      inert_middle_[l * n + k] = middle(shape) * now_.modes[l * n + k];
    }
  }
}

// Each cell by itself: three stages of Kutta in reduced time. A step changes the temperature by a
// few kelvin at most, so one true exponential a cell is enough.
void ReactingBody::react(double dt, double flow) {
  const ConversionCurve& curve = reactant_.curve;
  const double rise = reactant_.full_rise_kelvin;
  const double k_reference = reactant_.kinetics.k_per_s;
  for (std::size_t c = 0; c < now_.warmer.size(); ++c) {
    if (!reacts(c)) {
      now_.warmer[c] += flow * dt;
      continue;
    }
    const double t0 = air_ + now_.warmer[c];
    const double inverse = 1.0 / t0;
    const double k0 = k_reference * std::exp(e_over_r_ * (inverse_reference_ - inverse));
    const double a0 = now_.conversion[c];
    const double tau0 = now_.reduced_time[c];
    const auto speed_after = [&](double tau, double time) {
      const double a = curve.conversion(tau);
      const double warmer = rise * (a - a0) + flow * time;
      const double t = t0 + warmer;
      return k0 * exp_of_step(e_over_r_ * warmer * inverse / t);
    };
    const double s1 = k0;
    const double s2 = speed_after(tau0 + 0.5 * dt * s1, 0.5 * dt);
    const double s3 = speed_after(tau0 + dt * std::max(0.0, 2.0 * s2 - s1), dt);
    const double tau = tau0 + dt / 6.0 * (s1 + 4.0 * s2 + s3);
    const double a = curve.conversion(tau);
    now_.reduced_time[c] = tau;
    now_.conversion[c] = a;
    now_.warmer[c] += rise * (a - a0) + flow * dt;
  }
}

// What is left of the modes after `dt`, and what an even 1 K/s adds to them meanwhile.
void ReactingBody::prepare(double dt) {
  if (prepared_for_ == dt) return;
  prepared_for_ = dt;
  const std::size_t n = first_.size(), m = second_.size();
  first_left_.resize(n);
  second_left_.resize(m);
  for (std::size_t i = 0; i < n; ++i) first_left_[i] = std::exp(-first_.fading[i] * dt);
  for (std::size_t j = 0; j < m; ++j) second_left_[j] = std::exp(-second_.fading[j] * dt);
  for (std::size_t j = 0; j < m; ++j) {
    for (std::size_t i = 0; i < n; ++i) {
      const std::size_t c = j * n + i;
      left_[c] = first_left_[i] * second_left_[j];
      const bool hardly = dt < 1e-9 * slowness_[c];
      fed_[c] = first_.even[i] * second_.even[j] * (hardly ? dt : (1.0 - left_[c]) * slowness_[c]);
    }
  }
}

void ReactingBody::fade(double flow) {
  for (std::size_t c = 0; c < now_.modes.size(); ++c) {
    now_.modes[c] = left_[c] * now_.modes[c] + flow * fed_[c];
  }
}

void ReactingBody::to_modes() {
  const std::size_t n = first_.size(), m = second_.size();
  multiply(m, n, n, now_.warmer, first_.to_modes, work_);
  multiply(m, m, n, second_.to_modes, work_, now_.modes);
}

void ReactingBody::to_cells() {
  const std::size_t n = first_.size(), m = second_.size();
  multiply(m, m, n, second_.to_cells, now_.modes, work_);
  multiply(m, n, n, work_, first_.to_cells, now_.warmer);
}

// Kelvin of the body's mean temperature per second.
double ReactingBody::face_loss() const {
  const std::vector<double>& t = now_.warmer;
  const std::size_t n = first_.size(), m = second_.size();
  double watts = 0.0;
  for (std::size_t j = 0; j < m; ++j) {
    watts +=
        second_.capacity[j] * (first_.low_loss * t[j * n] + first_.high_loss * t[j * n + n - 1]);
  }
  for (std::size_t i = 0; i < n; ++i) {
    watts +=
        first_.capacity[i] * (second_.low_loss * t[i] + second_.high_loss * t[(m - 1) * n + i]);
  }
  return watts / capacity_;
}

double ReactingBody::step(double dt_s) {
  before_ = now_;
  prepare(dt_s / 2.0);
  // The reaction's part takes `flow` over from the conduction's.
  const double flow = -loss_per_s_ * mean(now_.warmer);
  const double loss_first = face_loss();
  fade(-flow);
  to_cells();
  const double loss_second = face_loss();
  react(dt_s, flow);
  to_modes();
  const double loss_third = face_loss();
  fade(-flow);
  to_cells();
  now_.lost += dt_s / 4.0 * (loss_first + loss_second + loss_third + face_loss());
  now_.time += dt_s;
  double most = 0.0;
  for (std::size_t c = 0; c < now_.warmer.size(); ++c) {
    most = std::max(most, std::abs(now_.warmer[c] - before_.warmer[c]));
  }
  return most;
}

void ReactingBody::undo() { std::swap(now_, before_); }

double ReactingBody::hottest_rate_kelvin_per_s() const {
  double most = 0.0;
  for (std::size_t c = 0; c < now_.warmer.size(); ++c) {
    const units::Temperature t = units::Temperature::kelvin(air_ + now_.warmer[c]);
    most = std::max(
        most, rate_constant(reactant_.kinetics, t) * reactant_.curve.slope(now_.reduced_time[c]));
  }
  return most * reactant_.full_rise_kelvin;
}

double ReactingBody::own_rise_kelvin() const {
  double inert = 0.0;
  if (!inert_middle_.empty()) {
    const std::size_t n = first_.size();
    std::vector<double> left(n);
    for (std::size_t i = 0; i < n; ++i) left[i] = std::exp(-first_.fading[i] * now_.time);
    for (std::size_t j = 0; j < second_.size(); ++j) {
      double line = 0.0;
      for (std::size_t i = 0; i < n; ++i) line += left[i] * inert_middle_[j * n + i];
      inert += line * std::exp(-second_.fading[j] * now_.time);
    }
  }
  return middle(now_.warmer) - inert;
}

double ReactingBody::furthest_conversion() const {
  return std::max(middle_conversion(),
                  *std::max_element(now_.conversion.begin(), now_.conversion.end()));
}

double ReactingBody::middle(const std::vector<double>& v) const {
  const std::size_t n = first_.size(), m = second_.size();
  // Even in the distance from the axis: a parabola through the two innermost cells.
  const auto axis = [&](std::size_t j) {
    return n == 1 ? v[j] : (9.0 * v[j * n] - v[j * n + 1]) / 8.0;
  };
  if (m % 2 == 1) return axis(m / 2);
  const double near = 0.5 * (axis(m / 2 - 1) + axis(m / 2));
  if (m < 4) return near;
  const double far = 0.5 * (axis(m / 2 - 2) + axis(m / 2 + 1));
  return (9.0 * near - far) / 8.0;
}

double ReactingBody::mean(const std::vector<double>& v) const {
  const std::size_t n = first_.size();
  double sum = 0.0;
  for (std::size_t j = 0; j < second_.size(); ++j) {
    double line = 0.0;
    for (std::size_t i = 0; i < n; ++i) line += first_.capacity[i] * v[j * n + i];
    sum += second_.capacity[j] * line;
  }
  return sum / capacity_;
}

}  // namespace wetout::resin
