// A measure along the board: met exactly at its stations, monotone between neighbours, one tangent
// at each station.
#pragma once

#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>
#include <span>
#include <vector>

namespace wetout::board {

/// Value, first and second derivative by x.
struct Jet {
  double value = 0.0;
  double slope = 0.0;
  double bend = 0.0;
};

/// What is known at the ends of a row of stations.
struct RowEnds {
  std::optional<double> first_slope{}, last_slope{};
  /// The value there is a measure of its own (the width of a cut end), next to a longer interval:
  /// see monotone_slopes().
  bool first_measured = false, last_measured = false;
};

/// Slopes at stations x (rising) of values v: that of the parabola through a station and its
/// neighbours, cut back to what keeps the cubic monotone (Fritsch and Carlson 1980; the limit of
/// three times the smaller chord slope). The end pieces are parabolas unless a slope is given.
///
/// A parabola through a short end interval h and a long one H would let a greater value at the end
/// lower the curve over the long interval by more than it adds over the short one. With a measured
/// end the slope follows the short chord's by at most 4 h² / (H² - 2 h²), where the two are equal:
/// the area under the curve never falls as the end rises.
std::vector<double> monotone_slopes(std::span<const double> x, std::span<const double> v,
                                    const RowEnds& ends = {});

/// Pieces of v(x) cubic, value = v^(1/power). Beyond its ends the first and last piece go on.
class Curve {
 public:
  /// The same everywhere.
  static Curve constant(double value);

  /// Adds pieces between stations; x[0] is where the pieces before end.
  void add(std::span<const double> x, std::span<const double> v, std::span<const double> slopes,
           double power);

  /// One piece between two places, with the values and slopes there.
  struct Span {
    double from, to;
    Jet start, stop;  ///< of v; no bend
    double power;
  };
  /// Pieces that follow one another.
  static Curve of_spans(std::span<const Span> spans);

  [[nodiscard]] bool is_constant() const { return constant_; }
  [[nodiscard]] double value(double x) const {
    const Piece& p = piece(x);
    const double t = x - p.start;
    return p.root(p.c0 + t * (p.c1 + t * (p.c2 + t * p.c3)));
  }
  /// Where a root closes, the slope is infinite; `bend` is then meaningless.
  [[nodiscard]] Jet at(double x) const {
    const Piece& p = piece(x);
    const double t = x - p.start;
    const double v = p.c0 + t * (p.c1 + t * (p.c2 + t * p.c3));
    const double dv = p.c1 + t * (2.0 * p.c2 + t * 3.0 * p.c3);
    const double ddv = 2.0 * p.c2 + t * 6.0 * p.c3;
    if (p.power == 1.0) return {v, dv, ddv};
    if (v <= 0.0) return {0.0, std::copysign(std::numeric_limits<double>::infinity(), dv), 0.0};
    // y = v^(1/p): y' = y v' / (p v), y'' = y v'' / (p v) + (1 - p) y'^2 / y
    const double y = p.root(v);
    const double share = y / (p.power * v);
    const double slope = dv * share;
    return {y, slope, ddv * share + (1.0 - p.power) * slope * slope / y};
  }

 private:
  struct Piece {
    double start, c0, c1, c2, c3, power, inverse;

    [[nodiscard]] double root(double v) const {
      if (power == 1.0) return v;
      if (v <= 0.0) return 0.0;
      return power == 2.0 ? std::sqrt(v) : std::pow(v, inverse);
    }
  };
  [[nodiscard]] const Piece& piece(double x) const {
    if (pieces_.size() > few_) return found(x);
    const Piece* p = pieces_.data();
    for (std::size_t i = 1; i < pieces_.size() && pieces_[i].start <= x; ++i) ++p;
    return *p;
  }
  [[nodiscard]] const Piece& found(double x) const;
  void add(const Span& span);
  void index();

  static constexpr std::size_t few_ = 8;  // up to here a search costs more than a walk
  std::vector<Piece> pieces_;
  // Of many pieces: the last that starts at or before each of evenly spaced places.
  std::vector<std::size_t> index_;
  double index_start_ = 0.0, index_scale_ = 0.0;
  bool constant_ = false;
};

}  // namespace wetout::board
