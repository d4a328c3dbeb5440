// Robust weighted least squares with what was believed before: how much a few records, some of them
// wrong, may change a number.
#pragma once

#include <cstddef>
#include <vector>

namespace wetout::learn {

/// What is believed of a coefficient before anything was recorded: a normal distribution.
struct Belief {
  double value = 0.0;
  double spread = 1.0;  ///< standard deviation, above zero
};

/// value = Σ row[k] · coefficient[k], but for an error of about `spread`.
struct Record {
  std::vector<double> row = {};  ///< as long as there are coefficients
  double value = 0.0;
  double spread = 1.0;  ///< standard deviation of its error as assumed, above zero
};

/// Of the errors: `spread` of every record times one common factor, about which this is believed.
struct Noise {
  double factor = 1.0;    ///< above zero
  double records = 4.0;   ///< as many records' worth of belief, above zero
  double tuning = 1.345;  ///< errors beyond so many spreads weigh less (Huber): 95 % as efficient
  double aside = 4.685;   ///< and beyond so many nothing (Tukey's biweight): 95 % as efficient
};

struct Fit {
  std::vector<double> values = {};
  /// Row by row, of the coefficients; their uncertainty with the errors that were found.
  std::vector<double> covariance = {};
  std::vector<double> weights = {};  ///< of the records, 1 or less: how far each is believed
  double factor = 1.0;               ///< of the errors, as found
  double freedom = 0.0;              ///< degrees of freedom of `factor`
  int rounds = 0;

  [[nodiscard]] double spread(std::size_t coefficient) const;
};

/// First the coefficients b and the factor s of the errors at which
///
///     Σ ψ(eᵢ/s) rowᵢ/(spreadᵢ s) = (b − belief) / belief's spread²      for each coefficient
///     s² = (records · factor² + Σ min(eᵢ², (c s)²)) / (records + (n − p) κ)
///
/// with eᵢ the error of record i in units of its spread, ψ Huber's function (cut off at c =
/// `tuning`), κ = E ψ² of a normal error, n the number of records, p the number of coefficients as
/// far as the records, not the beliefs, decide them. Then, with that s, on from there to the b of
/// the first line with Tukey's biweight as ψ, which lets go of a wild record that Huber's would
/// still be pulled by (an MM-estimate). Without records the beliefs come back as they are.
/// Accuracy: 1e-9 of the spreads. Source: Huber and Ronchetti, Robust Statistics, 2nd ed., 2009,
/// chapter 7 [huber2009]; the beliefs and their weight are ours.
Fit fit(const std::vector<Belief>& beliefs, const std::vector<Record>& records,
        const Noise& noise = {});

/// What the next one will be: Σ row · coefficient, and how far off that may be.
struct Prediction {
  double value = 0.0;
  double spread = 0.0;   ///< of the coefficients and of the next error together
  double freedom = 0.0;  ///< of Student's distribution that it has

  /// The value below which it lies with this probability, in (0, 1).
  [[nodiscard]] double quantile(double probability) const;
  /// The probability that it is above `limit`.
  [[nodiscard]] double chance_above(double limit) const;
};

/// `spread`: of the error as assumed, above zero.
Prediction predict(const Fit& fit, const std::vector<double>& row, double spread);

}  // namespace wetout::learn
