#include "json_writer.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <nlohmann/json.hpp>

#include "wetout/base/check.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {

void append_fixed(std::string& out, double value, int decimals) {
  const double scale = std::pow(10.0, decimals);
  base::promise(std::abs(value) <= as::largest, "a document holds finite numbers of sensible size");
  const std::int64_t count = std::llround(value * scale);
  if (count < 0) out += '-';
  const auto whole = static_cast<std::int64_t>(scale);
  const std::int64_t size = count < 0 ? -count : count;
  out += std::to_string(size / whole);
  std::int64_t rest = size % whole;
  if (rest == 0) return;
  std::string digits = std::to_string(whole + rest);  // a leading 1 keeps the zeros
  digits.front() = '.';
  digits.erase(digits.find_last_not_of('0') + 1);
  out += digits;
}

void append_plain(std::string& out, double value) {
  base::promise(std::isfinite(value), "a document holds finite numbers");
  if (value == 0.0) value = 0.0;  // no -0
  constexpr int significant_digits = 12;
  std::array<char, 32> buffer{};
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                 std::chars_format::general, significant_digits);
  out.append(buffer.data(), end.ptr);
}

void append_quoted(std::string& out, std::string_view text) {
  const auto is_plain = [](char c) { return c >= ' ' && c <= '~' && c != '"' && c != '\\'; };
  if (std::all_of(text.begin(), text.end(), is_plain)) {
    out += '"';
    out += text;
    out += '"';
    return;
  }
  out += nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

void append_money(std::string& out, const units::Money& money) {
  const std::string text = units::print(money);  // "48.00 USD"
  const std::size_t gap = text.find(' ');
  base::promise(gap != std::string::npos, "money prints as an amount and a currency");
  out += "{\"amount\":";
  append_quoted(out, std::string_view(text).substr(0, gap));
  out += ",\"currency\":";
  append_quoted(out, money.currency);
  out += '}';
}

}  // namespace wetout::report
