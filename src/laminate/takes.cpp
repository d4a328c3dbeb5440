#include "wetout/laminate/takes.hpp"

#include <utility>

#include "coat_need.hpp"
#include "settings.hpp"
#include "wetout/laminate/order.hpp"

namespace wetout::laminate {

base::Result<std::vector<std::vector<Taking>>> takings(const PlanInput& input,
                                                       std::span<const Losses> cases,
                                                       const Spreading& pace,
                                                       const Defaults& values) {
  base::Problems problems = check(input);
  const auto hull = board::Hull::make(input.board);
  if (!hull) problems.insert(problems.end(), hull.error().begin(), hull.error().end());
  const auto order = order_of_coats(input.coats);
  if (!order) problems.insert(problems.end(), order.error().begin(), order.error().end());
  if (!problems.empty()) return base::fail(std::move(problems));
  const Geometry geometry(*hull);
  PlanInput changed = input;
  changed.shop.pace = pace;
  std::vector<std::vector<Taking>> all;
  for (const Losses& losses : cases) {
    changed.shop.losses = losses;
    const Defaults settings = settle(changed.shop, values);
    Progress progress{.foam = Wetted(geometry)};
    std::vector<Taking> coats(input.coats.size());
    for (const std::size_t i : *order) {
      const auto state = coat_need(changed, i, geometry, settings, progress);
      if (!state) return tl::unexpected(state.error());
      coats[i] = {state->need.kept + state->need.losses, state->need.spread};
    }
    all.push_back(std::move(coats));
  }
  return all;
}

}  // namespace wetout::laminate
