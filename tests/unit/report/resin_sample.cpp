#include "resin_sample.hpp"

#include <array>
#include <cmath>

#include "sample.hpp"

namespace wetout::report::sample {
namespace {

using units::grams;
using units::hours;
using units::minutes;

units::Temperature c(double celsius) { return units::Temperature::celsius(celsius); }

CupAnswer cup(double g, double air_c, double use_min, bool away) {
  CupAnswer answer;
  answer.resin = "slow";
  answer.mass = units::Milligrams::nearest(grams(g));
  answer.air = answer.resin_temp = c(air_c);
  answer.cup = "quart";
  answer.use_within = minutes(use_min);
  answer.gel = minutes(1.3 * use_min);
  answer.peak_at = minutes(1.4 * use_min);
  answer.runs_away = away;
  if (!away) answer.peak = c(131);
  return answer;
}

template <class Document>
void end(Document& document) {
  const PlanDocument of = plan();
  document.program = of.program;
  document.made = of.made;
  document.name = "Kelp epoxy with slow hardener";
  document.assumptions = of.plan.assumptions;
  document.cautions = {"Gloves on."};
}

}  // namespace

PotLifeDocument potlife() {
  PotLifeDocument document;
  end(document);
  document.answer = cup(200, 25, 37.4, false);
  document.mass_from = MassFrom::sheet;
  document.use_ends = UseEnds::by_heat;
  document.cooling_matters = false;
  document.film_open = minutes(94);
  document.film_gel = hours(5);
  document.poured = PouredOut{minutes(10), 0.06, c(28), minutes(90), minutes(295)};
  document.workable = WorkableBatch{minutes(30), units::Milligrams(385'000), false};
  document.sheet = {{units::Milligrams(150'000), c(25), minutes(42), minutes(42), true},
                    {units::Milligrams(500'000), c(18), minutes(60), minutes(54), false}};
  for (const double g : {50.0, 200.0, 800.0}) {
    for (const double air : {15.0, 20.0, 25.0, 30.0, 35.0}) {
      document.grid.push_back(cup(g, air, 90000.0 / (g + 100.0) / air, g > 100.0 && air > 24.0));
    }
  }
  document.missing = {{"gel", "when laps can be trimmed"}};
  document.notices = {{.code = "cup.runs_away", .text = "said already", .subject = "slow"},
                      {.code = "potlife.mass", .text = "no mass was named", .subject = "slow"}};
  return document;
}

PotLifeDocument potlife_of_polyester() {
  PotLifeDocument document;
  end(document);
  document.chemistry = resin::Chemistry::polyester;
  document.answer.resin = "poly";
  document.answer.air = document.answer.resin_temp = c(20);
  document.dose_low = 0.01;
  document.dose_high = 0.025;
  for (const double dose : {0.01, 0.025}) {
    for (const double air : {15.0, 20.0}) {
      const auto gel = minutes(4.0 / dose / air);
      document.doses.push_back({dose, c(air), gel, gel * 0.5});
    }
  }
  document.notices = {{.code = "polyester.no_cup", .text = "a cup is not known"}};
  return document;
}

CureDocument cure() {
  CureDocument document;
  end(document);
  document.resin = "slow";
  document.start = "2026-06-13T18:00:00-01:00";
  document.weather = CureWeather{"forecast.csv", "2026-06-13T00:00:00-01:00",
                                 "2026-06-18T23:00:00-01:00", "unheated"};
  document.warm_box = CureWarmBox{c(40), hours(24), c(50)};
  const auto reached = [&](resin::Milestone name, double after_h, std::string time, double share) {
    CureMilestone m;
    m.name = name;
    m.reached = true;
    m.after = hours(after_h);
    m.time = std::move(time);
    m.conversion = share;
    m.tg = c(100.0 * share - 50.0);
    m.air = c(18);
    document.milestones.push_back(m);
  };
  using enum resin::Milestone;
  reached(gel, 8.4, "2026-06-14T02:24:00-01:00", 0.577);
  reached(recoat_from, 8.4, "2026-06-14T02:24:00-01:00", 0.577);
  reached(tack_free, 15.6, "2026-06-14T09:36:00-01:00", 0.75);
  document.milestones.back().extrapolated = true;
  reached(recoat_until, 28.0, "2026-06-14T22:00:00-01:00", 0.88);
  reached(full_cure, 300.0, "2026-06-26T06:00:00-01:00", 0.95);
  document.milestones.back().beyond_air = true;
  CureMilestone sand;
  sand.name = sandable;
  sand.would_do = c(21);
  document.milestones.push_back(sand);
  for (int i = 0; i <= 96; ++i) {
    const double h = 40.0 * i / 96.0;
    const double share = 0.95 * (1.0 - std::exp(-h / 9.0));
    document.curve.push_back({hours(h), c(18), share, c(100.0 * share - 50.0)});
  }
  document.calibration.energy_kj_mol = 54.1;
  document.calibration.sheet_energy_kj_mol = 48.5;
  document.calibration.residuals = {
      {"gel", std::nullopt, c(25), hours(5), hours(5), true},
      {"gel", std::nullopt, c(18), hours(8), hours(8.45), false},
      {"pot_life", units::Milligrams(150'000), c(25), minutes(60), minutes(24), true}};
  document.calibration.missing = {{"tg", "how far it cures in the cold"}};
  document.calibration.notices = {{.code = "cure.residual", .text = "in the table"},
                                  {.code = "cure.cup_guessed", .text = "cup times are rough"}};
  document.notices = {{.code = "cure.not_reached", .text = "in the table"},
                      {.code = "cure.below_lowest",
                       .text = "below the sheet's lowest temperature",
                       .subject = "slow",
                       .value = 15,
                       .limit = 16,
                       .unit = "C"}};
  return document;
}

CureDocument cure_of_polyester() {
  CureDocument document;
  end(document);
  document.resin = "poly";
  document.chemistry = resin::Chemistry::polyester;
  document.air = c(20);
  document.dose = 0.014;
  CureMilestone m;
  m.reached = true;
  m.after = minutes(31);
  m.air = c(20);
  document.milestones = {m};
  return document;
}

}  // namespace wetout::report::sample
