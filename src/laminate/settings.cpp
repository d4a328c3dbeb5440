#include "settings.hpp"

namespace wetout::laminate {
namespace {

template <class T>
void take(base::Default<T>& value, const std::optional<T>& own) {
  if (own) value.value = *own;
}

}  // namespace

Defaults settle(const Shop& shop, Defaults values) {
  const Losses& losses = shop.losses;
  take(values.left_in_cup, losses.left_in_cup);
  take(values.brush, losses.brush);
  take(values.run_off_laminate, losses.run_off_laminate);
  take(values.run_off_hotcoat, losses.run_off_hotcoat);
  take(values.uptake_eps, losses.uptake_eps);
  take(values.uptake_xps, losses.uptake_xps);
  take(values.uptake_pu, losses.uptake_pu);
  take(values.margin, losses.margin);
  take(values.fibre_mass_fraction, losses.fibre_mass_fraction);
  take(values.film_hotcoat, losses.film_hotcoat);
  take(values.film_gloss, losses.film_gloss);
  take(values.film_seal, losses.film_seal);
  take(values.pace_laminate, shop.pace.laminate);
  take(values.pace_hotcoat, shop.pace.hotcoat);
  take(values.pace_gloss, shop.pace.gloss);
  return values;
}

}  // namespace wetout::laminate
