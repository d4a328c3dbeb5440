#include "wetout/laminate/make_plan.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <memory>
#include <string>
#include <utility>

#include "batching.hpp"
#include "coat_need.hpp"
#include "lookup.hpp"
#include "number_of.hpp"
#include "parts_of_plan.hpp"
#include "pours.hpp"
#include "settings.hpp"
#include "wetout/laminate/order.hpp"

namespace wetout::laminate {
namespace {

using units::Milligrams;

// The coats in file order, computed in the order they go on.
struct Outcome {
  std::vector<CoatState> coats;
};

base::Result<Outcome> compute(const PlanInput& input, const std::vector<std::size_t>& order,
                              const Geometry& geometry, const Defaults& values) {
  const Defaults settings = settle(input.shop, values);
  const resin::SheetWorkingTimes times(settings.resin);
  Outcome outcome;
  outcome.coats.resize(input.coats.size());
  Progress progress{.foam = Wetted(geometry)};
  base::Problems problems;
  for (const std::size_t i : order) {
    auto state = coat_need(input, i, geometry, settings, progress);
    if (state) {
      if (auto batched = batch(input, i, settings, times, *state); !batched) {
        problems.insert(problems.end(), batched.error().begin(), batched.error().end());
      }
      outcome.coats[i] = std::move(*state);
    } else {
      problems.insert(problems.end(), state.error().begin(), state.error().end());
    }
  }
  if (!problems.empty()) return base::fail(std::move(problems));
  return outcome;
}

bool same(const CoatState& a, const CoatState& b) {
  return a.need == b.need && a.plies == b.plies && a.notices == b.notices;
}

// Moves each default by 1 % of its range, both ways, and lists those that move a coat.
std::vector<Assumption> assumptions(const PlanInput& input, const std::vector<std::size_t>& order,
                                    const Geometry& geometry, const Defaults& values,
                                    const Outcome& base_outcome) {
  std::vector<Assumption> found;
  Defaults moved = values;
  const auto each = [&](auto& value, const char* unit) {
    const auto original = value.value;
    const auto step = (value.high - value.low) * 0.01;
    std::vector<bool> used(input.coats.size(), false);
    for (const double sign : {-1.0, 1.0}) {
      value.value = std::clamp(original + step * sign, value.low, value.high);
      if (value.value == original) continue;
      const auto outcome = compute(input, order, geometry, moved);
      for (std::size_t i = 0; i < input.coats.size(); ++i) {
        // A plan that fails when the value is moved hangs on it with every coat.
        if (!outcome || !same(outcome->coats[i], base_outcome.coats[i])) used[i] = true;
      }
    }
    value.value = original;
    if (std::none_of(used.begin(), used.end(), [](bool u) { return u; })) return;
    Assumption assumption;
    assumption.name = std::string(value.name);
    assumption.value = number_of(original, unit);
    assumption.unit = unit;
    assumption.standing = std::string(base::to_string(value.source.standing));
    assumption.source = std::string(value.source.locator);
    for (std::size_t i = 0; i < used.size(); ++i) {
      if (used[i]) assumption.used_by.push_back(input.coats[i].id);
    }
    found.push_back(std::move(assumption));
  };
  visit(moved, each);
  return found;
}

BoardSummary summary_of(const PlanInput& input, const Geometry& geometry) {
  const board::Surfaces& surfaces = geometry.surfaces();
  BoardSummary board;
  board.id = input.board.id;
  board.name = input.board.name;
  board.foam = input.board.foam;
  board.length = input.board.length;
  board.planform = surfaces.planform.area;
  board.bottom = surfaces.bottom.area;
  board.deck = surfaces.deck.area;
  board.area_error =
      std::max({surfaces.planform.error, surfaces.bottom.error, surfaces.deck.error});
  board.perimeter = surfaces.perimeter;
  board.volume = surfaces.volume;
  if (const auto mass = board::core_mass(input.board, surfaces.volume)) {
    board.core_weight = Milligrams::nearest(*mass);
  }
  return board;
}

// The last guard before numbers are believed.
bool measurable(const Geometry& geometry) {
  const board::Surfaces& s = geometry.surfaces();
  for (const double value : {s.planform.area.si(), s.deck.area.si(), s.bottom.area.si(),
                             s.perimeter.si(), s.volume.si()}) {
    if (!std::isfinite(value) || value <= 0.0) return false;
  }
  return true;
}

void prefix_keys(base::Problems& problems) {
  for (base::Problem& problem : problems) problem.key = "board." + problem.key;
}

}  // namespace

base::Result<Plan> make_plan(const PlanInput& input, const Defaults& values) {
  base::Problems problems = check(input);
  auto hull = board::Hull::make(input.board);
  if (!hull) {
    prefix_keys(hull.error());
    problems.insert(problems.end(), hull.error().begin(), hull.error().end());
  }
  const auto order = order_of_coats(input.coats);
  if (!order) problems.insert(problems.end(), order.error().begin(), order.error().end());
  if (!problems.empty()) return base::fail(std::move(problems));

  const Geometry geometry(*hull);
  if (!measurable(geometry)) {
    return base::fail({.code = "board.not_measurable",
                       .message = "no surface can be laid through these measures",
                       .key = "board.width",
                       .expected = "widths that change less abruptly from place to place"});
  }
  const auto outcome = compute(input, *order, geometry, values);
  if (!outcome) return tl::unexpected(outcome.error());

  Plan plan;
  plan.air = input.air;
  plan.board = summary_of(input, geometry);
  notices_of(input, plan.notices);
  for (const CoatState& state : outcome->coats) {
    plan.coats.push_back(state.need);
    plan.plies.insert(plan.plies.end(), state.plies.begin(), state.plies.end());
    plan.notices.insert(plan.notices.end(), state.notices.begin(), state.notices.end());
  }
  plan.totals = totals_of(input, plan.coats, plan.plies, plan.board.core_weight, plan.notices);
  plan.notices.push_back({.code = "cup.not_modelled",
                          .text = "gel and peak temperature in the cup are not computed by this "
                                  "version; use-within is from the data sheet's pot life"});
  plan.assumptions = input.assumed;
  if (hull->tip_thickness_assumed()) {
    plan.assumptions.push_back({.name = "board.tip_thickness",
                                .value = units::in_metres(hull->thickness(units::Length{})),
                                .unit = "m",
                                .standing = "assumed",
                                .source = "at the tail, extrapolated from the stations",
                                .used_by = {"board"}});
  }
  for (Assumption& assumption : assumptions(input, *order, geometry, values, *outcome)) {
    plan.assumptions.push_back(std::move(assumption));
  }
  plan.cautions = cautions_of(input);
  return plan;
}

base::Result<LooseBatch> mix(const Shop& shop, const LooseMix& wanted, const Defaults& values) {
  const Defaults settings = settle(shop, values);
  const resin::Product& product = get(shop.resins, wanted.resin);
  resin::WeighRequest request = weigh_request(shop, product, wanted.additives, settings.resin);
  request.target = Milligrams::nearest(wanted.mass);
  const auto weighed = resin::weigh(request);
  if (!weighed) return tl::unexpected(weighed.error());
  const resin::Cup* cup = wanted.cup ? &get(shop.cups, *wanted.cup) : find(shop.cups, shop.cup);
  const units::Temperature resin_temp = wanted.resin_temp.value_or(wanted.air);
  const auto time = resin::SheetWorkingTimes(settings.resin)
                        .of(product, {weighed->total.mass(), wanted.air, resin_temp, cup});
  if (!time) return tl::unexpected(time.error());
  LooseBatch loose;
  loose.ratio = ratio_of(product, settings.resin);
  loose.batch = batch_of(shop, product, wanted.additives, *weighed);
  loose.batch.n = 1;
  if (cup != nullptr) loose.batch.cup = cup->id;
  loose.batch.air = wanted.air;
  loose.batch.resin = resin_temp;
  loose.batch.use_within = time->use_within;
  loose.notices = time->notices;
  if (cup != nullptr) {
    const units::Volume volume = loose.batch.part_a_volume + loose.batch.part_b_volume;
    const units::Volume takes = cup->holds * settings.cup_fill.value;
    if (volume > takes) {
      loose.notices.push_back({.code = "cup.too_small",
                               .text = "it does not fit cup \"" + cup->id + "\"",
                               .subject = cup->id,
                               .value = units::in_millilitres(volume),
                               .limit = units::in_millilitres(takes),
                               .unit = "ml"});
    }
  }
  return loose;
}

}  // namespace wetout::laminate
