// Boards for the tests: coats as a job file would have them, their plan, their steps.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "laminate/sample.hpp"
#include "wetout/schedule/steps.hpp"

namespace wetout::schedule::sample {

using board::Face;
using laminate::CoatKind;
using laminate::CoatSpec;
using laminate::Laps;

/// Of the family "kelp", with a window and every limit printed.
resin::Product kelp_slow();
resin::Product kelp_quick();
/// Of no family, and without limits of air and humidity: it may be in the notice band.
resin::Product reed();
/// As kelp_slow, but for its window.
resin::Product no_window();
resin::Product laminating_polyester();
resin::Product waxed_polyester();
/// All of them, with what is needed to plan.
laminate::Shop shop();

CoatSpec lam(std::string id, Face face, Laps laps, double lap_in = 2.0);
CoatSpec coat(std::string id, Face face, CoatKind kind, std::string resin = "kelp-slow");
CoatSpec boxes(std::string id, Face face, std::string resin = "kelp-quick");

/// Bottom lam (cut laps), deck lam (free laps), boxes in the bottom, a hotcoat a face.
std::vector<CoatSpec> usual_coats();

/// Planned by laminate::make_plan. Fails the test when that is refused.
BoardWork planned(std::vector<CoatSpec> coats, double length_in = 60, double width_in = 18,
                  board::Foam foam = board::Foam::eps);
/// The same with a plan made up: areas, and a batch a coat. Quick, and never refused.
BoardWork rough(std::vector<CoatSpec> coats, double square_metres = 0.6);

/// Fails the test when there are none.
BoardSteps steps(const BoardWork& board, const StepDefaults& defaults = {});

/// Index of "bottom-lam/wet"; -1: there is none.
int find(const BoardSteps& steps, std::string_view name);
/// Likewise of "deck-lam/band".
int find_group(const BoardSteps& steps, std::string_view id);
/// "bottom-lam/wet" of each, in order.
std::vector<std::string> names(const BoardSteps& steps);
/// Those from one step to another.
std::vector<Link> links(const BoardSteps& steps, std::string_view from, std::string_view to);
/// There is a link of this moment, without a longest lag, always or under this option.
bool waits(const BoardSteps& steps, std::string_view step, std::string_view from, Moment moment,
           When when = {});

}  // namespace wetout::schedule::sample
