#include "wetout/schedule/window_odds.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <chrono>
#include <cmath>

#include "normal.hpp"
#include "sample.hpp"
#include "wetout/climate/guard.hpp"
#include "wetout/resin/speed.hpp"

namespace wetout::schedule {
namespace {

using sample::hours_on;
using units::Temperature;

// Invented: windows close 12 h after spreading at 25 C.
resin::Product sheet() {
  const auto at_25 = Temperature::celsius(25);
  const auto hours = [](double h) {
    return units::DurationRange{units::hours(h), units::hours(h)};
  };
  resin::Product product;
  product.id = "slow";
  product.by_mass = resin::Parts{resin::By::mass, 100, 30};
  product.gel = {{at_25, hours(4), {}}};
  product.tack_free = {{at_25, hours(7), {}}};
  product.recoat = {{at_25, hours(4), hours(12)}};
  product.sand = {{at_25, hours(24), {}}};
  return product;
}

climate::Room outdoors() {
  climate::Room room;
  room.kind = climate::RoomKind::outdoors;
  return room;
}

WindowOdds::Sources sources(const resin::Product& product) {
  auto source = FilmSource::of(product, {}, {}, nullptr);
  return {{"slow", std::make_shared<const FilmSource>(std::move(*source))}};
}

WindowOdds odds(const climate::Weather& weather, const resin::Product& product = sheet()) {
  return *WindowOdds::of(weather, outdoors(), weather.first(), climate::air_history(weather),
                         sources(product));
}

climate::Weather even(double celsius) {
  return sample::weather(
      4, [=](double) { return celsius; }, [](double) { return 5.0; });
}

// At an even 25 C, by hand: the film may be 12/t times as fast; one guard of 0.5 K and a quarter of
// a kelvin a day makes it faster by E/(R T^2) of that, 55 kJ/mol: 7.44 % a kelvin.
TEST(WindowOdds, AreThoseOfTheNormalDistribution) {
  const WindowOdds at_25 = odds(even(25));
  for (const double t : {6.0, 9.0, 11.0, 12.0}) {
    const double guard = 0.5 + 0.25 * (10.0 + t / 2.0) / 24.0;
    const double spread = std::hypot(0.15, 0.0744 * guard);
    EXPECT_NEAR(at_25.holds("slow", hours_on(10), hours_on(22), hours_on(10 + t)),
                normal_below(std::log(12.0 / t) / spread), 2e-3)
        << t;
  }
}

TEST(WindowOdds, AreCertainWhereNothingCanHappen) {
  const WindowOdds at_25 = odds(even(25));
  EXPECT_EQ(at_25.holds("slow", hours_on(10), hours_on(22), hours_on(10)), 1.0);
  EXPECT_EQ(at_25.holds("poly", hours_on(10), hours_on(22), hours_on(20)), 1.0);
  EXPECT_EQ(at_25.holds("slow", hours_on(10), hours_on(10), hours_on(20)), 0.0);
}

TEST(WindowOdds, RiseWithWhatIsKnownOfTheResin) {
  resin::Product known = sheet();
  known.speed_spread = 0.05;
  const auto chance = [&](const resin::Product& product) {
    return odds(even(25), product).holds("slow", hours_on(10), hours_on(22), hours_on(20));
  };
  EXPECT_GT(chance(known), chance(sheet()) + 0.05);
}

// Second route: 31 speeds by 31 forecasts of equal share, each film timed by itself in its own air.
RC_GTEST_PROP(WindowOdds, AgreeWithFilmsTimedOneByOne, ()) {
  const double mean = *rc::gen::inRange(170, 260) / 10.0;
  const auto weather = sample::weather(
      4, [=](double h) { return sample::daily(h, mean, 3.0); }, [](double) { return 5.0; });
  const auto spread = hours_on(*rc::gen::inRange(6, 30));
  const auto closing = [&](const resin::Product& product, const time::History& air) {
    const auto source = FilmSource::of(product, {}, {}, nullptr);
    const auto film = source->spans(air, {&spread, 1}).front();
    return spread + std::chrono::seconds(std::llround(film[resin::Milestone::recoat_until]));
  };
  const time::History air = climate::air_history(weather);
  const auto closes = closing(sheet(), air);
  const auto must = spread + std::chrono::duration_cast<std::chrono::seconds>(
                                 (closes - spread) * *rc::gen::inRange(60, 100) / 100);
  // Quantiles of the normal distribution by bisection.
  constexpr int many = 31;
  const auto quantile = [](int i) {
    double low = -6.0, high = 6.0;
    for (int k = 0; k < 60; ++k) {
      const double middle = 0.5 * (low + high);
      (normal_below(middle) < (i + 0.5) / many ? low : high) = middle;
    }
    return low;
  };
  int open = 0;
  for (int i = 0; i < many; ++i) {
    climate::ClimateDefaults defaults;
    defaults.guard_wide.value = std::abs(quantile(i));
    const auto own_air =
        climate::moved(air, quantile(i) > 0.0 ? climate::Way::warmer : climate::Way::colder,
                       climate::Guard::wide, weather.first(), defaults);
    for (int k = 0; k < many; ++k) {
      const auto own = resin::at_speed(sheet(), std::exp(0.15 * quantile(k)));
      open += closing(own, own_air) >= must ? 1 : 0;
    }
  }
  RC_ASSERT(std::abs(odds(weather).holds("slow", spread, closes, must) -
                     static_cast<double>(open) / (many * many)) < 0.03);
}

}  // namespace
}  // namespace wetout::schedule
