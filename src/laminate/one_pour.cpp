#include "one_pour.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "batching.hpp"
#include "pours.hpp"

namespace wetout::laminate {
namespace {

using Fails = Verdict::Fails;
using units::TempDelta;
using units::Temperature;

// Resin is not kept colder than this on purpose: it thickens.
constexpr double coldest_resin_c = 15.0;
constexpr double to_kelvin = 0.5;  // how closely a temperature is sought

class Proposer {
 public:
  Proposer(const PlanInput& input, const std::string& coat, const Defaults& settings,
           const CupRules& rules, const Cupful& whole, const Verdict& refused,
           std::set<std::string>& assumed)
      : input_(input),
        coat_(coat),
        settings_(settings),
        rules_(rules),
        whole_(whole),
        refused_(refused),
        assumed_(assumed) {}

  base::Notices run() {
    tray();
    if (whole_.product->chemistry == resin::Chemistry::epoxy) slower_hardener();
    cooler_resin();
    two_people();
    return std::move(notices_);
  }

 private:
  bool holds(const Cupful& batch) const {
    const auto verdict = rules_.judge(batch);
    return verdict && verdict->good();
  }

  void note(std::string code, std::string text, std::optional<double> value,
            std::optional<double> limit, std::string unit) {
    notices_.push_back({std::move(code), std::move(text), coat_, value, limit, std::move(unit)});
  }

  units::Volume volume() const {
    return whole_.part_a.mass() / whole_.product->density_a +
           whole_.part_b.mass() / whole_.product->density_b;
  }

  // The shop's own cups were tried; this is one it could get.
  void tray() {
    if (input_.cup) return;
    const double depth_m = units::in_metres(settings_.tray_depth.value);
    resin::Cup tray{
        .id = "tray",
        .holds = volume() / settings_.cup_fill.value * (1.0 + 1e-9),
        .diameter = units::metres(2.0 * std::sqrt(volume().si() / (depth_m * std::numbers::pi)))};
    Cupful in_tray = whole_;
    in_tray.cup = &tray;
    if (!holds(in_tray)) return;
    note("coat.one_pour.tray",
         "a tray this wide, emptied at once, would keep this coat to one pour",
         units::in_millimetres(tray.diameter), std::nullopt, "mm");
  }

  void slower_hardener() {
    for (const resin::Product& other : input_.shop.resins) {
      if (other.id == whole_.product->id || other.chemistry != whole_.product->chemistry ||
          other.part_a != whole_.product->part_a) {
        continue;
      }
      resin::WeighRequest request = weigh_request(input_.shop, other, {}, settings_.resin);
      request.target = whole_.total;
      const auto mix = resin::weigh(request);
      if (!mix) continue;
      Cupful slower = whole_;
      slower.product = &other;
      slower.part_a = mix->part_a;
      slower.part_b = mix->part_b;
      slower.total = mix->total;
      for (const resin::Cup* cup : cups_to_try(input_.shop, input_.cup)) {
        slower.cup = cup;
        const auto verdict = rules_.judge(slower);
        if (!verdict || !verdict->good()) continue;
        const resin::WorkingTime& time = *verdict->time;
        assumed_.insert(time.assumed.begin(), time.assumed.end());
        const units::Duration lasts = refused_.fails == Fails::spread_too_late
                                          ? time.spread_within.value_or(time.use_within)
                                          : time.use_within;
        note("coat.one_pour.slower", "resin \"" + other.id + "\" would keep this coat to one pour",
             units::in_minutes(
                 time_to_empty(slower.total.mass(), settings_) +
                 (refused_.fails == Fails::spread_too_late ? slower.spread : units::Duration{})),
             units::in_minutes(lasts), "min");
        return;
      }
    }
  }

  void cooler_resin() {
    const double lowest = std::max(
        coldest_resin_c, whole_.product->lowest_air.value_or(Temperature::celsius(0)).in_celsius());
    const auto holds_at = [&](double celsius) {
      Cupful cooler = whole_;
      cooler.resin = Temperature::celsius(celsius);
      return holds(cooler);
    };
    double too_warm = whole_.resin.in_celsius();
    if (too_warm <= lowest || refused_.fails == Fails::cup_too_small || !holds_at(lowest)) return;
    double cool = lowest;
    while (too_warm - cool > to_kelvin) {
      const double middle = 0.5 * (too_warm + cool);
      (holds_at(middle) ? cool : too_warm) = middle;
    }
    note("coat.one_pour.cooler", "resin this cool would keep this coat to one pour",
         std::floor(cool / to_kelvin) * to_kelvin, std::nullopt, "C");
  }

  void two_people() {
    if (refused_.fails != Fails::spread_too_late) return;
    Cupful halved = whole_;
    halved.spread = whole_.spread * 0.5;
    if (!holds(halved)) return;
    note("coat.one_pour.two_people", "two people spreading would keep this coat to one pour",
         refused_.value, refused_.limit, "min");
  }

  const PlanInput& input_;
  const std::string& coat_;
  const Defaults& settings_;
  const CupRules& rules_;
  const Cupful& whole_;
  const Verdict& refused_;
  std::set<std::string>& assumed_;
  base::Notices notices_;
};

}  // namespace

base::Notices ways_to_one_pour(const PlanInput& input, const std::string& coat,
                               const Defaults& settings, const CupRules& rules, const Cupful& whole,
                               const Verdict& refused, std::set<std::string>& assumed) {
  return Proposer(input, coat, settings, rules, whole, refused, assumed).run();
}

}  // namespace wetout::laminate
