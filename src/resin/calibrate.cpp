#include "wetout/resin/calibrate.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "lever.hpp"
#include "sheet_times.hpp"
#include "wetout/resin/arrhenius.hpp"
#include "wetout/resin/film.hpp"
#include "wetout/resin/ratio.hpp"

namespace wetout::resin {
namespace {

// A second temperature is believed while its energy lies between these, kJ/mol: 15 C against 25 C
// then prints 1.6 to 3.1 times.
constexpr double least_energy = 35.0;
constexpr double most_energy = 80.0;
// Tg below this much above the sheet's temperature is that of an as-cured film, not the resin's.
constexpr double as_cured_below = 15.0;
constexpr double as_cured_used = 20.0;
// At the gel point the glass is at least this far below the sheet's temperature; a Tg printed after
// a hot cure could say otherwise.
constexpr double gel_is_liquid_by = 10.0;
constexpr double least_heat = 250e3;
constexpr double most_heat = 550e3;
constexpr double usual_lever = 1.0;
constexpr double large_residual = 0.15;

class Calibrator {
 public:
  Calibrator(const Product& product, const Defaults& defaults, AnswerCache* cache)
      : product_(product), defaults_(defaults), cache_(cache), lines_(film_lines(product)) {}

  base::Result<Calibration> run() {
    if (auto problems = unusable(); !problems.empty()) return base::fail(std::move(problems));
    Cure& cure = out_.cure;
    cure.resin = product_.id;
    cure.sheet_air = *sheet_air(product_, lines_);
    cure.lowest_air = product_.lowest_air;
    take_defaults();
    glass();
    energy();
    speed();
    ages();
    if (auto problems = order_problems(cure); !problems.empty()) {
      return base::fail(std::move(problems));
    }
    heat();
    speed_and_lever();
    floors();
    residuals();
    missing();
    out_.cup_assumed.assign(cup_assumed_.begin(), cup_assumed_.end());
    film_assumed_.insert(cup_assumed_.begin(), cup_assumed_.end());
    out_.assumed.assign(film_assumed_.begin(), film_assumed_.end());
    return std::move(out_);
  }

 private:
  double use(const base::Default<double>& value) {
    cup_assumed_.insert(std::string(value.name));
    return value.value;
  }
  // One that no cup hangs on.
  double use_for_film(const base::Default<double>& value) {
    film_assumed_.insert(std::string(value.name));
    return value.value;
  }

  void note(std::string code, std::string text, std::optional<double> value = std::nullopt,
            std::optional<double> limit = std::nullopt, std::string unit = "") {
    out_.notices.push_back(
        {std::move(code), std::move(text), product_.id, value, limit, std::move(unit)});
  }

  bool prints(Milestone m) const {
    return std::any_of(lines_.begin(), lines_.end(),
                       [&](const SheetLine& line) { return line.milestone == m; });
  }
  bool says_how_fast() const { return prints(Milestone::gel) || prints(Milestone::tack_free); }

  base::Problems unusable() const {
    base::Problems problems;
    if (product_.chemistry != Chemistry::epoxy) {
      problems.push_back({.code = "cure.polyester",
                          .message = "resin \"" + product_.id +
                                     "\" is a polyester: it has gel times, no conversion",
                          .key = "chemistry"});
      return problems;
    }
    const auto not_above_0 = [&](std::string_view key, const units::DurationRange& time) {
      if (time.low.si() > 0.0 && time.high >= time.low) return;
      problems.push_back({.code = "sheet.time",
                          .message = "resin \"" + product_.id + "\": a time must be above 0",
                          .key = std::string(key),
                          .expected = "a time such as \"4 h\" or \"25-30 min\""});
    };
    for (const SheetLine& line : lines_) not_above_0(sheet_key(line.milestone), line.time);
    for (const SheetTime& line : product_.pot_life) not_above_0("pot_life", line.time);
    if (!says_how_fast() && product_.pot_life.empty()) {
      problems.push_back(
          {.code = "resin.no_time",
           .message =
               "the data sheet of \"" + product_.id + "\" has no line that says how fast it is",
           .key = "gel",
           .found = "neither gel nor tack_free nor pot_life",
           .expected = "gel = [ { air = \"25 C\", time = \"4 h\" } ]",
           .hint = "copy the film's gel time, or the pot life, from the data sheet"});
    }
    return problems;
  }

  void take_defaults() {
    Cure& cure = out_.cure;
    const CureDefaults& d = defaults_.cure;
    cure.kinetics.m = use(d.order_m);
    cure.kinetics.n = use(d.order_n);
    cure.gel_conversion = use(d.gel_conversion);
    cure.bulk.heat_capacity_j_per_kg_k = use(d.heat_capacity);
    cure.bulk.conductivity_w_per_m_k = use(d.conductivity);
    cure.cooling = {use(d.cooling_side), use(d.cooling_top), use(d.cooling_base)};
    cure.trim_below_kelvin = use_for_film(d.trim_below);
    cure.patience = use_for_film(d.patience);
    cure.usable_rise_kelvin = use(d.usable_rise);
    cure.usable_share = use(d.usable_share);
    cure.runs_away = units::Temperature::celsius(use(d.runs_away));
    if (product_.density_a.si() > 0.0 && product_.density_b.si() > 0.0) {
      const double b = hardener_per_resin(product_);
      cure.bulk.density = units::kilograms_per_cubic_metre(
          (1.0 + b) / (1.0 / product_.density_a.si() + b / product_.density_b.si()));
    } else {
      cure.bulk.density = units::grams_per_millilitre(use(d.density));
    }
  }

  void glass() {
    Cure& cure = out_.cure;
    const CureDefaults& d = defaults_.cure;
    using units::TempDelta;
    using units::Temperature;
    cure.glass.uncured = Temperature::celsius(use_for_film(d.tg_uncured));
    cure.glass.lambda = use_for_film(d.tg_lambda);
    cure.glass.delay_kelvin = use_for_film(d.stop_delay);
    cure.glass.width_kelvin = use_for_film(d.stop_width);
    cure.glass.cured = product_.tg ? *product_.tg : Temperature::celsius(use_for_film(d.tg_cured));
    const Temperature as_cured = cure.sheet_air + TempDelta::kelvin(as_cured_below);
    if (cure.glass.cured < as_cured) {
      note("cure.as_cured_tg", "the Tg looks like an as-cured value: a higher one is used",
           cure.glass.cured.in_celsius(), as_cured.in_celsius(), "C");
      cure.glass.cured = cure.sheet_air + TempDelta::kelvin(as_cured_used);
    }
    // Tg at gel = uncured + span x; the span that keeps gel liquid.
    const double x =
        (glass_transition(cure.glass, cure.gel_conversion) - cure.glass.uncured).in_kelvin() /
        (cure.glass.cured - cure.glass.uncured).in_kelvin();
    const Temperature hottest =
        cure.glass.uncured +
        TempDelta::kelvin(((cure.sheet_air - cure.glass.uncured).in_kelvin() - gel_is_liquid_by) /
                          x);
    if (cure.glass.cured > hottest) {
      note("cure.hot_cured_tg", "the Tg looks like that of a hot cure: a lower one is used",
           cure.glass.cured.in_celsius(), hottest.in_celsius(), "C");
      cure.glass.cured = hottest;
    }
  }

  // A sheet's second temperature, weighed against what is usual.
  void energy() {
    const double usual = use(defaults_.energy_kj_mol);
    double energy = usual;
    if (const auto sheet = sheet_energy(lines_, defaults_.cure.pair_rounding.value)) {
      out_.sheet_energy_kj_mol = sheet->raw_kj_mol;
      if (sheet->raw_kj_mol < least_energy || sheet->raw_kj_mol > most_energy) {
        const auto times = [&](double e) {
          return arrhenius_factor(e, sheet->first, sheet->second);
        };
        const double a = times(least_energy), b = times(most_energy);
        note(
            "cure.second_temperature",
            fmt::format("a second temperature of the sheet prints {:.2g} x the times of the first, "
                        "where {:.2g} to {:.2g} is usual: it is not used",
                        times(sheet->raw_kj_mol), std::min(a, b), std::max(a, b)),
            sheet->second.in_celsius(), std::nullopt, "C");
      } else {
        const double own = 1.0 / (sheet->sd_kj_mol * sheet->sd_kj_mol);
        const double spread = use(defaults_.cure.energy_spread);
        use(defaults_.cure.pair_rounding);
        const double prior = 1.0 / (spread * spread);
        energy = (sheet->raw_kj_mol * own + usual * prior) / (own + prior);
      }
    }
    out_.cure.kinetics.energy_j_per_mol = energy * 1e3;
  }

  void speed() {
    if (!product_.speed || *product_.speed == 1.0) return;
    note("cure.speed", "times are those of its own speed, not of the sheet's as printed",
         *product_.speed, std::nullopt, "x");
  }

  double to_sheet_air(units::Temperature from) const {
    return arrhenius_factor(out_.cure.kinetics.energy_j_per_mol * 1e-3, from, out_.cure.sheet_air);
  }

  void ages() {
    Cure& cure = out_.cure;
    for (const Milestone m : milestones) {
      if (const SheetLine* line = own_line(lines_, m, cure.sheet_air)) {
        cure.ages[m] = units::seconds(line->safe_s() * to_sheet_air(line->air));
        if (m == Milestone::gel) cure.earliest_gel = line->time.low / line->time.high;
      }
    }
    if (!cure.ages[Milestone::gel] && cure.ages[Milestone::tack_free]) {
      const double times = use(defaults_.tack_free_of_gel);
      const SheetLine& tack = *own_line(lines_, Milestone::tack_free, cure.sheet_air);
      cure.ages[Milestone::gel] = *cure.ages[Milestone::tack_free] / times;
      cure.earliest_gel = tack.time.low / tack.time.high;
      note("cure.gel_from_tack_free",
           "the sheet prints no film gel: it is estimated from tack-free");
    }
    if (cure.ages[Milestone::recoat_until]) {
      // Longer where the sheet itself prints longer.
      cure.recoat_longest = units::hours(use_for_film(defaults_.cure.recoat_longest));
      for (const SheetLine& line : lines_) {
        if (line.milestone == Milestone::recoat_until) {
          cure.recoat_longest = std::max(*cure.recoat_longest, line.time.low);
        }
      }
    }
  }

  void heat() {
    const CureDefaults& d = defaults_.cure;
    const double hardener = hardener_per_resin(product_);
    const double heat = d.epoxide_share.value * d.heat_per_epoxide.value * 1e6 /
                        (d.epoxide_weight.value * (1.0 + hardener));
    heat_ = std::clamp(heat, least_heat, most_heat);
    if (heat_ != heat) return;
    use(d.epoxide_share);
    use(d.heat_per_epoxide);
    use(d.epoxide_weight);
  }

  LeverGoal goal(const SheetTime& line) {
    return {line.mass ? *line.mass : units::grams(use(defaults_.cure.sheet_mass)), line.air,
            line.time.low, product_.pot_life_means};
  }

  void speed_and_lever() {
    Cure& cure = out_.cure;
    use(defaults_.cure.start_rate);
    const bool has_pot_life = !product_.pot_life.empty();
    if (!cure.ages[Milestone::gel]) {
      const double gel =
          film_gel_for(cure, goal(product_.pot_life.front()), heat_, defaults_, cache_);
      pull(cure, 0.0, heat_, gel, defaults_);
      cure.ages[Milestone::gel] = units::seconds(gel);
      note("cure.film_from_pot_life",
           "the sheet prints no film time: all are guessed from the pot life");
      return;
    }
    const double film_gel = units::in_seconds(*cure.ages[Milestone::gel]);
    if (!has_pot_life) {
      pull(cure, 0.0, heat_, film_gel, defaults_);
      note("cure.cup_guessed",
           "the sheet prints no pot life: cup times are usual ones, good to a factor of 1.7");
      return;
    }
    use(defaults_.cure.lever_start_rate);
    use(defaults_.cure.lever_heat);
    const LeverGoal wanted = goal(product_.pot_life.front());
    const LeverFound found = fit_lever(cure, wanted, heat_, film_gel, defaults_, cache_);
    PotLifeFit fit{wanted.mass,
                   wanted.air,
                   wanted.time,
                   units::seconds(found.shortest_s),
                   units::seconds(found.longest_s),
                   wanted.time};
    const std::string reach = fmt::format(
        "the sheet's pot life does not go with its film gel, by which a cup of that "
        "mass lasts {:.0f} to {:.0f} min: ",
        found.shortest_s / 60.0, found.longest_s / 60.0);
    if (fit.printed > fit.longest) {
      fit.used = fit.longest;
      note("cure.pot_life_too_long",
           reach + fmt::format("is it for a tray or a smaller mass, or the film gel for a warmer "
                               "day? {:.0f} min are used",
                               found.longest_s / 60.0),
           units::in_minutes(fit.printed), std::nullopt, "min");
    } else if (fit.printed < fit.shortest) {
      cure.cup_factor = fit.printed / fit.shortest;
      note("cure.pot_life_too_short", reach + "it is used all the same, and film times stay",
           units::in_minutes(fit.printed), std::nullopt, "min");
    } else if (std::abs(cure.lever) > usual_lever) {
      note("cure.pot_life_at_the_edge",
           "the sheet's pot life is at the edge of what its film gel makes likely",
           units::in_minutes(fit.printed), std::nullopt, "min");
    }
    out_.pot_life = fit;
  }

  // What Tg has to come up to beside the clock, so that the sheet's own times hold at its own
  // temperature.
  void floors() {
    Cure& cure = out_.cure;
    const auto& sand = cure.ages[Milestone::sandable];
    const auto& full = cure.ages[Milestone::full_cure];
    if (!sand && !full) return;
    Cure without = cure;
    without.full_cure_tg.reset();
    const Film film(without, time::History::constant(cure.sheet_air.in_kelvin()));
    const auto tg_at = [&](units::Duration age) {
      return film.state(time::Instant{}, units::in_seconds(age)).tg;
    };
    if (sand) {
      const double own = (tg_at(*sand) - cure.sheet_air).in_kelvin() - 1e-6;
      const double usual = defaults_.cure.sandable_above.value;
      if (usual < own) use_for_film(defaults_.cure.sandable_above);
      cure.sandable_above_kelvin = std::min(usual, own);
    }
    if (full) {
      cure.full_cure_tg =
          tg_at(*full) - units::TempDelta::kelvin(use_for_film(defaults_.cure.full_cure_below));
    }
  }

  void residuals() {
    const Cure& cure = out_.cure;
    for (const Milestone m : milestones) {
      const SheetLine* own = own_line(lines_, m, cure.sheet_air);
      for (const SheetLine& line : lines_) {
        if (line.milestone != m) continue;
        const double model = own->middle_s() * to_sheet_air(own->air) / to_sheet_air(line.air);
        add_residual({std::string(to_string(m)), line.air, std::nullopt,
                      units::seconds(line.middle_s()), units::seconds(model), &line == own});
      }
    }
    for (const SheetTime& line : product_.pot_life) {
      const bool own = &line == &product_.pot_life.front();
      const LeverGoal at = goal(line);
      const double model = cure.cup_factor * cup_time_s(cure, at, cache_);
      add_residual({"pot_life", line.air, at.mass, line.time.low, units::seconds(model), own});
    }
  }

  void add_residual(Residual residual) {
    const double off = residual.model / residual.printed - 1.0;
    if (std::abs(off) > large_residual && !residual.closure) {
      std::string line = residual.key;
      std::replace(line.begin(), line.end(), '_', ' ');
      note("cure.residual",
           fmt::format("{} at another temperature or mass: the model says {:.0f} % {} than the "
                       "sheet prints",
                       line, 100.0 * std::abs(off), off > 0.0 ? "more" : "less"),
           units::in_minutes(residual.printed), std::nullopt, "min");
    }
    out_.residuals.push_back(std::move(residual));
  }

  void missing() {
    const auto want = [&](bool there, std::string key) {
      if (!there) out_.missing.push_back(std::move(key));
    };
    want(!product_.pot_life.empty(), "pot_life");
    want(prints(Milestone::gel), "gel");
    want(prints(Milestone::tack_free), "tack_free");
    want(prints(Milestone::recoat_from), "recoat");
    want(prints(Milestone::sandable), "sand");
    want(prints(Milestone::full_cure), "full_cure");
    want(product_.tg.has_value(), "tg");
  }

  const Product& product_;
  const Defaults& defaults_;
  AnswerCache* cache_;
  std::vector<SheetLine> lines_;
  Calibration out_;
  std::set<std::string> cup_assumed_, film_assumed_;
  double heat_ = 0.0;
};

}  // namespace

base::Result<Calibration> calibrate(const Product& product, const Defaults& defaults,
                                    AnswerCache* cache) {
  return Calibrator(product, defaults, cache).run();
}

}  // namespace wetout::resin
