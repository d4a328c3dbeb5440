#include "cup_rules.hpp"

namespace wetout::laminate {
namespace {

using units::Duration;

units::Volume volume_of(const Cupful& batch) {
  return batch.part_a.mass() / batch.product->density_a +
         batch.part_b.mass() / batch.product->density_b;
}

Verdict late(Verdict::Fails fails, Duration value, Duration limit,
             std::optional<resin::WorkingTime> time) {
  return {fails, units::in_minutes(value), units::in_minutes(limit), std::move(time)};
}

}  // namespace

Cupful cupful(const resin::Product& product, const resin::Weighed& mix) {
  Cupful batch;
  batch.product = &product;
  batch.part_a = mix.part_a;
  batch.part_b = mix.part_b;
  batch.total = mix.total;
  return batch;
}

void set_clocks(const Cupful& as_mixed, const resin::WorkingTime& time, Batch& batch) {
  if (as_mixed.cup != nullptr) batch.cup = as_mixed.cup->id;
  batch.air = as_mixed.air;
  batch.resin = as_mixed.resin;
  batch.use_within = time.use_within;
  batch.spread_within = time.spread_within;
  batch.gel = time.gel;
  batch.peak = time.peak;
  batch.runs_away = time.runs_away;
}

Duration time_to_empty(units::Mass mass, const Defaults& settings) {
  return settings.empty_first.value + settings.empty_per_200g.value * (mass / units::grams(200));
}

units::Volume CupRules::takes(const resin::Cup& cup) const {
  return cup.holds * settings_.cup_fill.value;
}

base::Result<resin::WorkingTime> CupRules::clock(const Cupful& batch) const {
  const resin::Situation situation{batch.total.mass(), batch.air, batch.resin, batch.cup,
                                   time_to_empty(batch.total.mass(), settings_)};
  if (batch.product->chemistry == resin::Chemistry::epoxy) {
    return times_.of(*batch.product, situation);
  }
  const double dose = batch.part_b.in_grams() / batch.part_a.in_grams();
  return resin::polyester_working_time(*batch.product, dose, situation, settings_.resin);
}

base::Result<Verdict> CupRules::judge(const Cupful& batch) const {
  using Fails = Verdict::Fails;
  if (batch.cup != nullptr && volume_of(batch) > takes(*batch.cup)) {
    return Verdict{Fails::cup_too_small, units::in_millilitres(volume_of(batch)),
                   units::in_millilitres(takes(*batch.cup)), std::nullopt};
  }
  const Duration empty = time_to_empty(batch.total.mass(), settings_);
  const Duration spread = empty + batch.spread;
  if (batch.product->chemistry == resin::Chemistry::epoxy) {
    // A film that has not stood in a cup lasts longest.
    const auto open = times_.film_open(*batch.product, batch.air);
    if (!open) return tl::unexpected(open.error());
    if (batch.spread > *open) {
      return late(Fails::spread_too_late, spread, empty + *open, std::nullopt);
    }
  }
  auto time = clock(batch);
  if (!time) return tl::unexpected(time.error());
  if (empty > time->use_within) {
    const Duration limit = time->use_within;
    return late(Fails::emptied_too_late, empty, limit, std::move(*time));
  }
  if (spread > *time->spread_within) {
    const Duration limit = *time->spread_within;
    return late(Fails::spread_too_late, spread, limit, std::move(*time));
  }
  return Verdict{Fails::nothing, 0.0, 0.0, std::move(*time)};
}

}  // namespace wetout::laminate
