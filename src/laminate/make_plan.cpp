#include "wetout/laminate/make_plan.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <memory>
#include <string>
#include <utility>

#include "assumptions.hpp"
#include "parts_of_plan.hpp"
#include "wetout/laminate/order.hpp"

namespace wetout::laminate {
namespace {

using units::Milligrams;

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

// What the data sheets of the coats' resins contradict themselves in.
base::Problems sheet_problems(const PlanInput& input, const resin::WorkingTimes& times) {
  base::Problems problems;
  for (std::size_t i = 0; i < input.shop.resins.size(); ++i) {
    const resin::Product& product = input.shop.resins[i];
    const bool used = std::any_of(input.coats.begin(), input.coats.end(),
                                  [&](const CoatSpec& coat) { return coat.resin == product.id; });
    if (!used || product.chemistry != resin::Chemistry::epoxy) continue;
    const auto& fit = times.calibration(product);
    if (fit) continue;
    for (base::Problem problem : fit.error()) {
      problem.key = "resin[" + std::to_string(i) + "]." + problem.key;
      problems.push_back(std::move(problem));
    }
  }
  return problems;
}

void prefix_keys(base::Problems& problems) {
  for (base::Problem& problem : problems) problem.key = "board." + problem.key;
}

}  // namespace

base::Result<Plan> make_plan(const PlanInput& input, const Defaults& values,
                             resin::AnswerCache* cache) {
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
  const resin::WorkingTimes times(values.resin, cache);
  if (auto wrong = sheet_problems(input, times); !wrong.empty()) {
    return base::fail(std::move(wrong));
  }
  const PlanRun run{input, *order, geometry, times};
  const auto outcome = compute(run, values);
  if (!outcome) return tl::unexpected(outcome.error());

  Plan plan;
  plan.air = input.air;
  plan.board = summary_of(input, geometry);
  notices_of(input, plan.notices);
  for (const CoatState& state : outcome->coats) {
    plan.coats.push_back(state.need);
    plan.plies.insert(plan.plies.end(), state.plies.begin(), state.plies.end());
    for (const base::Notice& notice : state.notices) {
      // What is true of a resin is said once.
      if (std::find(plan.notices.begin(), plan.notices.end(), notice) == plan.notices.end()) {
        plan.notices.push_back(notice);
      }
    }
  }
  plan.totals = totals_of(input, plan.coats, plan.plies, plan.board.core_weight, plan.notices);
  plan.assumptions = input.assumed;
  if (hull->tip_thickness_assumed()) {
    plan.assumptions.push_back({.name = "board.tip_thickness",
                                .value = units::in_metres(hull->thickness(units::Length{})),
                                .unit = "m",
                                .standing = "assumed",
                                .source = "at the tail, extrapolated from the stations",
                                .used_by = {"board"}});
  }
  for (Assumption& assumption : assumptions_of(run, values, *outcome)) {
    plan.assumptions.push_back(std::move(assumption));
  }
  plan.cautions = cautions_of(input);
  return plan;
}

}  // namespace wetout::laminate
