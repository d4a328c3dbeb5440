#include "sheet_times.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace wetout::resin {
namespace {

std::string hours_or_minutes(units::Duration d) {
  const double hours = units::in_hours(d);
  if (hours >= 48.0) return fmt::format("{:.3g} days", hours / 24.0);
  return hours >= 2.0 ? fmt::format("{:.3g} h", hours)
                      : fmt::format("{:.3g} min", units::in_minutes(d));
}

std::string_view said(Milestone m) {
  switch (m) {
    case Milestone::gel:
      return "gel";
    case Milestone::trim_until:
      return "trim";
    case Milestone::recoat_from:
      return "recoat from";
    case Milestone::tack_free:
      return "tack-free";
    case Milestone::handle:
      return "handle";
    case Milestone::sandable:
      return "sandable";
    case Milestone::recoat_until:
      return "recoat until";
    case Milestone::full_cure:
      return "full cure";
  }
  return "";
}

}  // namespace

std::vector<SheetLine> film_lines(const Product& product) {
  std::vector<SheetLine> lines;
  const auto add = [&](Milestone m, const std::vector<SheetTime>& times) {
    for (const SheetTime& t : times) lines.push_back({m, t.air, t.time});
  };
  add(Milestone::gel, product.gel);
  add(Milestone::trim_until, product.trim);
  for (const SheetWindow& w : product.recoat) {
    lines.push_back({Milestone::recoat_from, w.air, w.from});
  }
  add(Milestone::tack_free, product.tack_free);
  add(Milestone::handle, product.handle);
  add(Milestone::sandable, product.sand);
  for (const SheetWindow& w : product.recoat) {
    if (w.until) lines.push_back({Milestone::recoat_until, w.air, *w.until});
  }
  add(Milestone::full_cure, product.full_cure);
  return lines;
}

std::optional<units::Temperature> sheet_air(const Product& product,
                                            const std::vector<SheetLine>& lines) {
  if (!lines.empty()) return lines.front().air;
  if (!product.pot_life.empty()) return product.pot_life.front().air;
  return std::nullopt;
}

const SheetLine* own_line(const std::vector<SheetLine>& lines, Milestone milestone,
                          units::Temperature air) {
  const SheetLine* first = nullptr;
  for (const SheetLine& line : lines) {
    if (line.milestone != milestone) continue;
    if (line.air == air) return &line;
    if (first == nullptr) first = &line;
  }
  return first;
}

std::optional<SheetEnergy> sheet_energy(const std::vector<SheetLine>& lines, double pair_rounding) {
  const double r = gas_constant_j_per_mol_k.value;
  double up = 0.0, down = 0.0;
  SheetEnergy energy;
  for (const Milestone m : milestones) {
    std::vector<const SheetLine*> own;
    for (const SheetLine& line : lines) {
      if (line.milestone == m) own.push_back(&line);
    }
    double mean_x = 0.0, mean_y = 0.0;
    for (const SheetLine* line : own) {
      mean_x += 1.0 / line->air.in_kelvin() / static_cast<double>(own.size());
      mean_y += std::log(line->middle_s()) / static_cast<double>(own.size());
    }
    for (const SheetLine* line : own) {
      const double x = 1.0 / line->air.in_kelvin() - mean_x;
      up += x * (std::log(line->middle_s()) - mean_y);
      down += x * x;
      if (energy.first == energy.second && line->air != own.front()->air) {
        energy.first = own.front()->air;
        energy.second = line->air;
      }
    }
  }
  if (energy.first == energy.second) return std::nullopt;
  energy.raw_kj_mol = r * up / down * 1e-3;
  // `pair_rounding` belongs to the quotient of two times, so to each by a root of two.
  energy.sd_kj_mol = r * pair_rounding / std::sqrt(2.0 * down) * 1e-3;
  return energy;
}

base::Problems order_problems(const Cure& cure) {
  using enum Milestone;
  struct Rule {
    Milestone early, late;
  };
  constexpr Rule rules[] = {
      {gel, tack_free},   {tack_free, sandable},       {sandable, full_cure},
      {gel, recoat_from}, {recoat_from, recoat_until}, {gel, sandable},
      {gel, full_cure},   {tack_free, full_cure},      {tack_free, handle},
      {gel, trim_until},
  };
  base::Problems problems;
  for (const Rule& rule : rules) {
    const auto& early = cure.ages[rule.early];
    const auto& late = cure.ages[rule.late];
    // Equal upper ends of two ranges may be meant; where they are not, reading the file says so.
    if (!early || !late || *late >= *early) continue;
    problems.push_back(
        {.code = "sheet.order",
         .message =
             fmt::format("{} ({}) comes before {} ({})", said(rule.late), hours_or_minutes(*late),
                         said(rule.early), hours_or_minutes(*early)),
         .key = std::string(sheet_key(rule.late)),
         .found = fmt::format("{}, at the temperature of the sheet's first line",
                              hours_or_minutes(*late)),
         .expected = "gel < tack-free <= sandable < full cure, and gel <= recoat from < recoat "
                     "until",
         .hint = "copy both lines from the data sheet again"});
  }
  return problems;
}

}  // namespace wetout::resin
