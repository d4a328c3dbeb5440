#include "wetout/resin/film.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <map>

#include "random_air.hpp"
#include "sheets.hpp"
#include "wetout/resin/arrhenius.hpp"
#include "wetout/resin/calibrate.hpp"
#include "wetout/resin/clock.hpp"
#include "wetout/resin/conversion_curve.hpp"

namespace wetout::resin {
namespace {

using sheets::c;
using std::chrono::hours;
using std::chrono::minutes;
using units::Temperature;

const Cure& cure_of(const Product& product) {
  static std::map<std::string, Cure> fitted;
  const auto found = fitted.find(product.id);
  if (found != fitted.end()) return found->second;
  return fitted.emplace(product.id, calibrate(product, {})->cure).first->second;
}
const std::vector<Product>& all_sheets() {
  static const std::vector<Product> all{sheets::quick(), sheets::medium(), sheets::slow(),
                                        sheets::tropical()};
  return all;
}

FilmTimes at_constant(const Cure& cure, double celsius) {
  return Film(cure, time::History::constant(273.15 + celsius)).times(time::Instant{});
}

double hours_of(const FilmTimes& times, Milestone m) { return times[m]->after_s / 3600.0; }

// Closure: what the clock makes true.
TEST(Film, SheetsOwnTimesComeBackAtItsOwnTemperature) {
  for (const Product& product : all_sheets()) {
    const FilmTimes times = at_constant(cure_of(product), 25);
    const auto expect = [&](Milestone m, const units::Duration& printed) {
      ASSERT_TRUE(times[m] && times[m]->reached) << product.id << to_string(m);
      EXPECT_NEAR(times[m]->after_s / units::in_seconds(printed), 1.0, 1e-9)
          << product.id << " " << to_string(m);
    };
    expect(Milestone::gel, product.gel[0].time.high);
    expect(Milestone::tack_free, product.tack_free[0].time.high);
    expect(Milestone::recoat_from, product.recoat[0].from.high);
    expect(Milestone::recoat_until, product.recoat[0].until->low);
    expect(Milestone::sandable, product.sand[0].time.high);
    expect(Milestone::full_cure, product.full_cure[0].time.high);
  }
}

TEST(Film, ConversionAtGelIsTheGelPoint) {
  for (const Product& product : all_sheets()) {
    const Cure& cure = cure_of(product);
    const Film film(cure, time::History::constant(298.15));
    const double gel_s = units::in_seconds(*cure.ages[Milestone::gel]);
    EXPECT_NEAR(film.state(time::Instant{}, gel_s).conversion, 0.57735, 2e-5) << product.id;
  }
}

// Ratios to the sheet's temperature: the law itself; E is 55 where a sheet prints one temperature.
TEST(Film, ClockMilestonesFollowArrhenius) {
  const Cure& cure = cure_of(sheets::medium());
  for (const double celsius : {0.0, 5.0, 15.0, 33.0, 40.0}) {
    const double factor = arrhenius_factor(55, c(25), c(celsius));
    const FilmTimes times = at_constant(cure, celsius);
    for (const Milestone m : {Milestone::gel, Milestone::tack_free, Milestone::recoat_from}) {
      EXPECT_NEAR(times[m]->after_s / units::in_seconds(*cure.ages[m]), factor, 1e-9 * factor);
    }
  }
}

// Where nothing vitrifies, reduced time is the clock's: exact along any air.
RC_GTEST_PROP(Film, WithoutVitrificationThePathIsTheClock, ()) {
  Cure cure = cure_of(sheets::medium());
  cure.glass.delay_kelvin = 1e5;
  const auto air = random_air();
  const Film film(cure, air);
  const Clock clock(cure.kinetics.energy_j_per_mol, cure.sheet_air, air);
  const ConversionCurve curve(cure.kinetics.r, cure.kinetics.m, cure.kinetics.n);
  const double start = 60.0 * *rc::gen::inRange(0, 2000);
  const double after = 60.0 * *rc::gen::inRange(1, 20000);
  const double tau =
      rate_constant(cure.kinetics, cure.sheet_air) * (clock.age(start + after) - clock.age(start));
  const auto at = time::Instant{} + std::chrono::seconds(static_cast<long>(start));
  RC_ASSERT(std::abs(film.state(at, after).conversion - curve.conversion(tau)) < 1e-9);
}

// The definition, by the classical method of Runge and Kutta at fine steps from a fine start; it
// knows nothing of reduced time.
double by_small_steps(const Cure& cure, const time::History& air, double start, double after) {
  const auto rate = [&](double t, double a) {
    const auto at = Temperature::kelvin(air.at_seconds(t));
    return rate_constant(cure.kinetics, at) *
           chemical_rate(std::max(a, 0.0), cure.kinetics.r, cure.kinetics.m, cure.kinetics.n) *
           vitrification_factor(cure.glass, a, at);
  };
  double a = 0.0, t = start;
  double h = 1e-4;  // a^m is singular at the start: steps grow from there
  while (t < start + after) {
    double step = std::min({h, 150.0, start + after - t});
    const double to_kink = 3600.0 - std::fmod(t, 3600.0);
    if (to_kink > 1e-6) step = std::min(step, to_kink);
    const double k1 = rate(t, a), k2 = rate(t + step / 2, a + step / 2 * k1);
    const double k3 = rate(t + step / 2, a + step / 2 * k2), k4 = rate(t + step, a + step * k3);
    a += step / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
    t += step;
    h *= 1.2;
  }
  return a;
}

TEST(Film, PathMeetsSmallStepsAlongWeather) {
  double worst = 0.0;
  unsigned seed = 1;
  for (const Product& product : all_sheets()) {
    for (const double mean : {8.0, 20.0, 32.0}) {
      const auto air = air_of_days(6, mean, 8, seed, 2, seed);
      const Film film(cure_of(product), air);
      const double start = 977.0 * seed;
      const auto at = time::Instant{} + std::chrono::seconds(static_cast<long>(start));
      const std::vector<double> after{3600.0, 10000.0, 30000.0, 86400.0, 300000.0};
      const auto states = film.states(at, after);
      for (std::size_t i = 0; i < after.size(); ++i) {
        const double expected = by_small_steps(cure_of(product), air, start, after[i]);
        worst = std::max(worst, std::abs(states[i].conversion - expected));
      }
      ++seed;
    }
  }
  EXPECT_LT(worst, 1e-5);
  RecordProperty("worst_conversion_error", std::to_string(worst));
}

RC_GTEST_PROP(Film, ConversionNeverFalls, ()) {
  const Film film(cure_of(all_sheets()[*rc::gen::inRange<std::size_t>(0, 4)]), random_air());
  std::vector<double> after;
  for (double t = 0.0; t < 20 * 86400.0; t = t * 1.15 + 300.0) after.push_back(t);
  double last = -1.0;
  for (const FilmState& state : film.states(time::Instant{}, after)) {
    RC_ASSERT(state.conversion >= last - 1e-9);
    RC_ASSERT(state.conversion <= 1.0);
    last = state.conversion;
  }
}

void in_order(const FilmTimes& times) {
  using enum Milestone;
  const auto before = [&](Milestone a, Milestone b) {
    if (!times[a]->reached) RC_ASSERT(!times[b]->reached);
    if (times[a]->reached && times[b]->reached) RC_ASSERT(times[a]->after_s <= times[b]->after_s);
  };
  before(gel, tack_free);
  before(tack_free, sandable);
  before(sandable, full_cure);
  before(gel, recoat_from);
  before(recoat_from, recoat_until);
  before(tack_free, handle);
  before(gel, trim_until);
}

RC_GTEST_PROP(Film, MilestonesKeepTheirOrderInRandomAir, ()) {
  const Film film(cure_of(all_sheets()[*rc::gen::inRange<std::size_t>(0, 4)]), random_air());
  in_order(film.times(time::Instant{} + minutes(*rc::gen::inRange(-600, 6000))));
}

TEST(Film, MilestonesKeepTheirOrderFrom0To40) {
  for (const Product& product : all_sheets()) {
    for (double celsius = 0.0; celsius <= 40.0; celsius += 0.5) {
      in_order(at_constant(cure_of(product), celsius));
    }
  }
}

// Trim and handle are excepted: they compare Tg with the air itself, and warmer air asks for more.
TEST(Film, HotterIsNeverSlower) {
  for (const Product& product : all_sheets()) {
    FilmTimes cooler = at_constant(cure_of(product), 0.0);
    for (double celsius = 0.5; celsius <= 40.0; celsius += 0.5) {
      const FilmTimes warmer = at_constant(cure_of(product), celsius);
      for (const Milestone m : milestones) {
        if (m == Milestone::trim_until || m == Milestone::handle) continue;
        if (!cooler[m]->reached) continue;
        ASSERT_TRUE(warmer[m]->reached) << product.id << to_string(m) << celsius;
        EXPECT_LE(warmer[m]->after_s, cooler[m]->after_s) << product.id << to_string(m) << celsius;
      }
      cooler = warmer;
    }
  }
}

RC_GTEST_PROP(Film, ALaterStartIsNeverDoneEarlier, ()) {
  const Film film(cure_of(all_sheets()[*rc::gen::inRange<std::size_t>(0, 4)]), random_air());
  const auto early = time::Instant{} + minutes(*rc::gen::inRange(0, 6000));
  const double later_s = 60.0 * *rc::gen::inRange(0, 3000);
  const auto late = early + std::chrono::seconds(static_cast<long>(later_s));
  const FilmTimes a = film.times(early), b = film.times(late);
  for (const Milestone m : milestones) {
    // The cap on recoat runs on the wall clock and may end sooner than the clock's own time.
    if (!a[m]->reached || !b[m]->reached || m == Milestone::recoat_until) continue;
    RC_ASSERT(b[m]->after_s + later_s >= a[m]->after_s - 0.1);
  }
}

TEST(Film, TooColdIsNotReachedAndSaysWhatWouldDo) {
  const Cure& cure = cure_of(sheets::medium());
  const FilmTimes times = at_constant(cure, 5.0);
  EXPECT_FALSE(times[Milestone::full_cure]->reached);
  EXPECT_TRUE(times[Milestone::sandable]->reached);
  const auto would_do = temperature_reaching(cure, Milestone::full_cure, c(5));
  ASSERT_TRUE(would_do);
  EXPECT_TRUE(at_constant(cure, would_do->in_celsius())[Milestone::full_cure]->reached);
  EXPECT_FALSE(at_constant(cure, would_do->in_celsius() - 0.5)[Milestone::full_cure]->reached);
}

TEST(Film, FullCureOnceReachedIsNotLostOnACoolNight) {
  const Cure& cure = cure_of(sheets::medium());
  // Warm for ten days, then cold: the floor on Tg is absolute, and conversion does not fall.
  const auto air = *time::History::of({{time::Instant{}, 303.15},
                                       {time::Instant{} + hours(100), 303.15},
                                       {time::Instant{} + hours(101), 276.15}});
  const FilmTimes times = Film(cure, air).times(time::Instant{});
  ASSERT_TRUE(times[Milestone::full_cure]->reached);
  EXPECT_GT(hours_of(times, Milestone::full_cure), 101.0);
}

TEST(Film, RecoatEndsAfterThreeDaysUnlessTheSheetSaysLonger) {
  Product product = sheets::tropical();
  const FilmTimes cold = at_constant(cure_of(product), 5.0);
  EXPECT_NEAR(hours_of(cold, Milestone::recoat_until), 72.0, 1e-9);
  product.recoat[0].until = sheets::hours(96);
  product.id = "longer";
  EXPECT_NEAR(hours_of(at_constant(cure_of(product), 5.0), Milestone::recoat_until), 96.0, 1e-9);
}

TEST(Film, MissingLinesGiveNoMilestone) {
  Product product = sheets::medium();
  product.id = "bare";
  product.sand.clear();
  product.full_cure.clear();
  product.recoat.clear();
  const FilmTimes times = at_constant(cure_of(product), 25);
  EXPECT_TRUE(times[Milestone::gel]);
  EXPECT_TRUE(times[Milestone::handle]);
  EXPECT_FALSE(times[Milestone::sandable]);
  EXPECT_FALSE(times[Milestone::full_cure]);
  EXPECT_FALSE(times[Milestone::recoat_from]);
}

TEST(Film, HandleIsTheLaterOfTackFreeAndHard) {
  for (const Product& product : all_sheets()) {
    const Cure& cure = cure_of(product);
    const Film film(cure, time::History::constant(298.15));
    const FilmTimes times = film.times(time::Instant{});
    const double handle = times[Milestone::handle]->after_s;
    const double above = (film.state(time::Instant{}, handle).tg - c(25)).in_kelvin();
    EXPECT_GE(handle, times[Milestone::tack_free]->after_s);
    EXPECT_GE(above, -1e-5);
    if (handle > times[Milestone::tack_free]->after_s) {
      EXPECT_LT(above, 1e-5);
    }
    const double trim = times[Milestone::trim_until]->after_s;
    EXPECT_NEAR((film.state(time::Instant{}, trim).tg - c(25)).in_kelvin(), -10.0, 1e-5);
  }
}

// Many starts share work; a start by itself does not.
TEST(Film, ManyStartsAreTheSameAsOneByOne) {
  unsigned seed = 7;
  for (const Product& product : all_sheets()) {
    for (const double mean : {7.0, 13.0, 24.0}) {
      const auto air = air_of_days(8, mean, 7, 0.3, 1, ++seed);
      const Film film(cure_of(product), air);
      std::vector<time::Instant> starts;
      for (int i = 0; i < 500; ++i) starts.push_back(time::Instant{} + minutes(20 * i));
      const auto together = film.times(starts);
      ASSERT_EQ(together.size(), starts.size());
      for (std::size_t i = 0; i < starts.size(); i += 13) {
        const FilmTimes own = film.times(starts[i]);
        for (const Milestone m : milestones) {
          // The limit itself is known to half a second.
          if (own[m]->reached != together[i][m]->reached) {
            ADD_FAILURE() << product.id << " " << mean << " " << to_string(m) << " start " << i;
          } else if (own[m]->reached) {
            EXPECT_NEAR(own[m]->after_s, together[i][m]->after_s, 1.0 + 1e-5 * own[m]->after_s);
          }
        }
      }
    }
  }
}

TEST(Film, StartsThatAreFollowedAreTheSameAsIfAllWere) {
  using enum Milestone;
  unsigned seed = 17;
  for (const Product& product : all_sheets()) {
    for (const double mean : {5.0, 12.0, 24.0}) {
      const Film film(cure_of(product), air_of_days(8, mean, 7, 0.3, 1, ++seed));
      std::vector<time::Instant> starts;
      std::vector<bool> followed;
      for (int i = 0; i < 500; ++i) {
        starts.push_back(time::Instant{} + minutes(20 * i));
        // Evenings of four hours, and a start alone at noon.
        followed.push_back(i % 72 >= 54 ? i % 72 < 66 : i % 72 == 36);
      }
      const auto all = film.times(starts), some = film.times(starts, followed);
      ASSERT_EQ(some.size(), starts.size());
      for (std::size_t i = 0; i < starts.size(); ++i) {
        for (const Milestone m : milestones) {
          ASSERT_EQ(some[i][m].has_value(), all[i][m].has_value());
          if (!all[i][m] || m == full_cure) continue;
          const bool by_path = m == sandable || (m == trim_until && product.trim.empty()) ||
                               (m == handle && product.handle.empty());
          if (by_path && !followed[i]) {
            EXPECT_FALSE(some[i][m]->reached) << product.id << " " << to_string(m) << " " << i;
          } else if (some[i][m]->reached != all[i][m]->reached) {
            ADD_FAILURE() << product.id << " " << mean << " " << to_string(m) << " start " << i;
          } else if (all[i][m]->reached) {
            EXPECT_NEAR(some[i][m]->after_s, all[i][m]->after_s, 1.0 + 1e-5 * all[i][m]->after_s);
          }
        }
      }
    }
  }
}

TEST(Film, BeyondTheAirIsTold) {
  const auto air = air_of_days(2, 20, 5, 0, 0, 3);
  const Film film(cure_of(sheets::medium()), air);
  EXPECT_FALSE(film.beyond_air(time::Instant{}, 3600.0));
  EXPECT_TRUE(film.beyond_air(time::Instant{} + hours(40), 9 * 3600.0));
  const Film constant(cure_of(sheets::medium()), time::History::constant(293.15));
  EXPECT_FALSE(constant.beyond_air(time::Instant{}, 1e7));
}

}  // namespace
}  // namespace wetout::resin
