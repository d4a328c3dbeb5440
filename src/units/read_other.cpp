// Temperatures, percentages and the ranges of data sheets.
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "combine.hpp"
#include "fault.hpp"
#include "scan.hpp"
#include "text.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/units/read.hpp"

namespace wetout::units {
namespace {

base::Result<Term> read_term(std::string_view text, const Ask& wanted) {
  const base::Result<Scanned> scanned = scan(text, wanted);
  if (!scanned) return base::fail(scanned.error());
  return only_term(*scanned, text, wanted);
}

base::Problem too_large(std::string_view text, const Ask& wanted) {
  return fault("number.not_finite", "this is too large a number", text, wanted,
               "check its exponent");
}

struct Ends {
  std::string low;
  std::string high;
};

// Every place where a range may be cut: the dash of "1-1/2-2 h" is found by trying.
std::vector<Ends> cuts(const std::string& body) {
  std::vector<Ends> out;
  for (const std::string_view mark : {"-", " to "}) {
    for (std::size_t i = body.find(mark); i != std::string::npos; i = body.find(mark, i + 1)) {
      out.push_back({body.substr(0, i), body.substr(i + mark.size())});
    }
  }
  return out;
}

// "25" before "30 min" borrows its unit.
base::Result<Duration> read_low(const Ends& ends) {
  if (is_bare_number(ends.low)) {
    const base::Result<Scanned> high = scan(ends.high, ask_duration_range);
    if (high && high->terms.size() == 1) {
      return read_duration(ends.low + " " + high->terms[0].unit.name);
    }
  }
  return read_duration(ends.low);
}

// Why no cut of `body` makes a range; `single` says why it is no single value either.
base::Problems why_no_range(const std::vector<Ends>& all, std::string_view text,
                            const base::Problems& single) {
  for (const Ends& ends : all) {
    if (!is_bare_number(ends.low) && !read_duration(ends.low)) continue;
    if (is_bare_number(ends.high)) return {unit_missing(trimmed(text), text, ask_duration_range)};
    const base::Result<Duration> high = read_duration(ends.high);
    // "1 to 1 h 30 min": which of the two units would it borrow?
    if (high) return {unit_missing(trimmed(ends.low), text, ask_duration_range)};
    base::Problems problems = high.error();
    problems[0].found = base::shown(text);
    problems[0].expected = single[0].expected;
    return problems;
  }
  return single;
}

}  // namespace

base::Result<Temperature> read_temperature(std::string_view text) {
  const Ask& wanted = ask(Kind::temperature);
  const base::Result<Term> term = read_term(text, wanted);
  if (!term) return base::fail(term.error());
  const double value = term->value;
  // A scale's zero is lost in such a number anyway, and Fahrenheit multiplies before it divides.
  if (std::abs(value) > 1e300) return base::fail(too_large(text, wanted));
  const Temperature out = term->unit.name == "F"   ? Temperature::fahrenheit(value)
                          : term->unit.name == "C" ? Temperature::celsius(value)
                                                   : Temperature::kelvin(value);
  if (out < Temperature::kelvin(0.0)) {
    return base::fail(fault("number.bad", "this is below absolute zero", text, wanted, ""));
  }
  return out;
}

base::Result<TempDelta> read_temp_delta(std::string_view text) {
  const base::Result<Term> term = read_term(text, ask_temp_delta);
  if (!term) return base::fail(term.error());
  const double kelvin = apply(term->value, term->unit.si);
  if (!std::isfinite(kelvin)) return base::fail(too_large(text, ask_temp_delta));
  return TempDelta::kelvin(kelvin);
}

base::Result<double> read_percent(std::string_view text) {
  const base::Result<Term> term = read_term(text, ask(Kind::percent));
  if (!term) return base::fail(term.error());
  return apply(term->value, term->unit.si);
}

base::Result<DurationRange> read_duration_range(std::string_view text) {
  const base::Result<Scanned> scanned = scan(text, ask_duration_range);
  if (scanned) {
    const base::Result<double> si = combine(*scanned, text, ask_duration_range);
    if (!si) return base::fail(si.error());
    return DurationRange{Duration::from_si(*si), Duration::from_si(*si)};
  }
  if (text.size() > longest_text) return base::fail(scanned.error());
  const std::vector<Ends> all = cuts(plain(text));
  for (const Ends& ends : all) {
    const base::Result<Duration> high = read_duration(ends.high);
    if (!high) continue;
    const base::Result<Duration> low = read_low(ends);
    if (!low) continue;
    if (*low <= *high) return DurationRange{*low, *high};
    return base::fail(fault("number.bad", "the range runs backwards", text, ask_duration_range,
                            "write the smaller value first"));
  }
  return base::fail(why_no_range(all, text, scanned.error()));
}

}  // namespace wetout::units
