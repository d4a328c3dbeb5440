#include "wetout/learn/robust_fit.hpp"

#include <Eigen/Cholesky>
#include <Eigen/Core>
#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>

#include "wetout/base/check.hpp"

namespace wetout::learn {
namespace {

using Eigen::Index;
using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

constexpr int most_rounds = 2000;
constexpr double settled = 1e-13;

// E ψ² of a standard normal error, ψ cut off at c.
double mean_square_of_cut(double c) {
  const boost::math::normal normal;
  const double inside = 2.0 * cdf(normal, c) - 1.0 - 2.0 * c * pdf(normal, c);
  return inside + 2.0 * c * c * cdf(complement(normal, c));
}

// One set of records and beliefs, with what is found so far. Everything in spreads: a coefficient
// counts from its belief in units of the belief's spread, an error in units of its record's.
class Fitting {
 public:
  Fitting(const std::vector<Belief>& beliefs, const std::vector<Record>& records,
          const Noise& noise)
      : noise_(noise),
        kappa_(mean_square_of_cut(noise.tuning)),
        rows_(index(records.size()), index(beliefs.size())),
        right_(index(records.size())),
        moved_(Vector::Zero(index(beliefs.size()))),
        covariance_(Matrix::Identity(index(beliefs.size()), index(beliefs.size()))),
        weights_(Vector::Ones(index(records.size()))),
        factor_(noise.factor) {
    for (const Belief& belief : beliefs)
      base::promise(belief.spread > 0.0, "a belief has a spread");
    for (std::size_t i = 0; i < records.size(); ++i) {
      const Record& record = records[i];
      base::promise(record.row.size() == beliefs.size() && record.spread > 0.0,
                    "a record has a number for each coefficient, and a spread");
      double rest = record.value;
      for (std::size_t k = 0; k < beliefs.size(); ++k) {
        rest -= record.row[k] * beliefs[k].value;
        rows_(index(i), index(k)) = record.row[k] * beliefs[k].spread / record.spread;
      }
      right_[index(i)] = rest / record.spread;
    }
  }

  Fit run(const std::vector<Belief>& beliefs) {
    Fit fit;
    bool is_settled = false;
    while (!is_settled && fit.rounds < most_rounds) {
      ++fit.rounds;
      const double step = solve();
      weigh();
      is_settled = std::max(step, rescale()) < settled;
    }
    do {
      ++fit.rounds;
      let_go();
    } while (solve() >= settled && fit.rounds < 2 * most_rounds);
    const std::size_t size = beliefs.size();
    for (std::size_t k = 0; k < size; ++k) {
      fit.values.push_back(beliefs[k].value + beliefs[k].spread * moved_[index(k)]);
      for (std::size_t l = 0; l < size; ++l) {
        fit.covariance.push_back(covariance_(index(k), index(l)) * beliefs[k].spread *
                                 beliefs[l].spread);
      }
    }
    fit.weights.assign(weights_.begin(), weights_.end());
    fit.factor = factor_;
    fit.freedom = noise_.records + static_cast<double>(rows_.rows()) - decided();
    return fit;
  }

 private:
  static Index index(std::size_t n) { return static_cast<Index>(n); }

  // Weighted squares; returns by how many of their spreads the coefficients moved.
  double solve() {
    const Vector weights = weights_ / (factor_ * factor_);
    const Matrix weighted = weights.asDiagonal() * rows_;
    const Matrix identity = Matrix::Identity(rows_.cols(), rows_.cols());
    const Eigen::LLT<Matrix> normal(identity + rows_.transpose() * weighted);
    covariance_ = normal.solve(identity);
    const Vector former = moved_;
    moved_ = normal.solve(weighted.transpose() * right_);
    double step = 0.0;
    for (Index k = 0; k < moved_.size(); ++k) {
      step = std::max(step, std::abs(moved_[k] - former[k]) / std::sqrt(covariance_(k, k)));
    }
    return step;
  }

  void weigh() {
    const Vector errors = right_ - rows_ * moved_;
    const double cut = noise_.tuning * factor_;
    for (Index i = 0; i < errors.size(); ++i) {
      const double size = std::abs(errors[i]);
      weights_[i] = size <= cut ? 1.0 : cut / size;
    }
  }

  void let_go() {
    const Vector errors = right_ - rows_ * moved_;
    for (Index i = 0; i < errors.size(); ++i) {
      const double share = errors[i] / (noise_.aside * factor_);
      const double left = std::max(1.0 - share * share, 0.0);
      weights_[i] = left * left;
    }
  }

  // Returns by what share of it the factor moved.
  double rescale() {
    const Vector errors = right_ - rows_ * moved_;
    const double cut = noise_.tuning * factor_;
    const double squares = noise_.records * noise_.factor * noise_.factor +
                           errors.cwiseAbs().cwiseMin(cut).squaredNorm();
    const double free = static_cast<double>(rows_.rows()) - decided();
    const double next = std::sqrt(squares / (noise_.records + free * kappa_));
    const double step = std::abs(next - factor_) / factor_;
    factor_ = next;
    return step;
  }

  // How many coefficients the records decide: all of them, less what the beliefs still hold.
  [[nodiscard]] double decided() const {
    const double held = covariance_.trace();
    return std::clamp(static_cast<double>(rows_.cols()) - held, 0.0,
                      static_cast<double>(rows_.rows()));
  }

  const Noise& noise_;
  double kappa_;
  Matrix rows_;
  Vector right_;
  Vector moved_;
  Matrix covariance_;
  Vector weights_;
  double factor_;
};

}  // namespace

double Fit::spread(std::size_t coefficient) const {
  return std::sqrt(covariance[coefficient * values.size() + coefficient]);
}

Fit fit(const std::vector<Belief>& beliefs, const std::vector<Record>& records,
        const Noise& noise) {
  base::promise(
      noise.factor > 0.0 && noise.records > 0.0 && noise.tuning > 0.0 && noise.aside > 0.0,
      "errors have a factor that something is believed of");
  return Fitting(beliefs, records, noise).run(beliefs);
}

Prediction predict(const Fit& fit, const std::vector<double>& row, double spread) {
  const std::size_t size = fit.values.size();
  base::promise(row.size() == size && spread > 0.0, "a row for each coefficient, and a spread");
  Prediction prediction{.freedom = fit.freedom};
  double variance = spread * spread * fit.factor * fit.factor;
  for (std::size_t k = 0; k < size; ++k) {
    prediction.value += row[k] * fit.values[k];
    for (std::size_t l = 0; l < size; ++l) {
      variance += row[k] * fit.covariance[k * size + l] * row[l];
    }
  }
  prediction.spread = std::sqrt(variance);
  return prediction;
}

double Prediction::quantile(double probability) const {
  const boost::math::students_t student(freedom);
  return value + spread * boost::math::quantile(student, probability);
}

double Prediction::chance_above(double limit) const {
  const boost::math::students_t student(freedom);
  return cdf(complement(student, (limit - value) / spread));
}

}  // namespace wetout::learn
