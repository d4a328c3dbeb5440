#include "potlife_answer.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>

#include "one_resin.hpp"
#include "polyester_films.hpp"
#include "wetout/base/words.hpp"
#include "wetout/laminate/defaults.hpp"
#include "wetout/laminate/make_plan.hpp"
#include "wetout/resin/calibrate.hpp"
#include "wetout/resin/conversion_curve.hpp"
#include "wetout/resin/pot_life.hpp"

namespace wetout::work {
namespace {

using units::Duration;
using units::Mass;
using units::Temperature;

constexpr double usual_mass_g = 200.0;
// A batch is looked for up to here where no cup ends it before.
constexpr double most_mass_kg = 5.0;
constexpr std::array table_masses_g = {50.0, 100.0, 200.0, 400.0, 800.0};

base::Problems for_the_command(base::Problems problems) {
  for (base::Problem& problem : problems) {
    if (problem.key == "air") problem.key = "--air";
    if (problem.key == "resin") problem.key = "--resin-temp";
    if (problem.key == "mass") problem.key = "--mass";
    if (problem.key == "cup") problem.key = "--cup";
  }
  return problems;
}

std::string grams(Mass mass) { return units::print(mass, units::System::metric); }

// So that a scale can show it and nobody is told too much.
Mass rounded_down(Mass mass) {
  const double g = units::in_grams(mass);
  const double step = g < 100.0 ? 1.0 : g < 500.0 ? 5.0 : g < 2000.0 ? 10.0 : 50.0;
  return units::grams(std::floor(g / step + 1e-9) * step);
}

class Asker {
 public:
  Asker(const laminate::Shop& shop, const resin::Product& product, const PotLifeRequest& request,
        const resin::Defaults& defaults, resin::AnswerCache* cache)
      : shop_(shop),
        product_(product),
        request_(request),
        defaults_(defaults),
        cache_(cache),
        air_(request.choices.air.value_or(shop.air)),
        resin_(request.choices.resin_temp.value_or(air_)) {}

  base::Result<report::PotLifeDocument> ask() {
    out_.name = product_.name;
    out_.chemistry = product_.chemistry;
    out_.answer.resin = product_.id;
    out_.answer.air = air_;
    out_.answer.resin_temp = resin_;
    out_.cautions = laminate::mixing_cautions(product_.chemistry);
    if (auto problems = senseless_air(air_, "cup.beyond_sense"); !problems.empty()) {
      return base::fail(std::move(problems));
    }
    const auto done = product_.chemistry == resin::Chemistry::polyester
                          ? polyester_films(product_, request_, air_, resin_, defaults_, out_)
                          : epoxy_cup();
    if (!done) return tl::unexpected(for_the_command(done.error()));
    warmer_than_the_sheet();
    return std::move(out_);
  }

 private:
  void note(std::string code, std::string text, std::optional<double> value = std::nullopt,
            std::optional<double> limit = std::nullopt, std::string unit = "") {
    out_.notices.push_back(
        {std::move(code), std::move(text), product_.id, value, limit, std::move(unit)});
  }

  void warmer_than_the_sheet() {
    const Temperature warmest = std::max(air_, resin_);
    if (product_.highest_air && warmest > *product_.highest_air) {
      note("cure.above_highest", "warmer than the data sheet allows", warmest.in_celsius(),
           product_.highest_air->in_celsius(), "C");
    }
  }

  base::Result<void> epoxy_cup() {
    auto fit = resin::calibrate(product_, defaults_, cache_);
    if (!fit) return tl::unexpected(fit.error());
    fit_ = std::move(*fit);
    out_.notices = fit_.notices;
    const Mass mass = mass_asked();
    auto cup = cup_for(mass);
    if (!cup) return tl::unexpected(cup.error());
    cup_ = std::move(*cup);
    auto life = resin::pot_life(fit_.cure, {mass, air_, resin_, cup_, request_.pour_after}, cache_);
    if (!life) return tl::unexpected(life.error());
    tell(*life);
    if (auto told = largest(); !told) return told;
    if (auto told = table(); !told) return told;
    sheet_lines();
    for (const std::string& line : fit_.missing) {
      if (line == "pot_life" || line == "gel") out_.missing.push_back(missing_line(line));
    }
    assumed(*life);
    return {};
  }

  Mass mass_asked() {
    out_.mass_from = report::MassFrom::given;
    if (request_.mass) return *request_.mass;
    if (!product_.pot_life.empty() && product_.pot_life.front().mass) {
      out_.mass_from = report::MassFrom::sheet;
      note("potlife.mass", "no mass was named: this is the mass of the sheet's pot life");
      return *product_.pot_life.front().mass;
    }
    out_.mass_from = report::MassFrom::usual;
    note("potlife.mass", "no mass was named, and the sheet names none: this is a usual one");
    return units::grams(usual_mass_g);
  }

  [[nodiscard]] Mass held_by(const resin::Cup& cup) const {
    return fit_.cure.bulk.density * cup.holds;
  }

  base::Result<std::optional<resin::Cup>> cup_for(Mass mass) {
    if (request_.choices.cup) return cup_named(*request_.choices.cup, mass);
    const auto usual = std::find_if(shop_.cups.begin(), shop_.cups.end(),
                                    [&](const auto& cup) { return cup.id == shop_.cup; });
    if (usual != shop_.cups.end() && held_by(*usual) >= mass) return std::optional(*usual);
    const resin::Cup* smallest = nullptr;
    for (const resin::Cup& cup : shop_.cups) {
      if (held_by(cup) < mass) continue;
      if (smallest == nullptr || cup.holds < smallest->holds) smallest = &cup;
    }
    if (usual != shop_.cups.end() && smallest != nullptr) {
      note("potlife.other_cup", "more than the usual cup holds: this is the smallest that does");
    }
    if (smallest != nullptr) return std::optional(*smallest);
    if (!shop_.cups.empty()) {
      note("potlife.no_cup", "more than any cup of the shop holds: taken as high as wide");
    }
    return std::optional<resin::Cup>();
  }

  base::Result<std::optional<resin::Cup>> cup_named(const std::string& typed, Mass mass) const {
    std::vector<std::string> ids;
    for (const resin::Cup& cup : shop_.cups) ids.push_back(cup.id);
    const auto found = base::matches(typed, ids);
    if (found.size() != 1) {
      std::string list;
      for (const std::string& id : ids) list += (list.empty() ? "" : ", ") + id;
      const auto near = base::nearest(base::slug(typed), ids);
      return base::fail(
          {.code = found.empty() ? "reference.cup" : "reference.ambiguous",
           .message = found.empty() ? "the shop has no such cup" : "several cups begin so",
           .key = "--cup",
           .found = typed,
           .expected = list.empty() ? "a [[cup]] in the shop file" : list,
           .hint = found.empty() && near ? "did you mean \"" + *near + "\"?" : ""});
    }
    const resin::Cup& cup = shop_.cups[found.front()];
    if (held_by(cup) >= mass) return std::optional(cup);
    std::string list;
    for (const resin::Cup& other : shop_.cups) {
      if (held_by(other) >= mass) list += (list.empty() ? "" : ", ") + other.id;
    }
    return base::fail({.code = "cup.too_small",
                       .message = "the batch does not fit the cup \"" + cup.id + "\"",
                       .key = "--mass",
                       .found = grams(mass),
                       .expected = "at most " + grams(rounded_down(held_by(cup))),
                       .hint = list.empty() ? "" : "it fits: " + list});
  }

  [[nodiscard]] report::CupAnswer cell(const resin::PotLife& life) const {
    report::CupAnswer answer;
    answer.resin = product_.id;
    answer.mass = units::Milligrams::nearest(life.asked.mass);
    answer.air = life.asked.air;
    answer.resin_temp = life.asked.resin;
    if (life.asked.cup) answer.cup = life.asked.cup->id;
    answer.gel = life.gel;
    answer.use_within = life.use_within;
    answer.peak = life.peak;
    answer.peak_at = life.peak_at;
    answer.runs_away = life.runs_away;
    return answer;
  }

  void tell(const resin::PotLife& life) {
    out_.answer = cell(life);
    out_.use_ends = life.by_rise ? report::UseEnds::by_heat : report::UseEnds::by_conversion;
    out_.cooling_matters = life.cooling_matters;
    out_.film_open = resin::film_open(fit_.cure, air_);
    const resin::Kinetics& k = fit_.cure.kinetics;
    out_.film_gel = units::seconds(
        resin::ConversionCurve(k.r, k.m, k.n).reduced_time(fit_.cure.gel_conversion) /
        resin::rate_constant(k, air_));
    if (life.poured) {
      out_.poured =
          report::PouredOut{life.poured->after, life.poured->conversion, life.poured->temperature,
                            life.poured->spread_within, life.poured->gel};
    }
    out_.notices.insert(out_.notices.end(), life.notices.begin(), life.notices.end());
  }

  base::Result<void> largest() {
    if (!request_.workable) return {};
    Mass most = units::kilograms(most_mass_kg);
    if (cup_) most = std::min(most, held_by(*cup_) * laminate::defaults().cup_fill.value);
    resin::PotLifeRequest trial{most, air_, resin_, cup_, std::nullopt};
    const auto found = resin::largest_batch(fit_.cure, trial, *request_.workable, most, cache_);
    if (!found) return tl::unexpected(found.error());
    report::WorkableBatch batch;
    batch.time = *request_.workable;
    if (*found) {
      // The search is on a coarse grid: what is told must hold on the fine one.
      for (Mass mass = rounded_down(**found); mass.si() > 0.0; mass = rounded_down(mass * 0.99)) {
        trial.mass = mass;
        const auto life = resin::pot_life(fit_.cure, trial, cache_);
        if (!life) return tl::unexpected(life.error());
        if (life->use_within < *request_.workable) continue;
        batch.mass = units::Milligrams::nearest(mass);
        batch.cup_full = cup_ && mass == rounded_down(most);
        break;
      }
    }
    out_.workable = batch;
    return {};
  }

  base::Result<void> table() {
    if (!request_.table) return {};
    for (const double g : table_masses_g) {
      const Mass mass = units::grams(g);
      if (cup_ && held_by(*cup_) < mass) continue;
      for (const double c : table_airs_c) {
        const Temperature air = Temperature::celsius(c);
        const auto life = resin::pot_life(
            fit_.cure, {mass, air, request_.choices.resin_temp.value_or(air), cup_, std::nullopt},
            cache_);
        if (!life) return tl::unexpected(life.error());
        out_.grid.push_back(cell(*life));
        near_running_away_ = near_running_away_ || at_the_limit(*life);
      }
    }
    return {};
  }

  void sheet_lines() {
    for (const resin::Residual& r : fit_.residuals) {
      if (r.key != "pot_life" || !r.mass) continue;
      out_.sheet.push_back(
          {units::Milligrams::nearest(*r.mass), r.air, r.printed, r.model, r.closure});
    }
  }

  // Whether a hundredth of the limit's range would change what is said of running away.
  [[nodiscard]] bool at_the_limit(const resin::PotLife& life) const {
    const auto& limit = defaults_.cure.runs_away;
    return std::abs(life.followed_peak.in_celsius() - limit.value) <=
           0.01 * (limit.high - limit.low);
  }

  void assumed(const resin::PotLife& life) {
    std::vector<std::string> names = fit_.cup_assumed;
    const auto drop = [&](const base::Default<double>& value) {
      names.erase(std::remove(names.begin(), names.end(), value.name), names.end());
    };
    const bool in_fit =
        product_.pot_life_means == resin::PotLifeMeans::usable && !product_.pot_life.empty();
    if (!in_fit && !life.by_rise && !request_.table && !request_.workable) {
      drop(defaults_.cure.usable_rise);
    }
    if (!at_the_limit(life) && !near_running_away_) drop(defaults_.cure.runs_away);
    out_.assumptions = assumptions(names, product_.id, defaults_);
    if (!out_.workable || !out_.workable->cup_full) return;
    const auto& fill = laminate::defaults().cup_fill;
    out_.assumptions.push_back({std::string(fill.name),
                                fill.value,
                                "share",
                                std::string(base::to_string(fill.source.standing)),
                                std::string(fill.source.locator),
                                {product_.id}});
  }

  const laminate::Shop& shop_;
  const resin::Product& product_;
  const PotLifeRequest& request_;
  const resin::Defaults& defaults_;
  resin::AnswerCache* cache_;
  Temperature air_, resin_;
  resin::Calibration fit_;
  std::optional<resin::Cup> cup_;
  bool near_running_away_ = false;
  report::PotLifeDocument out_;
};

}  // namespace

base::Result<report::PotLifeDocument> potlife_answer(const laminate::Shop& shop,
                                                     const resin::Product& product,
                                                     const PotLifeRequest& request,
                                                     const resin::Defaults& defaults,
                                                     resin::AnswerCache* cache) {
  return Asker(shop, product, request, defaults, cache).ask();
}

}  // namespace wetout::work
