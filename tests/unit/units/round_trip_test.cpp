// For any quantity: the printed text reads back to within half of the printed step, and printing
// what was read changes nothing.
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <cstdint>
#include <string>

#include "wetout/units/print.hpp"
#include "wetout/units/read.hpp"

namespace wetout::units {
namespace {

// Spread over magnitudes, both signs, zero included: `largest` is the greatest.
double any_up_to(double largest) {
  const auto mantissa = *rc::gen::inRange<std::int64_t>(-1'000'000, 1'000'001);
  const auto smaller = *rc::gen::inRange(0, 7);
  return largest * static_cast<double>(mantissa) / 1e6 * std::pow(10.0, -smaller);
}

System any_system() { return *rc::gen::element(System::us, System::metric); }

// `step` in SI, for the value at hand.
template <class Q, class Print, class Read>
void holds(Q value, double step, Print print_it, Read read_it) {
  const std::string text = print_it(value);
  RC_LOG() << text;
  const auto back = read_it(text);
  RC_ASSERT(back.has_value());
  RC_ASSERT(std::abs(back->si() - value.si()) <= step / 2 * (1 + 1e-9) + 1e-15 * step);
  RC_ASSERT(print_it(*back) == text);
  RC_ASSERT(text.find("-0 ") == std::string::npos);
}

RC_GTEST_PROP(RoundTrip, Length, ()) {
  const System system = any_system();
  const Length value = metres(any_up_to(50));
  const bool far = std::abs(in_metres(value)) >= 9.9995;
  const double step = system == System::us ? inches(1.0 / 16).si() : far ? 0.01 : 0.001;
  holds(
      value, step, [&](Length v) { return print(v, system); }, read_length);
  holds(
      value, step, [&](Length v) { return print_inches(v, system); }, read_length);
}

RC_GTEST_PROP(RoundTrip, Thickness, ()) {
  const System system = any_system();
  holds(
      metres(any_up_to(0.1)), 1e-5, [&](Length v) { return print_thickness(v, system); },
      read_length);
}

RC_GTEST_PROP(RoundTrip, Area, ()) {
  const System system = any_system();
  holds(
      square_metres(any_up_to(20)), system == System::us ? square_feet(0.1).si() : 0.01,
      [&](Area v) { return print(v, system); }, read_area);
}

RC_GTEST_PROP(RoundTrip, Volume, ()) {
  const System system = any_system();
  const Volume value = litres(any_up_to(100));
  holds(
      value, system == System::us ? us_fluid_ounces(0.1).si() : 1e-6,
      [&](Volume v) { return print(v, system); }, read_volume);
  holds(
      value, 1e-4, [&](Volume v) { return print_litres(v, system); }, read_volume);
}

RC_GTEST_PROP(RoundTrip, Mass, ()) {
  const System system = any_system();
  const Mass value = kilograms(any_up_to(30));
  holds(
      value, system == System::us ? ounces(0.1).si() : 0.001,
      [&](Mass v) { return print(v, system); }, read_mass);
  holds(
      value, system == System::us ? ounces(0.1).si() : 0.01,
      [&](Mass v) { return print_weight(v, system); }, read_mass);
}

RC_GTEST_PROP(RoundTrip, WeightsAndDensities, ()) {
  const System system = any_system();
  const bool us = system == System::us;
  holds(
      grams_per_square_metre(any_up_to(1000)), us ? ounces_per_square_yard(0.1).si() : 0.001,
      [&](ArealWeight v) { return print(v, system); }, read_areal_weight);
  holds(
      kilograms_per_cubic_metre(any_up_to(2000)), us ? pounds_per_cubic_foot(0.01).si() : 0.1,
      [&](Density v) { return print(v, system); }, read_density);
  holds(
      grams_per_metre(any_up_to(100)), us ? read_linear_weight("0.01 oz/ft")->si() : 0.0001,
      [&](LinearWeight v) { return print(v, system); }, read_linear_weight);
  holds(
      minutes_per_square_metre(any_up_to(100)), us ? read_pace("0.01 min/ft2")->si() : 6.0,
      [&](Pace v) { return print(v, system); }, read_pace);
}

RC_GTEST_PROP(RoundTrip, Duration, ()) {
  const System system = any_system();
  const Duration value = days(any_up_to(30));
  const double s = std::abs(in_seconds(value));
  const double step = s < 59.5 ? 1 : s < 48 * 3600 - 30 ? 60 : 3600;
  holds(
      value, step, [&](Duration v) { return print(v, system); }, read_duration);
}

RC_GTEST_PROP(RoundTrip, Temperature, ()) {
  const System system = any_system();
  const Temperature value = Temperature::celsius(any_up_to(250));
  const std::string text = print(value, system);
  RC_LOG() << text;
  const base::Result<Temperature> back = read_temperature(text);
  RC_ASSERT(back.has_value());
  const double step_kelvin = system == System::us ? 5.0 / 9.0 : 0.1;
  RC_ASSERT(std::abs((*back - value).in_kelvin()) <= step_kelvin / 2 + 1e-9);
  RC_ASSERT(print(*back, system) == text);
}

RC_GTEST_PROP(RoundTrip, TempDelta, ()) {
  const System system = any_system();
  const TempDelta value = TempDelta::kelvin(any_up_to(100));
  const std::string text = print(value, system);
  const base::Result<TempDelta> back = read_temp_delta(text);
  RC_ASSERT(back.has_value());
  RC_ASSERT(std::abs((*back - value).in_kelvin()) <= 0.05 + 1e-9);
  RC_ASSERT(print(*back, system) == text);
}

RC_GTEST_PROP(RoundTrip, Percent, ()) {
  const double value = any_up_to(10);
  const std::string text = print_percent(value);
  const base::Result<double> back = read_percent(text);
  RC_ASSERT(back.has_value());
  RC_ASSERT(std::abs(*back - value) <= 0.0005 * (1 + 1e-9));
  RC_ASSERT(print_percent(*back) == text);
}

RC_GTEST_PROP(RoundTrip, MoneyIsExact, ()) {
  const Money value{*rc::gen::inRange<std::int64_t>(-999'999'999'999'999, 999'999'999'999'999),
                    *rc::gen::element<std::string>("USD", "JPY", "KWD")};
  RC_ASSERT(*read_money(print(value)) == value);
}

// Whatever the bytes: an answer or a problem, never a crash, and always text fit to be shown.
RC_GTEST_PROP(Readers, SurviveAnyText, ()) {
  const auto text = *rc::gen::container<std::string>(
      rc::gen::oneOf(rc::gen::elementOf(std::string("0123456789 ./'\"-,^%infthozgmlbyCFK")),
                     rc::gen::arbitrary<char>()));
  const auto check = [&](const auto& result) {
    if (result) return;
    RC_ASSERT(result.error().size() == 1U);
    const base::Problem& problem = result.error()[0];
    RC_ASSERT(!problem.code.empty() && !problem.message.empty());
    RC_ASSERT(!problem.expected.empty() && !problem.hint.empty());
    for (const char c : problem.found + problem.message + problem.hint) {
      RC_ASSERT(static_cast<unsigned char>(c) >= 0x20);
    }
  };
  check(read_length(text));
  check(read_areal_weight(text));
  check(read_duration_range(text));
  check(read_temperature(text));
  check(read_mass_or_volume(text));
  check(read_money(text));
  check(read_money_per_hour(text));
}

}  // namespace
}  // namespace wetout::units
