// What follows air with a first-order lag, exactly: a room behind the outdoor air, a core behind
// the room's. Equations and choices: docs/models/weather.md.
//
//   lag dy/dt = x - y                x straight between its points, at rest outside them
//   y held at a floor while it would fall below: a heater with a thermostat
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "wetout/time/history.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::climate {

/// As far as a sampled course may leave the exact one.
inline constexpr units::TempDelta sampling_tolerance = units::TempDelta::kelvin(1e-3);

class Lagged {
 public:
  /// y(t) = level + slope (t - start) + rest exp(-(t - start) / lag), seconds after the first point
  /// of the input.
  struct Piece {
    double start_s = 0.0;
    double level = 0.0;  ///< kelvin
    double slope = 0.0;  ///< kelvin per second
    double rest = 0.0;   ///< kelvin
  };

  /// `lag` 0 or more; 0 is the input itself (not below the floor). From `start` at the first point,
  /// or from the floor if that is higher.
  static Lagged from(units::Temperature start, const time::History& air_kelvin, units::Duration lag,
                     std::optional<units::Temperature> floor = std::nullopt);
  /// From where settled_start() says.
  static Lagged settled(const time::History& air_kelvin, units::Duration lag,
                        std::optional<units::Temperature> floor = std::nullopt);

  /// Exact but for rounding (1e-12 K). Before the first point the start; after the last point the
  /// input stays as it is and this settles to it.
  [[nodiscard]] units::Temperature at(time::Instant instant) const;
  /// The same at a fraction of a second: seconds after the input's first point.
  [[nodiscard]] double kelvin_at_seconds(double after_first_s) const;

  /// Straight lines from the input's first point to its last that leave the exact course by at most
  /// `tolerance`, which is more than 0. Points lie on whole seconds and on the exact course; every
  /// bend of the input is one. With a lag below a minute the settling of the first minutes may be
  /// missed by more.
  [[nodiscard]] time::History sampled(units::TempDelta tolerance = sampling_tolerance) const;

  [[nodiscard]] std::span<const Piece> pieces() const { return pieces_; }
  [[nodiscard]] units::Duration lag() const { return units::seconds(lag_s_); }

 private:
  Lagged(const time::History& air_kelvin, units::Duration lag,
         std::optional<units::Temperature> floor);
  void run(double start_kelvin);
  [[nodiscard]] double value(const Piece& piece, double after_first_s) const;
  [[nodiscard]] const Piece& piece_at(double after_first_s) const;

  std::vector<time::HistoryPoint> input_;
  double lag_s_ = 0.0;
  std::optional<double> floor_;
  std::vector<Piece> pieces_;  // in order, the first at 0
};

/// Where a lag stands at the first point when the days before were like the first 24 h: the first
/// day, without its drift from its first hour to the same hour of the next day, repeated for ever.
/// Air known for less than 24 h: its first value.
units::Temperature settled_start(const time::History& air_kelvin, units::Duration lag,
                                 std::optional<units::Temperature> floor = std::nullopt);

/// The lower of two courses at every instant, as straight lines; where they cross a point is set
/// on the whole seconds beside it. From the earlier first point to the later last.
time::History lower_of(const time::History& a, const time::History& b);

}  // namespace wetout::climate
