#include "measures.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <string>
#include <utility>

#include "text.hpp"
#include "wetout/base/check.hpp"

namespace wetout::climate {
namespace {

using Spelling = std::pair<std::string_view, Unit>;

// Compared without regard to case, "°" and "º" taken out first.
constexpr std::array temperatures{Spelling{"c", Unit::celsius},
                                  Spelling{"degc", Unit::celsius},
                                  Spelling{"deg c", Unit::celsius},
                                  Spelling{"celsius", Unit::celsius},
                                  Spelling{"f", Unit::fahrenheit},
                                  Spelling{"degf", Unit::fahrenheit},
                                  Spelling{"deg f", Unit::fahrenheit},
                                  Spelling{"fahrenheit", Unit::fahrenheit},
                                  Spelling{"k", Unit::kelvin},
                                  Spelling{"kelvin", Unit::kelvin},
                                  Spelling{"\xe2\x84\x83", Unit::celsius},  // one character, U+2103
                                  Spelling{"\xe2\x84\x89", Unit::fahrenheit}};
constexpr std::array humidities{Spelling{"%", Unit::percent}, Spelling{"percent", Unit::percent},
                                Spelling{"% rh", Unit::percent}, Spelling{"%rh", Unit::percent},
                                Spelling{"1", Unit::share}};
constexpr std::array winds{Spelling{"m/s", Unit::metres_per_second},
                           Spelling{"mps", Unit::metres_per_second},
                           Spelling{"m_s-1", Unit::metres_per_second},
                           Spelling{"m s-1", Unit::metres_per_second},
                           Spelling{"km/h", Unit::kilometres_per_hour},
                           Spelling{"kmh", Unit::kilometres_per_hour},
                           Spelling{"kph", Unit::kilometres_per_hour},
                           Spelling{"km_h-1", Unit::kilometres_per_hour},
                           Spelling{"km h-1", Unit::kilometres_per_hour},
                           Spelling{"mph", Unit::miles_per_hour},
                           Spelling{"mp/h", Unit::miles_per_hour},
                           Spelling{"mi/h", Unit::miles_per_hour},
                           Spelling{"kn", Unit::knots},
                           Spelling{"kt", Unit::knots},
                           Spelling{"knots", Unit::knots}};
constexpr std::array suns{Spelling{"w/m2", Unit::watts_per_square_metre},
                          Spelling{"w/m^2", Unit::watts_per_square_metre},
                          Spelling{"w/m\xc2\xb2", Unit::watts_per_square_metre},
                          Spelling{"w m-2", Unit::watts_per_square_metre}};

template <std::size_t n>
std::optional<Unit> among(const std::array<Spelling, n>& spellings, std::string_view text) {
  for (const auto& [spelling, unit] : spellings) {
    if (equal_but_for_case(spelling, text)) return unit;
  }
  return std::nullopt;
}

struct Sense {
  double low;
  double high;
};

// [epwdictionary] for air and dew point; its humidity goes to 110, as instruments show in fog, its
// wind to 40 m/s, which storms exceed. A pyranometer shows a little below nothing at night.
Sense sense(Quantity quantity) {
  switch (quantity) {
    case Quantity::air:
    case Quantity::dew_point:
      return {203.15, 343.15};
    case Quantity::humidity:
      return {0.0, 1.1};
    case Quantity::wind:
      return {0.0, 120.0};
    case Quantity::sun:
      return {-20.0, 2000.0};
  }
  base::broken_promise("a quantity without a range");
}

constexpr double freezing_kelvin = 273.15;
constexpr double mile_m = 1609.344;
constexpr double nautical_mile_m = 1852.0;
constexpr double hour_s = 3600.0;

double in_unit(double si, Unit unit) {
  switch (unit) {
    case Unit::celsius:
      return si - freezing_kelvin;
    case Unit::fahrenheit:
      return units::Temperature::kelvin(si).in_fahrenheit();
    case Unit::percent:
      return si * 100.0;
    case Unit::kilometres_per_hour:
      return si * hour_s / 1000.0;
    case Unit::miles_per_hour:
      return si * hour_s / mile_m;
    case Unit::knots:
      return si * hour_s / nautical_mile_m;
    case Unit::kelvin:
    case Unit::share:
    case Unit::metres_per_second:
    case Unit::watts_per_square_metre:
      return si;
  }
  base::broken_promise("a unit without a factor");
}

std::string_view word(Unit unit) {
  switch (unit) {
    case Unit::celsius:
      return "C";
    case Unit::fahrenheit:
      return "F";
    case Unit::kelvin:
      return "K";
    case Unit::percent:
      return "%";
    case Unit::share:
      return "(share of 1)";
    case Unit::metres_per_second:
      return "m/s";
    case Unit::kilometres_per_hour:
      return "km/h";
    case Unit::miles_per_hour:
      return "mph";
    case Unit::knots:
      return "kn";
    case Unit::watts_per_square_metre:
      return "W/m2";
  }
  base::broken_promise("a unit without a word");
}

bool fits(double si, const Sense& range) {
  // A limit typed in another unit may land a rounding away from it.
  constexpr double rounding = 1e-9;
  return si >= range.low - rounding && si <= range.high + rounding;
}

// The unit in which the number would have made sense, as a question.
std::string other_unit(Quantity quantity, double value, Unit unit) {
  if (quantity != Quantity::air && quantity != Quantity::dew_point) return {};
  for (const Unit other : {Unit::fahrenheit, Unit::celsius, Unit::kelvin}) {
    if (other != unit && fits(in_si(value, other), sense(quantity))) {
      return fmt::format("is it in {} rather than {}?", word(other), word(unit));
    }
  }
  return {};
}

}  // namespace

std::optional<Unit> read_unit(Quantity quantity, std::string_view text) {
  std::string bare;
  for (std::string_view rest = trimmed(text); !rest.empty();) {
    if (rest.starts_with("\xc2\xb0") || rest.starts_with("\xc2\xba")) {  // degree, ordinal
      rest.remove_prefix(2);
      continue;
    }
    bare += rest.front();
    rest.remove_prefix(1);
  }
  const std::string_view word = trimmed(bare);
  switch (quantity) {
    case Quantity::air:
    case Quantity::dew_point:
      return among(temperatures, word);
    case Quantity::humidity:
      return among(humidities, word);
    case Quantity::wind:
      return among(winds, word);
    case Quantity::sun:
      return among(suns, word);
  }
  base::broken_promise("a quantity without units");
}

std::string_view units_of(Quantity quantity) {
  switch (quantity) {
    case Quantity::air:
    case Quantity::dew_point:
      return "C, F or K";
    case Quantity::humidity:
      return "%";
    case Quantity::wind:
      return "m/s, km/h, mph or kn";
    case Quantity::sun:
      return "W/m2";
  }
  base::broken_promise("a quantity without units");
}

std::string_view name_of(Quantity quantity) {
  switch (quantity) {
    case Quantity::air:
      return "air temperature";
    case Quantity::dew_point:
      return "dew point";
    case Quantity::humidity:
      return "relative humidity";
    case Quantity::wind:
      return "wind";
    case Quantity::sun:
      return "sun";
  }
  base::broken_promise("a quantity without a name");
}

double in_si(double value, Unit unit) {
  switch (unit) {
    case Unit::celsius:
      return units::Temperature::celsius(value).in_kelvin();
    case Unit::fahrenheit:
      return units::Temperature::fahrenheit(value).in_kelvin();
    case Unit::percent:
      return value / 100.0;
    case Unit::kilometres_per_hour:
      return value * 1000.0 / hour_s;
    case Unit::miles_per_hour:
      return value * mile_m / hour_s;
    case Unit::knots:
      return value * nautical_mile_m / hour_s;
    case Unit::kelvin:
    case Unit::share:
    case Unit::metres_per_second:
    case Unit::watts_per_square_metre:
      return value;
  }
  base::broken_promise("a unit without a factor");
}

std::optional<base::Problem> nonsense(Quantity quantity, double value, Unit unit) {
  const std::string found = fmt::format("{:.6g} {}", value, word(unit));
  if (!std::isfinite(value)) {
    return base::Problem{.code = "number.not_finite",
                         .message = fmt::format("the {} is not a number", name_of(quantity)),
                         .found = found,
                         .expected = "a number; leave it empty where nothing was measured"};
  }
  const Sense range = sense(quantity);
  if (fits(in_si(value, unit), range)) return std::nullopt;
  return base::Problem{.code = "weather.absurd",
                       .message = fmt::format("this {} makes no sense", name_of(quantity)),
                       .found = found,
                       .expected = fmt::format("{:.4g} to {:.4g} {}", in_unit(range.low, unit),
                                               in_unit(range.high, unit), word(unit)),
                       .hint = other_unit(quantity, value, unit)};
}

}  // namespace wetout::climate
