// When films may be started, without files and clock.
#include <chrono>
#include <cmath>
#include <numbers>
#include <set>

#include "open_films.hpp"
#include "support.hpp"
#include "weather_answer.hpp"
#include "wetout/climate/humid_air.hpp"
#include "wetout/resin/calibrate.hpp"
#include "wetout/resin/film.hpp"
#include "wetout/time/print.hpp"
#include "wetout/time/read.hpp"

namespace wetout::work {
namespace {

namespace sheets = resin::sheets;
using report::StartWindow;
using report::WeatherDocument;
using schedule::Limit;
using schedule::State;
using testing::has;
using testing::lists;
using testing::problem_of;
using time::Instant;
using units::Temperature;
using namespace std::chrono_literals;

const Instant first = *time::read_instant("2026-06-13T00:00:00Z", time::Zone());

template <class Air, class Dew>
climate::Weather hourly(int hours, const Air& air_c, const Dew& dew_c) {
  climate::Weather weather;
  weather.source = "made up";
  weather.gap_over = 90min;
  for (int h = 0; h <= hours; ++h) {
    climate::WeatherPoint point;
    point.at = first + std::chrono::hours(h);
    point.air = Temperature::celsius(air_c(h));
    point.dew_point = Temperature::celsius(std::min(dew_c(h), air_c(h)));
    weather.points.push_back(point);
  }
  return weather;
}
climate::Weather even(int hours, double air_c = 25.0, double dew_c = 10.0) {
  return hourly(
      hours, [=](int) { return air_c; }, [=](int) { return dew_c; });
}
// Fair and foul days: every limit has its turn.
climate::Weather changing(int hours) {
  const auto wave = [](int h, double period) {
    return std::sin(2.0 * std::numbers::pi * h / period);
  };
  return hourly(
      hours, [=](int h) { return 19.0 + 5.0 * wave(h - 9, 24) + 6.0 * wave(h, 190); },
      [=](int h) { return 11.0 + 6.0 * wave(h - 20, 107); });
}

struct Case {
  climate::Weather weather = even(48);
  resin::Product product = sheets::medium();
  climate::Room room = {.kind = climate::RoomKind::outdoors};
  climate::Guard guard = climate::Guard::none;
  std::optional<Instant> from = {}, to = {};
  time::Zone zone = {};
};

base::Result<WeatherDocument> ask(const Case& asked, const WeatherAssumed& assumed = {}) {
  const WeatherInUse use{asked.weather, false, asked.weather.first()};
  return weather_answer({.use = use,
                         .product = asked.product,
                         .room = asked.room,
                         .guard = asked.guard,
                         .from = asked.from.value_or(asked.weather.first()),
                         .to = asked.to.value_or(asked.weather.last()),
                         .zone = asked.zone},
                        assumed, nullptr);
}
WeatherDocument answer(const Case& asked, const WeatherAssumed& assumed = {}) {
  auto document = ask(asked, assumed);
  EXPECT_TRUE(document);
  return document ? std::move(*document) : WeatherDocument{};
}
Instant instant(const std::string& text) { return *time::read_instant(text, time::Zone()); }

// --- windows

TEST(WeatherAnswer, FilmMustBeTackFreeBeforeTheWeatherEnds) {
  const WeatherDocument document = answer({});
  ASSERT_EQ(document.windows.size(), 2U);
  EXPECT_EQ(document.windows[0].ok, State::good);
  // 25 C is the sheet's own temperature: spread in 30 min, tack-free after 5 h.
  EXPECT_EQ(instant(document.windows[0].to), first + 48h - 5h - 30min + 5min);
  EXPECT_EQ(document.windows[1].limit, Limit::weather);
  EXPECT_EQ(document.windows[1].reason, "weather ends");
  EXPECT_EQ(document.windows[1].to, document.to);
}

TEST(WeatherAnswer, SheetWithoutTackFreeHasAMultipleOfGel) {
  Case asked;
  asked.product.tack_free.clear();
  const WeatherDocument document = answer(asked);
  // 160 min times 1.75.
  EXPECT_EQ(instant(document.windows[0].to), first + 48h - 280min - 30min + 5min);
  EXPECT_TRUE(lists(document.assumptions, "resin.tack_free_of_gel"));
}

TEST(WeatherAnswer, PotLifeAloneWillDo) {
  Case asked;
  asked.product.gel.clear();
  asked.product.tack_free.clear();
  asked.product.recoat.clear();
  asked.product.sand.clear();
  asked.product.full_cure.clear();
  const WeatherDocument document = answer(asked);
  EXPECT_EQ(document.windows[0].ok, State::good);
  EXPECT_TRUE(has(document.notices, "cure.film_from_pot_life"));
  EXPECT_TRUE(lists(document.assumptions, "resin.tack_free_of_gel"));
  EXPECT_TRUE(lists(document.assumptions, "cure.heat_capacity"));
  EXPECT_FALSE(lists(document.assumptions, "cup.runs_away"));
}

TEST(WeatherAnswer, GapClosesTheStartsWhoseFilmsAreOpenInIt) {
  Case asked;
  std::erase_if(asked.weather.points, [](const climate::WeatherPoint& point) {
    return point.at > first + 20h && point.at < first + 26h;
  });
  asked.weather.gaps = {{first + 20h, first + 26h}};
  const WeatherDocument document = answer(asked);
  ASSERT_EQ(document.windows.size(), 4U);
  EXPECT_EQ(document.windows[1].reason, report::weather_gap);
  EXPECT_EQ(instant(document.windows[1].from), first + 20h - 5h - 30min + 5min);
  EXPECT_EQ(instant(document.windows[1].to), first + 26h);
  ASSERT_EQ(document.gaps.size(), 1U);
  EXPECT_EQ(document.gaps[0].of, "air");
  EXPECT_FALSE(document.series[23].air);
  EXPECT_TRUE(document.series[20].air);
}

// A long weather is cut to what the days asked for need; that must not show.
TEST(WeatherAnswer, StartAskedAloneIsAsAmongTheOthers) {
  Case asked;
  asked.weather = changing(24 * 80);
  asked.room = {.kind = climate::RoomKind::unheated, .lag = units::hours(2.5)};
  asked.guard = climate::Guard::normal;
  const Instant from = first + 24h * 30, to = from + 60h;
  asked.from = from;
  asked.to = to;
  const WeatherDocument whole = answer(asked);
  EXPECT_GT(whole.windows.size(), 4U);
  for (std::size_t i = 1; i < whole.windows.size(); ++i) {
    EXPECT_EQ(whole.windows[i - 1].to, whole.windows[i].from);
  }
  for (Instant at = from; at < to; at += 215min) {
    const auto found =
        std::find_if(whole.windows.begin(), whole.windows.end(),
                     [&](const StartWindow& window) { return instant(window.to) > at; });
    asked.from = at;
    asked.to = at + 5min;
    const WeatherDocument alone = answer(asked);
    ASSERT_EQ(alone.windows.size(), 1U);
    EXPECT_EQ(alone.windows[0].ok, found->ok) << alone.from;
    EXPECT_EQ(alone.windows[0].limit, found->limit) << alone.from;
  }
}

TEST(WeatherAnswer, WorstStartIsOutsideItsLimitAndInsideItsWindow) {
  Case asked;
  asked.weather = changing(24 * 10);
  asked.product.humidity_limit.reset();
  asked.product.lowest_air.reset();
  asked.product.highest_air = Temperature::celsius(27);
  asked.guard = climate::Guard::normal;
  const WeatherDocument document = answer(asked);
  std::set<std::string> seen;
  for (const StartWindow& window : document.windows) {
    seen.insert(window.limit ? std::string(schedule::to_string(*window.limit)) : "none");
    const bool by_number =
        window.limit && *window.limit != Limit::weather && *window.limit != Limit::foul_air;
    EXPECT_EQ(window.worst.empty(), !by_number);
    for (const report::WorstStart& worst : window.worst) {
      EXPECT_GE(instant(worst.start), instant(window.from));
      EXPECT_LT(instant(worst.start), instant(window.to));
      const bool floor = window.limit == Limit::cold || window.limit == Limit::dew_margin;
      EXPECT_GT(floor ? worst.limit - worst.guarded : worst.guarded - worst.limit, 0.0);
      // Doubting a forecast never helps, but for what drawing courses as lines is off by.
      EXPECT_GE((floor ? worst.value - worst.guarded : worst.guarded - worst.value), -2e-3);
    }
  }
  EXPECT_EQ(seen, (std::set<std::string>{"none", "cold", "warm", "dew_margin", "humidity",
                                         "core_rise", "weather"}));
}

// --- films

TEST(OpenFilms, AreThoseOfTheWholeFilm) {
  const climate::Weather weather = changing(24 * 6);
  const time::History air = climate::air_history(weather);
  std::vector<Instant> starts;
  for (int i = 0; i < 60; ++i) starts.push_back(first + 97min * i);
  for (const resin::Product& product : {sheets::medium(), sheets::slow(), sheets::quick()}) {
    const auto open = open_films(product, air, starts, units::minutes(30), {}, nullptr);
    ASSERT_TRUE(open);
    const auto fit = resin::calibrate(product, {});
    ASSERT_TRUE(fit);
    const resin::Film film(fit->cure, air);
    for (std::size_t i = 0; i < starts.size(); ++i) {
      const auto times = film.times(starts[i] + 30min);
      const auto after = [&](Instant at) {
        return std::chrono::duration<double>(at - starts[i] - 30min).count();
      };
      EXPECT_NEAR(after(open->films[i].gel), times[resin::Milestone::gel]->after_s, 1.0);
      EXPECT_NEAR(after(open->films[i].tack_free), times[resin::Milestone::tack_free]->after_s,
                  1.0);
    }
  }
}

// --- series

TEST(WeatherAnswer, SeriesStandsAtWholeHoursOfTheWallClock) {
  Case asked;
  asked.zone = *time::Zone::named("Asia/Kolkata");
  const WeatherDocument document = answer(asked);
  ASSERT_EQ(document.series.size(), 48U);
  for (const report::WeatherHour& hour : document.series) {
    EXPECT_EQ(hour.time.substr(13), ":00:00+05:30");
  }
}

TEST(WeatherAnswer, MarginIsOfTheColderOfRoomAndCore) {
  Case asked;
  asked.weather = changing(72);
  asked.room = {.kind = climate::RoomKind::unheated, .lag = units::hours(3)};
  for (const report::WeatherHour& hour : answer(asked).series) {
    const double surface = std::min(hour.room->in_kelvin(), hour.core->in_kelvin());
    EXPECT_NEAR(hour.dew_margin->in_kelvin(), surface - hour.room_dew_point->in_kelvin(), 1e-9);
    EXPECT_NEAR(*hour.humidity, climate::relative_humidity(*hour.air, *hour.dew_point), 1e-12);
  }
}

TEST(WeatherAnswer, WithoutHumidityItsLimitsAreNotInForce) {
  Case asked;
  for (climate::WeatherPoint& point : asked.weather.points) point.dew_point.reset();
  const WeatherDocument document = answer(asked);
  for (const report::LimitInForce& limit : document.limits) {
    EXPECT_NE(limit.limit, Limit::dew_margin);
    EXPECT_NE(limit.limit, Limit::humidity);
  }
  EXPECT_FALSE(document.series[5].dew_margin);
  EXPECT_FALSE(lists(document.assumptions, "limit.dew_margin"));
}

TEST(WeatherAnswer, WindAndSunAreShownAndSaidNotToBeUsed) {
  Case asked;
  EXPECT_FALSE(has(answer(asked).notices, "weather.not_used"));
  const WeatherDocument before = answer(asked);
  for (climate::WeatherPoint& point : asked.weather.points) point.wind_m_s = 4.0;
  asked.weather.points[3].sun_w_m2 = 500;
  const WeatherDocument document = answer(asked);
  EXPECT_EQ(document.series[7].wind_m_s, 4.0);
  EXPECT_EQ(document.series[3].sun_w_m2, 500);
  EXPECT_FALSE(document.series[4].sun_w_m2);
  EXPECT_TRUE(has(document.notices, "weather.not_used"));
  EXPECT_EQ(document.windows[0].to, before.windows[0].to);
}

TEST(WeatherAnswer, AirThatTheModelsAreNotCheckedForIsSaid) {
  Case asked;
  EXPECT_FALSE(has(answer(asked).notices, "weather.beyond_range"));
  asked.weather = even(48, 8.0, 2.0);
  EXPECT_TRUE(has(answer(asked).notices, "weather.beyond_range"));
  asked.weather = even(48, 41.0, 10.0);
  asked.product.highest_air.reset();
  const WeatherDocument hot = answer(asked);
  EXPECT_TRUE(has(hot.notices, "weather.beyond_range"));
  EXPECT_EQ(hot.windows[0].limit, Limit::warm) << "films are worked out up to 40 C";
}

// --- polyester

resin::Product polyester() {
  resin::Product p;
  p.id = "poly";
  p.chemistry = resin::Chemistry::polyester;
  p.styrene = true;
  p.catalyst = {{sheets::c(25), 0.01, sheets::minutes(30)},
                {sheets::c(25), 0.02, sheets::minutes(15)}};
  p.dose_low = 0.01;
  p.dose_high = 0.02;
  return p;
}

TEST(WeatherAnswer, PolyesterIsOnPolyurethaneAndHasTheMiddleOfItsDoses) {
  Case asked;
  asked.product = polyester();
  const WeatherDocument document = answer(asked);
  EXPECT_EQ(document.core.foam, climate::FoamKind::pu);
  EXPECT_TRUE(has(document.notices, "polyester.middle_dose"));
  EXPECT_EQ(document.windows[0].ok, State::good);
  EXPECT_TRUE(lists(document.assumptions, "core.pu.density"));
  asked.product.light_cured = true;
  EXPECT_EQ(problem_of(ask(asked)).substr(0, 21), "polyester.light_cured");
}

// --- what nobody gave

std::string without_assumptions(WeatherDocument document) {
  document.assumptions.clear();
  return report::to_json(document);
}

// Moves each default by 1 % of its range, both ways: listed if and only if the answer moves.
void expect_listed_if_it_moves(const Case& asked) {
  const WeatherDocument document = answer(asked);
  const std::string before = without_assumptions(document);
  WeatherAssumed moved;
  const auto try_moving = [&](auto& value, auto...) {
    const auto usual = value.value;
    bool moves = false;
    for (const double way : {-0.01, 0.01}) {
      value.value = usual + (value.high - value.low) * way;
      const auto other = ask(asked, moved);
      moves = moves || !other || without_assumptions(*other) != before;
    }
    value.value = usual;
    EXPECT_EQ(lists(document.assumptions, value.name), moves) << value.name;
  };
  const auto only_numbers = [&](auto& value, const char* unit) {
    if constexpr (std::is_same_v<decltype(value.value), double>) try_moving(value, unit);
  };
  visit(moved.climate, try_moving);
  visit(moved.resin, only_numbers);
  visit(moved.resin.cure, only_numbers);
  schedule::LimitDefaults& d = moved.limits;
  try_moving(d.dew_margin);
  try_moving(d.humidity_refuse);
  try_moving(d.humidity_notice);
  try_moving(d.cold_notice);
  try_moving(d.cold_refuse);
  try_moving(d.core_rise);
  try_moving(d.core_rise_xps);
  try_moving(d.core_rise_sealed);
  try_moving(d.humidity_before);
  try_moving(d.temperature_scale);
  try_moving(d.margin_scale);
  try_moving(d.humidity_scale);
  try_moving(d.core_scale);
  try_moving(moved.work.wet_out);
  try_moving(moved.work.core_thickness);
}

TEST(WeatherAnswer, ListsWhatItHangsOnAndNothingElse) {
  Case asked;
  asked.weather = changing(24 * 2);
  asked.room = {.kind = climate::RoomKind::unheated};
  asked.guard = climate::Guard::normal;
  expect_listed_if_it_moves(asked);
}

TEST(WeatherAnswer, ListsLessOfASheetThatSaysMore) {
  Case asked;
  asked.weather = changing(24 * 3);
  asked.product.lowest_air = Temperature::celsius(15);
  asked.product.humidity_limit = 0.8;
  asked.product.gel.push_back({sheets::c(18), sheets::hours(5.5), {}});
  asked.product.tack_free.clear();
  expect_listed_if_it_moves(asked);
}

TEST(WeatherAnswer, ListsTheGuardAsFarAsItGoes) {
  Case asked;
  asked.weather = changing(24 * 12);
  asked.from = first + std::chrono::hours(24 * 9);
  asked.to = *asked.from + 30h;
  asked.guard = climate::Guard::wide;
  asked.product.lowest_air.reset();
  expect_listed_if_it_moves(asked);
}

TEST(WeatherAnswer, ListsAPolyestersToo) {
  Case asked;
  asked.weather = changing(36);
  asked.from = first + 20h;
  asked.to = first + 26h;
  asked.product = polyester();
  asked.product.humidity_limit = 0.4;  // what it comes to is told of a start that it closes
  expect_listed_if_it_moves(asked);
}

TEST(WeatherAnswer, ListsTheStepOfSmoothedDegrees) {
  Case asked;
  EXPECT_FALSE(lists(answer(asked).assumptions, "weather.smooth_step"));
  asked.weather.whole_degree_air = true;
  asked.weather.smooth_step = 15min;
  EXPECT_TRUE(lists(answer(asked).assumptions, "weather.smooth_step"));
}

// --- the weather in use

TEST(WeatherInUse, TypicalYearStandsOnTheDatesAround) {
  climate::Weather year = changing(24 * 365 - 1);
  year.typical_year = true;
  const Instant around = first + 190 * 24h;  // near the end of the year
  const auto use = in_use(year, first, around);
  ASSERT_TRUE(use);
  EXPECT_TRUE(use->placed);
  EXPECT_LT(use->weather.first(), around - 24h * 300);
  EXPECT_GT(use->weather.last(), around + 24h * 300);
  EXPECT_TRUE(has(use->weather.notices, "weather.placed"));
  EXPECT_EQ(climate::guard_shift(
                climate::Guard::normal,
                units::seconds(std::chrono::duration<double>(around - use->issued).count())),
            climate::guard_shift(climate::Guard::normal, units::hours(24 * 1000)));
}

TEST(WeatherInUse, PastYearIsPlacedAndAPastWeekIsNot) {
  const Instant later = first + 24h * 800;
  const auto year = in_use(changing(24 * 365 - 1), later, later);
  ASSERT_TRUE(year);
  EXPECT_TRUE(year->placed);
  EXPECT_GT(year->weather.last(), later);
  const auto week = in_use(changing(24 * 7), later, later);
  ASSERT_TRUE(week);
  EXPECT_FALSE(week->placed);
  EXPECT_EQ(week->weather.last(), first + 24h * 7);
  // A year that is not over yet is a forecast like any other.
  EXPECT_FALSE(in_use(changing(24 * 365 - 1), first, first + 24h * 100)->placed);
}

TEST(WeatherInUse, LeadCountsFromWhenTheForecastWasMade) {
  climate::Weather weather = changing(24 * 7);
  EXPECT_EQ(in_use(weather, first + 30h, first + 30h)->issued, first);
  EXPECT_EQ(in_use(weather, first - 30h, first)->issued, first - 30h);
  weather.made = first + 2h;
  EXPECT_EQ(in_use(weather, first + 30h, first + 30h)->issued, first + 2h);
}

}  // namespace
}  // namespace wetout::work
