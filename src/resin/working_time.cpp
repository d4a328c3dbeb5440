#include "wetout/resin/working_time.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "wetout/base/check.hpp"
#include "wetout/resin/polyester.hpp"
#include "wetout/resin/pot_life.hpp"
#include "wetout/resin/ratio.hpp"

namespace wetout::resin {
namespace {

// What the numbers of one batch hang on, of what the fit does: a rise ends use before any part of
// gel conversion does, or the other way round.
std::vector<std::string> hangs_on(const Calibration& fit, const Product& product,
                                  const PotLife& life, const Defaults& defaults) {
  std::vector<std::string> names = fit.cup_assumed;
  const auto drop = [&](const base::Default<double>& value) {
    names.erase(std::remove(names.begin(), names.end(), value.name), names.end());
  };
  const bool usable_in_fit =
      product.pot_life_means == PotLifeMeans::usable && !product.pot_life.empty();
  if (!usable_in_fit) {
    if (!life.by_rise) drop(defaults.cure.usable_rise);
    if (life.by_rise && !life.poured) drop(defaults.cure.usable_share);
  }
  // A limit, not a number of the model: moving it by a hundredth of its range moves nothing unless
  // the peak stands next to it.
  const auto& limit = defaults.cure.runs_away;
  const double peak = life.followed_peak.in_celsius();
  const double reach = 0.01 * (limit.high - limit.low);
  if (std::abs(peak - limit.value) > reach) drop(limit);
  return names;
}

}  // namespace

base::Result<WorkingTime> WorkingTimes::of(const Product& product,
                                           const Situation& situation) const {
  const auto& [fit, lives] = fitted(product);
  if (!fit) return tl::unexpected(fit.error());
  PotLifeRequest request{situation.mass, situation.air, situation.resin, std::nullopt,
                         situation.emptied};
  if (situation.cup != nullptr) request.cup = *situation.cup;
  // Whether it fits is the caller's rule.
  if (request.cup) request.cup->holds = std::max(request.cup->holds, units::litres(1e6));
  const auto life = lives->of(request, cache());
  if (!life) return tl::unexpected(life.error());
  WorkingTime time{.use_within = life->use_within,
                   .gel = life->gel,
                   .peak = life->peak,
                   .runs_away = life->runs_away,
                   .notices = fit->notices,
                   .spread_within = std::nullopt,
                   .assumed = hangs_on(*fit, product, *life, defaults_)};
  if (life->poured) time.spread_within = life->poured->spread_within;
  for (const base::Notice& notice : life->notices) {
    // The plan has its own column for running away, and its own limits of temperature and time.
    if (notice.code == "cup.cooling_matters") time.notices.push_back(notice);
  }
  return time;
}

base::Result<units::Duration> WorkingTimes::film_open(const Product& product,
                                                      units::Temperature air) const {
  const auto& [fit, lives] = fitted(product);
  if (!fit) return tl::unexpected(fit.error());
  return lives->film_open(air);
}

base::Result<FillHeat> WorkingTimes::fill(const Product& product, units::Length gap,
                                          const FillSurroundings& foam, units::Temperature air,
                                          units::Temperature resin) const {
  const auto& fit = calibration(product);
  if (!fit) return tl::unexpected(fit.error());
  return fill_heat(fit->cure, gap, foam, air, resin, *cache());
}

const base::Result<Calibration>& WorkingTimes::calibration(const Product& product) const {
  return fitted(product).fit;
}

const WorkingTimes::Fitted& WorkingTimes::fitted(const Product& product) const {
  std::string key = sheet_text(product);
  const auto found = fitted_.find(key);
  if (found != fitted_.end()) return found->second;
  Fitted made{calibrate(product, defaults_, cache()), std::nullopt};
  if (made.fit) made.lives.emplace(made.fit->cure);
  return fitted_.emplace(std::move(key), std::move(made)).first->second;
}

base::Result<WorkingTime> polyester_working_time(const Product& product, double dose,
                                                 const Situation& situation,
                                                 const Defaults& defaults) {
  const auto in_cup = polyester_gel(product, dose, situation.resin, defaults);
  if (!in_cup) return tl::unexpected(in_cup.error());
  const auto as_film = polyester_gel(product, dose, situation.air, defaults);
  if (!as_film) return tl::unexpected(as_film.error());
  const double share = defaults.pot_life_share.value;
  WorkingTime time{.use_within = *in_cup * share,
                   .gel = *in_cup,
                   .peak = std::nullopt,
                   .runs_away = std::nullopt,
                   .notices = {},
                   .spread_within = std::nullopt,
                   .assumed = {}};
  time.notices.push_back(small_sample_notice(product.id));
  if (auto beyond = beyond_table(product, std::min(situation.air, situation.resin),
                                 std::max(situation.air, situation.resin))) {
    time.notices.push_back(std::move(*beyond));
  }
  // What the cup has used up of its share, the film no longer has.
  if (situation.emptied && *situation.emptied <= time.use_within) {
    time.spread_within = *situation.emptied + *as_film * (share - *situation.emptied / *in_cup);
  }
  return time;
}

std::string sheet_text(const Product& product) {
  std::string text = fmt::format(
      "{} {} {} {} {} {}", product.id, product.chemistry == Chemistry::epoxy,
      product.pot_life_means == PotLifeMeans::gel, product.density_a.si(), product.density_b.si(),
      product.by_mass || product.by_volume ? hardener_per_resin(product) : -1.0);
  const auto add = [&](std::string_view key, const auto& lines) {
    for (const auto& line : lines) {
      text += fmt::format(" {} {} {} {} {}", key, line.air.in_kelvin(), line.time.low.si(),
                          line.time.high.si(), line.mass ? line.mass->si() : -1.0);
    }
  };
  const auto add_temperature = [&](std::string_view key, const auto& t) {
    text += fmt::format(" {} {}", key, t ? t->in_kelvin() : -1.0);
  };
  add("pot", product.pot_life);
  add("gel", product.gel);
  add("tack", product.tack_free);
  add("handle", product.handle);
  add("sand", product.sand);
  add("full", product.full_cure);
  add("trim", product.trim);
  for (const SheetWindow& w : product.recoat) {
    text +=
        fmt::format(" recoat {} {} {} {} {}", w.air.in_kelvin(), w.from.low.si(), w.from.high.si(),
                    w.until ? w.until->low.si() : -1.0, w.until ? w.until->high.si() : -1.0);
  }
  add_temperature("tg", product.tg);
  add_temperature("lowest", product.lowest_air);
  return text;
}

}  // namespace wetout::resin
