#include "wetout/schedule/limits.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "sample.hpp"
#include "wetout/climate/humid_air.hpp"

namespace wetout::schedule {
namespace {

using climate::Guard;
using sample::film;
using sample::hours_on;
using sample::outdoors;
using time::Instant;

const Tested* find(const std::vector<Tested>& all, Limit limit) {
  for (const Tested& one : all) {
    if (one.limit == limit) return &one;
  }
  return nullptr;
}

TEST(Limits, FairEveningIsGoodAndRisingMorningIsNot) {
  const LimitTester tester(outdoors(sample::fair()));
  EXPECT_EQ(tester.verdict(film(16), sample::rules()).state, State::good);
  const Verdict morning = tester.verdict(film(8), sample::rules());
  EXPECT_EQ(morning.state, State::refuse);
  EXPECT_EQ(morning.limit, Limit::core_rise);
  // The day's swing is 5 K: from the end of wet-out at 8:30 to gel at 12.
  const double rise = sample::daily(12) - sample::daily(8.5);
  EXPECT_NEAR(find(tester.details(film(8), sample::rules()), Limit::core_rise)->value, rise, 0.1);
}

TEST(Limits, EachOneClosesWithItsOwnName) {
  const auto closes = [](const climate::Weather& weather, FilmRules rules = sample::rules()) {
    return LimitTester(outdoors(weather)).verdict(film(17), rules).limit;
  };
  const auto even = [](double air, double dew) {
    return sample::weather(
        3, [=](double) { return air; }, [=](double) { return dew; });
  };
  EXPECT_FALSE(closes(even(22, 10)));
  EXPECT_EQ(closes(even(14, 2)), Limit::cold);
  EXPECT_EQ(closes(even(32, 10)), Limit::warm);
  // 22 C with a dew point of 19.5 C: 2.5 K above it, at 86 % humidity.
  EXPECT_EQ(closes(even(22, 19.5)), Limit::dew_margin);
  // 82 %: 3.2 K above the dew point.
  EXPECT_EQ(closes(even(22, 18.8)), Limit::humidity);
  climate::Weather early_end = even(22, 10);
  early_end.points.resize(22);
  EXPECT_EQ(closes(early_end), Limit::weather);
  climate::Weather gap = even(22, 10);
  gap.gaps = {{hours_on(18), hours_on(21)}};
  EXPECT_EQ(closes(gap), Limit::weather);
  climate::Weather no_humidity = even(22, 21.9);
  for (auto& point : no_humidity.points) point.dew_point.reset();
  EXPECT_FALSE(closes(no_humidity));
  climate::Weather humidity_gap = even(22, 21.9);
  humidity_gap.humidity_gaps = {{hours_on(18), hours_on(21)}};
  EXPECT_FALSE(closes(humidity_gap));
}

TEST(Limits, UnventedHeaterIsRefusedWhateverTheWeather) {
  climate::Room room;
  room.kind = climate::RoomKind::heated;
  room.heater = climate::Heater{climate::HeaterKind::unvented_gas, units::Temperature::celsius(20)};
  const auto weather = sample::fair();
  const LimitTester tester(
      *conditions(weather, room, units::minutes(5), Guard::none, weather.first()));
  EXPECT_EQ(tester.verdict(film(16), sample::rules()).limit, Limit::foul_air);
}

// "3 C above, RH below 85 %" (ISO 8502-4 and 12944-7, as quoted): at 25 C and 80 % the dew point is
// 21.31 C and the surface may not be colder than 24.31 C.
TEST(Limits, MeetThePrintedExampleOfADewPointMargin) {
  const double dew = climate::dew_point(units::Temperature::celsius(25), 0.80).in_celsius();
  FilmRules rules = sample::rules();
  rules.humidity_most = 1.0;
  const auto margin_at = [&](double air) {
    const auto weather = sample::weather(
        2, [=](double) { return air; }, [=](double) { return dew; });
    return LimitTester(outdoors(weather)).details(film(12), rules);
  };
  EXPECT_NEAR(find(margin_at(25), Limit::dew_margin)->value, 25.0 - 21.31, 0.01);
  EXPECT_EQ(find(margin_at(24.32), Limit::dew_margin)->state, State::good);
  EXPECT_EQ(find(margin_at(24.30), Limit::dew_margin)->state, State::refuse);
}

TEST(Limits, ShiftThatBreaksIsTheOneThatBreaks) {
  const auto weather = sample::fair();
  const FilmRules rules = sample::rules();
  const auto all = LimitTester(outdoors(weather)).details(film(16), rules);
  for (const Limit limit : {Limit::cold, Limit::warm, Limit::dew_margin, Limit::humidity}) {
    SCOPED_TRACE(to_string(limit));
    const double shift = find(all, limit)->breaks_at_kelvin;
    const double way = limit == Limit::warm ? 1.0 : -1.0;
    const auto shifted = [&](double by) {
      climate::Weather other = weather;
      for (auto& point : other.points) {
        point.air = point.air + units::TempDelta::kelvin(way * by);
      }
      return find(LimitTester(outdoors(other)).details(film(16), rules), limit)->slack;
    };
    EXPECT_GT(shifted(shift - 0.02), 0.0);
    EXPECT_LT(shifted(shift + 0.02), 0.0);
  }
}

TEST(Limits, NoticeBandStandsInWhereTheSheetSaysNothing) {
  resin::Product sheet;
  const FilmRules open = rules_for(sheet, climate::FoamKind::eps, false);
  EXPECT_EQ(open.lowest, units::Temperature::celsius(10));
  EXPECT_DOUBLE_EQ(open.humidity_most, 0.80);
  EXPECT_DOUBLE_EQ(open.margin_least.in_kelvin(), 3.0);
  const auto cool = sample::weather(
      2, [](double) { return 17.0; }, [](double) { return 2.0; });
  Verdict verdict = LimitTester(outdoors(cool)).verdict(film(12), open);
  EXPECT_EQ(verdict.state, State::notice);
  EXPECT_EQ(verdict.limit, Limit::cold);
  const auto damp = sample::weather(
      2, [](double) { return 22.0; }, [](double) { return 15.5; });
  verdict = LimitTester(outdoors(damp)).verdict(film(12), open);
  EXPECT_EQ(verdict.limit, Limit::humidity);
  EXPECT_EQ(verdict.state, State::notice);
  sheet.lowest_air = units::Temperature::celsius(15);
  sheet.humidity_limit = 0.75;
  const FilmRules printed = rules_for(sheet, climate::FoamKind::xps, false);
  EXPECT_FALSE(printed.notice_below);
  EXPECT_FALSE(printed.humidity_notice);
  EXPECT_DOUBLE_EQ(printed.core_rise_most.in_kelvin(), 0.5);
  EXPECT_DOUBLE_EQ(rules_for(sheet, climate::FoamKind::xps, true).core_rise_most.in_kelvin(), 2.0);
}

TEST(Limits, NoSheetOpensAirThatFilmsAreNotWorkedOutIn) {
  resin::Product sheet;
  FilmRules rules = rules_for(sheet, climate::FoamKind::eps, false);
  EXPECT_EQ(rules.highest, units::Temperature::celsius(40));
  sheet.lowest_air = units::Temperature::celsius(-5);
  sheet.highest_air = units::Temperature::celsius(45);
  rules = rules_for(sheet, climate::FoamKind::eps, false);
  EXPECT_EQ(rules.lowest, units::Temperature::celsius(0));
  EXPECT_EQ(rules.highest, units::Temperature::celsius(40));
  sheet.lowest_air = units::Temperature::celsius(5);
  sheet.highest_air = units::Temperature::celsius(30);
  rules = rules_for(sheet, climate::FoamKind::eps, false);
  EXPECT_EQ(rules.lowest, units::Temperature::celsius(5));
  EXPECT_EQ(rules.highest, units::Temperature::celsius(30));
}

TEST(Limits, DetailsAndVerdictAgree) {
  const LimitTester tester(outdoors(sample::fair(4), Guard::normal));
  int refused = 0;
  for (double h = 0; h < 90; h += 0.5) {
    const auto all = tester.details(film(h), sample::rules());
    const Verdict verdict = tester.verdict(film(h), sample::rules());
    const auto worst = std::max_element(
        all.begin(), all.end(), [](const auto& a, const auto& b) { return a.state < b.state; });
    EXPECT_EQ(worst->state, verdict.state) << h;
    if (verdict.state != State::good) {
      EXPECT_EQ(worst->limit, *verdict.limit) << h;
    }
    if (verdict.state == State::refuse) ++refused;
  }
  EXPECT_GT(refused, 10);
  EXPECT_LT(refused, 170);
}

climate::Weather random_weather() {
  std::vector<double> air(49), dew(49);
  for (std::size_t h = 0; h < air.size(); ++h) {
    air[h] = sample::daily(static_cast<double>(h)) + *rc::gen::inRange(-30, 30) / 10.0;
    dew[h] = air[h] - *rc::gen::inRange(5, 150) / 10.0;
  }
  return sample::weather(
      2, [&](double h) { return air[static_cast<std::size_t>(h)]; },
      [&](double h) { return dew[static_cast<std::size_t>(h)]; });
}

// The worst of each limit, looked for minute by minute in the moved courses.
RC_GTEST_PROP(Limits, MeetALookAtEveryMinute, ()) {
  const auto weather = random_weather();
  const Conditions c = outdoors(weather, Guard::normal);
  const OpenFilm open = film(*rc::gen::inRange(2, 36));
  const auto all = LimitTester(c).details(open, sample::rules());
  double cold = 1e9, warm = 1e9, margin = 1e9, humidity = 1e9, rise = -1e9;
  // Every minute, and every second around the instants that are told.
  std::vector<Instant> looks;
  for (auto at = open.start - std::chrono::hours(1); at <= open.tack_free;
       at += std::chrono::minutes(1)) {
    looks.push_back(at);
  }
  for (const Tested& one : all) {
    for (int s = -60; s <= 60; ++s) {
      const Instant at = one.at + std::chrono::seconds(s);
      if (at >= looks.front() && at <= open.tack_free) looks.push_back(at);
    }
  }
  for (const Instant at : looks) {
    const double air = c.cold_air.at(at), dew = c.damp_dew_point->at(at);
    humidity =
        std::min(humidity, 0.8 - climate::relative_humidity(units::Temperature::kelvin(air),
                                                            units::Temperature::kelvin(dew)));
    if (at < open.start) continue;
    cold = std::min(cold, air - 288.15);
    warm = std::min(warm, 303.15 - c.warm_air.at(at));
    margin = std::min(margin, c.cold_surface.at(at) - dew - 3.0);
    if (at >= open.wet_out && at <= open.gel) {
      rise = std::max(rise, c.core.at(at) - c.core.at(open.wet_out));
    }
  }
  RC_ASSERT(std::abs(find(all, Limit::cold)->slack - cold) < 1e-6);
  RC_ASSERT(std::abs(find(all, Limit::warm)->slack - warm) < 1e-6);
  RC_ASSERT(std::abs(find(all, Limit::dew_margin)->slack - margin) < 5e-3);
  // Humidity is not straight between points.
  RC_ASSERT(std::abs(find(all, Limit::humidity)->slack - humidity) < 5e-3);
  RC_ASSERT(std::abs(find(all, Limit::core_rise)->value - rise) < 2e-2);
}

RC_GTEST_PROP(Limits, WiderGuardNeverOpensAStart, ()) {
  const auto weather = random_weather();
  State last = State::good;
  const OpenFilm open = film(*rc::gen::inRange(2, 36));
  for (const Guard guard : {Guard::none, Guard::normal, Guard::wide}) {
    const State now = LimitTester(outdoors(weather, guard)).verdict(open, sample::rules()).state;
    RC_ASSERT(now >= last);
    last = now;
  }
}

}  // namespace
}  // namespace wetout::schedule
