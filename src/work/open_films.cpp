#include "open_films.hpp"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <optional>
#include <utility>

#include "wetout/resin/calibrate.hpp"
#include "wetout/resin/clock.hpp"
#include "wetout/resin/polyester.hpp"

namespace wetout::work {
namespace {

using resin::Defaults;
using resin::Milestone;
using resin::Product;
using time::Instant;

std::chrono::seconds whole_seconds(double s) { return std::chrono::seconds(std::llround(s)); }

// What is told of each film.
using Ends = std::vector<std::array<Instant, 2>>;
Ends ends_of(const std::vector<schedule::OpenFilm>& films) {
  Ends ends;
  ends.reserve(films.size());
  for (const schedule::OpenFilm& film : films) ends.push_back({film.gel, film.tack_free});
  return ends;
}

std::vector<schedule::OpenFilm> spread_films(std::span<const Instant> starts,
                                             units::Duration wet_out) {
  std::vector<schedule::OpenFilm> films;
  films.reserve(starts.size());
  for (const Instant start : starts) {
    const Instant spread = start + whole_seconds(units::in_seconds(wet_out));
    films.push_back({start, spread, spread, spread});
  }
  return films;
}

using Pick = base::Default<double>& (*)(Defaults&);

// Moves defaults by 1 % of their range, both ways, and keeps the names of those that move a film.
template <class Films>
std::vector<std::string> movers(std::span<const Pick> picks, const Defaults& defaults,
                                const Films& films) {
  const Ends before = ends_of(*films(defaults));
  std::vector<std::string> names;
  for (const Pick pick : picks) {
    Defaults moved = defaults;
    base::Default<double>& value = pick(moved);
    for (const double way : {-0.01, 0.01}) {
      const double usual = value.value;
      value.value = usual + way * (value.high - value.low);
      const auto other = films(moved);
      value.value = usual;
      if (other && ends_of(*other) == before) continue;
      names.emplace_back(value.name);
      break;
    }
  }
  return names;
}

using Films = base::Result<std::vector<schedule::OpenFilm>>;

// --- epoxy: both ends by the clock

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
  auto& tack_free = fit->cure.ages[Milestone::tack_free];
  if (!tack_free) tack_free = *fit->cure.ages[Milestone::gel] * defaults.tack_free_of_gel.value;
  return fit;
}

std::vector<schedule::OpenFilm> by_clock(const resin::Cure& cure, const time::History& air,
                                         std::span<const Instant> starts, units::Duration wet_out) {
  const resin::Clock clock(cure.kinetics.energy_j_per_mol, cure.sheet_air, air);
  resin::Clock::Place begin = 0, gel = 0, tack_free = 0;
  const auto end = [&](double from_s, double age, Milestone milestone, resin::Clock::Place& place) {
    return whole_seconds(clock.when(age + units::in_seconds(*cure.ages[milestone]), place) -
                         from_s);
  };
  std::vector<schedule::OpenFilm> films = spread_films(starts, wet_out);
  for (schedule::OpenFilm& film : films) {
    const double from_s = std::chrono::duration<double>(film.wet_out - air.first()).count();
    const double age = clock.age(from_s, begin);
    film.gel = film.wet_out + end(from_s, age, Milestone::gel, gel);
    film.tack_free =
        std::max(film.gel, film.wet_out + end(from_s, age, Milestone::tack_free, tack_free));
  }
  return films;
}

std::vector<std::string> assumed_of(const Product& product, const resin::Calibration& fit,
                                    const Defaults& defaults, const time::History& air,
                                    std::span<const Instant> starts, units::Duration wet_out) {
  if (prints_film_time(product)) {
    // No other one has a say in a film's clock (a test moves them all).
    constexpr std::array<Pick, 4> picks = {
        [](Defaults& d) -> base::Default<double>& { return d.energy_kj_mol; },
        [](Defaults& d) -> base::Default<double>& { return d.tack_free_of_gel; },
        [](Defaults& d) -> base::Default<double>& { return d.cure.energy_spread; },
        [](Defaults& d) -> base::Default<double>& { return d.cure.pair_rounding; }};
    return movers(picks, defaults, [&](const Defaults& moved) -> Films {
      const auto other = fit_of(product, moved, nullptr);
      if (!other) return tl::unexpected(other.error());
      return by_clock(other->cure, air, starts, wet_out);
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

base::Result<OpenFilms> epoxy(const Product& product, const time::History& air,
                              std::span<const Instant> starts, units::Duration wet_out,
                              const Defaults& defaults, resin::AnswerCache* cache) {
  const auto fit = fit_of(product, defaults, cache);
  if (!fit) return tl::unexpected(fit.error());
  OpenFilms out;
  out.films = by_clock(fit->cure, air, starts, wet_out);
  for (const base::Notice& notice : fit->notices) {
    const bool of_films = notice.code == "cure.gel_from_tack_free" ||
                          notice.code == "cure.film_from_pot_life" ||
                          notice.code == "cure.second_temperature";
    if (of_films) out.notices.push_back(notice);
  }
  out.assumed = assumed_of(product, *fit, defaults, air, starts, wet_out);
  return out;
}

// --- polyester: both as multiples of gel

// A film that never comes so far is open for longer than any weather.
constexpr double for_ever_s = 10.0 * 365.25 * 86400.0;

Films by_table(const Product& product, double dose, const time::History& air,
               std::span<const Instant> starts, units::Duration wet_out, const Defaults& defaults) {
  std::vector<schedule::OpenFilm> films = spread_films(starts, wet_out);
  for (schedule::OpenFilm& film : films) {
    const auto times = resin::polyester_times(product, dose, air, film.wet_out, defaults);
    if (!times) return tl::unexpected(times.error());
    const auto after = [&](Milestone milestone) -> std::optional<double> {
      const auto& time = (*times)[milestone];
      if (!time) return std::nullopt;
      return time->reached ? std::min(time->after_s, for_ever_s) : for_ever_s;
    };
    const double gel = after(Milestone::gel).value_or(for_ever_s);
    film.gel = film.wet_out + whole_seconds(gel);
    film.tack_free =
        film.wet_out +
        whole_seconds(after(Milestone::tack_free).value_or(gel * defaults.tack_free_of_gel.value));
  }
  return films;
}

base::Result<OpenFilms> polyester(const Product& product, const time::History& air,
                                  std::span<const Instant> starts, units::Duration wet_out,
                                  const Defaults& defaults) {
  const double dose = resin::middle_dose(product);
  auto found = by_table(product, dose, air, starts, wet_out, defaults);
  if (!found) return tl::unexpected(found.error());
  OpenFilms out;
  out.films = std::move(*found);
  constexpr std::array<Pick, 3> picks = {
      [](Defaults& d) -> base::Default<double>& { return d.energy_kj_mol; },
      [](Defaults& d) -> base::Default<double>& { return d.tack_free_of_gel; },
      [](Defaults& d) -> base::Default<double>& { return d.cure.dose_power; }};
  // These take their time; a few starts over all the weather say it too.
  std::vector<Instant> some;
  const std::size_t stride = std::max<std::size_t>(1, starts.size() / 24);
  for (std::size_t i = 0; i < starts.size(); i += stride) some.push_back(starts[i]);
  out.assumed = movers(picks, defaults, [&](const Defaults& d) {
    return by_table(product, dose, air, some, wet_out, d);
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
