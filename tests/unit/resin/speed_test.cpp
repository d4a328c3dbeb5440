#include "wetout/resin/speed.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <chrono>
#include <cmath>

#include "random_air.hpp"
#include "sheets.hpp"
#include "wetout/resin/film.hpp"

namespace wetout::resin {
namespace {

using std::chrono::minutes;
using time::Instant;

TEST(Speed, DividesTheTimesOfFilms) {
  const auto at_25 = time::History::constant(298.15);
  const FilmTimes printed = Film(calibrate(sheets::slow(), {})->cure, at_25).times(Instant{});
  for (const double speed : {0.8, 1.25}) {
    const auto fit = calibrate(at_speed(sheets::slow(), speed), {});
    const FilmTimes own = Film(fit->cure, at_25).times(Instant{});
    for (const Milestone m : milestones) {
      ASSERT_TRUE(own[m] && own[m]->reached) << to_string(m);
      // What the sheet does not print follows from Tg, and with it a little from the cup: a pot
      // life that stays as it was makes another start of the same film.
      const bool is_printed = m != Milestone::trim_until && m != Milestone::handle;
      EXPECT_NEAR(own[m]->after_s * speed / printed[m]->after_s, 1.0, is_printed ? 1e-6 : 0.08)
          << to_string(m);
    }
    ASSERT_FALSE(fit->notices.empty());
    EXPECT_EQ(fit->notices.front().code, "cure.speed");
  }
}

TEST(Speed, MakesNoPotLifeLonger) {
  EXPECT_EQ(at_speed(sheets::slow(), 0.8).pot_life[0].time.low, units::minutes(45));
  EXPECT_NEAR(units::in_minutes(at_speed(sheets::slow(), 1.25).pot_life[0].time.low), 36.0, 1e-9);
}

// By hand: 160 min are printed at 25 C. At 20 C they last exp(E/R (1/293.15 - 1/298.15)) times as
// long, of the usual 55 kJ/mol 1.4600.
TEST(Speed, IsSeenByHand) {
  const Product product = sheets::medium();
  const Cure cure = calibrate(product, {})->cure;
  const Instant start{};
  const auto seen = [&](double kelvin, Milestone m, minutes after) {
    return observed_speed(product, cure, time::History::constant(kelvin), start, m, start + after);
  };
  EXPECT_NEAR(seen(298.15, Milestone::gel, minutes(160)).value(), 1.0, 1e-9);
  EXPECT_NEAR(seen(298.15, Milestone::gel, minutes(100)).value(), 1.6, 1e-9);
  EXPECT_NEAR(seen(293.15, Milestone::gel, minutes(160)).value(), 1.4600, 1e-4);
  EXPECT_NEAR(seen(298.15, Milestone::tack_free, minutes(400)).value(), 0.75, 1e-9);
  EXPECT_FALSE(seen(298.15, Milestone::gel, minutes(0)));
  EXPECT_FALSE(seen(298.15, Milestone::handle, minutes(400))) << "the sheet prints none";
  EXPECT_FALSE(seen(298.15, Milestone::recoat_until, minutes(400))) << "nobody sees it";
}

// Ranges are what batches differ by: their middle is no news.
TEST(Speed, OfTheMiddleOfARangeIsOne) {
  Product product = sheets::medium();
  product.gel = {{sheets::c(25), sheets::hours(1, 3), {}}};
  const Cure cure = calibrate(product, {})->cure;
  EXPECT_NEAR(observed_speed(product, cure, time::History::constant(298.15), Instant{},
                             Milestone::gel, Instant{} + minutes(120))
                  .value(),
              1.0, 1e-9);
}

// What a resin of a known speed does in any air is seen as that speed.
RC_GTEST_PROP(Speed, ComesBack, ()) {
  const double speed = *rc::gen::inRange(60, 160) / 100.0;
  const time::History air = random_air();
  const Product product = sheets::medium();
  const Cure own = calibrate(at_speed(product, speed), {})->cure;
  const Cure printed = calibrate(product, {})->cure;
  const FilmTimes times = Film(own, air).times(air.first());
  for (const Milestone m : {Milestone::gel, Milestone::tack_free}) {
    const auto seen = air.first() + std::chrono::seconds(std::llround(times[m]->after_s));
    const auto found = observed_speed(product, printed, air, air.first(), m, seen);
    RC_ASSERT(found.has_value());
    RC_ASSERT(std::abs(*found / speed - 1.0) < 1e-3);
  }
}

}  // namespace
}  // namespace wetout::resin
