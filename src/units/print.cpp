#include "wetout/units/print.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdint>

#include "decimal.hpp"
#include "wetout/base/check.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/base/words.hpp"

namespace wetout::units {

base::Result<System> read_system(std::string_view text) {
  if (text == "us") return System::us;
  if (text == "metric") return System::metric;
  base::Problem problem;
  problem.code = "word.unknown";
  problem.message = "this is not a system of units";
  problem.found = base::shown(text);
  problem.expected = "\"us\" or \"metric\"";
  if (const auto meant = base::nearest(text, {"us", "metric"})) {
    problem.hint = "did you mean \"" + *meant + "\"?";
  }
  return base::fail(problem);
}

std::string_view to_string(System system) { return system == System::us ? "us" : "metric"; }

std::string print_thickness(Length thickness, System /*system*/) {
  return fixed(in_millimetres(thickness), 2) + " mm";
}

std::string print(Area area, System system) {
  return system == System::us ? fixed(in_square_feet(area), 1) + " ft²"
                              : fixed(in_square_metres(area), 2) + " m²";
}

std::string print(Volume volume, System system) {
  return system == System::us ? fixed(in_us_fluid_ounces(volume), 1) + " fl oz"
                              : fixed(in_millilitres(volume), 0) + " ml";
}

std::string print_litres(Volume volume, System /*system*/) {
  return fixed(in_litres(volume), 1) + " l";
}

std::string print(Mass mass, System system) {
  return system == System::us ? fixed(in_ounces(mass), 1) + " oz" : fixed(in_grams(mass), 0) + " g";
}

std::string print_both(Mass mass, System system) {
  const std::string grams = print(mass, System::metric);
  return system == System::us ? grams + " (" + print(mass, System::us) + ")" : grams;
}

std::string print_weight(Mass mass, System system) {
  if (system == System::metric) return fixed(in_kilograms(mass), 2) + " kg";
  const double tenths_of_ounce = in_ounces(mass) * 10.0;
  if (beyond_digits(tenths_of_ounce)) return fixed(in_pounds(mass), 0) + " lb";
  base::promise(std::isfinite(tenths_of_ounce), "printing a mass that is not finite");
  // Rounded before it is split, or the ounces could come to sixteen.
  const std::int64_t tenths = std::llround(std::abs(tenths_of_ounce));
  const std::int64_t pounds = tenths / 160;
  const std::int64_t rest = tenths % 160;
  std::string out = tenths_of_ounce < 0.0 && tenths > 0 ? "-" : "";
  if (pounds > 0) out += fmt::format("{} lb", pounds);
  if (pounds > 0 && rest > 0) out += ' ';
  if (pounds == 0 || rest > 0) out += fmt::format("{}.{} oz", rest / 10, rest % 10);
  return out;
}

std::string print(ArealWeight weight, System system) {
  return system == System::us ? print_number(in_ounces_per_square_yard(weight), 1) + " oz/yd²"
                              : print_number(in_grams_per_square_metre(weight), 0) + " g/m²";
}

std::string print(Density density, System system) {
  return system == System::us ? print_number(in_pounds_per_cubic_foot(density), 2) + " lb/ft³"
                              : print_number(in_kilograms_per_cubic_metre(density), 1) + " kg/m³";
}

std::string print(LinearWeight weight, System system) {
  return system == System::us ? print_number(in_ounces_per_foot(weight), 2) + " oz/ft"
                              : print_number(in_grams_per_metre(weight), 1) + " g/m";
}

std::string print(Pace pace, System system) {
  return system == System::us ? print_number(in_minutes_per_square_foot(pace), 2) + " min/ft²"
                              : print_number(in_minutes_per_square_metre(pace), 1) + " min/m²";
}

std::string print(Duration duration, System /*system*/) {
  const double signed_s = in_seconds(duration);
  base::promise(std::isfinite(signed_s), "printing a time that is not finite");
  if (beyond_digits(signed_s)) return fixed(in_hours(duration) / 24.0, 0) + " days";
  const double s = std::abs(signed_s);
  const std::string sign = signed_s < 0.0 ? "-" : "";
  const std::int64_t whole_seconds = std::llround(s);
  if (whole_seconds == 0) return "0 min";
  if (whole_seconds < 60) return fmt::format("{}{} s", sign, whole_seconds);
  // The larger unit is chosen after rounding: 59.7 min are 1 h.
  const std::int64_t whole_minutes = std::llround(s / 60.0);
  if (whole_minutes < 60) return fmt::format("{}{} min", sign, whole_minutes);
  if (whole_minutes < 48 * 60) {
    const std::int64_t rest = whole_minutes % 60;
    std::string out = fmt::format("{}{} h", sign, whole_minutes / 60);
    return rest == 0 ? out : out + fmt::format(" {} min", rest);
  }
  const std::int64_t whole_hours = std::llround(s / 3600.0);
  std::string out = fmt::format("{}{} days", sign, whole_hours / 24);
  return whole_hours % 24 == 0 ? out : out + fmt::format(" {} h", whole_hours % 24);
}

std::string print(Temperature temperature, System system) {
  return system == System::us ? print_number(temperature.in_fahrenheit(), 0) + " °F"
                              : print_number(temperature.in_celsius(), 1) + " °C";
}

std::string print(TempDelta delta, System system) {
  return system == System::us ? print_number(delta.in_kelvin() * 1.8, 1) + " °F"
                              : print_number(delta.in_kelvin(), 1) + " °C";
}

std::string print_percent(double share) { return print_number(share * 100.0, 1) + " %"; }

}  // namespace wetout::units
