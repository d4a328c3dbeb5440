// How long the steps around a coat take, and what they wait for (docs/models/schedule.md).
#pragma once

#include "wetout/base/cited.hpp"
#include "wetout/units/quantity.hpp"

namespace wetout::schedule {

/// Attended minutes: `fixed` + `per` of what the step grows with.
struct StepDefaults {
  using S = base::Standing;
  using Minutes = base::Default<double>;  // but for two quotients

  // Before the first coat
  Minutes acclimatise{"step.acclimatise", 10, 5, 30, {"", "carry in, unpack", S::assumed}};
  Minutes acclimatise_wait{
      "step.acclimatise_wait", 120, 60, 720, {"", "until core, cloth, resin are warm", S::assumed}};
  Minutes spackle_dries{"step.spackle_dries", 240, 60, 720, {"", "light spackle", S::practice}};
  Minutes artwork_dries{"step.artwork_dries", 120, 30, 720, {"", "thin water paint", S::assumed}};

  // Before each coat
  Minutes prepare{"step.prepare", 10, 5, 30, {"", "dust, tape, weigh out", S::assumed}};
  Minutes prepare_ply{
      "step.prepare_ply", 5, 2, 15, {"", "cut and lay out, for each ply", S::assumed}};
  Minutes prepare_part{"step.prepare_part", 8, 3, 20, {"", "rout and fit, a part", S::assumed}};
  Minutes flip{"step.flip", 5, 2, 15, {"", "two hands, padded stands", S::assumed}};
  Minutes wash{"step.wash", 5, 2, 15, {"", "and dry", S::assumed}};
  Minutes wash_area{"step.wash_area", 5, 2, 15, {"", "for each m2", S::assumed}};
  Minutes scuff{"step.scuff", 5, 2, 15, {"", "and brush off", S::assumed}};
  Minutes scuff_area{"step.scuff_area", 10, 5, 25, {"", "for each m2", S::assumed}};
  Minutes scuff_rail{"step.scuff_rail", 2, 1, 6, {"", "a band, for each m of rail", S::assumed}};

  // The coat
  Minutes mixing{"step.mixing", 3, 1, 8, {"", "weigh and stir, for each cup", S::assumed}};
  Minutes work_over{
      "step.work_over", 10, 5, 30, {"", "squeegee, laps, edges, brush marks", S::assumed}};
  Minutes work_over_ply{"step.work_over_ply",
                        6,
                        2,
                        15,
                        {"", "the same, for each m2 of each ply of cloth", S::assumed}};
  Minutes set_part{"step.set_part", 3, 1, 10, {"", "pour and set, for each part", S::assumed}};
  Minutes watch{"step.watch", 3, 1, 10, {"", "drips, dry cloth, bubbles", S::assumed}};
  Minutes watch_late{"step.watch_late", 10, 5, 20, {"", "later than meant, at most", S::assumed}};
  Minutes trim{"step.trim", 5, 2, 15, {"", "and pull the tape", S::assumed}};
  Minutes trim_rail{"step.trim_rail", 2, 1, 6, {"", "for each m of rail", S::assumed}};
  Minutes peel{"step.peel", 5, 2, 15, {"", "tape of a hotcoat or gloss", S::assumed}};
  Minutes feather{"step.feather", 5, 2, 15, {"", "lap edges", S::assumed}};
  Minutes feather_rail{"step.feather_rail", 2, 1, 6, {"", "for each m of rail", S::assumed}};
  Minutes edge{"step.edge", 5, 2, 15, {"", "grind laps that were not cut", S::assumed}};
  Minutes edge_rail{"step.edge_rail", 4, 2, 10, {"", "for each m of rail", S::assumed}};

  // Afterwards
  Minutes open_part{"step.open_part", 3, 1, 10, {"", "free an insert", S::assumed}};
  Minutes sand{"step.sand", 5, 2, 15, {"", "set up, brush off", S::assumed}};
  Minutes sand_area{"step.sand_area", 35, 15, 70, {"", "three grits, for each m2", S::assumed}};
  Minutes gloss_sand_area{
      "step.gloss_sand_area", 40, 20, 90, {"", "wet, four grits, for each m2", S::assumed}};
  Minutes polish{"step.polish", 5, 2, 15, {"", "set up, clean", S::assumed}};
  Minutes polish_area{"step.polish_area", 25, 10, 60, {"", "for each m2", S::assumed}};
  Minutes weigh{"step.weigh", 5, 2, 15, {"", "", S::assumed}};

  // The room
  Minutes dust_settles{"room.dust_settles", 30, 10, 120, {"", "after dry sanding", S::assumed}};

  // Films whose sheet does not print it
  Minutes sandable_of_gel{
      "film.sandable_of_gel", 6, 4, 12, {"", "sandable over gel of a film", S::assumed}};
  Minutes full_cure_of_gel{
      "film.full_cure_of_gel", 42, 24, 84, {"", "full cure over gel of a film", S::assumed}};

  // Windows
  Minutes window_scale{
      "slack.window", 120, 30, 240, {"", "less than half of it is tight", S::assumed}};
  Minutes visit_gap{"visits.gap", 30, 15, 60, {"", "a longer one ends a visit", S::assumed}};
};

/// Calls f(default) for each value.
template <class D, class F>
void visit_steps(D& d, F&& f) {
  for (auto* value : {&d.acclimatise,
                      &d.acclimatise_wait,
                      &d.spackle_dries,
                      &d.artwork_dries,
                      &d.prepare,
                      &d.prepare_ply,
                      &d.prepare_part,
                      &d.flip,
                      &d.wash,
                      &d.wash_area,
                      &d.scuff,
                      &d.scuff_area,
                      &d.scuff_rail,
                      &d.mixing,
                      &d.work_over,
                      &d.work_over_ply,
                      &d.set_part,
                      &d.watch,
                      &d.watch_late,
                      &d.trim,
                      &d.trim_rail,
                      &d.peel,
                      &d.feather,
                      &d.feather_rail,
                      &d.edge,
                      &d.edge_rail,
                      &d.open_part,
                      &d.sand,
                      &d.sand_area,
                      &d.gloss_sand_area,
                      &d.polish,
                      &d.polish_area,
                      &d.weigh,
                      &d.dust_settles,
                      &d.sandable_of_gel,
                      &d.full_cure_of_gel,
                      &d.window_scale,
                      &d.visit_gap}) {
    f(*value);
  }
}

}  // namespace wetout::schedule
