#include "sharing.hpp"

#include <utility>

namespace wetout::laminate {
namespace {

using units::Milligrams;

}  // namespace

Milligrams losses_in(const CoatNeed& need, int n, const Defaults& settings) {
  return need.losses + Milligrams::nearest(settings.left_in_cup.value * static_cast<double>(n));
}

Milligrams margin_on(const CoatNeed& need, Milligrams losses, const Defaults& settings) {
  return Milligrams::nearest(settings.margin.value * (need.kept + losses).mass());
}

base::Result<Shared> share_out(const CoatNeed& need, int n, const Defaults& settings,
                               resin::WeighRequest request, const std::string& key) {
  Shared shared;
  shared.losses = losses_in(need, n, settings);
  shared.margin = margin_on(need, shared.losses, settings);
  const Milligrams target = need.kept + shared.losses + shared.margin;
  Milligrams left = target;
  for (int i = 0; i < n; ++i) {
    const bool last = i + 1 == n;
    request.target = last ? left : Milligrams((target.count() + n - 1) / n);
    // The cups before were rounded up so far that nothing is left for the last.
    if (request.target.count() <= 0) {
      return base::fail(
          {.code = "pour.step_too_coarse",
           .message = "the scale's step is too coarse to share this coat out into cups",
           .key = key,
           .expected = "a finer scale_step, or a larger cup"});
    }
    auto mix = resin::weigh(request);
    if (!mix) {
      for (base::Problem& problem : mix.error()) problem.key = key;
      return tl::unexpected(mix.error());
    }
    left -= mix->total;
    shared.mixes.push_back(std::move(*mix));
  }
  return shared;
}

}  // namespace wetout::laminate
