// Feet, inches and sixteenths; millimetres, centimetres and metres.
#include <fmt/format.h>

#include <cmath>
#include <cstdint>
#include <numeric>
#include <string>

#include "decimal.hpp"
#include "wetout/base/check.hpp"
#include "wetout/units/print.hpp"

namespace wetout::units {
namespace {

// "20 3/4", "3/16", "0".
std::string sixteenths(std::int64_t n) {
  const std::int64_t whole = n / 16;
  const std::int64_t rest = n % 16;
  if (rest == 0) return std::to_string(whole);
  const std::int64_t common = std::gcd(rest, std::int64_t{16});
  const std::string fraction = fmt::format("{}/{}", rest / common, 16 / common);
  return whole == 0 ? fraction : fmt::format("{} {}", whole, fraction);
}

std::string print_us(Length length, bool with_feet) {
  const double in = in_inches(length);
  base::promise(std::isfinite(in), "printing a length that is not finite");
  if (beyond_digits(in * 16.0)) return fixed(in, 0) + " in";
  // Rounded before it is split, or the inches could come to twelve.
  const std::int64_t n = std::llround(std::abs(in) * 16.0);
  const std::string sign = in < 0.0 && n > 0 ? "-" : "";
  constexpr std::int64_t foot = std::int64_t{12} * 16;
  if (!with_feet || n < 2 * foot) return sign + sixteenths(n) + " in";
  std::string out = fmt::format("{}{} ft", sign, n / foot);
  return n % foot == 0 ? out : out + " " + sixteenths(n % foot) + " in";
}

std::string print_metric(Length length) {
  const double mm = in_millimetres(length);
  if (std::abs(mm) < 99.5) return fixed(mm, 0) + " mm";
  if (std::abs(mm) < 9999.5) return fixed(mm / 10.0, 1) + " cm";
  return fixed(in_metres(length), 2) + " m";
}

}  // namespace

std::string print(Length length, System system) {
  return system == System::us ? print_us(length, true) : print_metric(length);
}

std::string print_inches(Length length, System system) {
  return system == System::us ? print_us(length, false) : print_metric(length);
}

}  // namespace wetout::units
