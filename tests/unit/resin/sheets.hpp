// Invented data sheets (standing: demo) for the tests.
#pragma once

#include "wetout/resin/product.hpp"

namespace wetout::resin::sheets {

using units::Temperature;

inline units::DurationRange hours(double low, double high) {
  return {units::hours(low), units::hours(high)};
}
inline units::DurationRange hours(double h) { return hours(h, h); }
inline units::DurationRange minutes(double low, double high) {
  return {units::minutes(low), units::minutes(high)};
}
inline units::DurationRange minutes(double m) { return minutes(m, m); }
inline Temperature c(double celsius) { return Temperature::celsius(celsius); }

inline Product medium() {
  Product p;
  p.id = "medium";
  p.by_mass = Parts{By::mass, 100, 28};
  p.tg = c(60);
  p.lowest_air = c(12);
  p.pot_life = {{c(25), minutes(25), units::grams(150)}};
  p.gel = {{c(25), minutes(160), {}}};
  p.tack_free = {{c(25), hours(5), {}}};
  p.recoat = {{c(25), hours(3.5), hours(12)}};
  p.sand = {{c(25), hours(16), {}}};
  p.full_cure = {{c(25), hours(168), {}}};
  return p;
}

inline Product slow() {
  Product p = medium();
  p.id = "slow";
  p.by_mass = Parts{By::mass, 100, 30};
  p.tg = c(65);
  p.pot_life = {{c(25), minutes(45), units::grams(150)}};
  p.gel = {{c(25), hours(4.5), {}}};
  p.tack_free = {{c(25), hours(8), {}}};
  p.recoat = {{c(25), hours(6), hours(20)}};
  p.sand = {{c(25), hours(26), {}}};
  p.full_cure = {{c(25), hours(168), {}}};
  return p;
}

inline Product quick() {
  Product p = medium();
  p.id = "quick";
  p.by_mass = Parts{By::mass, 100, 25};
  p.tg = c(55);
  p.pot_life = {{c(25), minutes(15), units::grams(150)}};
  p.gel = {{c(25), minutes(80), {}}};
  p.tack_free = {{c(25), hours(2.5), {}}};
  p.recoat = {{c(25), hours(2), hours(6)}};
  p.sand = {{c(25), hours(10), {}}};
  p.full_cure = {{c(25), hours(120), {}}};
  return p;
}

inline Product tropical() {
  Product p = medium();
  p.id = "tropical";
  p.by_mass = Parts{By::mass, 100, 33};
  p.tg = c(70);
  p.pot_life = {{c(25), minutes(90), units::grams(100)}};
  p.gel = {{c(25), hours(8.5), {}}};
  p.tack_free = {{c(25), hours(12), {}}};
  p.recoat = {{c(25), hours(10), hours(30)}};
  p.sand = {{c(25), hours(36), {}}};
  p.full_cure = {{c(25), hours(240), {}}};
  return p;
}

inline Cup quart() { return {"quart", units::millilitres(900), units::millimetres(105)}; }
inline Cup tray() { return {"tray", units::litres(3), units::millimetres(300)}; }

}  // namespace wetout::resin::sheets
