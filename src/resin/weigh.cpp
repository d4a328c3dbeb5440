#include "wetout/resin/weigh.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>
#include <string>

#include "wetout/base/check.hpp"

namespace wetout::resin {
namespace {

using units::Milligrams;

std::int64_t ceil_div(std::int64_t a, std::int64_t b) { return (a + b - 1) / b; }

// Part A in steps, and what follows from it.
Weighed with_part_a(const WeighRequest& request, std::int64_t a_steps) {
  const std::int64_t step = request.step.count();
  Weighed mix;
  mix.part_a = Milligrams(a_steps * step);
  const double b_wanted = static_cast<double>(a_steps) * request.hardener_per_resin;
  const std::int64_t b_steps = std::max<std::int64_t>(1, std::llround(b_wanted));
  mix.part_b = Milligrams(b_steps * step);
  mix.off_ratio = static_cast<double>(b_steps) / b_wanted - 1.0;
  mix.total = mix.part_a + mix.part_b;
  const double ab_steps = static_cast<double>(a_steps + b_steps);
  for (const double share : request.additive_shares) {
    const std::int64_t steps = std::max<std::int64_t>(1, std::llround(share * ab_steps));
    mix.additives.emplace_back(steps * step);
    mix.total += mix.additives.back();
  }
  return mix;
}

std::optional<Weighed> search(const WeighRequest& request) {
  const std::int64_t step = request.step.count();
  double whole = 1.0 + request.hardener_per_resin;
  double shares = 0.0;
  for (const double share : request.additive_shares) shares += share;
  whole *= 1.0 + shares;
  const double limit = std::max(request.raise_limit * static_cast<double>(request.target.count()),
                                static_cast<double>(request.target.count() + 4 * step));
  // Rounding of B and the additives may carry the total a little either way: begin below.
  const auto roundings = static_cast<std::int64_t>(request.additive_shares.size()) + 2;
  std::int64_t a_steps = std::max<std::int64_t>(
      1, ceil_div(static_cast<std::int64_t>(static_cast<double>(request.target.count()) / whole),
                  step) -
             roundings);
  for (;; ++a_steps) {
    Weighed mix = with_part_a(request, a_steps);
    if (static_cast<double>(mix.total.count()) > limit) return std::nullopt;
    if (mix.total < request.target) continue;
    // A hair of slack: 2 % of an exact decimal must not fail by a rounding of the machine.
    if (std::abs(mix.off_ratio) <= request.tolerance * (1.0 + 1e-9)) return mix;
  }
}

std::string grams_text(Milligrams step) {
  std::string text = std::to_string(step.count() / 1000);
  if (const std::int64_t rest = step.count() % 1000; rest != 0) {
    std::string digits = std::to_string(1000 + rest).substr(1);
    while (digits.back() == '0') digits.pop_back();
    text += '.' + digits;
  }
  return text + " g";
}

}  // namespace

base::Result<Weighed> weigh(const WeighRequest& request) {
  base::promise(request.target.count() > 0, "a batch of no mass");
  base::promise(request.step.count() > 0, "a scale without a step");
  base::promise(request.hardener_per_resin > 0.0 && request.tolerance > 0.0, "a ratio of nothing");
  if (auto mix = search(request)) return *mix;

  std::string would_do;
  for (const std::int64_t mg : {5000, 2000, 1000, 500, 200, 100, 50, 20, 10}) {
    if (mg >= request.step.count()) continue;
    WeighRequest finer = request;
    finer.step = Milligrams(mg);
    if (search(finer)) {
      would_do = grams_text(finer.step);
      break;
    }
  }
  return base::fail(
      {.code = "pour.step_too_coarse",
       .message = "the batch is too small for the scale to hold the mixing ratio",
       .found = "a batch of " + grams_text(request.target) + " on a scale that shows steps of " +
                grams_text(request.step),
       .expected = would_do.empty()
                       ? "a larger batch"
                       : "a scale that shows steps of " + would_do + ", or a larger batch",
       .hint = "mix it together with another coat, or raise the losses or the margin"});
}

}  // namespace wetout::resin
