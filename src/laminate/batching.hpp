// From what a coat needs to cups: how many, which, and what the scale shows.
#pragma once

#include <cstddef>

#include "coat_need.hpp"
#include "cup_rules.hpp"

namespace wetout::laminate {

/// Fills in losses of the cups, margin, rounding, mix and the batches. The fewest batches that hold
/// the rules of their cups (cup_rules.hpp); equal but for the last; the default cup before larger
/// ones. Problems: "plan.goes_off", "pour.step_too_coarse", those of the clocks; keys "coat[i]...".
base::Result<void> batch(const PlanInput& input, std::size_t index, const Defaults& settings,
                         const resin::WorkingTimes& times, CoatState& state);

/// Whether the masses, or when a cup is empty, already differ from those of `batched`, which was
/// made from an equal need: then no clock has to be asked to know that the plan moves.
bool masses_move(const PlanInput& input, const Defaults& settings, const CoatState& need,
                 const CoatState& batched, const Defaults& batched_with);

/// The cups a batch may be mixed in: the one asked for and no other; else the usual one, then
/// larger ones, smallest first; a null where the shop has none.
std::vector<const resin::Cup*> cups_to_try(const Shop& shop,
                                           const std::optional<std::string>& only);

}  // namespace wetout::laminate
