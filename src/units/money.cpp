// Money: digits are kept as whole minor units, never as a double.
#include "wetout/units/money.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

#include "fault.hpp"
#include "text.hpp"
#include "wetout/base/check.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/base/words.hpp"
#include "wetout/units/print.hpp"
#include "wetout/units/read.hpp"

namespace wetout::units {
namespace {

// iso4217: the codes of countries and their decimals; metals, funds and test codes left out.
constexpr std::string_view two_digits =
    "AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BRL BSD BTN BWP BYN BZD "
    "CAD CDF CHF CNY COP CRC CUC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP "
    "GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL "
    "MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK "
    "PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB "
    "TJS TMT TOP TRY TTD TWD TZS UAH USD UYU UZS VED VES WST XCD XCG YER ZAR ZMW "
    "ZWG";
constexpr std::string_view no_digits =
    "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF";
constexpr std::string_view three_digits = "BHD IQD JOD KWD LYD OMR TND";

bool lists(std::string_view codes, std::string_view code) {
  return code.size() == 3 && code.find(' ') == std::string_view::npos &&
         codes.find(code) != std::string_view::npos;
}

std::vector<std::string> all_codes() {
  std::vector<std::string> out;
  for (const std::string_view codes : {two_digits, no_digits, three_digits}) {
    for (std::size_t i = 0; i < codes.size(); i += 4) out.emplace_back(codes.substr(i, 3));
  }
  return out;
}

base::Problem problem(std::string code, std::string message, std::string_view found,
                      std::string hint) {
  base::Problem out;
  out.code = std::move(code);
  out.message = std::move(message);
  out.found = base::shown(found);
  out.expected = "an amount and its currency, e.g. \"48.00 USD\"";
  out.hint = hint.empty() ? "write it like \"48.00 USD\"" : std::move(hint);
  return out;
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

struct Parts {
  bool negative = false;
  std::string_view whole;
  std::string_view decimals;
  std::string_view currency;
};

// "-48.00 usd", blanks between them at will; `body` is plain text.
base::Result<Parts> split(std::string_view body, std::string_view typed) {
  const auto take_digits = [&body] {
    const auto* const end = std::find_if_not(body.begin(), body.end(), is_digit);
    const std::string_view digits = body.substr(0, static_cast<std::size_t>(end - body.begin()));
    body.remove_prefix(digits.size());
    return digits;
  };
  Parts out;
  if (!body.empty() && (body.front() == '-' || body.front() == '+')) {
    out.negative = body.front() == '-';
    body = trimmed(body.substr(1));
  }
  out.whole = take_digits();
  if (!out.whole.empty() && !body.empty() && body.front() == '.') {
    body.remove_prefix(1);
    out.decimals = take_digits();
    if (out.decimals.empty()) {
      return base::fail(problem("number.bad", "digits are missing after the point", typed, ""));
    }
  }
  if (out.whole.empty()) {
    return base::fail(problem(
        "number.bad",
        typed.empty() ? "nothing stands here" : quoted(typed) + " does not begin with a number",
        typed, "write the currency as three letters after the amount"));
  }
  if (!body.empty() && body.front() == ',') {
    return base::fail(problem("number.bad", "a comma inside a number can mean two things", typed,
                              "the decimal mark is a point, thousands have none: 1200.00 USD"));
  }
  out.currency = trimmed(body);
  return out;
}

base::Result<std::string> known_currency(std::string_view code, std::string_view typed) {
  std::string capitals;
  for (const char c : code) {
    capitals += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  }
  if (minor_digits(capitals)) return capitals;
  const std::optional<std::string> meant =
      code.size() == 3 ? base::nearest(capitals, all_codes()) : std::nullopt;
  return base::fail(
      problem("currency.unknown", quoted(code) + " is not a currency of ISO 4217", typed,
              meant ? "did you mean \"" + *meant + "\"?" : "write its three letters, such as USD"));
}

}  // namespace

std::optional<int> minor_digits(std::string_view currency) {
  if (lists(two_digits, currency)) return 2;
  if (lists(no_digits, currency)) return 0;
  if (lists(three_digits, currency)) return 3;
  return std::nullopt;
}

base::Result<std::string> read_currency(std::string_view text) {
  const std::string body = plain(text.substr(0, longest_text));
  base::Result<std::string> code = known_currency(trimmed(body), text);
  if (!code) {
    base::Problems problems = code.error();
    problems[0].expected = "a currency, e.g. \"USD\"";
    return base::fail(problems);
  }
  return code;
}

base::Result<Money> read_money(std::string_view text) {
  if (text.size() > longest_text) {
    return base::fail(problem("number.bad", "this is too long to be an amount", text, ""));
  }
  const std::string body = plain(text);
  const base::Result<Parts> parts = split(trimmed(body), text);
  if (!parts) return base::fail(parts.error());
  if (parts->currency.empty()) {
    return base::fail(
        problem("unit.missing", quoted(text) + " has no currency", text,
                "write \"" + base::shown(trimmed(body)) + " USD\", or your currency"));
  }
  const base::Result<std::string> currency = known_currency(parts->currency, text);
  if (!currency) return base::fail(currency.error());

  const auto places = static_cast<std::size_t>(*minor_digits(*currency));
  if (parts->decimals.size() > places) {
    return base::fail(problem("number.bad", fmt::format("{} has {} decimals", *currency, places),
                              text, "leave out the digits beyond them"));
  }
  std::string digits = std::string(parts->whole) + std::string(parts->decimals);
  digits.append(places - parts->decimals.size(), '0');
  digits.erase(0, std::min(digits.find_first_not_of('0'), digits.size()));
  // Fifteen digits leave room to add up a thousand such amounts.
  if (digits.size() > 15) {
    return base::fail(problem("number.not_finite", "this amount is too large", text, ""));
  }
  Money out;
  for (const char digit : digits) out.minor = out.minor * 10 + (digit - '0');
  if (parts->negative) out.minor = -out.minor;
  out.currency = *currency;
  return out;
}

base::Result<Money> read_money_per_hour(std::string_view text) {
  const std::string body = plain(text.substr(0, longest_text + 1));
  for (const std::string_view mark : {"/", " per "}) {
    const std::size_t i = body.find(mark);
    if (i == std::string::npos) continue;
    const std::string_view hour = trimmed(std::string_view(body).substr(i + mark.size()));
    if (hour != "h" && hour != "hr" && hour != "hour") continue;
    return read_money(std::string_view(body).substr(0, i));
  }
  base::Problem out = problem("unit.missing", quoted(text) + " is not money for an hour", text,
                              "end it with \"/h\"");
  out.expected = "money for an hour, e.g. \"30 USD/h\"";
  return base::fail(out);
}

std::string print(const Money& money) {
  const std::optional<int> digits = minor_digits(money.currency);
  base::promise(digits.has_value(), "money in a currency that was not read");
  // The magnitude of the most negative count does not fit its own type.
  const auto bits = static_cast<std::uint64_t>(money.minor);
  const std::uint64_t magnitude = money.minor < 0 ? 0 - bits : bits;
  std::uint64_t one = 1;
  for (int i = 0; i < *digits; ++i) one *= 10;
  std::string out = fmt::format("{}{}", money.minor < 0 ? "-" : "", magnitude / one);
  if (*digits > 0) out += fmt::format(".{:0{}}", magnitude % one, *digits);
  return out + " " + money.currency;
}

}  // namespace wetout::units
