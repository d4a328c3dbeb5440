// An invented board and shop for the tests, in code so that single values are easily changed.
#pragma once

#include <stdexcept>
#include <string>

#include "wetout/laminate/make_plan.hpp"

namespace wetout::laminate::sample {

using namespace units;  // NOLINT: values below read as a builder writes them

inline board::Spec board_spec(double length_in = 76, double width_in = 20.75) {
  board::Spec spec;
  spec.id = "sample";
  spec.name = "Sample";
  const Length length = inches(length_in);
  const Length middle = length * 0.5;
  spec.length = length;
  spec.foam = board::Foam::eps;
  spec.foam_density = kilograms_per_cubic_metre(32);
  spec.stringer_weight = grams(120);
  spec.nose.shape = board::EndShape::round;
  spec.tail.shape = board::EndShape::square;
  spec.width = {{inches(0), inches(6)},
                {inches(12), inches(15)},
                {middle + inches(1), inches(width_in)},
                {length - inches(12), inches(12)},
                {length, inches(0)}};
  spec.wide_point = middle + inches(1);
  spec.thickness = {
      {inches(12), inches(1.625)}, {middle, inches(2.625)}, {length - inches(12), inches(1.5)}};
  spec.rocker = {{inches(0), inches(2)},
                 {inches(12), inches(0.875)},
                 {middle, inches(0)},
                 {length - inches(12), inches(2.125)},
                 {length, inches(5)}};
  spec.rail = {{middle, {0.4, 2.5}}};
  return spec;
}

inline resin::Product slow() {
  resin::Product product;
  product.id = "slow";
  product.name = "slow";
  product.part_a = "resin-a";
  product.part_b = "slow-b";
  product.density_a = grams_per_millilitre(1.13);
  product.density_b = grams_per_millilitre(0.97);
  product.by_volume = resin::Parts{resin::By::volume, 2, 1};
  product.tolerance = 0.03;
  product.lowest_air = Temperature::celsius(15);
  product.highest_air = Temperature::celsius(35);
  product.pot_life = {{Temperature::celsius(25), {minutes(25), minutes(30)}, grams(150)}};
  product.gel = {{Temperature::celsius(25), {hours(4), hours(4)}, {}}};
  return product;
}

/// The same part A with a hardener four times as quick.
inline resin::Product quick(std::string id = "quick") {
  resin::Product product = slow();
  product.id = product.name = std::move(id);
  product.pot_life = {{Temperature::celsius(25), {minutes(12), minutes(14)}, grams(150)}};
  product.gel = {{Temperature::celsius(25), {minutes(70), minutes(70)}, {}}};
  return product;
}

inline resin::Product polyester() {
  resin::Product product;
  product.id = product.name = "polyester";
  product.chemistry = resin::Chemistry::polyester;
  product.styrene = true;
  product.part_a = "poly-a";
  product.part_b = "catalyst";
  product.density_a = grams_per_millilitre(1.1);
  product.density_b = grams_per_millilitre(1.15);
  product.catalyst = {
      {Temperature::celsius(20), 0.01, {minutes(40), minutes(40)}},
      {Temperature::celsius(20), 0.02, {minutes(20), minutes(20)}},
      {Temperature::celsius(30), 0.01, {minutes(20), minutes(20)}},
  };
  product.dose_low = 0.01;
  product.dose_high = 0.025;
  return product;
}

inline Shop shop() {
  Shop shop;
  shop.air = Temperature::celsius(22);
  shop.currency = "USD";
  shop.cup = "quart";
  shop.cups = {{"quart", millilitres(900), millimetres(105)}};
  Material a;
  a.id = a.name = "resin-a";
  a.density = grams_per_millilitre(1.13);
  a.packs = {{.mass = {},
              .volume = litres(3.785411784),
              .length = {},
              .pieces = {},
              .price = Money{4800, "USD"}}};
  Material b;
  b.id = b.name = "slow-b";
  b.density = grams_per_millilitre(0.97);
  Material white;
  white.id = white.name = "white";
  white.density = grams_per_millilitre(1.9);
  Material box;
  box.id = box.name = "fin-box";
  box.weight = grams(28);
  box.packs = {{.mass = {}, .volume = {}, .length = {}, .pieces = 1, .price = Money{900, "USD"}}};
  Material poly_a;
  poly_a.id = poly_a.name = "poly-a";
  poly_a.density = grams_per_millilitre(1.1);
  poly_a.styrene = true;
  Material catalyst;
  catalyst.id = catalyst.name = "catalyst";
  catalyst.density = grams_per_millilitre(1.15);
  shop.materials = {a, b, white, box, poly_a, catalyst};
  Cloth cloth;
  cloth.id = cloth.name = "e4";
  cloth.weight = grams_per_square_metre(135.6229898995292);  // 4 oz/yd2
  cloth.width = inches(30);
  cloth.packs = {{.mass = {},
                  .volume = {},
                  .length = metres(9.144),
                  .pieces = {},
                  .price = Money{6500, "USD"}}};
  shop.cloths = {cloth};
  shop.resins = {slow()};
  return shop;
}

inline PlySpec full_ply(std::string id = "e4", Length lap = inches(2)) {
  PlySpec ply;
  ply.id = ply.name = std::move(id);
  ply.cloth = "e4";
  ply.lap = lap;
  return ply;
}

inline CoatSpec laminate(std::string id, board::Face face, Laps laps, int plies = 1) {
  CoatSpec coat;
  coat.id = coat.name = std::move(id);
  coat.face = face;
  coat.kind = CoatKind::laminate;
  coat.resin = "slow";
  coat.laps = laps;
  for (int i = 0; i < plies; ++i) coat.plies.push_back(full_ply("ply-" + std::to_string(i + 1)));
  return coat;
}

inline CoatSpec film(std::string id, board::Face face, CoatKind kind) {
  CoatSpec coat;
  coat.id = coat.name = std::move(id);
  coat.face = face;
  coat.kind = kind;
  coat.resin = "slow";
  return coat;
}

inline CoatSpec boxes() {
  CoatSpec coat = film("boxes", board::Face::bottom, CoatKind::install);
  coat.install = Install{"fin-box", 5, millilitres(18), millimetres(3)};
  return coat;
}

/// Bottom lam (cut), deck lam with a patch (free), boxes, two hotcoats, a gloss.
inline PlanInput input() {
  PlanInput in;
  in.board = board_spec();
  in.shop = shop();
  in.air = in.shop.air;
  in.coats = {laminate("bottom-lam", board::Face::bottom, Laps::cut),
              laminate("deck-lam", board::Face::deck, Laps::free)};
  PlySpec patch = full_ply("patch", inches(0));
  patch.from_tail = inches(14);
  patch.to = inches(56);
  patch.width = inches(15);
  in.coats[1].plies.insert(in.coats[1].plies.begin(), patch);
  in.coats[1].additives = {{"white", 0.02}};
  in.coats.push_back(boxes());
  in.coats.push_back(film("bottom-hot", board::Face::bottom, CoatKind::hotcoat));
  in.coats.push_back(film("deck-hot", board::Face::deck, CoatKind::hotcoat));
  in.coats.push_back(film("bottom-gloss", board::Face::bottom, CoatKind::gloss));
  return in;
}

/// For messages of failed expectations.
inline std::string told(const base::Problems& problems) {
  std::string text;
  for (const base::Problem& p : problems) {
    text += p.code + " [" + p.key + "] " + p.message + " | " + p.found + " | " + p.expected + "\n";
  }
  return text;
}

inline const CoatNeed& coat(const Plan& plan, std::string_view id) {
  for (const CoatNeed& need : plan.coats) {
    if (need.id == id) return need;
  }
  throw std::logic_error("no such coat in the plan");
}

inline bool has_notice(const Plan& plan, std::string_view code) {
  for (const base::Notice& notice : plan.notices) {
    if (notice.code == code) return true;
  }
  return false;
}

}  // namespace wetout::laminate::sample
