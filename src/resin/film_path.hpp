// One film's reduced time along changing air: d tau/dt = k(T) f(alpha(tau), T). Dormand and
// Prince's pair (dormand1980) with its continuous extension (hairer1993), stopping at each kink of
// the air.
#pragma once

#include <array>
#include <vector>

#include "wetout/resin/clock.hpp"
#include "wetout/resin/conversion_curve.hpp"
#include "wetout/resin/cure.hpp"

namespace wetout::resin {

/// What all paths of one resin in one air share.
struct FilmGround {
  FilmGround(const Cure& fitted, const time::History& air_kelvin);

  Cure cure;
  Clock clock;
  ConversionCurve curve;
  double k_sheet;                                    ///< 1/s, at the clock's temperature
  double e_over_r;                                   ///< K
  double tg_uncured, tg_span, lambda, delay, width;  ///< kelvin
  double onset_above;  ///< of Tg above the air: below it nothing vitrifies

  [[nodiscard]] double tg_kelvin(double conversion) const {
    return tg_uncured + tg_span * lambda * conversion / (1.0 - (1.0 - lambda) * conversion);
  }
};

class FilmPath {
 public:
  /// From `start_s` with the reduced time the resin had when it was spread.
  FilmPath(const FilmGround& ground, double start_s, double start_reduced_time = 0.0);

  /// One more stretch. The first is the liquid, where nothing vitrifies yet: exact.
  void advance();
  /// The same for four paths of one ground, quicker than one by one; to the same bit.
  static void advance(const std::array<FilmPath*, 4>& paths);
  [[nodiscard]] double from() const { return from_; }
  [[nodiscard]] double until() const { return until_; }
  /// Within the last stretch.
  [[nodiscard]] double reduced_time(double time_s) const;
  [[nodiscard]] double conversion(double time_s) const {
    return ground_.curve.conversion(reduced_time(time_s));
  }
  [[nodiscard]] double tg_kelvin(double time_s) const {
    return ground_.tg_kelvin(conversion(time_s));
  }
  /// Tg above the air at the end of the stretch.
  [[nodiscard]] double above_air_at_end() const { return above_until_; }
  [[nodiscard]] double kelvin(double time_s) const {
    return ground_.clock.kelvin_at(time_s, look_);
  }

 private:
  void liquid();
  // False where the stretch was the liquid one, and is done.
  bool begin_stretch();
  // A step of the wanted length, or what is left to the kink; not taken when it is not exact
  // enough, but the wanted length is shorter then.
  template <std::size_t lanes>
  static std::array<bool, lanes> try_step(const std::array<FilmPath*, lanes>& paths);
  [[nodiscard]] double above(double tau, double kelvin) const {
    return ground_.tg_kelvin(ground_.curve.conversion(tau)) - kelvin;
  }

  const FilmGround& ground_;
  bool liquid_ = true;
  bool started_ = false;
  double from_, until_;
  double tau_from_, tau_until_;
  double next_step_ = 0.0;
  double kelvin_from_ = 0.0, kelvin_per_s_ = 0.0, kink_ = 0.0;
  double rate_until_ = 0.0;   // k at the end
  double slope_until_ = 0.0;  // d tau/dt there
  double above_until_ = 0.0;
  std::array<double, 5> dense_{};
  mutable Clock::Place look_ = 0;
  Clock::Place place_ = 0;
};

}  // namespace wetout::resin
