#include "batching.hpp"

#include <algorithm>
#include <string>

#include "lookup.hpp"
#include "pours.hpp"

namespace wetout::laminate {
namespace {

using units::Duration;
using units::Milligrams;

// More cups than this is no plan for one coat.
constexpr int most_batches = 40;

struct Trial {
  std::vector<resin::Weighed> mixes;
  std::vector<resin::WorkingTime> times;
  const resin::Cup* cup = nullptr;
  Milligrams losses, margin;
  // The first rule that does not hold; all of them hold when there is none.
  enum class Fails {
    nothing,
    cup_too_small,
    emptied_too_late,
    spread_too_late
  } fails = Fails::nothing;
  double value = 0.0;
  double limit = 0.0;
};

class Batcher {
 public:
  Batcher(const PlanInput& input, std::size_t index, const Defaults& settings,
          const resin::WorkingTimes& times, CoatState& state)
      : input_(input),
        key_("coat[" + std::to_string(index) + "]"),
        settings_(settings),
        times_(times),
        state_(state),
        product_(get(input.shop.resins, state.need.resin)),
        request_(weigh_request(input.shop, product_, state.need.additives, settings.resin)) {}

  base::Result<void> run() {
    state_.need.ratio = ratio_of(product_, settings_.resin);
    if (state_.need.kept.count() == 0) {
      // Such as a seal coat over foam that is wet already.
      state_.need.losses = {};
      state_.notices.push_back({.code = "coat.needs_nothing",
                                .text = "nothing stays on the board: no resin is planned",
                                .subject = state_.need.id});
      return {};
    }
    std::optional<Trial> first_refused;
    for (int n = 1; n <= most_batches; ++n) {
      for (const resin::Cup* cup : cups()) {
        auto trial = attempt(n, cup);
        // A coat that does not fit or last in few cups, and is too small for the scale in many.
        if (!trial && first_refused) return goes_off(*first_refused, n - 1);
        if (!trial) return tl::unexpected(trial.error());
        if (trial->fails == Trial::Fails::nothing) {
          if (first_refused) explain(*first_refused, n);
          accept(*trial);
          return {};
        }
        // Why the largest cup does not do says more than why a small one does not.
        if (n == 1) first_refused = *trial;
      }
    }
    return goes_off(*first_refused, most_batches);
  }

 private:
  units::Temperature resin_temp() const { return input_.resin_temp.value_or(input_.air); }

  std::vector<const resin::Cup*> cups() const {
    if (input_.cup) return {&get(input_.shop.cups, *input_.cup)};
    if (input_.shop.cups.empty()) return {nullptr};
    const resin::Cup* usual = input_.shop.cup.empty() ? &input_.shop.cups.front()
                                                      : &get(input_.shop.cups, input_.shop.cup);
    std::vector<const resin::Cup*> all{usual};
    for (const resin::Cup& cup : input_.shop.cups) {
      if (cup.holds > usual->holds) all.push_back(&cup);
    }
    std::stable_sort(all.begin() + 1, all.end(),
                     [](const resin::Cup* a, const resin::Cup* b) { return a->holds < b->holds; });
    return all;
  }

  base::Result<Trial> attempt(int n, const resin::Cup* cup) const {
    const CoatNeed& need = state_.need;
    Trial trial;
    trial.cup = cup;
    trial.losses =
        need.losses + Milligrams::nearest(settings_.left_in_cup.value * static_cast<double>(n));
    trial.margin = Milligrams::nearest(settings_.margin.value * (need.kept + trial.losses).mass());
    const Milligrams target = need.kept + trial.losses + trial.margin;
    Milligrams left = target;
    for (int i = 0; i < n; ++i) {
      resin::WeighRequest request = request_;
      const bool last = i + 1 == n;
      request.target = last ? left : Milligrams((target.count() + n - 1) / n);
      // The cups before were rounded up so far that nothing is left for the last.
      if (request.target.count() <= 0) return too_small();
      auto mix = resin::weigh(request);
      if (!mix) {
        for (base::Problem& problem : mix.error()) problem.key = key_;
        return tl::unexpected(mix.error());
      }
      left -= mix->total;
      trial.mixes.push_back(std::move(*mix));
    }
    Milligrams total;
    for (const resin::Weighed& mix : trial.mixes) total += mix.total;
    for (const resin::Weighed& mix : trial.mixes) {
      auto time = times_.of(product_, {mix.total.mass(), input_.air, resin_temp(), cup});
      if (!time) return tl::unexpected(time.error());
      judge(mix, total, *time, trial);
      trial.times.push_back(std::move(*time));
    }
    return trial;
  }

  base::Result<Trial> too_small() const {
    return base::fail({.code = "pour.step_too_coarse",
                       .message = "the scale's step is too coarse to share this coat out into cups",
                       .key = key_,
                       .expected = "a finer scale_step, or a larger cup"});
  }

  void judge(const resin::Weighed& mix, Milligrams total, const resin::WorkingTime& time,
             Trial& trial) const {
    if (trial.fails != Trial::Fails::nothing) return;
    const units::Volume volume =
        mix.part_a.mass() / product_.density_a + mix.part_b.mass() / product_.density_b;
    if (trial.cup != nullptr && volume > trial.cup->holds * settings_.cup_fill.value) {
      trial.fails = Trial::Fails::cup_too_small;
      trial.value = units::in_millilitres(volume);
      trial.limit = units::in_millilitres(trial.cup->holds * settings_.cup_fill.value);
      return;
    }
    const Duration emptied =
        settings_.empty_first.value +
        settings_.empty_per_200g.value * (mix.total.mass() / units::grams(200));
    const double share =
        static_cast<double>(mix.total.count()) / static_cast<double>(total.count());
    const Duration spread = state_.need.spread.value_or(Duration{}) * share;
    const bool late_cup = emptied > time.use_within;
    if (late_cup || spread > time.use_within) {
      trial.fails = late_cup ? Trial::Fails::emptied_too_late : Trial::Fails::spread_too_late;
      trial.value = units::in_minutes(late_cup ? emptied : spread);
      trial.limit = units::in_minutes(time.use_within);
    }
  }

  void accept(Trial& trial) {
    CoatNeed& need = state_.need;
    need.losses = trial.losses;
    need.margin = trial.margin;
    bool above_sheet = false;
    for (std::size_t i = 0; i < trial.mixes.size(); ++i) {
      Batch batch = batch_of(input_.shop, product_, need.additives, trial.mixes[i]);
      const resin::WorkingTime& time = trial.times[i];
      batch.n = static_cast<int>(i) + 1;
      if (trial.cup != nullptr) batch.cup = trial.cup->id;
      batch.air = input_.air;
      batch.resin = resin_temp();
      batch.use_within = time.use_within;
      batch.gel = time.gel;
      batch.peak = time.peak;
      batch.runs_away = time.runs_away;
      need.mix += batch.mix;
      need.batches.push_back(std::move(batch));
      for (base::Notice notice : time.notices) {
        if (notice.subject.empty()) {
          // Said once a coat, of its first and largest batch.
          if (above_sheet) continue;
          above_sheet = true;
          notice.subject = need.id;
        }
        if (std::find(state_.notices.begin(), state_.notices.end(), notice) ==
            state_.notices.end()) {
          state_.notices.push_back(std::move(notice));
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

  bool one_pour() const {
    const CoatKind kind = state_.need.kind;
    return kind == CoatKind::hotcoat || kind == CoatKind::gloss || kind == CoatKind::seal;
  }

  // Why it is not one batch; for a film, which shows the join, what else would make it one.
  void explain(const Trial& refused, int n) {
    if (n == 1) return;
    if (refused.fails == Trial::Fails::cup_too_small) {
      note("coat.split.cup", "more than one batch: it does not fit the cup", refused.value,
           refused.limit, "ml");
      if (one_pour()) {
        note("coat.one_pour.larger_cup",
             "a larger cup or tray, emptied at once, would keep this coat to one pour",
             refused.value / settings_.cup_fill.value, refused.limit / settings_.cup_fill.value,
             "ml");
      }
    } else {
      note("coat.split.time",
           refused.fails == Trial::Fails::spread_too_late
               ? "more than one batch: one would not be spread in time"
               : "more than one batch: one cup would not be emptied in time",
           refused.value, refused.limit, "min");
      if (one_pour()) propose_time(refused);
    }
    if (one_pour()) {
      note("coat.join_shows", "in several pours the join will show", n, 1, "batches");
    }
  }

  // In this order: a slower hardener of the shop, cooler resin, two people.
  void propose_time(const Trial& refused) {
    for (const resin::Product& other : input_.shop.resins) {
      if (other.id == product_.id || other.chemistry != product_.chemistry ||
          other.part_a != product_.part_a) {
        continue;
      }
      const auto time =
          times_.of(other, {state_.need.kept.mass(), input_.air, resin_temp(), nullptr});
      if (!time || units::in_minutes(time->use_within) < refused.value) continue;
      note("coat.one_pour.slower", "resin \"" + other.id + "\" would keep this coat to one pour",
           refused.value, units::in_minutes(time->use_within), "min");
      break;
    }
    const units::Temperature cooler = resin::temperature_for_factor(
        settings_.resin.energy_kj_mol.value, resin_temp(), refused.value / refused.limit);
    const units::Temperature lowest = product_.lowest_air.value_or(units::Temperature::celsius(10));
    if (cooler >= lowest) {
      note("coat.one_pour.cooler", "cooler resin would keep this coat to one pour",
           cooler.in_celsius(), lowest.in_celsius(), "C");
    }
    if (refused.value <= 2.0 * refused.limit && refused.fails == Trial::Fails::spread_too_late) {
      note("coat.one_pour.two_people", "two people spreading would keep this coat to one pour",
           refused.value / 2.0, refused.limit, "min");
    }
  }

  base::Result<void> goes_off(const Trial& refused, int tried) const {
    const bool cup = refused.fails == Trial::Fails::cup_too_small;
    const auto whole = [](double v) { return std::to_string(static_cast<long>(v + 0.5)); };
    return base::fail(
        {.code = "plan.goes_off",
         .message = "coat \"" + state_.need.id + "\" cannot be mixed: even " +
                    std::to_string(tried) + (tried == 1 ? " batch " : " batches ") +
                    (cup ? "would not fit the cup" : "would go off before it is spread"),
         .key = key_,
         .found = cup ? whole(refused.value) + " ml in one batch, the cup takes " +
                            whole(refused.limit) + " ml"
                      : whole(refused.value) + " min to empty or spread one batch, usable for " +
                            whole(refused.limit) + " min",
         .expected = cup ? "a larger cup in the shop file"
                         : "a slower resin, cooler resin (--resin-temp) or a cooler room (--air)"});
  }

  const PlanInput& input_;
  std::string key_;
  const Defaults& settings_;
  const resin::WorkingTimes& times_;
  CoatState& state_;
  const resin::Product& product_;
  resin::WeighRequest request_;
};

}  // namespace

base::Result<void> batch(const PlanInput& input, std::size_t index, const Defaults& settings,
                         const resin::WorkingTimes& times, CoatState& state) {
  return Batcher(input, index, settings, times, state).run();
}

}  // namespace wetout::laminate
