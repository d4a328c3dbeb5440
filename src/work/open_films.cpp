#include "open_films.hpp"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <functional>
#include <optional>
#include <type_traits>
#include <utility>

#include "wetout/resin/calibrate.hpp"
#include "wetout/resin/film.hpp"
#include "wetout/resin/polyester.hpp"

namespace wetout::work {
namespace {

using resin::Cure;
using resin::Defaults;
using resin::FilmTimes;
using resin::Milestone;
using resin::Product;
using time::Instant;

// A film that never comes so far is open for longer than any weather.
constexpr double for_ever_s = 10.0 * 365.25 * 86400.0;

std::chrono::seconds whole_seconds(double s) { return std::chrono::seconds(std::llround(s)); }

schedule::OpenFilm open_film(Instant start, Instant wet_out, const FilmTimes& times,
                             double tack_free_of_gel) {
  const auto after = [&](Milestone m) -> std::optional<double> {
    const auto& time = times[m];
    if (!time) return std::nullopt;
    return time->reached ? std::min(time->after_s, for_ever_s) : for_ever_s;
  };
  const double gel = after(Milestone::gel).value_or(for_ever_s);
  const double tack_free = after(Milestone::tack_free).value_or(gel * tack_free_of_gel);
  return {start, wet_out, wet_out + whole_seconds(gel), wet_out + whole_seconds(tack_free)};
}

// Moves each number of the defaults by 1 % of its range, both ways, and keeps the names of those
// that change the answer.
template <class Answer>
std::vector<std::string> movers(const Defaults& defaults, const Answer& answer) {
  const auto before = answer(defaults);
  std::vector<std::string> names;
  Defaults moved = defaults;
  const auto try_moving = [&](auto& value, const char* /*unit*/) {
    if constexpr (std::is_same_v<decltype(value.value), double>) {
      const double usual = value.value;
      for (const double way : {-1.0, 1.0}) {
        value.value =
            std::clamp(usual + way * 0.01 * (value.high - value.low), value.low, value.high);
        if (value.value == usual || answer(moved) == before) continue;
        names.emplace_back(value.name);
        break;
      }
      value.value = usual;
    }
  };
  visit(moved, try_moving);
  visit(moved.cure, try_moving);
  return names;
}

// What gel and tack-free of a film hang on; nothing where the sheet cannot be fitted.
using FilmKey = std::optional<std::array<double, 3>>;

// Cups have no say in a film whose time is printed, and take long to follow.
bool prints_film_time(const Product& product) {
  return !product.gel.empty() || !product.tack_free.empty();
}

base::Result<resin::Calibration> fit_of(const Product& product, const Defaults& defaults,
                                        resin::AnswerCache* cache) {
  Product film = product;
  if (prints_film_time(product)) film.pot_life.clear();
  auto fit = resin::calibrate(film, defaults, cache);
  if (!fit) return fit;
  // On the clock, as every printed time is.
  auto& tack_free = fit->cure.ages[Milestone::tack_free];
  if (!tack_free) tack_free = *fit->cure.ages[Milestone::gel] * defaults.tack_free_of_gel.value;
  return fit;
}

std::vector<std::string> assumed_of(const Product& product, const resin::Calibration& fit,
                                    const Defaults& defaults) {
  if (prints_film_time(product)) {
    return movers(defaults, [&](const Defaults& moved) -> FilmKey {
      const auto other = fit_of(product, moved, nullptr);
      if (!other) return std::nullopt;
      const Cure& cure = other->cure;
      return std::array{cure.kinetics.energy_j_per_mol, cure.ages[Milestone::gel]->si(),
                        cure.ages[Milestone::tack_free]->si()};
    });
  }
  // Moving each of those would follow a cup each time: they are those that cups hang on.
  std::vector<std::string> names = fit.cup_assumed;
  std::erase_if(names, [&](const std::string& name) {
    const auto& d = defaults.cure;
    const bool use = name == d.usable_rise.name || name == d.usable_share.name;
    return name == d.runs_away.name ||
           (use && product.pot_life_means != resin::PotLifeMeans::usable);
  });
  names.emplace_back(defaults.tack_free_of_gel.name);
  return names;
}

std::vector<Instant> wet_outs(std::span<const Instant> starts, units::Duration wet_out) {
  std::vector<Instant> all;
  all.reserve(starts.size());
  for (const Instant start : starts) {
    all.push_back(start + whole_seconds(units::in_seconds(wet_out)));
  }
  return all;
}

base::Result<OpenFilms> epoxy(const Product& product, const time::History& air,
                              std::span<const Instant> starts, units::Duration wet_out,
                              const Defaults& defaults, resin::AnswerCache* cache) {
  const auto fit = fit_of(product, defaults, cache);
  if (!fit) return tl::unexpected(fit.error());
  OpenFilms out;
  const std::vector<Instant> spread = wet_outs(starts, wet_out);
  const std::vector<FilmTimes> times = resin::Film(fit->cure, air).times(spread);
  for (std::size_t i = 0; i < starts.size(); ++i) {
    out.films.push_back(open_film(starts[i], spread[i], times[i], defaults.tack_free_of_gel.value));
  }
  for (const base::Notice& notice : fit->notices) {
    const bool of_films = notice.code == "cure.gel_from_tack_free" ||
                          notice.code == "cure.film_from_pot_life" ||
                          notice.code == "cure.second_temperature";
    if (of_films) out.notices.push_back(notice);
  }
  out.assumed = assumed_of(product, *fit, defaults);
  return out;
}

base::Result<OpenFilms> polyester(const Product& product, const time::History& air,
                                  std::span<const Instant> starts, units::Duration wet_out,
                                  const Defaults& defaults) {
  const double dose = resin::middle_dose(product);
  const std::vector<Instant> spread = wet_outs(starts, wet_out);
  OpenFilms out;
  for (std::size_t i = 0; i < starts.size(); ++i) {
    const auto times = resin::polyester_times(product, dose, air, spread[i], defaults);
    if (!times) return tl::unexpected(times.error());
    out.films.push_back(open_film(starts[i], spread[i], *times, defaults.tack_free_of_gel.value));
  }
  if (starts.empty()) return out;
  out.assumed = movers(defaults, [&](const Defaults& moved) -> std::optional<FilmTimes> {
    auto times = resin::polyester_times(product, dose, air, spread.front(), moved);
    if (!times) return std::nullopt;
    FilmTimes seen;
    seen[Milestone::gel] = (*times)[Milestone::gel];
    seen[Milestone::tack_free] = (*times)[Milestone::tack_free];
    if (!seen[Milestone::tack_free]) {
      seen[Milestone::tack_free] = seen[Milestone::gel];
      seen[Milestone::tack_free]->after_s *= moved.tack_free_of_gel.value;
    }
    return seen;
  });
  out.notices.push_back({.code = "polyester.middle_dose",
                         .text = "for the middle of the sheet's range of catalyst",
                         .subject = product.id,
                         .value = dose,
                         .unit = "share"});
  return out;
}

}  // namespace

base::Result<OpenFilms> open_films(const Product& product, const time::History& air_kelvin,
                                   std::span<const Instant> starts, units::Duration wet_out,
                                   const Defaults& defaults, resin::AnswerCache* cache) {
  return product.chemistry == resin::Chemistry::polyester
             ? polyester(product, air_kelvin, starts, wet_out, defaults)
             : epoxy(product, air_kelvin, starts, wet_out, defaults, cache);
}

}  // namespace wetout::work
