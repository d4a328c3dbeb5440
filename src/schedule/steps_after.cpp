// After the coats: opening inserts, sanding, polishing.
#include <algorithm>
#include <string>
#include <utility>

#include "step_builder.hpp"

namespace wetout::schedule {
namespace {

using laminate::CoatKind;

}  // namespace

void StepBuilder::sand_hotcoats() {
  for (const std::size_t i : order_) {
    if (spec(i).kind != CoatKind::hotcoat || out_.wets[i] < 0 || sanded_[i]) continue;
    if (film_on_[side_of(spec(i).face)] != i) continue;  // covered by another coat
    open_inserts(i);
    sand(i, d_.sand_area.value, "80, 120, 150-220 grit; not through to the cloth", true);
  }
}

void StepBuilder::open_inserts(std::size_t hotcoat) {
  for (std::size_t j = 0; j < board_.coats.size(); ++j) {
    const bool under = spec(j).kind == CoatKind::install && spec(j).face == spec(hotcoat).face &&
                       out_.wets[j] >= 0 && out_.wets[j] < out_.wets[hotcoat] && !opened_[j];
    if (!under) continue;
    opened_[j] = true;
    const int step =
        add(j, StepWord::open, "", d_.open_part.value * static_cast<double>(spec(j).install->count),
            "Open " + spec(j).name, "sand or cut to the edge of the part", true);
    after(hotcoat, Moment::sandable, step);
    after(j, Moment::sandable, step);
    lie_on_the_other_face(spec(j).face, step);
  }
}

void StepBuilder::lie_on_the_other_face(board::Face face, int step) {
  if (!up_ || *up_ == face) return;
  for (const std::size_t wet : wet_since_flip_) after(wet, Moment::handle, step);
}

void StepBuilder::sand(std::size_t i, double per_area, std::string how, bool dry) {
  When washed;
  if (notice_band(i) && dry) {
    const int g = group(spec(i).id + "/notice", {"as it is", "washed"},
                        {spec(i).name + " needs no wash",
                         spec(i).name + " washed before sanding: it cured cool or damp"});
    washed = {g, 1};
    const int wash =
        add(i, StepWord::wash, "sand", d_.wash.value + d_.wash_area.value * face_m2(spec(i).face),
            "Wash " + spec(i).name, "clean water, abrasive pad, dry", false, washed);
    after(i, Moment::handle, wash);
    lie_on_the_other_face(spec(i).face, wash);
  }
  const int step = add(i, StepWord::sand, "", d_.sand.value + per_area * face_m2(spec(i).face),
                       "Sand " + spec(i).name, std::move(how), dry);
  after(i, Moment::sandable, step);
  lie_on_the_other_face(spec(i).face, step);
  if (washed.group >= 0) {
    link({.from = out_.wets[i],
          .moment = Moment::start,
          .to = step,
          .good_film = true,
          .when = {washed.group, 0}});
  }
  sanded_[i] = true;
}

void StepBuilder::polish_glosses() {
  for (const std::size_t i : order_) {
    if (spec(i).kind != CoatKind::gloss) continue;
    sand(i, d_.gloss_sand_area.value, "wet, 400, 600, 800, 1000 grit", false);
    add(i, StepWord::polish, "", d_.polish.value + d_.polish_area.value * face_m2(spec(i).face),
        "Polish " + spec(i).name, "compound, slow and cool");
  }
}

}  // namespace wetout::schedule
