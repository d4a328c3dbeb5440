// Fits and predicts what stands on standard input, problem after problem, each as numbers:
//
//   coefficients records questions  factor noise-records tuning aside
//   belief: value spread            for each coefficient
//   record: row... value spread     for each record
//   question: row... spread probability limit
//
// and prints for each problem one line: values, spreads, weights, factor, freedom, then for each
// question value, spread, quantile, chance above the limit.
#include <cstdio>
#include <iostream>
#include <vector>

#include "wetout/learn/robust_fit.hpp"

namespace {

using namespace wetout::learn;

double number() {
  double value = 0.0;
  std::cin >> value;
  return value;
}

std::vector<double> numbers(std::size_t count) {
  std::vector<double> all(count);
  for (double& one : all) one = number();
  return all;
}

void put(double value) { std::printf("%.17g ", value); }

void answer(std::size_t coefficients) {
  const auto records = static_cast<std::size_t>(number());
  const auto questions = static_cast<std::size_t>(number());
  Noise noise;
  noise.factor = number();
  noise.records = number();
  noise.tuning = number();
  noise.aside = number();
  std::vector<Belief> beliefs(coefficients);
  for (Belief& one : beliefs) {
    one.value = number();
    one.spread = number();
  }
  std::vector<Record> facts(records);
  for (Record& one : facts) {
    one.row = numbers(coefficients);
    one.value = number();
    one.spread = number();
  }
  const Fit found = fit(beliefs, facts, noise);
  for (const double value : found.values) put(value);
  for (std::size_t k = 0; k < coefficients; ++k) put(found.spread(k));
  for (const double weight : found.weights) put(weight);
  put(found.factor);
  put(found.freedom);
  for (std::size_t q = 0; q < questions; ++q) {
    const std::vector<double> row = numbers(coefficients);
    const double spread = number();
    const double probability = number();
    const double limit = number();
    const Prediction next = predict(found, row, spread);
    put(next.value);
    put(next.spread);
    put(next.quantile(probability));
    put(next.chance_above(limit));
  }
  std::printf("\n");
}

}  // namespace

int main() {
  std::size_t coefficients = 0;
  while (std::cin >> coefficients) answer(coefficients);
  return 0;
}
