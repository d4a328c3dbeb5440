#include "decimal.hpp"

#include <fmt/format.h>

#include <cmath>

#include "wetout/base/check.hpp"
#include "wetout/units/print.hpp"

namespace wetout::units {

bool beyond_digits(double value) { return std::abs(value) >= 1e15; }

std::string fixed(double value, int decimals) {
  base::promise(std::isfinite(value), "printing a number that is not finite");
  if (beyond_digits(value)) return fmt::format("{:.6g}", value);
  std::string out = fmt::format("{:.{}f}", value, decimals);
  const bool zero = out.find_first_not_of("-0.") == std::string::npos;
  if (zero && out.front() == '-') out.erase(0, 1);
  return out;
}

std::string print_number(double value, int decimals) {
  std::string out = fixed(value, decimals);
  if (beyond_digits(value) || out.find('.') == std::string::npos) return out;
  while (out.back() == '0') out.pop_back();
  if (out.back() == '.') out.pop_back();
  return out;
}

}  // namespace wetout::units
