// What a shop has not measured yet: losses, film thicknesses, speeds.
#pragma once

#include <string_view>

#include "wetout/base/cited.hpp"
#include "wetout/resin/defaults.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::laminate {

struct Defaults {
  using S = base::Standing;
  resin::Defaults resin;

  base::Default<units::Mass> left_in_cup{"loss.left_in_cup",
                                         units::grams(8),
                                         units::grams(2),
                                         units::grams(30),
                                         {"", "per cup", S::assumed}};
  base::Default<units::Mass> brush{"loss.brush",
                                   units::grams(10),
                                   units::grams(2),
                                   units::grams(40),
                                   {"", "brush and squeegee, per coat", S::assumed}};
  base::Default<units::LinearWeight> run_off_laminate{"loss.run_off.laminate",
                                                      units::grams_per_metre(6),
                                                      units::grams_per_metre(0),
                                                      units::grams_per_metre(20),
                                                      {"", "per metre of rail", S::assumed}};
  base::Default<units::LinearWeight> run_off_hotcoat{"loss.run_off.hotcoat",
                                                     units::grams_per_metre(4),
                                                     units::grams_per_metre(0),
                                                     units::grams_per_metre(20),
                                                     {"", "per metre of rail", S::assumed}};
  base::Default<units::ArealWeight> uptake_eps{"uptake.eps",
                                               units::grams_per_square_metre(60),
                                               units::grams_per_square_metre(20),
                                               units::grams_per_square_metre(150),
                                               {"", "first resin on bare foam", S::assumed}};
  base::Default<units::ArealWeight> uptake_pu{"uptake.pu",
                                              units::grams_per_square_metre(60),
                                              units::grams_per_square_metre(20),
                                              units::grams_per_square_metre(150),
                                              {"", "first resin on bare foam", S::assumed}};
  base::Default<units::ArealWeight> uptake_xps{"uptake.xps",
                                               units::grams_per_square_metre(15),
                                               units::grams_per_square_metre(0),
                                               units::grams_per_square_metre(40),
                                               {"", "first resin on bare foam", S::assumed}};
  base::Default<double> fibre_mass_fraction{"laminate.fibre_mass_fraction",
                                            0.50,
                                            0.40,
                                            0.60,
                                            {"", "as much resin as cloth", S::practice}};
  base::Default<double> fibre_fraction_reach{"laminate.fibre_fraction_reach",
                                             0.60,
                                             0.55,
                                             0.65,
                                             {"", "upper end of hand lay-up", S::memory}};
  base::Default<units::Density> fibre_density{
      "laminate.fibre_density",
      units::grams_per_millilitre(2.54),
      units::grams_per_millilitre(2.50),
      units::grams_per_millilitre(2.60),
      {"gibson1994", "E-glass, table of fibre properties", S::standard}};
  base::Default<units::Length> trim_allowance{
      "laminate.trim_allowance",
      units::inches(1.5),
      units::inches(0.5),
      units::inches(3),
      {"", "cut laps: wet, trimmed, thrown away", S::assumed}};
  base::Default<units::Length> film_seal{"film.seal",
                                         units::millimetres(0),
                                         units::millimetres(0),
                                         units::millimetres(0.2),
                                         {"", "beyond what the foam takes up", S::assumed}};
  base::Default<units::Length> film_hotcoat{
      "film.hotcoat",
      units::millimetres(0.18),
      units::millimetres(0.10),
      units::millimetres(0.30),
      {"", "meets one US fl oz per foot of board and face", S::assumed}};
  base::Default<units::Length> film_gloss{"film.gloss",
                                          units::millimetres(0.10),
                                          units::millimetres(0.05),
                                          units::millimetres(0.20),
                                          {"", "our choice", S::assumed}};
  base::Default<units::Length> overlap{"film.overlap",
                                       units::inches(1),
                                       units::inches(0.5),
                                       units::inches(2),
                                       {"", "past the apex, on the first face done", S::assumed}};
  base::Default<units::Length> sanded{"film.sanded",
                                      units::millimetres(0.05),
                                      units::millimetres(0),
                                      units::millimetres(0.15),
                                      {"", "off every hotcoat and gloss", S::assumed}};
  base::Default<double> margin{
      "mix.margin", 0.08, 0.0, 0.30, {"", "of kept and losses", S::assumed}};
  base::Default<double> cup_fill{
      "cup.fill", 0.80, 0.60, 0.95, {"", "of what it holds", S::assumed}};
  base::Default<units::Length> tray_depth{
      "cup.tray_depth",
      units::millimetres(15),
      units::millimetres(10),
      units::millimetres(25),
      {"", "of resin in a tray that is proposed for one pour", S::assumed}};
  base::Default<units::Duration> empty_first{
      "cup.empty_first",
      units::minutes(2),
      units::minutes(1),
      units::minutes(5),
      {"", "to empty a cup: before the first gram", S::assumed}};
  base::Default<units::Duration> empty_per_200g{"cup.empty_per_200g",
                                                units::minutes(1),
                                                units::minutes(0.5),
                                                units::minutes(3),
                                                {"", "to empty a cup: for each 200 g", S::assumed}};
  base::Default<units::Pace> pace_laminate{"pace.laminate",
                                           units::minutes_per_square_metre(7),
                                           units::minutes_per_square_metre(3),
                                           units::minutes_per_square_metre(15),
                                           {"", "per ply", S::assumed}};
  base::Default<units::Pace> pace_hotcoat{"pace.hotcoat",
                                          units::minutes_per_square_metre(4),
                                          units::minutes_per_square_metre(2),
                                          units::minutes_per_square_metre(10),
                                          {"", "seal coats too", S::assumed}};
  base::Default<units::Pace> pace_gloss{"pace.gloss",
                                        units::minutes_per_square_metre(4),
                                        units::minutes_per_square_metre(2),
                                        units::minutes_per_square_metre(10),
                                        {"", "our choice", S::assumed}};
  base::Default<units::Temperature> fill_limit_polystyrene{
      "fill.limit.polystyrene",
      units::Temperature::celsius(70),
      units::Temperature::celsius(65),
      units::Temperature::celsius(75),
      {"", "hottest fill in EPS and XPS; foam sheets print 74 to 85 C", S::assumed}};
  base::Default<units::Temperature> fill_limit_polyurethane{
      "fill.limit.polyurethane",
      units::Temperature::celsius(100),
      units::Temperature::celsius(90),
      units::Temperature::celsius(110),
      {"", "hottest fill in PU; foam sheets print 100 to 120 C for a short time", S::assumed}};
  base::Default<double> foam_conductivity{
      "fill.foam_conductivity",
      0.035,
      0.025,
      0.039,
      {"", "EPS; sheets print 0.033 to 0.038, XPS 0.031, PU 0.026", S::memory}};
  base::Default<double> foam_heat{
      "fill.foam_heat", 36.0, 20.0, 65.0, {"", "25 kg/m3 of 1450 J/(kg K)", S::memory}};
  base::Default<double> box_heat{
      "fill.box_heat", 4.0, 2.0, 8.0, {"", "of 2 to 3 mm of plastic wall", S::assumed}};
  base::Default<double> box_loss{
      "fill.box_loss", 5.0, 2.0, 10.0, {"", "through a box to the air in its slot", S::assumed}};
};

/// What this version of wetout plans with.
const Defaults& defaults();

/// Changes whenever a model or a default changes a result.
std::string_view model_version();

/// Calls f(default, unit word) for each value, the resin's included.
template <class D, class F>
void visit(D& d, F&& f) requires requires {
  d.left_in_cup;
}
{
  f(d.left_in_cup, "g");
  f(d.brush, "g");
  f(d.run_off_laminate, "g/m");
  f(d.run_off_hotcoat, "g/m");
  f(d.uptake_eps, "g/m2");
  f(d.uptake_pu, "g/m2");
  f(d.uptake_xps, "g/m2");
  f(d.fibre_mass_fraction, "share");
  f(d.fibre_fraction_reach, "share");
  f(d.fibre_density, "g/ml");
  f(d.trim_allowance, "m");
  f(d.film_seal, "mm");
  f(d.film_hotcoat, "mm");
  f(d.film_gloss, "mm");
  f(d.overlap, "m");
  f(d.sanded, "mm");
  f(d.margin, "share");
  f(d.cup_fill, "share");
  f(d.tray_depth, "mm");
  f(d.empty_first, "min");
  f(d.empty_per_200g, "min");
  f(d.pace_laminate, "min/m2");
  f(d.pace_hotcoat, "min/m2");
  f(d.pace_gloss, "min/m2");
  f(d.fill_limit_polystyrene, "C");
  f(d.fill_limit_polyurethane, "C");
  f(d.foam_conductivity, "W/(m K)");
  f(d.foam_heat, "kJ/(m3 K)");
  f(d.box_heat, "kJ/(m2 K)");
  f(d.box_loss, "W/(m2 K)");
  visit(d.resin, f);
}

}  // namespace wetout::laminate
