// Conversion as a function of reduced time tau = integral of k f dt.
//
// With one activation energy every temperature history runs along the same curve alpha(tau):
// d alpha/d tau = (r + alpha^m)(1 - alpha)^n. Tabulating it once turns each step of film and cup
// into a look-up, and leaves the singular start of alpha^m behind.
#pragma once

#include <bit>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace wetout::resin {

/// Good to 3e-8 in conversion for r >= 0.01, m from 0 to 1 and n from 1 to 2.5 (measured against
/// quadrature in the tests). For n < 1 the curve ends where it reaches 1.
class ConversionCurve {
 public:
  ConversionCurve(double r, double m, double n);

  /// For tau >= 0.
  [[nodiscard]] double conversion(double tau) const {
    double d = 0.0;
    const Segment* s = find(tau, d);
    if (s == nullptr) return last_;
    return s->c0 + d * (s->c1 + d * (s->c2 + d * (s->c3 + d * (s->c4 + d * s->c5))));
  }

  /// d conversion/d tau.
  [[nodiscard]] double slope(double tau) const {
    double d = 0.0;
    const Segment* s = find(tau, d);
    if (s == nullptr) return 0.0;
    return s->c1 + d * (2.0 * s->c2 + d * (3.0 * s->c3 + d * (4.0 * s->c4 + d * 5.0 * s->c5)));
  }

  /// The tau at which `conversion` is reached: 0 at 0, infinite beyond the curve's end (within
  /// 1e-6 of full conversion for n up to 1.8).
  [[nodiscard]] double reduced_time(double conversion) const;

 private:
  // Segments lie evenly in the logarithm of tau + offset: eight to the octave, found from the bits
  // of the double. A quintic each.
  struct Segment {
    double c0, c1, c2, c3, c4, c5;
  };
  static constexpr int mantissa_bits = 3;
  static constexpr unsigned shift = 52 - mantissa_bits;
  static constexpr int first_octave = -12;
  static constexpr int last_octave = 18;

  [[nodiscard]] const Segment* find(double tau, double& d) const {
    const double x = tau + offset;
    const auto bits = std::bit_cast<std::uint64_t>(x);
    const std::size_t i = (bits >> shift) - first;
    if (i >= segments_.size()) return nullptr;
    d = x - std::bit_cast<double>(bits >> shift << shift);
    return &segments_[i];
  }

  static constexpr double offset = 0x1p-12;
  static constexpr std::uint64_t first = std::bit_cast<std::uint64_t>(offset) >> shift;

  std::vector<Segment> segments_;
  double last_ = 1.0;
};

}  // namespace wetout::resin
