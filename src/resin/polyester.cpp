#include "wetout/resin/polyester.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <vector>

#include "gauss.hpp"
#include "root.hpp"
#include "sheet_times.hpp"

namespace wetout::resin {
namespace {

constexpr double reach = 1e-9;

double middle_s(const units::DurationRange& range) {
  return 0.5 * (units::in_seconds(range.low) + units::in_seconds(range.high));
}

// ln t over x, straight between points in rising x, going on at the ends with the slope there.
double straight(const std::vector<std::pair<double, double>>& points, double x,
                double usual_slope) {
  if (points.size() == 1) return points[0].second + usual_slope * (x - points[0].first);
  std::size_t i = 1;
  while (i + 1 < points.size() && x > points[i].first) ++i;
  const auto& [x0, y0] = points[i - 1];
  const auto& [x1, y1] = points[i];
  return y0 + (y1 - y0) * (x - x0) / (x1 - x0);
}

class Table {
 public:
  Table(const Product& product, const Defaults& defaults)
      : energy_k_(defaults.energy_kj_mol.value * 1e3 / gas_constant_j_per_mol_k.value),
        power_(defaults.cure.dose_power.value) {
    std::map<double, std::map<double, double>> by_dose;
    for (const CatalystTime& line : product.catalyst) {
      by_dose[line.dose][1.0 / line.air.in_kelvin()] = std::log(middle_s(line.gel));
    }
    if (by_dose.empty()) {
      for (const SheetTime& line : product.gel) {
        by_dose[middle_dose(product)][1.0 / line.air.in_kelvin()] = std::log(middle_s(line.time));
      }
    }
    for (const auto& [dose, times] : by_dose) {
      doses_.push_back({std::log(dose), {times.begin(), times.end()}});
    }
  }

  [[nodiscard]] bool empty() const { return doses_.empty(); }

  [[nodiscard]] double gel_s(double dose, double kelvin) const {
    std::vector<std::pair<double, double>> over_dose;
    for (const Row& row : doses_) {
      over_dose.emplace_back(row.log_dose, straight(row.times, 1.0 / kelvin, energy_k_));
    }
    return std::exp(straight(over_dose, std::log(dose), -power_));
  }

  // Where the speed has kinks, kelvin.
  [[nodiscard]] std::vector<double> kinks() const {
    std::vector<double> kelvin;
    for (const Row& row : doses_) {
      for (const auto& [inverse, time] : row.times) kelvin.push_back(1.0 / inverse);
    }
    std::sort(kelvin.begin(), kelvin.end());
    return kelvin;
  }

 private:
  struct Row {
    double log_dose;
    std::vector<std::pair<double, double>> times;  // 1/T, ln s
  };
  double energy_k_, power_;
  std::vector<Row> doses_;
};

base::Problems refused(const Product& product, const Table& table, std::optional<double> dose) {
  if (product.light_cured) {
    return {
        {.code = "polyester.light_cured",
         .message = "\"" + product.id + "\" is cured by light: its times hang on the lamp or sun",
         .key = "light_cured"}};
  }
  if (table.empty()) {
    return {{.code = "polyester.no_table",
             .message = "the sheet of \"" + product.id + "\" has no gel time",
             .key = "catalyst",
             .expected = "catalyst = [ { air = \"20 C\", dose = \"1.5 %\", gel = \"25 min\" } ]"}};
  }
  if (!dose) return {};
  const bool outside = *dose <= 0.0 || (product.dose_low && *dose < *product.dose_low - reach) ||
                       (product.dose_high && *dose > *product.dose_high + reach);
  if (!outside) return {};
  return {{.code = "polyester.dose",
           .message = "the catalyst of \"" + product.id + "\" is dosed outside the sheet's range",
           .key = "dose",
           .expected = "a dose inside the range of the data sheet"}};
}

// The sum of dt/gel(T) over changing air, from a start on.
class GelCount {
 public:
  GelCount(const Table& table, double dose, const time::History& air, double start)
      : table_(table), dose_(dose), air_(air), start_(start), kinks_(table.kinks()) {}

  /// Seconds after the start at which `times` gel times have passed.
  [[nodiscard]] double after(double times) const {
    double from = start_, counted = 0.0;
    for (;;) {
      const double until = next_kink(from);
      if (std::isinf(until)) {
        return from - start_ + (times - counted) * table_.gel_s(dose_, air_.at_seconds(from));
      }
      const double gain = count(from, until);
      if (counted + gain >= times) {
        const auto miss = [&](double t) { return counted + count(from, t) - times; };
        return root(from, counted - times, until, counted + gain - times, 1e-12, miss) - start_;
      }
      counted += gain;
      from = until;
    }
  }

 private:
  double count(double from, double until) const {
    return gauss5(from, until,
                  [&](double t) { return 1.0 / table_.gel_s(dose_, air_.at_seconds(t)); });
  }

  // The end of what is smooth from `from` on: a point of the air, a temperature of the table, or
  // four kelvin of change.
  double next_kink(double from) const {
    const auto points = air_.points();
    const auto seconds = [&](std::size_t i) {
      return static_cast<double>((points[i].at - points[0].at).count());
    };
    for (std::size_t i = 0; i < points.size(); ++i) {
      if (seconds(i) <= from) continue;
      const double end = seconds(i);
      if (i == 0) return end;  // before the first point the air is even
      const double slope = (points[i].value - points[i - 1].value) / (end - seconds(i - 1));
      double next = end;
      if (slope != 0.0) {
        const double now = air_.at_seconds(from);
        next = std::min(next, from + 4.0 / std::abs(slope));
        for (const double kelvin : kinks_) {
          const double at = from + (kelvin - now) / slope;
          if (at > from + 1e-6) next = std::min(next, at);
        }
      }
      return next;
    }
    return std::numeric_limits<double>::infinity();
  }

  const Table& table_;
  double dose_;
  const time::History& air_;
  double start_;
  std::vector<double> kinks_;
};

}  // namespace

double middle_dose(const Product& product) {
  if (product.dose_low && product.dose_high) {
    return std::sqrt(*product.dose_low * *product.dose_high);
  }
  if (product.catalyst.empty()) return 0.01;  // only its quotient to itself is used then
  double low = product.catalyst.front().dose, high = low;
  for (const CatalystTime& line : product.catalyst) {
    low = std::min(low, line.dose);
    high = std::max(high, line.dose);
  }
  return std::sqrt(low * high);
}

base::Notice small_sample_notice(const std::string& resin) {
  return {.code = "polyester.no_cup",
          .text =
              "gel times are those of the sheet's small sample or film; a full cup gels sooner "
              "and gets hot, and how soon is not known here",
          .subject = resin};
}

std::optional<base::Notice> beyond_table(const Product& product, units::Temperature coldest,
                                         units::Temperature warmest) {
  std::vector<units::Temperature> printed;
  for (const CatalystTime& line : product.catalyst) printed.push_back(line.air);
  if (printed.empty()) return std::nullopt;
  const auto [low, high] = std::minmax_element(printed.begin(), printed.end());
  const auto say = [&](std::string text, units::Temperature value, units::Temperature limit) {
    return base::Notice{.code = "polyester.beyond_table",
                        .text = std::move(text),
                        .subject = product.id,
                        .value = value.in_celsius(),
                        .limit = limit.in_celsius(),
                        .unit = "C"};
  };
  if (warmest > *high) {
    return say("warmer than any line of the sheet's table: times are guessed", warmest, *high);
  }
  if (coldest < *low) {
    return say("colder than any line of the sheet's table: times are guessed", coldest, *low);
  }
  return std::nullopt;
}

base::Result<units::Duration> polyester_gel(const Product& product, double dose,
                                            units::Temperature air, const Defaults& defaults) {
  const Table table(product, defaults);
  if (auto problems = refused(product, table, dose); !problems.empty()) {
    return base::fail(std::move(problems));
  }
  return units::seconds(table.gel_s(dose, air.in_kelvin()));
}

base::Result<Dose> dose_for(const Product& product, units::Temperature air, units::Duration wanted,
                            const Defaults& defaults) {
  const Table table(product, defaults);
  if (auto problems = refused(product, table, std::nullopt); !problems.empty()) {
    return base::fail(std::move(problems));
  }
  const double middle = middle_dose(product);
  const double low = product.dose_low.value_or(middle), high = product.dose_high.value_or(middle);
  const double kelvin = air.in_kelvin();
  const auto miss = [&](double log_dose) {
    return std::log(table.gel_s(std::exp(log_dose), kelvin) / units::in_seconds(wanted));
  };
  const double at_low = miss(std::log(low)), at_high = miss(std::log(high));
  Dose dose;
  if (at_low <= 0.0 || at_high >= 0.0) {
    dose.share = at_low <= 0.0 ? low : high;
    if (std::abs(at_low <= 0.0 ? at_low : at_high) > 1e-6) {
      dose.notices.push_back({.code = "polyester.dose_end",
                              .text = "the sheet's range of catalyst ends before the gel time "
                                      "that was wished for",
                              .subject = product.id,
                              .value = units::in_minutes(wanted),
                              .limit = table.gel_s(dose.share, kelvin) / 60.0,
                              .unit = "min"});
    }
  } else {
    dose.share = std::exp(root(std::log(low), at_low, std::log(high), at_high, 1e-9, miss));
  }
  dose.gel = units::seconds(table.gel_s(dose.share, kelvin));
  return dose;
}

base::Result<FilmTimes> polyester_times(const Product& product, double dose,
                                        const time::History& air_kelvin, time::Instant start,
                                        const Defaults& defaults) {
  const Table table(product, defaults);
  if (auto problems = refused(product, table, dose); !problems.empty()) {
    return base::fail(std::move(problems));
  }
  using enum Milestone;
  PerMilestone<std::optional<double>> multiples;
  multiples[gel] = 1.0;
  const auto lines = film_lines(product);
  for (const Milestone m : milestones) {
    if (m == gel) continue;
    const SheetLine* line = own_line(lines, m, units::Temperature::celsius(25));
    if (line == nullptr) continue;
    multiples[m] = line->safe_s() / table.gel_s(middle_dose(product), line->air.in_kelvin());
  }
  if (!multiples[handle]) multiples[handle] = multiples[tack_free];
  if (!multiples[recoat_from]) {
    multiples[recoat_from] =
        product.waxed ? multiples[sandable] : std::optional(defaults.cure.firm_gel.value);
  }
  const GelCount count(table, dose, air_kelvin,
                       static_cast<double>((start - air_kelvin.first()).count()));
  FilmTimes times;
  for (const Milestone m : milestones) {
    if (multiples[m]) times[m] = MilestoneTime{true, count.after(*multiples[m])};
  }
  if (!product.waxed && times[recoat_from]) {
    const double longest = defaults.cure.recoat_longest.value * 3600.0;
    const double until = times[recoat_until] ? times[recoat_until]->after_s : longest;
    times[recoat_until] =
        MilestoneTime{true, std::max(std::min(until, longest), times[recoat_from]->after_s)};
  }
  return times;
}

}  // namespace wetout::resin
