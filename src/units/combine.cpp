#include "combine.hpp"

#include <cmath>
#include <string>

namespace wetout::units {
namespace {

bool in_parts(Kind kind) {
  return kind == Kind::length || kind == Kind::mass || kind == Kind::volume ||
         kind == Kind::duration;
}

// How many of the smaller unit make one of the larger, if that is a whole number above one.
double whole_ratio(const Unit& larger, const Unit& smaller) {
  const Ratio ratio = over(larger.si, smaller.si);
  return ratio.den == 1 && ratio.num > 1 ? static_cast<double>(ratio.num) : 0.0;
}

}  // namespace

base::Result<double> combine(const Scanned& scanned, std::string_view typed, const Ask& ask) {
  for (const Term& term : scanned.terms) {
    if (term.unit.kind != ask.kind) return base::fail(unit_wrong(term.unit, typed, ask));
  }
  if (scanned.terms.size() > 1 && !in_parts(ask.kind)) {
    const base::Result<Term> refused = only_term(scanned, typed, ask);
    if (!refused) return base::fail(refused.error());
  }
  // Summed in the smallest unit, in which every part is exact.
  double sum = scanned.terms.front().value;
  for (std::size_t i = 1; i < scanned.terms.size(); ++i) {
    const Term& larger = scanned.terms[i - 1];
    const Term& smaller = scanned.terms[i];
    const double ratio = whole_ratio(larger.unit, smaller.unit);
    if (ratio == 0.0) {
      return base::fail(
          fault("number.bad",
                quoted(larger.unit.name) + " cannot be followed by " + quoted(smaller.unit.name),
                typed, ask, "use one unit, or a larger one before a smaller"));
    }
    if (!larger.whole) {
      return base::fail(fault("number.bad", "only the last part may have a fraction", typed, ask,
                              "use one unit for the whole"));
    }
    if (smaller.value >= ratio) {
      return base::fail(fault("number.bad",
                              "the " + quoted(smaller.unit.name) + " part makes a whole " +
                                  quoted(larger.unit.name) + " or more",
                              typed, ask, "carry it over, or use one unit for the whole"));
    }
    sum = sum * ratio + smaller.value;
  }
  const double si = apply(sum, scanned.terms.back().unit.si);
  if (!std::isfinite(si)) {
    return base::fail(
        fault("number.not_finite", "this is too large a number", typed, ask, "check its exponent"));
  }
  return scanned.negative && si != 0.0 ? -si : si;
}

base::Result<Term> only_term(const Scanned& scanned, std::string_view typed, const Ask& ask) {
  for (const Term& term : scanned.terms) {
    if (term.unit.kind != ask.kind) return base::fail(unit_wrong(term.unit, typed, ask));
  }
  if (scanned.terms.size() > 1) {
    return base::fail(
        fault("number.bad", "one number and one unit are wanted here", typed, ask, ""));
  }
  Term term = scanned.terms.front();
  if (scanned.negative && term.value != 0.0) term.value = -term.value;
  return term;
}

}  // namespace wetout::units
