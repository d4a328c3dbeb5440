#include "wetout/resin/pot_life.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "wetout/resin/calibrate.hpp"
#include "wetout/resin/conversion_curve.hpp"
#include "wetout/units/print.hpp"

namespace wetout::resin {
namespace {

using units::Duration;
using units::Temperature;

// The models' range, and where they are still asked.
constexpr double coldest_c = 0.0, cold_c = 10.0, hot_c = 40.0, hottest_resin_c = 50.0;
// A cup whose middle stays below this above its start is ruled by how it cools, and so is a slow
// one.
constexpr double near_adiabatic_kelvin = 60.0;
constexpr double slow_film_h = 6.0;
constexpr double smallest_batch_g = 20.0;
// A drop loses its heat so fast that following it takes long and says nothing.
constexpr double least_batch_g = 1.0;

base::Problems senseless(const PotLifeRequest& request, const Cure& cure) {
  base::Problems problems;
  const auto outside = [&](std::string_view key, Temperature t, double most) {
    if (t.in_celsius() >= coldest_c - 1e-9 && t.in_celsius() <= most + 1e-9) return;
    problems.push_back({.code = "cup.beyond_sense",
                        .message = "the model of a cup holds for nothing this cold or warm",
                        .key = std::string(key),
                        .found = units::print(t, units::System::metric),
                        .expected = key == "air" ? "air of 0 to 40 C" : "resin of 0 to 50 C"});
  };
  outside("air", request.air, hot_c);
  outside("resin", request.resin, hottest_resin_c);
  if (units::in_grams(request.mass) < least_batch_g) {
    problems.push_back({.code = "cup.beyond_sense",
                        .message = "so little is no batch: it cures as a film",
                        .key = "mass",
                        .expected = "at least 1 g, such as \"250 g\""});
  } else if (request.cup && request.mass / cure.bulk.density > request.cup->holds) {
    problems.push_back({.code = "cup.too_small",
                        .message = "the batch does not fit the cup \"" + request.cup->id + "\"",
                        .key = "cup",
                        .expected = "a larger cup, or a smaller batch"});
  }
  return problems;
}

Fill fill_for(const Cure& cure, const PotLifeRequest& request) {
  const units::Volume volume = request.mass / cure.bulk.density;
  return request.cup ? fill_of(volume, request.cup->diameter) : fill_of(volume);
}

ConversionCurve curve_of(const Cure& cure) {
  return {cure.kinetics.r, cure.kinetics.m, cure.kinetics.n};
}

// A film's time from one reduced time to another.
Duration film_time(const Cure& cure, Temperature air, double reduced_time) {
  return units::seconds(reduced_time / rate_constant(cure.kinetics, air));
}

class Answer {
 public:
  Answer(const Cure& cure, const ConversionCurve& curve, const PotLifeRequest& request,
         const CupCourse& course)
      : cure_(cure), course_(course), curve_(curve) {
    out_.asked = request;
  }

  PotLife make() {
    const PotLifeRequest& asked = out_.asked;
    const double factor = cure_.cup_factor;
    out_.use_within = *usable(course_) * factor;
    out_.by_rise =
        course_.risen && (!course_.part_gelled || *course_.risen <= *course_.part_gelled);
    out_.gel = *course_.gel * factor;
    out_.runs_away = course_.peak > cure_.runs_away;
    out_.followed_peak = course_.peak;
    if (!out_.runs_away) out_.peak = course_.peak;
    out_.peak_at = course_.peak_at * factor;
    const double film_gel_h =
        units::in_hours(film_time(cure_, asked.resin, curve_.reduced_time(cure_.gel_conversion)));
    out_.cooling_matters = (course_.peak - asked.resin).in_kelvin() < near_adiabatic_kelvin ||
                           film_gel_h > slow_film_h;
    poured();
    notices();
    return std::move(out_);
  }

 private:
  void poured() {
    if (!course_.poured_reduced_time) return;
    const Duration after = *out_.asked.pour_after;
    if (after > out_.use_within) return;
    // As a film it goes on from where the cup had brought it, at the air's temperature.
    const auto goes_on_to = [&](double conversion) {
      const double left = curve_.reduced_time(conversion) - *course_.poured_reduced_time;
      return std::max(after, after + film_time(cure_, out_.asked.air, left));
    };
    const double early = cure_.earliest_gel;
    const double part = cure_.usable_share * cure_.gel_conversion;
    Poured poured;
    poured.after = after;
    poured.conversion = *course_.poured_conversion;
    poured.temperature = *course_.poured_temperature;
    poured.spread_within = after + (goes_on_to(part) - after) * early;
    poured.gel = goes_on_to(cure_.gel_conversion);
    out_.poured = poured;
  }

  void note(std::string code, std::string text, std::optional<double> value = std::nullopt,
            std::optional<double> limit = std::nullopt, std::string unit = "") {
    out_.notices.push_back(
        {std::move(code), std::move(text), cure_.resin, value, limit, std::move(unit)});
  }

  void notices() {
    const PotLifeRequest& asked = out_.asked;
    const Temperature coldest = std::min(asked.air, asked.resin);
    const Temperature warmest = std::max(asked.air, asked.resin);
    if (out_.runs_away) {
      note("cup.runs_away",
           "left standing it runs away: smoke, perhaps fire. Empty it in time, spread what is left "
           "thin, outdoors");
    }
    if (out_.cooling_matters) {
      note("cup.cooling_matters", "times are rough, for they hang on how this cup loses its heat");
    }
    if (coldest.in_celsius() < cold_c) {
      note("cup.cold", "colder than the models are meant for", coldest.in_celsius(), cold_c, "C");
    }
    if (warmest.in_celsius() > hot_c) {
      note("cup.hot", "warmer than the models are meant for", warmest.in_celsius(), hot_c, "C");
    }
    if (cure_.lowest_air && coldest < *cure_.lowest_air) {
      note("cure.below_lowest", "colder than the data sheet allows: times are extrapolated",
           coldest.in_celsius(), cure_.lowest_air->in_celsius(), "C");
    }
    if (asked.pour_after && !out_.poured) {
      note("cup.poured_too_late", "poured out then it can no longer be used",
           units::in_minutes(*asked.pour_after), units::in_minutes(out_.use_within), "min");
    }
  }

  const Cure& cure_;
  const CupCourse& course_;
  const ConversionCurve& curve_;
  PotLife out_;
};

}  // namespace

PotLives::PotLives(const Cure& cure) : cure_(cure), curve_(curve_of(cure)) {}

base::Result<PotLife> PotLives::of(const PotLifeRequest& request, AnswerCache* cache) const {
  if (auto problems = senseless(request, cure_); !problems.empty()) {
    return base::fail(std::move(problems));
  }
  CupRun run = cup_run(cure_, fill_for(cure_, request), request.air, request.resin);
  // The lever's factor is on every time of the cup, so the cup is looked at that much later.
  if (request.pour_after) run.pour_after = *request.pour_after / cure_.cup_factor;
  return Answer(cure_, curve_, request, follow(run, cache)).make();
}

Duration PotLives::film_open(Temperature air) const {
  const double until = curve_.reduced_time(cure_.usable_share * cure_.gel_conversion);
  return film_time(cure_, air, until) * cure_.earliest_gel;
}

base::Result<PotLife> pot_life(const Cure& cure, const PotLifeRequest& request,
                               AnswerCache* cache) {
  return PotLives(cure).of(request, cache);
}

base::Result<std::vector<PotLife>> pot_life_table(const Cure& cure,
                                                  std::span<const units::Mass> masses,
                                                  std::span<const units::Temperature> airs,
                                                  const std::optional<Cup>& cup,
                                                  AnswerCache* cache) {
  const PotLives lives(cure);
  std::vector<PotLife> table;
  table.reserve(masses.size() * airs.size());
  for (const units::Mass mass : masses) {
    for (const units::Temperature air : airs) {
      auto cell = lives.of({mass, air, air, cup, std::nullopt}, cache);
      if (!cell) return tl::unexpected(cell.error());
      table.push_back(std::move(*cell));
    }
  }
  return table;
}

base::Result<std::optional<units::Mass>> largest_batch(const Cure& cure,
                                                       const PotLifeRequest& request,
                                                       Duration workable, units::Mass most,
                                                       AnswerCache* cache) {
  PotLifeRequest trial = request;
  trial.mass = most;
  if (trial.cup) most = std::min(most, cure.bulk.density * trial.cup->holds);
  trial.mass = most;
  if (auto problems = senseless(trial, cure); !problems.empty()) {
    return base::fail(std::move(problems));
  }
  const auto lasts = [&](units::Mass mass) {
    trial.mass = mass;
    CupRun run = cup_run(cure, fill_for(cure, trial), trial.air, trial.resin);
    run.until = CupUntil::usable;
    run.grid = coarse_grid;
    return *usable(follow(run, cache)) * cure.cup_factor >= workable;
  };
  if (lasts(most)) return std::optional(most);
  // Down from the largest by thirds to one that lasts, then halving between the two.
  units::Mass too_much = most, enough = most;
  do {
    too_much = enough;
    enough = enough * (2.0 / 3.0);
    if (units::in_grams(enough) < smallest_batch_g) {
      enough = units::grams(smallest_batch_g);
      if (too_much <= enough || !lasts(enough)) return std::optional<units::Mass>{};
      break;
    }
  } while (!lasts(enough));
  while (too_much / enough > 1.005) {
    const units::Mass middle = units::Mass::from_si(std::sqrt(too_much.si() * enough.si()));
    (lasts(middle) ? enough : too_much) = middle;
  }
  return std::optional(enough);
}

Duration film_open(const Cure& cure, Temperature air) { return PotLives(cure).film_open(air); }

}  // namespace wetout::resin
