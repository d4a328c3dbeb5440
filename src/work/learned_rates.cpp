#include "learned_rates.hpp"

#include <algorithm>
#include <vector>

#include "wetout/laminate/defaults.hpp"

namespace wetout::work {
namespace {

using laminate::Losses;

// A quarter of the range: 95 % of a normal belief lie in it.
template <class T, class F>
learn::Belief belief_in(const base::Default<T>& value, F in) {
  return {in(value.value), (in(value.high) - in(value.low)) / 4.0};
}

// Nothing is lost below zero, whatever the errors of a few records say.
double not_below_zero(double value) { return std::max(value, 0.0); }
double one(double /*value*/) { return 1.0; }

// Resin per gram of cloth; the shop file has the share of cloth.
double share_of_fibre(double resin_per_fibre) { return 1.0 / (1.0 + resin_per_fibre); }
double slope_of_share(double resin_per_fibre) {
  const double share = share_of_fibre(resin_per_fibre);
  return share * share;
}
double resin_per_fibre(double share) { return (1.0 - share) / share; }

learn::Belief belief_of_resin(const base::Default<double>& share) {
  return {resin_per_fibre(share.value),
          (resin_per_fibre(share.low) - resin_per_fibre(share.high)) / 4.0};
}

template <auto Member, auto Make>
void set(Losses& losses, double value) {
  losses.*Member = Make(value);
}

template <auto Member, auto Make, class T, class F>
LossRate rate(std::string_view key, std::string_view unit, const base::Default<T>& value, F in) {
  return {key,
          unit,
          belief_in(value, in),
          set<Member, Make>,
          set<Member, Make>,
          [](const Losses& losses) { return (losses.*Member).has_value(); },
          not_below_zero,
          one};
}

units::Mass grams(double value) { return units::grams(value); }
units::LinearWeight grams_per_metre(double value) { return units::grams_per_metre(value); }
units::ArealWeight grams_per_square_metre(double value) {
  return units::grams_per_square_metre(value);
}
units::Length millimetres(double value) { return units::millimetres(value); }

std::vector<LossRate> make_losses() {
  const laminate::Defaults& d = laminate::defaults();
  return {
      {"fibre_mass_fraction", "", belief_of_resin(d.fibre_mass_fraction),
       [](Losses& losses, double value) { losses.fibre_mass_fraction = share_of_fibre(value); },
       [](Losses& losses, double shown) { losses.fibre_mass_fraction = shown; },
       [](const Losses& losses) { return losses.fibre_mass_fraction.has_value(); }, share_of_fibre,
       slope_of_share},
      rate<&Losses::uptake_eps, grams_per_square_metre>("uptake.eps", "g/m2", d.uptake_eps,
                                                        units::in_grams_per_square_metre),
      rate<&Losses::uptake_xps, grams_per_square_metre>("uptake.xps", "g/m2", d.uptake_xps,
                                                        units::in_grams_per_square_metre),
      rate<&Losses::uptake_pu, grams_per_square_metre>("uptake.pu", "g/m2", d.uptake_pu,
                                                       units::in_grams_per_square_metre),
      rate<&Losses::film_hotcoat, millimetres>("film.hotcoat", "mm", d.film_hotcoat,
                                               units::in_millimetres),
      rate<&Losses::film_gloss, millimetres>("film.gloss", "mm", d.film_gloss,
                                             units::in_millimetres),
      rate<&Losses::brush, grams>("brush", "g", d.brush, units::in_grams),
      rate<&Losses::run_off_laminate, grams_per_metre>(
          "run_off.laminate", "g/m", d.run_off_laminate, units::in_grams_per_metre),
      rate<&Losses::run_off_hotcoat, grams_per_metre>("run_off.hotcoat", "g/m", d.run_off_hotcoat,
                                                      units::in_grams_per_metre),
  };
}

std::vector<PaceRate> make_paces() {
  const laminate::Defaults& d = laminate::defaults();
  // People differ in speed more than the range says, and time more than the spreading itself: as
  // unsure as it is large, so that a few records that agree are believed against it.
  const auto belief = [](const base::Default<units::Pace>& value) {
    const double minutes = units::in_minutes_per_square_metre(value.value);
    return learn::Belief{minutes, minutes};
  };
  return {{"spread.laminate", belief(d.pace_laminate), &laminate::Spreading::laminate},
          {"spread.hotcoat", belief(d.pace_hotcoat), &laminate::Spreading::hotcoat},
          {"spread.gloss", belief(d.pace_gloss), &laminate::Spreading::gloss}};
}

}  // namespace

std::span<const LossRate> loss_rates() {
  static const std::vector<LossRate> rates = make_losses();
  return rates;
}

std::span<const PaceRate> pace_rates() {
  static const std::vector<PaceRate> rates = make_paces();
  return rates;
}

namespace {
constexpr std::string_view speed_word = "speed.";
constexpr std::string_view step_word = "step.";

std::string_view behind(std::string_view word, std::string_view key) {
  return key.starts_with(word) ? key.substr(word.size()) : std::string_view();
}
}  // namespace

std::string step_pace_of(schedule::StepWord word) {
  return std::string(step_word) + std::string(to_string(word));
}
std::string_view step_of_pace(std::string_view key) { return behind(step_word, key); }
// People take half as long or half as long again (assumed).
learn::Belief belief_of_step_pace() { return {1.0, 0.5}; }

std::string speed_of(std::string_view resin) {
  return std::string(speed_word) + std::string(resin);
}

std::string_view resin_of_speed(std::string_view key) { return behind(speed_word, key); }

}  // namespace wetout::work
