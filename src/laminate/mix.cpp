// Any mass of a resin, without a coat.
#include <algorithm>
#include <string>
#include <utility>

#include "batching.hpp"
#include "dosing.hpp"
#include "lookup.hpp"
#include "parts_of_plan.hpp"
#include "pours.hpp"
#include "settings.hpp"
#include "wetout/laminate/make_plan.hpp"

namespace wetout::laminate {
namespace {

using units::Milligrams;

constexpr int most_batches = 40;

class Mixer {
 public:
  Mixer(const Shop& shop, const LooseMix& wanted, const Defaults& settings,
        const resin::WorkingTimes& times)
      : shop_(shop),
        wanted_(wanted),
        settings_(settings),
        rules_(settings, times),
        product_(product_of(get(shop.resins, wanted.resin))) {}

  base::Result<LooseBatches> run() {
    std::optional<Verdict> refused;
    for (int n = 1; n <= most_batches; ++n) {
      for (const resin::Cup* cup : cups_to_try(shop_, wanted_.cup)) {
        LooseBatches loose;
        const auto verdict = fill(n, cup, loose);
        if (!verdict && refused) return goes_off(*refused);
        if (!verdict) return tl::unexpected(verdict.error());
        if (verdict->good()) {
          if (refused) explain(*refused, loose.notices);
          loose.ratio = ratio_of(product_, settings_.resin);
          return loose;
        }
        if (!refused) refused = *verdict;
      }
    }
    return goes_off(*refused);
  }

 private:
  resin::Product product_of(const resin::Product& product) const {
    if (product.chemistry == resin::Chemistry::epoxy) return product;
    return with_dose(product, wanted_.dose.value_or(usual_dose(product)), settings_.resin);
  }

  // The mass in `n` equal batches; the verdict of the first that breaks a rule, or of the last.
  base::Result<Verdict> fill(int n, const resin::Cup* cup, LooseBatches& loose) const {
    resin::WeighRequest request =
        weigh_request(shop_, product_, wanted_.additives, settings_.resin);
    request.target = Milligrams::nearest(wanted_.mass / static_cast<double>(n));
    const auto mix = resin::weigh(request);
    if (!mix) return tl::unexpected(mix.error());
    Cupful cup_of_it = cupful(product_, *mix);
    cup_of_it.cup = cup;
    cup_of_it.air = wanted_.air;
    cup_of_it.resin = wanted_.resin_temp.value_or(wanted_.air);
    auto verdict = rules_.judge(cup_of_it);
    if (!verdict || !verdict->good()) return verdict;
    const resin::WorkingTime& time = *verdict->time;
    Batch batch = batch_of(shop_, product_, wanted_.additives, *mix);
    set_clocks(cup_of_it, time, batch);
    for (batch.n = 1; batch.n <= n; ++batch.n) loose.batches.push_back(batch);
    edge_notice(cup_of_it.air, cup_of_it.resin, loose.notices);
    sheet_range_notices(product_, cup_of_it.air, cup_of_it.resin, loose.notices);
    loose.notices.insert(loose.notices.end(), time.notices.begin(), time.notices.end());
    return verdict;
  }

  void explain(const Verdict& refused, base::Notices& notices) const {
    const bool cup = refused.fails == Verdict::Fails::cup_too_small;
    notices.push_back({.code = cup ? "mix.split.cup" : "mix.split.heat",
                       .text = cup ? "it does not fit the usual cup in one batch"
                                   : "so much in the usual cup goes off before it is poured out",
                       .subject = wanted_.resin,
                       .value = refused.value,
                       .limit = refused.limit,
                       .unit = cup ? "ml" : "min"});
  }

  base::Result<LooseBatches> goes_off(const Verdict& refused) const {
    const bool cup = refused.fails == Verdict::Fails::cup_too_small;
    const auto whole = [](double v) { return std::to_string(static_cast<long>(v + 0.5)); };
    return base::fail(
        {.code = "mix.goes_off",
         .message = cup ? "so much does not fit " + std::to_string(most_batches) + " cups"
                        : "no number of cups lasts long enough to be poured out",
         .key = "--mass",
         .found = cup ? whole(refused.value) + " ml, the cup takes " + whole(refused.limit) + " ml"
                      : whole(refused.value) + " min to pour out, usable for " +
                            whole(refused.limit) + " min",
         .expected = cup ? "a smaller mass or a larger cup"
                         : "cooler resin (--resin-temp), a cooler room (--air), a slower resin"});
  }

  const Shop& shop_;
  const LooseMix& wanted_;
  const Defaults& settings_;
  CupRules rules_;
  resin::Product product_;
};

}  // namespace

base::Result<LooseBatches> mix(const Shop& shop, const LooseMix& wanted, const Defaults& values,
                               resin::AnswerCache* cache) {
  const Defaults settings = settle(shop, values);
  const resin::WorkingTimes times(settings.resin, cache);
  return Mixer(shop, wanted, settings, times).run();
}

}  // namespace wetout::laminate
