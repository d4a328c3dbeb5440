#include "polyester_films.hpp"

#include <algorithm>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "one_resin.hpp"
#include "wetout/resin/polyester.hpp"

namespace wetout::work {
namespace {

using units::Temperature;

// The ends of the sheet's range and what its table prints between.
std::vector<double> doses_of(const resin::Product& product) {
  std::set<double> doses;
  for (const resin::CatalystTime& line : product.catalyst) doses.insert(line.dose);
  if (product.dose_low) doses.insert(*product.dose_low);
  if (product.dose_high) doses.insert(*product.dose_high);
  std::vector<double> inside;
  for (const double dose : doses) {
    const bool allowed = (!product.dose_low || dose >= *product.dose_low) &&
                         (!product.dose_high || dose <= *product.dose_high);
    if (allowed) inside.push_back(dose);
  }
  if (inside.empty()) inside.push_back(resin::middle_dose(product));
  return inside;
}

base::Result<std::vector<report::DosedFilm>> films(const resin::Product& product,
                                                   const std::vector<Temperature>& airs,
                                                   const resin::Defaults& defaults) {
  std::vector<report::DosedFilm> films;
  for (const double dose : doses_of(product)) {
    for (const Temperature air : airs) {
      const auto gel = resin::polyester_gel(product, dose, air, defaults);
      if (!gel) return tl::unexpected(gel.error());
      films.push_back({dose, air, *gel, *gel * defaults.pot_life_share.value});
    }
  }
  return films;
}

}  // namespace

base::Result<void> polyester_films(const resin::Product& product, const PotLifeRequest& request,
                                   Temperature air, Temperature resin_temp,
                                   const resin::Defaults& defaults,
                                   report::PotLifeDocument& document) {
  const auto note = [&](std::string code, std::string text) {
    document.notices.push_back(
        {.code = std::move(code), .text = std::move(text), .subject = product.id});
  };
  document.notices.push_back(resin::small_sample_notice(product.id));
  if (request.mass || request.pour_after || request.workable || request.choices.cup) {
    note("polyester.not_answered",
         "a polyester's gel is not worked out by mass, cup, or when it is poured out");
  }
  std::vector<Temperature> airs{std::max(air, resin_temp)};
  if (request.table) {
    airs.clear();
    for (const double c : table_airs_c) airs.push_back(Temperature::celsius(c));
  }
  auto told = films(product, airs, defaults);
  if (!told) return tl::unexpected(told.error());
  document.dose_low = product.dose_low;
  document.dose_high = product.dose_high;
  document.doses = std::move(*told);

  // What a table of one temperature or one dose has to borrow.
  std::vector<std::string> names{std::string(defaults.pot_life_share.name)};
  const auto try_moving = [&](auto pick) {
    resin::Defaults moved = defaults;
    base::Default<double>& value = pick(moved);
    value.value += 0.01 * (value.high - value.low);
    const auto other = films(product, airs, moved);
    const bool moves =
        !other || !std::equal(other->begin(), other->end(), document.doses.begin(),
                              [](const auto& a, const auto& b) { return a.gel == b.gel; });
    if (moves) names.emplace_back(value.name);
  };
  try_moving([](resin::Defaults& d) -> base::Default<double>& { return d.energy_kj_mol; });
  try_moving([](resin::Defaults& d) -> base::Default<double>& { return d.cure.dose_power; });
  document.assumptions = assumptions(names, product.id, defaults);
  return {};
}

}  // namespace wetout::work
