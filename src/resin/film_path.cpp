#include "film_path.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "wetout/resin/defaults.hpp"

namespace wetout::resin {
namespace {

// Error of a step in conversion: below 1e-6 in all over a week.
constexpr double tolerance = 3e-8;
// exp(-12): vitrification takes 6e-6 of the rate where it is first counted, ever less before.
constexpr double onset_widths = 12.0;

// exp(x), quickly where it is good to 1e-9.
double exp_near_0(double x) {
  if (std::abs(x) > 0.1) return std::exp(x);
  return 1.0 + x * (1.0 + x * (1.0 / 2 + x * (1.0 / 6 + x * (1.0 / 24 + x * (1.0 / 120)))));
}

}  // namespace

FilmGround::FilmGround(const Cure& fitted, const time::History& air_kelvin)
    : cure(fitted),
      clock(fitted.kinetics.energy_j_per_mol, fitted.sheet_air, air_kelvin),
      curve(fitted.kinetics.r, fitted.kinetics.m, fitted.kinetics.n),
      k_sheet(rate_constant(fitted.kinetics, fitted.sheet_air)),
      e_over_r(fitted.kinetics.energy_j_per_mol / gas_constant_j_per_mol_k.value),
      tg_uncured(fitted.glass.uncured.in_kelvin()),
      tg_span((fitted.glass.cured - fitted.glass.uncured).in_kelvin()),
      lambda(fitted.glass.lambda),
      delay(fitted.glass.delay_kelvin),
      width(fitted.glass.width_kelvin),
      // Trim and handle are looked for on the path, so it starts before them.
      onset_above(std::min(delay - onset_widths * width, -cure.trim_below_kelvin - 1.0)) {}

FilmPath::FilmPath(const FilmGround& ground, double start_s, double start_reduced_time)
    : ground_(ground),
      from_(start_s),
      until_(start_s),
      tau_from_(start_reduced_time),
      tau_until_(start_reduced_time) {}

// As long as Tg stays far below the air, the reduced time is the clock's: panel by panel of the
// air.
void FilmPath::liquid() {
  const double age = ground_.clock.age(from_, place_);
  const double start = tau_from_;
  for (;;) {
    const Clock::Panel& panel = ground_.clock.panel_at(until_, place_);
    double end = panel.end_s;
    if (std::isinf(end)) {
      // The last air holds for good: up to the onset itself.
      const double conversion = conversion_at(
          ground_.cure.glass, units::Temperature::kelvin(panel.kelvin + ground_.onset_above));
      const double tau = ground_.curve.reduced_time(std::clamp(conversion, 0.0, 0.9));
      if (tau <= tau_until_) break;
      end = ground_.clock.when(age + (tau - start) / ground_.k_sheet, place_);
      until_ = end;
      tau_until_ = tau;
      break;
    }
    const double tau = start + ground_.k_sheet * (ground_.clock.age_at_end(place_) - age);
    const double coldest =
        panel.kelvin + std::min(0.0, panel.kelvin_per_s * (panel.end_s - panel.start_s));
    if (above(tau, coldest) > ground_.onset_above) break;
    until_ = end;
    tau_until_ = tau;
  }
  dense_ = {age, 0.0, 0.0, 0.0, 0.0};
  Clock::Place place = place_;
  above_until_ = above(tau_until_, ground_.clock.kelvin_at(until_, place));
}

bool FilmPath::begin_stretch() {
  if (!started_) {
    started_ = true;
    liquid();
    if (until_ > from_) return false;
  }
  liquid_ = false;
  from_ = until_;
  tau_from_ = tau_until_;
  const Clock::Panel& panel = ground_.clock.panel_at(from_, place_);
  kelvin_from_ = panel.kelvin + panel.kelvin_per_s * (from_ - panel.start_s);
  kelvin_per_s_ = panel.kelvin_per_s;
  kink_ = panel.end_s;
  if (next_step_ == 0.0) {
    rate_until_ = ground_.k_sheet * ground_.clock.speed(kelvin_from_);
    const double conversion = ground_.curve.conversion(tau_from_);
    const double x = (ground_.tg_kelvin(conversion) - kelvin_from_ - ground_.delay) / ground_.width;
    slope_until_ = rate_until_ * stopping_factor(x);
    // Tg rises by about two widths.
    const double bottom = 1.0 - (1.0 - ground_.lambda) * conversion;
    next_step_ = 2.0 * ground_.width * bottom * bottom /
                 (ground_.tg_span * ground_.lambda * ground_.curve.slope(tau_from_) * slope_until_);
  }
  return true;
}

// Several paths at once, stage by stage: each stage is one long chain of operations, and the
// processor works on those of the other paths meanwhile.
template <std::size_t lanes>
std::array<bool, lanes> FilmPath::try_step(const std::array<FilmPath*, lanes>& paths) {
  using Lanes = std::array<double, lanes>;
  const FilmGround& ground = paths[0]->ground_;
  Lanes y0, h, y, k_end, above_end;
  std::array<Lanes, 8> k;  // k[1] to k[7], as the stages are called
  std::array<bool, lanes> to_the_kink;
  for (std::size_t l = 0; l < lanes; ++l) {
    const FilmPath& p = *paths[l];
    y0[l] = p.tau_from_;
    k[1][l] = p.slope_until_;
    to_the_kink[l] = p.from_ + p.next_step_ * 1.0001 >= p.kink_;
    h[l] = to_the_kink[l] ? p.kink_ - p.from_ : p.next_step_;
  }
  const auto stage = [&](std::size_t to, double share) {
    Lanes x;
    for (std::size_t l = 0; l < lanes; ++l) {
      const FilmPath& p = *paths[l];
      const double rise = p.kelvin_per_s_ * share * h[l];
      const double kelvin = p.kelvin_from_ + rise;
      k_end[l] = p.rate_until_ * exp_near_0(ground.e_over_r * rise / (p.kelvin_from_ * kelvin));
      above_end[l] = ground.tg_kelvin(ground.curve.conversion(y[l])) - kelvin;
      x[l] = (above_end[l] - ground.delay) / ground.width;
    }
    for (std::size_t l = 0; l < lanes; ++l) {
      k[to][l] = x[l] < -onset_widths ? k_end[l] : k_end[l] * stopping_factor(x[l]);
    }
  };
  const auto at = [&](std::size_t l, double c1, double c2, double c3, double c4, double c5) {
    return y0[l] +
           h[l] * (c1 * k[1][l] + c2 * k[2][l] + c3 * k[3][l] + c4 * k[4][l] + c5 * k[5][l]);
  };
  k[2] = k[3] = k[4] = k[5] = Lanes{};
  const auto each = [](auto&& f) {
    for (std::size_t l = 0; l < lanes; ++l) f(l);
  };
  each([&](std::size_t l) { y[l] = at(l, 1.0 / 5, 0, 0, 0, 0); });
  stage(2, 0.2);
  each([&](std::size_t l) { y[l] = at(l, 3.0 / 40, 9.0 / 40, 0, 0, 0); });
  stage(3, 0.3);
  each([&](std::size_t l) { y[l] = at(l, 44.0 / 45, -56.0 / 15, 32.0 / 9, 0, 0); });
  stage(4, 0.8);
  each([&](std::size_t l) {
    y[l] = at(l, 19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729, 0);
  });
  stage(5, 8.0 / 9);
  each([&](std::size_t l) {
    y[l] = at(l, 9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656);
  });
  stage(6, 1.0);
  Lanes gain;
  each([&](std::size_t l) {
    y[l] = at(l, 35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784) +
           h[l] * 11.0 / 84 * k[6][l];
    gain[l] = y[l] - y0[l];
  });
  stage(7, 1.0);

  std::array<bool, lanes> taken;
  for (std::size_t l = 0; l < lanes; ++l) {
    FilmPath& p = *paths[l];
    const double k1 = k[1][l], k3 = k[3][l], k4 = k[4][l], k5 = k[5][l], k6 = k[6][l], k7 = k[7][l];
    const double error = h[l] * std::abs(71.0 / 57600 * k1 - 71.0 / 16695 * k3 + 71.0 / 1920 * k4 -
                                         17253.0 / 339200 * k5 + 22.0 / 525 * k6 - 1.0 / 40 * k7);
    const double share = error * ground.curve.slope(y0[l] + 0.5 * gain[l]) / tolerance;
    const double grow = share < 3e-3 ? 2.8 : 0.9 * std::pow(share, -0.2);
    taken[l] = share <= 1.0 || gain[l] <= 0.0;
    if (!taken[l]) {
      p.next_step_ = h[l] * std::clamp(grow, 0.2, 0.9);
      continue;
    }
    // A step cut short by a kink says nothing about the next.
    const double wanted = h[l] * std::max(grow, 0.2);
    p.next_step_ = to_the_kink[l] ? std::max(p.next_step_, wanted) : wanted;
    p.until_ = p.from_ + h[l];
    if (to_the_kink[l]) p.until_ = p.kink_;
    p.tau_until_ = y[l];
    p.slope_until_ = k7;
    p.rate_until_ = k_end[l];
    p.above_until_ = above_end[l];
    const double b = h[l] * k1 - gain[l];
    p.dense_ = {y0[l], gain[l], b, gain[l] - h[l] * k7 - b,
                h[l] * (-12715105075.0 / 11282082432.0 * k1 + 87487479700.0 / 32700410799.0 * k3 -
                        10690763975.0 / 1880347072.0 * k4 + 701980252875.0 / 199316789632.0 * k5 -
                        1453857185.0 / 822651844.0 * k6 + 69997945.0 / 29380423.0 * k7)};
  }
  return taken;
}

void FilmPath::advance() {
  if (!begin_stretch()) return;
  while (!try_step<1>({this})[0]) {
  }
}

void FilmPath::advance(const std::array<FilmPath*, 4>& paths) {
  std::array<bool, 4> steps{};
  for (std::size_t l = 0; l < 4; ++l) steps[l] = paths[l]->begin_stretch();
  std::array<bool, 4> done{};
  if (steps[0] && steps[1] && steps[2] && steps[3]) done = try_step<4>(paths);
  for (std::size_t l = 0; l < 4; ++l) {
    while (steps[l] && !done[l]) done[l] = try_step<1>({paths[l]})[0];
  }
}

double FilmPath::reduced_time(double time_s) const {
  if (liquid_) {
    return tau_from_ + ground_.k_sheet * (ground_.clock.age(time_s, look_) - dense_[0]);
  }
  const double s = (time_s - from_) / (until_ - from_);
  const double r = 1.0 - s;
  return dense_[0] + s * (dense_[1] + r * (dense_[2] + s * (dense_[3] + r * dense_[4])));
}

}  // namespace wetout::resin
