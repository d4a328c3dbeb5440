#include <initializer_list>
#include <utility>

#include "sample.hpp"

namespace wetout::report::sample {
namespace {

using board::Face;
using laminate::Batch;
using laminate::CoatKind;
using laminate::CoatNeed;
using laminate::PlyNeed;
using units::inches;
using units::Milligrams;
using units::millilitres;
using units::minutes;
using units::square_metres;
using units::Temperature;

Milligrams g(double grams) { return Milligrams::nearest(units::grams(grams)); }

constexpr double density_a = 1.13;
constexpr double density_b = 0.97;
constexpr double density_white = 1.9;

Batch batch(int n, double a, double white, double b, double within_min) {
  Batch out;
  out.n = n;
  out.cup = "quart";
  out.part_a = g(a);
  out.part_b = g(b);
  out.mix = g(a + white + b);
  out.part_a_volume = millilitres(a / density_a);
  out.part_b_volume = millilitres(b / density_b);
  if (white > 0.0) out.additives.push_back({"white", g(white)});
  double reads = 0.0;
  double volume = 0.0;
  const auto pour = [&](const char* what, double mass, double density) {
    if (mass <= 0.0) return;
    reads += mass;
    volume += mass / density;
    out.pours.push_back(
        {what, g(mass), g(reads), millilitres(mass / density), millilitres(volume)});
  };
  pour("resin-a", a, density_a);
  pour("white", white, density_white);
  pour("slow-b", b, density_b);
  out.air = Temperature::celsius(22);
  out.resin = Temperature::celsius(22);
  out.use_within = minutes(within_min);
  out.off_ratio = 0.0012;
  return out;
}

struct Masses {
  double kept, uptake, trimmed, sanded, losses, margin;
};

CoatNeed coat(const char* id, const char* name, CoatKind kind, Face face, double area,
              const Masses& m, std::initializer_list<Batch> batches) {
  CoatNeed out;
  out.id = id;
  out.name = name;
  out.kind = kind;
  out.face = face;
  out.resin = "slow";
  out.area = square_metres(area);
  out.kept = g(m.kept);
  out.uptake = g(m.uptake);
  out.trimmed = g(m.trimmed);
  out.sanded = g(m.sanded);
  out.losses = g(m.losses);
  out.margin = g(m.margin);
  out.batches = batches;
  for (const Batch& each : out.batches) out.mix += each.mix;
  out.rounding = out.mix - out.kept - out.losses - out.margin;
  out.ratio = {resin::By::volume, 2.0, 1.0, 0.03};
  out.spread = minutes(area * (kind == CoatKind::laminate ? 7.0 : 4.0));
  return out;
}

PlyNeed ply(const char* id, const char* coat, Face face, double area, double fibre) {
  PlyNeed out;
  out.id = id;
  out.coat = coat;
  out.cloth = "e4";
  out.face = face;
  out.area = square_metres(area);
  out.cloth_area = square_metres(fibre / 135.6);
  out.fibre = g(fibre);
  out.resin = g(fibre);
  out.thickness = units::millimetres(0.166);
  out.fibre_fraction = 0.5;
  out.cut_length = inches(79.3);
  out.cut_width = inches(29.4);
  return out;
}

void add_plies(laminate::Plan& plan) {
  PlyNeed bottom = ply("e4", "bottom-lam", Face::bottom, 0.998, 161.342);
  bottom.lap = inches(2);
  bottom.lap_area = square_metres(0.19);
  PlyNeed patch = ply("deck-patch", "deck-lam", Face::deck, 0.4064, 55.108);
  patch.from_tail = inches(14);
  patch.to = inches(56);
  patch.width = inches(15);
  patch.cut_length = inches(42);
  patch.cut_width = inches(15);
  PlyNeed tail = ply("tail-patch", "deck-lam", Face::deck, 0.171, 23.188);
  tail.to = inches(18);
  tail.cut_length = inches(18);
  tail.cut_width = inches(17.2);
  PlyNeed deck = ply("e4-2", "deck-lam", Face::deck, 1.062, 170.4);
  deck.lap = inches(2);
  deck.lap_area = square_metres(0.2);
  plan.plies = {bottom, patch, tail, deck};
}

void add_coats(laminate::Plan& plan) {
  CoatNeed bottom = coat("bottom-lam", "bottom lam", CoatKind::laminate, Face::bottom, 1.19,
                         {232.702, 71.36, 15.8, 0, 56.1, 23.104}, {batch(1, 219, 0, 95, 17)});
  bottom.laps = laminate::Laps::cut;
  bottom.fibre = g(161.342);
  CoatNeed deck =
      coat("deck-lam", "deck lam", CoatKind::laminate, Face::deck, 1.262,
           {311.9, 63.2, 0, 0, 48.7, 28.848},
           {batch(1, 132, 4, 57, 17.4), batch(2, 132, 4, 57, 17.4), batch(3, 4, 0.5, 2, 17.4)});
  deck.laps = laminate::Laps::free;
  deck.fibre = g(248.696);
  deck.additives = {{"white", 0.02}};
  CoatNeed boxes = coat("fin-boxes", "fin boxes", CoatKind::install, Face::bottom, 0.031,
                        {102.15, 0, 0, 0, 18, 9.612}, {batch(1, 91, 0, 39, 15)});
  boxes.spread.reset();
  CoatNeed hot_bottom =
      coat("bottom-hotcoat", "bottom hotcoat", CoatKind::hotcoat, Face::bottom, 1.09,
           {225.63, 0, 0, 62.7, 34.8, 20.834}, {batch(1, 197, 0, 85, 16.2)});
  CoatNeed hot_deck = coat("deck-hotcoat", "deck hotcoat", CoatKind::hotcoat, Face::deck, 1.062,
                           {219.834, 0, 0, 61.1, 34.8, 20.371}, {batch(1, 192, 0, 83, 16.3)});
  CoatNeed gloss = coat("bottom-gloss", "bottom gloss", CoatKind::gloss, Face::bottom, 1.09,
                        {125.35, 0, 0, 62.7, 18, 11.468}, {batch(1, 108, 0, 47, 18.9)});
  plan.coats = {bottom, deck, boxes, hot_bottom, hot_deck, gloss};
}

void add_totals(laminate::Plan& plan) {
  laminate::Totals& totals = plan.totals;
  laminate::ResinTotal slow;
  slow.resin = "slow";
  Milligrams white;
  for (const CoatNeed& need : plan.coats) {
    totals.mix += need.mix;
    totals.fibre += need.fibre;
    totals.kept += need.kept;
    totals.losses += need.losses;
    totals.margin += need.margin;
    totals.trimmed += need.trimmed;
    totals.sanded += need.sanded;
    for (const Batch& each : need.batches) {
      slow.part_a += each.part_a;
      slow.part_b += each.part_b;
      slow.part_a_volume += each.part_a_volume;
      slow.part_b_volume += each.part_b_volume;
      slow.mix += each.mix;
      for (const auto& additive : each.additives) white += additive.mass;
    }
  }
  totals.by_resin = {slow};
  totals.materials = {{"resin-a", slow.part_a.in_grams(), "g", units::Money{1311, "USD"}},
                      {"slow-b", slow.part_b.in_grams(), "g", units::Money{724, "USD"}},
                      {"white", white.in_grams(), "g", std::nullopt},
                      {"e4", 5.552, "m", units::Money{3947, "USD"}},
                      {"fin-box", 5, "piece", units::Money{4500, "USD"}}};
  totals.cost = units::Money{10482, "USD"};
  totals.finished_weight =
      *plan.board.core_weight + totals.fibre + totals.kept + g(60) - totals.sanded;
}

void add_words(laminate::Plan& plan) {
  const std::vector<std::string> all = {"bottom-lam",     "deck-lam",     "fin-boxes",
                                        "bottom-hotcoat", "deck-hotcoat", "bottom-gloss"};
  const std::vector<std::string> lams = {"bottom-lam", "deck-lam"};
  const std::vector<std::string> hotcoats = {"bottom-hotcoat", "deck-hotcoat"};
  plan.assumptions = {
      {"loss.left_in_cup", 8, "g", "assumed", "per cup", all},
      {"loss.run_off.laminate", 6, "g/m", "assumed", "per metre of rail", lams},
      {"uptake.eps", 60, "g/m2", "assumed", "first resin on bare foam", lams},
      {"laminate.fibre_mass_fraction", 0.5, "share", "practice", "as much resin as cloth", lams},
      {"laminate.trim_allowance", 0.0381, "m", "assumed", "cut laps", {"bottom-lam"}},
      {"film.hotcoat", 0.18, "mm", "assumed", "", hotcoats},
      {"mix.margin", 0.08, "share", "assumed", "of kept and losses", all},
      {"cup.empty_first", 2, "min", "assumed", "before the first gram", all},
      {"pace.laminate", 7, "min/m2", "assumed", "per ply", lams},
      {"resin.energy", 55, "kJ/mol", "assumed", "middle of published cures", all},
      {"rail.medium", 2.5, "", "assumed", "exponent", {"board"}}};
  plan.cautions = {
      {"all",
       "The safety data sheets of your products, local rules and licensed practice come "
       "first."},
      {"all",
       "Nitrile gloves, sleeves and eye protection; fresh air. Uncured epoxy and hardener "
       "burn and can sensitise for life. Never solvent on skin: wipe, then soap and water."},
      {"all", "A cup left standing gets hot, smokes and can burn: never on foam, never in a bin."},
      {"bottom-lam",
       "Trim laps with a fresh blade, away from your hand; cut glass edges are "
       "needles."},
      {"deck-lam", "Wet down the lap's edge. Resin rags: spread out, not in a heap."},
      {"fin-boxes", "A filled hole is a small cup: it heats. Fill deep gaps in two goes."},
      {"bottom-hotcoat", "Sand only when cured: dust of partly cured epoxy sensitises."},
      {"deck-hotcoat", "Sand only when cured: dust of partly cured epoxy sensitises."},
      {"bottom-gloss", "Sand only when cured: dust of partly cured epoxy sensitises."}};
  plan.notices = {
      {"cloth.narrow", "the roll does not reach from lap to lap", "e4-2", 0.7813, 0.762, "m"},
      {"coat.split.time", "more than one batch: spreading takes longer than the resin allows",
       "deck-lam", 26.5, 17.4, "min"},
      {"resin.parts_clash", "parts by volume and by mass differ; mass wins on the scale", "slow",
       0.034, 0.03, "share"}};
}

}  // namespace

PlanDocument plan() {
  PlanDocument document;
  document.program = "wetout 0.1.0";
  document.made = "2026-05-02T18:20:00-07:00";
  document.job = {"sandpiper-6-4", 3, true};
  const std::string digest = "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08";
  document.inputs = {{"job", "sandpiper.toml", digest}, {"shop", "shop.toml", digest}};
  laminate::Plan& plan = document.plan;
  plan.air = Temperature::celsius(22);
  plan.board = {.id = "sandpiper-6-4",
                .name = "Sandpiper 6-4",
                .foam = board::Foam::eps,
                .length = inches(76),
                .planform = square_metres(0.9312),
                .bottom = square_metres(0.9981),
                .deck = square_metres(1.0624),
                .area_error = square_metres(4e-6),
                .perimeter = units::metres(4.1873),
                .volume = units::litres(31.427),
                .core_weight = g(1126.8)};
  add_plies(plan);
  add_coats(plan);
  add_totals(plan);
  add_words(plan);
  return document;
}

PlanDocument changed_plan() {
  PlanDocument document = plan();
  document.made = "2026-05-03T09:05:00-07:00";
  document.job.revision = 4;
  laminate::Plan& plan = document.plan;
  plan.air = Temperature::celsius(26);
  plan.coats.pop_back();
  plan.coats[0].mix += g(12);
  plan.coats[0].margin += g(12);
  plan.coats[0].batches = {batch(1, 114, 0, 49, 14), batch(2, 114, 0, 49, 14)};
  CoatNeed deck_gloss = coat("deck-gloss", "deck gloss", CoatKind::gloss, Face::deck, 1.062,
                             {122.13, 0, 0, 61.1, 18, 11.21}, {batch(1, 106, 0, 46, 15)});
  plan.coats.push_back(deck_gloss);
  plan.assumptions[0].value = 9;
  plan.assumptions.pop_back();
  plan.notices.erase(plan.notices.begin() + 1);
  return document;
}

PlanDocument bare_plan() {
  PlanDocument document = plan();
  document.job = {"sandpiper-6-4", 0, false};
  laminate::Plan& plan = document.plan;
  plan.board.core_weight.reset();
  plan.totals.finished_weight.reset();
  plan.totals.cost.reset();
  for (auto& total : plan.totals.materials) total.cost.reset();
  for (CoatNeed& need : plan.coats) {
    need.spread.reset();
    for (Batch& each : need.batches) {
      each.cup.reset();
      for (auto& pour : each.pours) pour.add_volume = pour.reads_volume = std::nullopt;
    }
  }
  plan.notices.clear();
  plan.assumptions.clear();
  plan.cautions.clear();
  return document;
}

PlanDocument long_plan(std::size_t count) {
  PlanDocument document = plan();
  auto& coats = document.plan.coats;
  for (std::size_t i = 0; coats.size() < count; ++i) {
    coats.push_back(coats[i]);
    coats.back().id += "-again";
  }
  return document;
}

}  // namespace wetout::report::sample
