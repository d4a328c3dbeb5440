#include "batching.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "dosing.hpp"
#include "lookup.hpp"
#include "one_pour.hpp"
#include "pours.hpp"
#include "sharing.hpp"

namespace wetout::laminate {
namespace {

using units::Duration;
using units::Milligrams;
using Fails = Verdict::Fails;

// More cups than this is no plan for one coat. Where some cups do not do and this many neither,
// there is no number between that would be worth looking for.
constexpr int most_batches = 40;
constexpr int doubtful_batches = 5;

// The coat in so many of one kind of cup.
struct Trial {
  resin::Product product;
  Shared shared;
  const resin::Cup* cup = nullptr;
  std::vector<resin::WorkingTime> times;
  Verdict verdict;  // of the first batch that breaks a rule
  Cupful refused;   // that batch; its product is this trial's
};

class Batcher {
 public:
  Batcher(const PlanInput& input, std::size_t index, const Defaults& settings,
          const resin::WorkingTimes& times, CoatState& state)
      : input_(input),
        key_("coat[" + std::to_string(index) + "]"),
        settings_(settings),
        rules_(settings, times),
        state_(state),
        product_(get(input.shop.resins, state.need.resin)) {}

  base::Result<void> run() {
    if (state_.need.kept.count() == 0) return needs_nothing();
    std::optional<Trial> first_refused;
    for (int n = 1; n <= most_batches; ++n) {
      if (n == doubtful_batches && hopeless()) break;
      for (const resin::Cup* cup : cups_to_try(input_.shop, input_.cup)) {
        auto trial = attempt(n, cup);
        // A coat that does not fit or last in few cups, and is too small for the scale in many.
        if (!trial && first_refused) return goes_off(*first_refused, n - 1);
        if (!trial) return tl::unexpected(trial.error());
        if (trial->verdict.good()) {
          if (first_refused) explain(*first_refused, n);
          accept(*trial);
          return {};
        }
        // Why the largest cup does not do says more than why a small one does not.
        if (n == 1) first_refused = std::move(*trial);
      }
    }
    return goes_off(*first_refused, most_batches);
  }

 private:
  base::Result<void> needs_nothing() {
    // Such as a seal coat over foam that is wet already.
    state_.need.losses = {};
    const bool epoxy = product_.chemistry == resin::Chemistry::epoxy;
    state_.need.ratio =
        ratio_of(epoxy ? product_ : with_dose(product_, usual_dose(product_), settings_.resin),
                 settings_.resin);
    state_.notices.push_back({.code = "coat.needs_nothing",
                              .text = "nothing stays on the board: no resin is planned",
                              .subject = state_.need.id});
    return {};
  }

  units::Temperature resin_temp() const { return input_.resin_temp.value_or(input_.air); }
  Duration spread() const { return state_.need.spread.value_or(Duration{}); }

  // A polyester is dosed so that one of `n` batches lasts long enough.
  base::Result<resin::Product> product_for(int n) const {
    if (product_.chemistry == resin::Chemistry::epoxy) return product_;
    const Milligrams all = state_.need.kept + losses_in(state_.need, n, settings_) +
                           margin_on(state_.need, losses_in(state_.need, n, settings_), settings_);
    const double part = 1.0 / static_cast<double>(n);
    const Duration lasts = time_to_empty(all.mass() * part, settings_) + spread() * part;
    const auto dose = dose_for_gel(product_, std::max(input_.air, resin_temp()),
                                   lasts / settings_.resin.pot_life_share.value, settings_.resin);
    if (!dose) {
      base::Problems problems = dose.error();
      for (base::Problem& problem : problems) problem.key = key_ + ".resin";
      return base::fail(std::move(problems));
    }
    return with_dose(product_, *dose, settings_.resin);
  }

  base::Result<Trial> attempt(int n, const resin::Cup* cup) const {
    auto product = product_for(n);
    if (!product) return tl::unexpected(product.error());
    auto shared = share_out(
        state_.need, n, settings_,
        weigh_request(input_.shop, *product, state_.need.additives, settings_.resin), key_);
    if (!shared) return tl::unexpected(shared.error());
    Trial trial{.product = std::move(*product),
                .shared = std::move(*shared),
                .cup = cup,
                .times = {},
                .verdict = {},
                .refused = {}};
    Milligrams total;
    for (const resin::Weighed& mix : trial.shared.mixes) total += mix.total;
    for (const resin::Weighed& mix : trial.shared.mixes) {
      Cupful batch = in_cup(trial.product, mix, cup);
      batch.spread =
          spread() * (static_cast<double>(mix.total.count()) / static_cast<double>(total.count()));
      auto verdict = rules_.judge(batch);
      if (!verdict) return tl::unexpected(verdict.error());
      if (!verdict->good()) {
        trial.verdict = std::move(*verdict);
        trial.refused = batch;
        break;
      }
      trial.times.push_back(std::move(*verdict->time));
    }
    return trial;
  }

  Cupful in_cup(const resin::Product& product, const resin::Weighed& mix,
                const resin::Cup* cup) const {
    Cupful batch = cupful(product, mix);
    batch.cup = cup;
    batch.air = input_.air;
    batch.resin = resin_temp();
    return batch;
  }

  // Not even in the most cups.
  bool hopeless() const {
    for (const resin::Cup* cup : cups_to_try(input_.shop, input_.cup)) {
      const auto trial = attempt(most_batches, cup);
      // Too small for the scale says nothing about fewer cups.
      if (!trial || trial->verdict.good()) return false;
    }
    return true;
  }

  void accept(Trial& trial) {
    CoatNeed& need = state_.need;
    need.ratio = ratio_of(trial.product, settings_.resin);
    need.losses = trial.shared.losses;
    need.margin = trial.shared.margin;
    for (std::size_t i = 0; i < trial.shared.mixes.size(); ++i) {
      Batch batch = batch_of(input_.shop, trial.product, need.additives, trial.shared.mixes[i]);
      const resin::WorkingTime& time = trial.times[i];
      batch.n = static_cast<int>(i) + 1;
      set_clocks(in_cup(trial.product, trial.shared.mixes[i], trial.cup), time, batch);
      need.mix += batch.mix;
      need.batches.push_back(std::move(batch));
      state_.assumed.insert(time.assumed.begin(), time.assumed.end());
      for (const base::Notice& notice : time.notices) {
        if (std::find(state_.notices.begin(), state_.notices.end(), notice) ==
            state_.notices.end()) {
          state_.notices.push_back(notice);
        }
      }
    }
    need.rounding = need.mix - need.kept - need.losses - need.margin;
  }

  void note(std::string code, std::string text, double value, double limit, std::string unit) {
    state_.notices.push_back({.code = std::move(code),
                              .text = std::move(text),
                              .subject = state_.need.id,
                              .value = value,
                              .limit = limit,
                              .unit = std::move(unit)});
  }

  // Why it is not one batch; for a film, which shows the join, what else would make it one.
  void explain(const Trial& refused, int n) {
    if (n == 1) return;
    const Verdict& why = refused.verdict;
    if (why.time) state_.assumed.insert(why.time->assumed.begin(), why.time->assumed.end());
    switch (why.fails) {
      case Fails::nothing:
        return;
      case Fails::cup_too_small:
        note("coat.split.cup", "more than one batch: it does not fit the cup", why.value, why.limit,
             "ml");
        break;
      case Fails::emptied_too_late:
        note("coat.split.heat",
             "more than one batch: so much in one cup goes off before it is poured out", why.value,
             why.limit, "min");
        break;
      case Fails::spread_too_late:
        note("coat.split.film", "more than one batch: one would set before it is spread", why.value,
             why.limit, "min");
        break;
    }
    const CoatKind kind = state_.need.kind;
    if (kind != CoatKind::hotcoat && kind != CoatKind::gloss && kind != CoatKind::seal) return;
    Cupful whole = refused.refused;
    whole.product = &refused.product;
    for (base::Notice& notice :
         ways_to_one_pour(input_, state_.need.id, settings_, rules_, whole, why, state_.assumed)) {
      state_.notices.push_back(std::move(notice));
    }
    note("coat.join_shows", "in several pours the join will show", n, 1, "batches");
  }

  base::Result<void> goes_off(const Trial& refused, int tried) const {
    const Verdict& why = refused.verdict;
    const bool cup = why.fails == Fails::cup_too_small;
    const auto whole = [](double v) { return std::to_string(static_cast<long>(v + 0.5)); };
    return base::fail(
        {.code = "plan.goes_off",
         .message = "coat \"" + state_.need.id + "\" cannot be mixed: even " +
                    std::to_string(tried) + (tried == 1 ? " batch " : " batches ") +
                    (cup ? "would not fit the cup" : "would go off before it is spread"),
         .key = key_,
         .found =
             cup ? whole(why.value) + " ml in one batch, the cup takes " + whole(why.limit) + " ml"
                 : whole(why.value) + " min to empty or spread one batch, usable for " +
                       whole(why.limit) + " min",
         .expected = cup ? "a larger cup in the shop file"
                         : "a slower resin, cooler resin (--resin-temp) or a cooler room (--air)"});
  }

  const PlanInput& input_;
  std::string key_;
  const Defaults& settings_;
  CupRules rules_;
  CoatState& state_;
  const resin::Product& product_;
};

}  // namespace

base::Result<void> batch(const PlanInput& input, std::size_t index, const Defaults& settings,
                         const resin::WorkingTimes& times, CoatState& state) {
  return Batcher(input, index, settings, times, state).run();
}

bool masses_move(const PlanInput& input, const Defaults& settings, const CoatState& need,
                 const CoatState& batched, const Defaults& batched_with) {
  const int n = static_cast<int>(batched.need.batches.size());
  if (n == 0) return false;
  const Milligrams losses = losses_in(need.need, n, settings);
  if (losses != batched.need.losses ||
      margin_on(need.need, losses, settings) != batched.need.margin) {
    return true;
  }
  // Until when a film can be spread hangs on when it leaves its cup.
  const bool film_clock =
      get(input.shop.resins, need.need.resin).chemistry == resin::Chemistry::epoxy;
  const units::Mass mass = batched.need.batches.front().mix.mass();
  return film_clock && time_to_empty(mass, settings) != time_to_empty(mass, batched_with);
}

std::vector<const resin::Cup*> cups_to_try(const Shop& shop,
                                           const std::optional<std::string>& only) {
  if (only) return {&get(shop.cups, *only)};
  if (shop.cups.empty()) return {nullptr};
  const resin::Cup* usual = shop.cup.empty() ? &shop.cups.front() : &get(shop.cups, shop.cup);
  std::vector<const resin::Cup*> all{usual};
  for (const resin::Cup& cup : shop.cups) {
    if (cup.holds > usual->holds) all.push_back(&cup);
  }
  std::stable_sort(all.begin() + 1, all.end(),
                   [](const resin::Cup* a, const resin::Cup* b) { return a->holds < b->holds; });
  return all;
}

}  // namespace wetout::laminate
