// Any plan document, for properties: all sizes, unknown values, names from every script.
#pragma once

#include <rapidcheck.h>

#include <optional>
#include <string>
#include <vector>

#include "wetout/report/plan_document.hpp"

namespace wetout::report::any {

inline double number(double low, double high) {
  constexpr int steps = 1'000'000;
  return low + (high - low) * static_cast<double>(*rc::gen::inRange(0, steps + 1)) / steps;
}
inline units::Milligrams mass() {
  return units::Milligrams(*rc::gen::inRange<std::int64_t>(-1'000, 50'000'000));
}
inline units::Length length() { return units::metres(number(0.0, 4.0)); }
inline units::Area area() { return units::square_metres(number(0.0, 3.0)); }
inline units::Volume volume() { return units::millilitres(number(0.0, 2000.0)); }
inline units::Duration minutes() { return units::minutes(number(0.0, 5000.0)); }
inline units::Temperature air() { return units::Temperature::celsius(number(-5.0, 60.0)); }

/// Bytes of any kind, well-formed or not, short and long.
inline std::string text() {
  const auto pieces = *rc::gen::container<std::vector<std::string>>(rc::gen::element<std::string>(
      "a", "lam", " ", "board name", "\"", "\\", "\n", "\t", "\x1b[31m", "\x80", "\xff", "\xc3\xa9",
      "\xe6\xb3\xa2", "\xf0\x9f\x8f\x84", "e\xcc\x81", "\xe2\x80\xae", "longwordlongwordlong",
      "\x1f", "-", "0"));
  std::string out;
  for (const std::string& piece : pieces) out += piece;
  return out;
}

template <class Make>
auto maybe(Make make) -> std::optional<decltype(make())> {
  if (*rc::gen::arbitrary<bool>()) return make();
  return std::nullopt;
}
template <class Make>
auto some(int most, Make make) -> std::vector<decltype(make())> {
  std::vector<decltype(make())> out;
  for (int n = *rc::gen::inRange(0, most + 1); n > 0; --n) out.push_back(make());
  return out;
}
template <class E>
E one_of(std::initializer_list<E> values) {
  return *rc::gen::elementOf(std::vector<E>(values));
}
inline board::Face face() { return one_of({board::Face::deck, board::Face::bottom}); }
inline units::Money money() { return {*rc::gen::inRange<std::int64_t>(0, 10'000'000), "USD"}; }

inline laminate::Pour pour() { return {text(), mass(), mass(), maybe(volume), maybe(volume)}; }
inline laminate::AdditiveAmount additive_amount() { return {text(), mass()}; }
inline laminate::Additive additive() { return {text(), number(0.0, 0.2)}; }

inline laminate::Batch batch() {
  laminate::Batch out;
  out.n = *rc::gen::inRange(1, 100);
  out.cup = maybe(text);
  out.mix = mass();
  out.part_a = mass();
  out.part_b = mass();
  out.part_a_volume = volume();
  out.part_b_volume = volume();
  out.additives = some(2, additive_amount);
  out.pours = some(4, pour);
  out.air = air();
  out.resin = air();
  out.gel = maybe(minutes);
  out.use_within = minutes();
  out.peak = maybe(air);
  out.runs_away = maybe([] { return *rc::gen::arbitrary<bool>(); });
  out.off_ratio = number(-0.05, 0.05);
  return out;
}

inline laminate::CoatNeed coat() {
  using laminate::CoatKind;
  laminate::CoatNeed out;
  out.id = text();
  out.name = text();
  out.kind = one_of(
      {CoatKind::seal, CoatKind::laminate, CoatKind::install, CoatKind::hotcoat, CoatKind::gloss});
  out.face = face();
  out.resin = text();
  out.laps = maybe([] { return one_of({laminate::Laps::cut, laminate::Laps::free}); });
  out.area = area();
  for (units::Milligrams* each : {&out.fibre, &out.kept, &out.uptake, &out.trimmed, &out.sanded,
                                  &out.losses, &out.margin, &out.rounding, &out.mix}) {
    *each = mass();
  }
  out.spread = maybe(minutes);
  out.ratio = {one_of({resin::By::mass, resin::By::volume}), number(0.1, 100.0), number(0.1, 100.0),
               number(0.0, 0.05)};
  out.additives = some(2, additive);
  out.batches = some(3, batch);
  return out;
}

inline laminate::PlyNeed ply() {
  laminate::PlyNeed out{.id = text(),
                        .coat = text(),
                        .cloth = text(),
                        .face = face(),
                        .area = area(),
                        .lap = length(),
                        .lap_area = area(),
                        .cloth_area = area(),
                        .from_tail = maybe(length),
                        .to = maybe(length),
                        .width = maybe(length),
                        .fibre = mass(),
                        .resin = mass(),
                        .thickness = units::millimetres(number(0.0, 3.0)),
                        .fibre_fraction = number(0.0, 1.0),
                        .cut_length = length(),
                        .cut_width = length()};
  return out;
}

inline laminate::ResinTotal resin_total() {
  return {text(), mass(), mass(), volume(), volume(), mass()};
}
inline laminate::MaterialTotal material_total() {
  return {text(), number(0.0, 5000.0), one_of<std::string>({"g", "m", "piece"}), maybe(money)};
}
inline laminate::Assumption assumption() {
  return {text(), number(-1e3, 1e6) * 1e-4, text(), text(), text(), some(3, text)};
}
inline laminate::Caution caution() { return {text(), text()}; }
inline base::Notice notice() {
  return {text(),
          text(),
          text(),
          maybe([] { return number(-10.0, 1e4); }),
          maybe([] { return number(-10.0, 1e4); }),
          one_of<std::string>({"m", "g", "min", "C", ""})};
}

inline PlanDocument plan() {
  PlanDocument out;
  out.program = text();
  out.made = text();
  out.job = {text(), *rc::gen::inRange(0, 50), *rc::gen::arbitrary<bool>()};
  out.inputs = some(2, [] { return InputRef{text(), text(), text()}; });
  laminate::Plan& plan = out.plan;
  plan.air = air();
  plan.board.id = text();
  plan.board.name = text();
  plan.board.foam = one_of({board::Foam::eps, board::Foam::xps, board::Foam::pu});
  plan.board.length = length();
  plan.board.planform = area();
  plan.board.bottom = area();
  plan.board.deck = area();
  plan.board.area_error = units::square_metres(number(0.0, 1e-4));
  plan.board.perimeter = length();
  plan.board.volume = volume();
  plan.board.core_weight = maybe(mass);
  plan.plies = some(3, ply);
  plan.coats = some(3, coat);
  laminate::Totals& totals = plan.totals;
  for (units::Milligrams* each : {&totals.mix, &totals.fibre, &totals.kept, &totals.losses,
                                  &totals.margin, &totals.trimmed, &totals.sanded}) {
    *each = mass();
  }
  totals.finished_weight = maybe(mass);
  totals.cost = maybe(money);
  totals.by_resin = some(2, resin_total);
  totals.materials = some(3, material_total);
  plan.assumptions = some(3, assumption);
  plan.cautions = some(3, caution);
  plan.notices = some(3, notice);
  return out;
}

}  // namespace wetout::report::any
