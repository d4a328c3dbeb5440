// Prints, as JSON, the curves that docs/models/plots.py draws: an invented data sheet's film and
// cup.
#include <cmath>
#include <cstdio>
#include <string>
#include <vector>

#include "sheets.hpp"
#include "wetout/resin/calibrate.hpp"
#include "wetout/resin/film.hpp"
#include "wetout/resin/pot_life.hpp"

namespace {

using namespace wetout;         // NOLINT: one small program
using namespace wetout::resin;  // NOLINT
using sheets::c;

struct Series {
  std::string name;
  std::vector<double> x, y;
};
bool first_chart = true;

void print(const std::string& chart, const std::vector<Series>& all) {
  std::printf("%s\"%s\": [", first_chart ? "{" : ",\n ", chart.c_str());
  first_chart = false;
  for (std::size_t s = 0; s < all.size(); ++s) {
    std::printf("%s{\"name\": \"%s\", \"points\": [", s ? ",\n  " : "", all[s].name.c_str());
    for (std::size_t i = 0; i < all[s].x.size(); ++i) {
      std::printf("%s[%.6g, %.6g]", i ? ", " : "", all[s].x[i], all[s].y[i]);
    }
    std::printf("]}");
  }
  std::printf("]");
}

time::History air(double celsius) { return time::History::constant(273.15 + celsius); }

std::string degrees(double celsius) {
  return std::to_string(static_cast<int>(celsius)) + " \u00b0C";
}

void film(const Cure& cure) {
  std::vector<Series> conversion, tg;
  for (const double celsius : {35.0, 25.0, 15.0, 5.0}) {
    const Film film(cure, air(celsius));
    std::vector<double> after;
    for (double h = 0.1; h <= 200.0; h *= 1.06) after.push_back(h * 3600.0);
    Series a{degrees(celsius), {}, {}}, t = a;
    for (const FilmState& state : film.states(time::Instant{}, after)) {
      a.x.push_back(state.after_s / 3600.0);
      a.y.push_back(state.conversion);
      t.x.push_back(state.after_s / 3600.0);
      t.y.push_back(state.tg.in_celsius());
    }
    conversion.push_back(a);
    tg.push_back(t);
  }
  print("film_conversion", conversion);
  print("film_tg", tg);

  std::vector<Series> times;
  for (const auto& [milestone, name] : {std::pair{Milestone::full_cure, "full cure"},
                                        {Milestone::sandable, "sandable"},
                                        {Milestone::recoat_until, "recoat until"},
                                        {Milestone::handle, "handle"},
                                        {Milestone::tack_free, "tack-free"},
                                        {Milestone::gel, "gel"}}) {
    Series s{name, {}, {}};
    for (double celsius = 0.0; celsius <= 40.0; celsius += 0.5) {
      const auto time = Film(cure, air(celsius)).times(time::Instant{})[milestone];
      if (!time || !time->reached) continue;
      s.x.push_back(celsius);
      s.y.push_back(time->after_s / 3600.0);
    }
    times.push_back(s);
  }
  print("film_times", times);
}

// The middle of a cup over time, by following it to one minute after another.
Series middle(const Cure& cure, const std::string& name, const Fill& fill, double until) {
  const Reactant reactant{ConversionCurve(cure.kinetics.r, cure.kinetics.m, cure.kinetics.n),
                          cure.kinetics,
                          cure.bulk.heat_j_per_kg / cure.bulk.heat_capacity_j_per_kg_k};
  const double capacity = cure.bulk.heat_capacity_j_per_kg_k * cure.bulk.density.si();
  const double k = cure.bulk.conductivity_w_per_m_k;
  ReactingBody body(
      reactant,
      from_middle(Shape::cylinder, fill.diameter.si() / 2.0, 16, k, capacity, cure.cooling.side),
      across(fill.height.si(), 24, k, capacity, cure.cooling.base, cure.cooling.top), c(25), c(25));
  Series s{name, {0.0}, {25.0}};
  double dt = 10.0, time = 0.0, shown = 0.0;
  while (time < until * 60.0) {
    if (body.step(dt) > 2.0) {
      body.undo();
      dt *= 0.6;
      continue;
    }
    time += dt;
    dt = std::min(20.0, dt * 1.2);
    const double now = body.middle_kelvin() - 273.15;
    if (time - shown > 20.0 || std::abs(now - s.y.back()) > 2.0) {
      s.x.push_back(time / 60.0);
      s.y.push_back(now);
      shown = time;
    }
  }
  return s;
}

void cup(const Cure& cure) {
  const auto volume = [&](double g) { return units::grams(g) / cure.bulk.density; };
  print("cup_middle",
        {middle(cure, "1000 g", fill_of(volume(1000)), 60),
         middle(cure, "150 g", fill_of(volume(150)), 60),
         middle(cure, "50 g", fill_of(volume(50)), 60),
         middle(cure, "150 g, tray 300 mm", fill_of(volume(150), units::millimetres(300)), 60)});
  std::vector<Series> use;
  for (const double celsius : {15.0, 20.0, 25.0, 30.0}) {
    Series s{degrees(celsius), {}, {}};
    for (double mass = 20.0; mass <= 2001.0; mass *= std::pow(10.0, 0.1)) {
      const auto life = pot_life(cure, {units::grams(mass), c(celsius), c(celsius), {}, {}});
      s.x.push_back(mass);
      s.y.push_back(units::in_minutes(life->use_within));
    }
    use.push_back(s);
  }
  print("cup_use", use);
}

}  // namespace

int main() {
  const Cure cure = calibrate(sheets::medium(), {})->cure;
  film(cure);
  cup(cure);
  std::printf("}\n");
  return 0;
}
