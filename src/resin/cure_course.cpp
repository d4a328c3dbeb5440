#include "wetout/resin/cure_course.hpp"

#include <algorithm>
#include <cmath>

#include "wetout/base/check.hpp"
#include "wetout/resin/arrhenius.hpp"
#include "wetout/resin/clock.hpp"

namespace wetout::resin {
namespace {

constexpr double coldest_c = 0.0, cold_c = 10.0, hot_c = 40.0, hottest_c = 60.0;
constexpr double longest_curve_s = 14.0 * 86400.0;

class Teller {
 public:
  Teller(const Calibration& calibration, const time::History& air, time::Instant start)
      : cure_(calibration.cure),
        air_(air),
        film_(cure_, air),
        clock_(cure_.kinetics.energy_j_per_mol, cure_.sheet_air, air),
        begin_(static_cast<double>((start - air.first()).count())) {
    out_.start = start;
  }

  CureCourse tell(const CourseSettings& settings) {
    const FilmTimes times = film_.times(out_.start);
    std::vector<double> seconds;
    for (const Milestone m : milestones) {
      if (!times[m]) continue;
      CourseMilestone told;
      told.milestone = m;
      told.reached = times[m]->reached;
      told.after = units::seconds(times[m]->after_s);
      if (told.reached) look_at(told);
      if (!told.reached) not_reached(told);
      out_.milestones.push_back(told);
    }
    std::stable_sort(out_.milestones.begin(), out_.milestones.end(),
                     [](const CourseMilestone& a, const CourseMilestone& b) {
                       if (a.reached != b.reached) return a.reached;
                       return a.reached && a.after < b.after;
                     });
    states();
    curve(settings);
    range();
    return std::move(out_);
  }

 private:
  // The constant temperature that would have made the clock go as far.
  units::Temperature evened(double after_s) const {
    const double speed = (clock_.age(begin_ + after_s) - clock_.age(begin_)) / after_s;
    return temperature_for_factor(cure_.kinetics.energy_j_per_mol * 1e-3, cure_.sheet_air,
                                  1.0 / speed);
  }

  void look_at(CourseMilestone& told) {
    const double after_s = units::in_seconds(told.after);
    told.at = out_.start + std::chrono::seconds(std::llround(after_s));
    told.beyond_air = film_.beyond_air(out_.start, after_s);
    told.extrapolated = cure_.lowest_air && after_s > 0.0 &&
                        evened(after_s).in_kelvin() < cure_.lowest_air->in_kelvin() - 1e-6;
    if (!told.extrapolated) return;
    note("cure.below_lowest",
         "colder than the data sheet allows: times are extrapolated, full cure not claimed",
         evened(after_s).in_celsius(), cure_.lowest_air->in_celsius(), "C");
    if (told.milestone == Milestone::full_cure) told.reached = false;
  }

  void not_reached(CourseMilestone& told) {
    told.would_do = temperature_reaching(cure_, told.milestone,
                                         units::Temperature::kelvin(air_.at(out_.start)));
    if (told.would_do && told.milestone == Milestone::full_cure && cure_.lowest_air) {
      told.would_do = std::max(*told.would_do, *cure_.lowest_air);
    }
    std::string name(to_string(told.milestone));
    std::replace(name.begin(), name.end(), '_', ' ');
    note("cure.not_reached",
         name + (told.would_do ? " is not reached; it would be at this constant temperature"
                               : " is not reached, nor at any constant temperature up to this"),
         told.would_do ? told.would_do->in_celsius() : hottest_c, std::nullopt, "C");
  }

  void states() {
    std::vector<double> seconds;
    for (const CourseMilestone& told : out_.milestones) {
      if (told.reached) seconds.push_back(units::in_seconds(told.after));
    }
    const std::vector<FilmState> states = film_.states(out_.start, seconds);
    for (std::size_t i = 0; i < states.size(); ++i) {
      out_.milestones[i].conversion = states[i].conversion;
      out_.milestones[i].tg = states[i].tg;
      out_.milestones[i].air = states[i].air;
    }
  }

  void curve(const CourseSettings& settings) {
    base::promise(settings.points >= 2, "a curve has two ends");
    double end = 0.0;
    for (const CourseMilestone& told : out_.milestones) {
      if (told.reached) end = std::max(end, units::in_seconds(told.after));
    }
    end = settings.until ? units::in_seconds(*settings.until) : std::min(end, longest_curve_s);
    std::vector<double> seconds(settings.points);
    for (std::size_t i = 0; i < seconds.size(); ++i) {
      seconds[i] = end * static_cast<double>(i) / static_cast<double>(seconds.size() - 1);
    }
    out_.curve = film_.states(out_.start, seconds);
  }

  void range() {
    double low = 1e9, high = -1e9;
    for (const FilmState& state : out_.curve) {
      low = std::min(low, state.air.in_celsius());
      high = std::max(high, state.air.in_celsius());
    }
    if (low < cold_c) note("cure.cold", "colder than the models are meant for", low, cold_c, "C");
    if (high > hot_c) note("cure.hot", "warmer than the models are meant for", high, hot_c, "C");
  }

  // Once each: the first milestone it is true of says it.
  void note(std::string code, std::string text, double value, std::optional<double> limit,
            std::string unit) {
    const bool said = std::any_of(out_.notices.begin(), out_.notices.end(),
                                  [&](const auto& n) { return n.code == code && n.text == text; });
    if (said) return;
    out_.notices.push_back(
        {std::move(code), std::move(text), cure_.resin, value, limit, std::move(unit)});
  }

  const Cure& cure_;
  const time::History& air_;
  Film film_;
  Clock clock_;
  double begin_;
  CureCourse out_;
};

}  // namespace

base::Result<CureCourse> cure_course(const Calibration& calibration,
                                     const time::History& air_kelvin, time::Instant start,
                                     const CourseSettings& settings) {
  const auto celsius = [](double kelvin) {
    return units::Temperature::kelvin(kelvin).in_celsius();
  };
  if (celsius(air_kelvin.lowest()) < coldest_c - 1e-9 ||
      celsius(air_kelvin.highest()) > hottest_c + 1e-9) {
    return base::fail({.code = "cure.beyond_sense",
                       .message = "the model of a film holds for nothing this cold or warm",
                       .key = "air",
                       .expected = "air of 0 to 40 C, or a warm box of up to 60 C"});
  }
  return Teller(calibration, air_kelvin, start).tell(settings);
}

}  // namespace wetout::resin
