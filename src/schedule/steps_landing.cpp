// What a coat lands on: films inside their window, or washed and scuffed first.
#include <algorithm>
#include <string>
#include <utility>

#include "step_builder.hpp"

namespace wetout::schedule {
namespace {

using laminate::CoatKind;
using laminate::CoatSpec;
using units::Duration;

}  // namespace

bool StepBuilder::laps_over(std::size_t i) const {
  const CoatSpec& coat = spec(i);
  if (coat.kind == CoatKind::laminate) {
    return std::any_of(coat.plies.begin(), coat.plies.end(),
                       [](const laminate::PlySpec& ply) { return ply.lap.si() > 0.0; });
  }
  // The first of both faces goes past the apex.
  if (coat.kind != CoatKind::hotcoat && coat.kind != CoatKind::gloss) return false;
  return std::none_of(out_.wets.begin(), out_.wets.end(), [&](const int& wet) {
    const auto j = static_cast<std::size_t>(&wet - out_.wets.data());
    return wet >= 0 && j != i && spec(j).kind == coat.kind && spec(j).face != coat.face;
  });
}

bool StepBuilder::cut(std::size_t i) const {
  return spec(i).kind == CoatKind::laminate && spec(i).laps == laminate::Laps::cut && laps_over(i);
}

bool StepBuilder::notice_band(std::size_t film) const {
  const resin::Product& sheet = product(film);
  return !sheet.lowest_air || !sheet.humidity_limit;
}

bool StepBuilder::wet_on_wet(std::size_t film, std::size_t coat) const {
  const auto family = [](const resin::Product& p) { return p.family.empty() ? p.id : p.family; };
  const resin::Product& a = product(film);
  const resin::Product& b = product(coat);
  return a.chemistry == b.chemistry && family(a) == family(b) && !a.waxed;
}

void StepBuilder::land(std::size_t i, std::size_t film, bool band, std::vector<Link>& landing,
                       const std::string& which) {
  // What was sanded since is ready.
  if (sanded_[film]) return;
  const bool edge_feathered =
      band && std::find(feathered_.begin(), feathered_.end(), film) != feathered_.end();
  When window, scuffed;
  if (wet_on_wet(film, i)) {
    const int g = group(
        spec(i).id + (band ? "/band" + which : "/ground"), {"window", "scuffed"},
        {spec(i).name + " inside the recoat window of " + spec(film).name,
         spec(film).name +
             (band ? " washed and scuffed where laps meet it, for " : " washed and scuffed for ") +
             spec(i).name});
    window = {g, 0};
    scuffed = {g, 1};
    landing.push_back({.from = out_.wets[film],
                       .moment = Moment::recoat_until,
                       .to_end = true,
                       .max = Duration{},
                       .tight = true,
                       .when = window});
    if (notice_band(film)) {
      landing.push_back(
          {.from = out_.wets[film], .moment = Moment::start, .good_film = true, .when = window});
    }
  }
  landing.push_back({.from = out_.wets[film], .moment = Moment::recoat_from, .min = Duration{}});
  if (band) {
    // Feathering has scuffed the edge; the other face's band is still to be done.
    if (edge_feathered && !laps_over(i)) return;
    const int step = add(i, StepWord::scuff, "laps" + which,
                         d_.wash.value + d_.scuff.value + d_.scuff_rail.value * rail_m(),
                         "Wash and scuff " + spec(film).name + " where laps meet it",
                         "clean water, pad, dry; then 120-150 grit", true, scuffed);
    after(film, Moment::sandable, step);
    return;
  }
  const double area = face_m2(spec(i).face);
  const int wash = add(i, StepWord::wash, "", d_.wash.value + d_.wash_area.value * area,
                       "Wash " + spec(film).name, "clean water, abrasive pad, dry", false, scuffed);
  after(film, Moment::handle, wash);
  const int scuff =
      add(i, StepWord::scuff, "", d_.scuff.value + d_.scuff_area.value * area,
          "Scuff " + spec(film).name, "120-150 grit until dull all over", true, scuffed);
  after(film, Moment::sandable, scuff);
  for (const std::size_t fill : fills_on_[side_of(spec(i).face)]) {
    after(fill, Moment::sandable, scuff);
  }
}

}  // namespace wetout::schedule
