#include "cure_answer.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <string>
#include <utility>

#include "one_resin.hpp"
#include "wetout/resin/calibrate.hpp"
#include "wetout/resin/cure_course.hpp"
#include "wetout/resin/polyester.hpp"
#include "wetout/resin/warm_box.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

using resin::CourseMilestone;
using resin::Milestone;
using units::Temperature;

// Of the curve beyond what is waited for with the brush in hand.
constexpr double beyond_last = 1.4;

base::Problems for_the_command(base::Problems problems) {
  for (base::Problem& problem : problems) {
    if (problem.key == "air") problem.key = "--air";
    if (problem.key == "warm-box") problem.key = "--warm-box";
    if (problem.key == "after") problem.key = "--after";
  }
  return problems;
}

class Asker {
 public:
  Asker(const CureQuestion& question, const resin::Defaults& defaults, resin::AnswerCache* cache)
      : question_(question), product_(question.product), defaults_(defaults), cache_(cache) {}

  base::Result<report::CureDocument> ask() {
    out_.resin = product_.id;
    out_.name = product_.name;
    out_.chemistry = product_.chemistry;
    if (question_.start_named) out_.start = time::rfc3339(question_.start, question_.zone);
    const auto done = product_.chemistry == resin::Chemistry::polyester ? polyester() : epoxy();
    if (!done) return base::fail(for_the_command(done.error()));
    cautions();
    return std::move(out_);
  }

 private:
  base::Result<void> epoxy() {
    auto fit = resin::calibrate(product_, defaults_, cache_);
    if (!fit) return tl::unexpected(fit.error());
    auto air = air_around(fit->cure);
    if (!air) return tl::unexpected(air.error());
    auto course = resin::cure_course(*fit, *air, question_.start);
    if (!course) return tl::unexpected(course.error());
    for (const CourseMilestone& m : course->milestones) out_.milestones.push_back(told(m));
    if (auto drawn = curve(*fit, *air, *course); !drawn) return drawn;
    out_.notices.insert(out_.notices.end(), course->notices.begin(), course->notices.end());
    warmer_than_the_sheet(*air);
    calibration(*fit);
    assumed(*fit, *air, *course);
    return {};
  }

  base::Result<time::History> air_around(const resin::Cure& cure) {
    if (!question_.warm_box) return question_.air_kelvin;
    // What the core is made of is not asked: what the tenderest foam takes holds for all.
    const auto hottest = Temperature::celsius(defaults_.cure.box_polystyrene.value);
    out_.warm_box =
        report::CureWarmBox{question_.warm_box->set, question_.warm_box->after, hottest};
    out_.notices.push_back({.code = "box.tenderest",
                            .text = "the warm box is kept to what EPS and XPS take",
                            .subject = product_.id,
                            .value = hottest.in_celsius(),
                            .unit = "C"});
    return resin::in_warm_box(cure, question_.air_kelvin, question_.start, warm_box(),
                              defaults_.cure);
  }

  [[nodiscard]] resin::WarmBox warm_box() const {
    return {out_.warm_box->after, out_.warm_box->set, out_.warm_box->hottest};
  }

  // A warm box has an air of its own from when the film goes into it.
  [[nodiscard]] bool is_beyond(time::Instant at) const {
    if (!question_.known_until || at <= *question_.known_until) return false;
    if (!question_.warm_box) return true;
    const double after_s = units::in_seconds(question_.warm_box->after);
    return question_.start + std::chrono::seconds(std::llround(after_s)) > *question_.known_until;
  }

  [[nodiscard]] report::CureMilestone told(const CourseMilestone& m) const {
    report::CureMilestone out;
    out.name = m.milestone;
    out.reached = m.reached;
    out.extrapolated = m.extrapolated;
    out.would_do = m.would_do;
    if (!m.reached) return out;
    out.after = m.after;
    if (question_.start_named) out.time = time::rfc3339(m.at, question_.zone);
    out.conversion = m.conversion;
    out.tg = m.tg;
    out.air = m.air;
    out.beyond_air = is_beyond(m.at);
    return out;
  }

  // Close together until the last milestone before full cure, further apart after it.
  base::Result<void> curve(const resin::Calibration& fit, const time::History& air,
                           const resin::CureCourse& course) {
    units::Duration last;
    for (const CourseMilestone& m : course.milestones) {
      if (m.reached && m.milestone != Milestone::full_cure) last = std::max(last, m.after);
    }
    resin::CourseSettings settings;
    if (last.si() > 0.0) settings.until = last * beyond_last;
    const auto close = resin::cure_course(fit, air, question_.start, settings);
    if (!close) return tl::unexpected(close.error());
    const auto add = [&](const resin::FilmState& state) {
      out_.curve.push_back({units::seconds(state.after_s), state.air, state.conversion, state.tg});
    };
    for (const resin::FilmState& state : close->curve) add(state);
    const double end = close->curve.back().after_s;
    for (const resin::FilmState& state : course.curve) {
      if (state.after_s > end) add(state);
    }
    return {};
  }

  void warmer_than_the_sheet(const time::History& air) {
    if (!product_.highest_air || question_.warm_box) return;
    units::Duration last;
    for (const report::CureMilestone& m : out_.milestones)
      last = std::max(last, m.after.value_or(last));
    const time::Instant end =
        question_.start + std::chrono::seconds(std::llround(units::in_seconds(last)));
    double kelvin = std::max(air.at(question_.start), air.at(end));
    for (const time::HistoryPoint& point : air.points()) {
      if (point.at > question_.start && point.at < end) kelvin = std::max(kelvin, point.value);
    }
    const double highest = Temperature::kelvin(kelvin).in_celsius();
    if (highest <= product_.highest_air->in_celsius()) return;
    out_.notices.push_back({.code = "cure.above_highest",
                            .text = "warmer than the data sheet allows",
                            .subject = product_.id,
                            .value = highest,
                            .limit = product_.highest_air->in_celsius(),
                            .unit = "C"});
  }

  void calibration(const resin::Calibration& fit) {
    report::CureCalibration& told = out_.calibration;
    told.energy_kj_mol = fit.cure.kinetics.energy_j_per_mol * 1e-3;
    told.sheet_energy_kj_mol = fit.sheet_energy_kj_mol;
    for (const resin::Residual& r : fit.residuals) {
      std::optional<units::Milligrams> mass;
      if (r.mass) mass = units::Milligrams::nearest(*r.mass);
      told.residuals.push_back({r.key, mass, r.air, r.printed, r.model, r.closure});
    }
    for (const std::string& line : fit.missing) told.missing.push_back(missing_line(line));
    told.notices = fit.notices;
  }

  // --- what the answer hangs on

  // A floor on Tg, or the patience with it, only counts where it decides.
  [[nodiscard]] bool moves(const resin::Calibration& fit, const time::History& air,
                           const resin::CureCourse& course, const base::Default<double>& value,
                           const std::function<void(resin::Cure&, double)>& move) const {
    for (const double sign : {-1.0, 1.0}) {
      resin::Calibration moved = fit;
      move(moved.cure, sign * 0.01 * (value.high - value.low));
      const auto other = resin::cure_course(moved, air, question_.start);
      if (!other) return true;
      const bool same = std::equal(
          other->milestones.begin(), other->milestones.end(), course.milestones.begin(),
          course.milestones.end(), [](const CourseMilestone& a, const CourseMilestone& b) {
            return a.milestone == b.milestone && a.reached == b.reached &&
                   (!a.reached || a.after == b.after) && a.would_do == b.would_do;
          });
      if (!same) return true;
    }
    return false;
  }

  void assumed(const resin::Calibration& fit, const time::History& air,
               const resin::CureCourse& course) {
    const resin::CureDefaults& d = defaults_.cure;
    std::vector<std::string> names = fit.assumed;
    const auto drop = [&](const base::Default<double>& value) {
      names.erase(std::remove(names.begin(), names.end(), value.name), names.end());
    };
    const bool use_in_fit =
        product_.pot_life_means == resin::PotLifeMeans::usable && !product_.pot_life.empty();
    if (!use_in_fit) {
      drop(d.usable_rise);
      drop(d.usable_share);
    }
    drop(d.runs_away);
    const auto try_moving = [&](const base::Default<double>& value,
                                const std::function<void(resin::Cure&, double)>& move) {
      if (!moves(fit, air, course, value, move)) drop(value);
    };
    try_moving(d.patience, [](resin::Cure& cure, double by) { cure.patience += by; });
    try_moving(d.sandable_above,
               [](resin::Cure& cure, double by) { cure.sandable_above_kelvin += by; });
    try_moving(d.full_cure_below, [](resin::Cure& cure, double by) {
      if (cure.full_cure_tg) *cure.full_cure_tg = *cure.full_cure_tg - units::TempDelta::kelvin(by);
    });
    try_moving(d.recoat_longest, [&](resin::Cure& cure, double by) {
      // Where the sheet prints longer, that holds.
      if (cure.recoat_longest == units::hours(d.recoat_longest.value)) {
        cure.recoat_longest = *cure.recoat_longest + units::hours(by);
      }
    });
    if (question_.warm_box) box_assumed(fit.cure, air, names);
    out_.assumptions = assumptions(names, product_.id, defaults_);
  }

  // The hottest is told; the others count where they hold the box back.
  void box_assumed(const resin::Cure& cure, const time::History& air,
                   std::vector<std::string>& names) const {
    names.emplace_back(defaults_.cure.box_polystyrene.name);
    const auto try_moving = [&](auto pick) {
      resin::CureDefaults moved = defaults_.cure;
      base::Default<double>& value = pick(moved);
      value.value -= 0.01 * (value.high - value.low);
      const auto other =
          resin::in_warm_box(cure, question_.air_kelvin, question_.start, warm_box(), moved);
      const bool same = other && std::equal(other->points().begin(), other->points().end(),
                                            air.points().begin(), air.points().end());
      if (!same) names.emplace_back(value.name);
    };
    using D = resin::CureDefaults;
    try_moving([](D& d) -> base::Default<double>& { return d.box_above_tg; });
    try_moving([](D& d) -> base::Default<double>& { return d.box_ramp; });
  }

  // --- polyester

  base::Result<void> polyester() {
    if (question_.warm_box) {
      return base::fail({.code = "box.polyester",
                         .message = "a warm box is worked out for epoxies only",
                         .key = "--warm-box",
                         .expected = "an epoxy, or no warm box"});
    }
    const double dose = resin::middle_dose(product_);
    const auto times =
        resin::polyester_times(product_, dose, question_.air_kelvin, question_.start, defaults_);
    if (!times) return tl::unexpected(times.error());
    if (product_.dose_low || !product_.catalyst.empty()) out_.dose = dose;
    for (const Milestone m : resin::milestones) {
      const auto& time = (*times)[m];
      if (!time || !time->reached) continue;
      report::CureMilestone milestone;
      milestone.name = m;
      milestone.reached = true;
      milestone.after = units::seconds(time->after_s);
      const auto at = question_.start + std::chrono::seconds(std::llround(time->after_s));
      if (question_.start_named) milestone.time = time::rfc3339(at, question_.zone);
      milestone.air = Temperature::kelvin(question_.air_kelvin.at(at));
      milestone.beyond_air = is_beyond(at);
      out_.milestones.push_back(std::move(milestone));
    }
    std::stable_sort(out_.milestones.begin(), out_.milestones.end(),
                     [](const auto& a, const auto& b) { return *a.after < *b.after; });
    out_.notices.push_back({.code = "polyester.no_conversion",
                            .text = "a polyester's sheet prints gel by catalyst and temperature: "
                                    "conversion and Tg are not known",
                            .subject = product_.id});
    if (out_.dose) {
      out_.notices.push_back({.code = "polyester.middle_dose",
                              .text = "for the middle of the sheet's range of catalyst",
                              .subject = product_.id,
                              .value = dose,
                              .unit = "share"});
    }
    warmer_than_the_sheet(question_.air_kelvin);
    polyester_assumed(dose, *times);
    return {};
  }

  void polyester_assumed(double dose, const resin::FilmTimes& times) {
    std::vector<std::string> names;
    const auto try_moving = [&](auto pick) {
      resin::Defaults moved = defaults_;
      base::Default<double>& value = pick(moved);
      value.value += 0.01 * (value.high - value.low);
      const auto other =
          resin::polyester_times(product_, dose, question_.air_kelvin, question_.start, moved);
      if (!other || !(*other == times)) names.emplace_back(value.name);
    };
    using D = resin::Defaults;
    try_moving([](D& d) -> base::Default<double>& { return d.energy_kj_mol; });
    try_moving([](D& d) -> base::Default<double>& { return d.cure.dose_power; });
    try_moving([](D& d) -> base::Default<double>& { return d.cure.firm_gel; });
    try_moving([](D& d) -> base::Default<double>& { return d.cure.recoat_longest; });
    out_.assumptions = assumptions(names, product_.id, defaults_);
  }

  void cautions() {
    if (question_.warm_box) {
      out_.cautions.push_back(
          "Warm box: ventilate, never unattended, no flame or glowing element; a thermometer at "
          "the board, for a core that gets too warm is lost.");
    }
    out_.cautions.push_back(
        product_.chemistry == resin::Chemistry::epoxy
            ? "Nitrile gloves until it is tack-free. Sand only when sandable: dust of partly cured "
              "epoxy sensitises. Dust mask (P2, N95 or better), extraction or wet sanding."
            : "Styrene and acetone vapour burns: no flame or glowing element, fresh air. Resin "
              "rags: spread out, not in a heap. Sanding: dust mask (P2, N95 or better).");
    out_.cautions.push_back("Safety data sheets, local rules and licensed practice come first.");
  }

  const CureQuestion& question_;
  const resin::Product& product_;
  const resin::Defaults& defaults_;
  resin::AnswerCache* cache_;
  report::CureDocument out_;
};

}  // namespace

base::Result<report::CureDocument> cure_answer(const CureQuestion& question,
                                               const resin::Defaults& defaults,
                                               resin::AnswerCache* cache) {
  return Asker(question, defaults, cache).ask();
}

}  // namespace wetout::work
