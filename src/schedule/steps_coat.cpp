// One coat: turning the board, preparing, wetting out, looking, trimming.
#include <algorithm>
#include <string>
#include <utility>

#include "step_builder.hpp"
#include "wetout/base/check.hpp"

namespace wetout::schedule {
namespace {

using laminate::CoatKind;
using laminate::CoatNeed;
using laminate::CoatSpec;
using units::Duration;
using units::minutes;

}  // namespace

void StepBuilder::coat(std::size_t i) {
  const CoatSpec& coat = spec(i);
  turn_up(coat.face, i);
  const bool install = coat.kind == CoatKind::install;
  const auto below = film_on_[side_of(coat.face)];
  std::vector<Link> landing;  // to the wet, once it is there
  if (!install) {
    if (below) land(i, *below, false, landing, "");
    std::vector<std::size_t> bands = lap_on_[side_of(coat.face)];
    if (laps_over(i)) {
      if (const auto across = film_on_[side_of(other_face(coat.face))]) bands.push_back(*across);
    }
    std::sort(bands.begin(), bands.end());
    bands.erase(std::unique(bands.begin(), bands.end()), bands.end());
    std::erase(bands, below.value_or(board_.coats.size()));
    std::erase_if(bands, [&](std::size_t band) { return sanded_[band]; });
    for (const std::size_t band : bands) {
      land(i, band, true, landing, bands.size() > 1 ? "-" + spec(band).id : "");
    }
    // What inserts were set in is a film too.
    for (const std::size_t fill : fills_on_[side_of(coat.face)]) {
      landing.push_back(
          {.from = out_.wets[fill], .moment = Moment::recoat_from, .min = Duration{}});
    }
  }
  const int ready = prepare(i);
  if (install && below) after(*below, Moment::sandable, ready);
  const double beside = minutes_beside_spreading(i);
  const double spreading = need(i).spread ? units::in_minutes(*need(i).spread) : 0.0;
  const int wet = add(i, StepWord::wet, "", beside + spreading, wet_title(i), wet_how(i));
  out_.steps[static_cast<std::size_t>(wet)].beside_spreading = beside;
  out_.wets[i] = wet;
  out_.sealed[i] = below.has_value() && !install;
  for (Link& link : landing) {
    link.to = wet;
    out_.links.push_back(link);
  }
  for (const auto& [step, wait] : waits_) {
    link({.from = step, .moment = Moment::end, .to = wet, .min = minutes(wait)});
  }
  waits_.clear();
  afterwards(i);
  if (install) {
    fills_on_[side_of(coat.face)].push_back(i);
    return;
  }
  film_on_[side_of(coat.face)] = i;
  lap_on_[side_of(coat.face)].clear();
  fills_on_[side_of(coat.face)].clear();
  if (laps_over(i)) lap_on_[side_of(other_face(coat.face))].push_back(i);
}

void StepBuilder::turn_up(board::Face face, std::size_t for_coat) {
  if (!up_) up_ = face;
  if (*up_ == face) return;
  up_ = face;
  const int flip = add(for_coat, StepWord::flip, "", d_.flip.value,
                       "Turn the board, " + std::string(laminate::to_string(face)) + " up",
                       "padded stands, both hands");
  for (const std::size_t wet : wet_since_flip_) after(wet, Moment::handle, flip);
  wet_since_flip_.clear();
  std::vector<std::size_t> now;
  std::swap(now, to_feather_);
  for (const std::size_t i : now) feather(i);
}

void StepBuilder::feather(std::size_t i) {
  const When ground{laps_group_[i], 1};
  const int edge = add(i, StepWord::feather, "edge", d_.edge.value + d_.edge_rail.value * rail_m(),
                       "Grind the laps of " + spec(i).name + " to the line",
                       "60-80 grit; glass dust: mask, extraction", true, ground);
  after(i, Moment::sandable, edge);
  const int step =
      add(i, StepWord::feather, "", d_.feather.value + d_.feather_rail.value * rail_m(),
          "Feather the laps of " + spec(i).name, "60-80 grit, not into the cloth", true);
  after(i, Moment::sandable, step);
  feathered_.push_back(i);
}

void StepBuilder::finish_feathers() {
  std::vector<std::size_t> now;
  std::swap(now, to_feather_);
  for (const std::size_t i : now) feather(i);
}

int StepBuilder::prepare(std::size_t i) {
  const CoatSpec& coat = spec(i);
  if (coat.kind == CoatKind::install) {
    const auto parts = static_cast<double>(coat.install->count);
    return add(i, StepWord::prepare, "", d_.prepare.value + d_.prepare_part.value * parts,
               "Rout and fit for " + coat.name, "foam and glass dust: mask, extraction", true);
  }
  const auto plies = static_cast<double>(coat.plies.size());
  const std::string tape = cut(i) ? ", tape the lap line" : "";
  return add(i, StepWord::prepare, "", d_.prepare.value + d_.prepare_ply.value * plies,
             "Prepare " + coat.name,
             coat.kind == CoatKind::laminate ? "dust off, cut and lay out cloth" + tape
                                             : "dust off, tape, set out cups");
}

double StepBuilder::minutes_beside_spreading(std::size_t i) const {
  const CoatNeed& coat = need(i);
  double m = d_.mixing.value * static_cast<double>(std::max<std::size_t>(1, coat.batches.size()));
  if (coat.kind == CoatKind::install) {
    return m + d_.set_part.value * static_cast<double>(spec(i).install->count);
  }
  m += d_.work_over.value;
  for (const laminate::PlyNeed& ply : board_.plan.plies) {
    if (ply.coat != coat.id) continue;
    m += d_.work_over_ply.value * units::in_square_metres(ply.area + ply.lap_area);
  }
  return m;
}

std::string StepBuilder::wet_title(std::size_t i) const {
  switch (spec(i).kind) {
    case CoatKind::seal:
      return "Spread " + spec(i).name;
    case CoatKind::laminate:
      return "Wet out " + spec(i).name;
    case CoatKind::install:
      return "Set " + spec(i).name;
    case CoatKind::hotcoat:
    case CoatKind::gloss:
      return "Pour " + spec(i).name;
  }
  base::broken_promise("every kind of coat has a title");
}

std::string StepBuilder::wet_how(std::size_t i) const {
  const std::size_t cups = need(i).batches.size();
  return cups > 1 ? std::to_string(cups) + " batches" : "";
}

void StepBuilder::afterwards(std::size_t i) {
  const CoatSpec& coat = spec(i);
  const int wet = out_.wets[i];
  wet_since_flip_.push_back(i);
  const auto watch = [&](int m) {
    const int step = add(i, StepWord::watch, std::to_string(m), d_.watch.value,
                         "Look at " + coat.name, "drips, dry cloth, bubbles, lifted laps");
    link({.from = wet,
          .moment = Moment::end,
          .to = step,
          .min = minutes(m),
          .max = minutes(m + d_.watch_late.value)});
  };
  if (coat.kind == CoatKind::install) {
    watch(30);
    return;
  }
  for (const int m : {15, 30, 60}) watch(m);
  if (cut(i)) {
    const int g = group(coat.id + "/laps", {"cut", "ground"},
                        {"laps of " + coat.name + " cut while they are rubber",
                         "laps of " + coat.name + " ground later, as nobody is there to cut them"});
    laps_group_.resize(board_.coats.size(), -1);
    laps_group_[i] = g;
    const int trim =
        add(i, StepWord::trim, "", d_.trim.value + d_.trim_rail.value * rail_m(),
            "Cut the laps of " + coat.name, "fresh blade; pull the tape", false, {g, 0});
    after(i, Moment::gel, trim);
    link({.from = wet,
          .moment = Moment::trim_until,
          .to = trim,
          .to_end = true,
          .max = Duration{},
          .tight = true,
          .when = {g, 0}});
    to_feather_.push_back(i);
  }
  if (coat.kind == CoatKind::hotcoat || coat.kind == CoatKind::gloss) {
    const int peel = add(i, StepWord::peel, "", d_.peel.value, "Pull the tape of " + coat.name,
                         "once it has gelled");
    after(i, Moment::gel, peel);
  }
}

}  // namespace wetout::schedule
