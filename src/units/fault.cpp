#include "fault.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "wetout/base/check.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/base/words.hpp"

namespace wetout::units {
namespace {

constexpr auto asks = std::to_array<Ask>({
    {Kind::length, "a length", "length", "20 3/4 in", "in", "mm"},
    {Kind::area, "an area", "area", "12 ft2", "ft2", "m2"},
    {Kind::volume, "a volume", "volume", "900 ml", "ml", "fl oz"},
    {Kind::mass, "a mass", "mass", "245 g", "g", "oz"},
    {Kind::areal_weight, "a weight per area", "weight per area", "4 oz/yd2", "oz/yd2", "g/m2"},
    {Kind::density, "a density", "density", "2 lb/ft3", "lb/ft3", "kg/m3"},
    {Kind::linear_weight, "a mass per length", "mass per length", "6 g/m", "g/m", "oz/ft"},
    {Kind::duration, "a time", "time", "25 min", "min", "h"},
    {Kind::pace, "a time per area", "time per area", "7 min/m2", "min/m2", "min/ft2"},
    {Kind::temperature, "a temperature", "temperature", "22 C", "C", "F"},
    {Kind::percent, "a percentage", "percentage", "2 %", "%", ""},
});

std::string spelled(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) {
    const bool tight = word == "/" || out.empty() || out.back() == '/';
    out += (tight ? "" : " ") + word;
  }
  return out;
}

bool any_of(const std::vector<std::string>& words, std::initializer_list<std::string_view> these) {
  return std::any_of(words.begin(), words.end(), [&](const std::string& word) {
    return std::find(these.begin(), these.end(), word) != these.end();
  });
}

std::string either(const Ask& ask) {
  std::string out = quoted(ask.unit);
  if (!ask.other_unit.empty()) out += " or " + quoted(ask.other_unit);
  return out;
}

}  // namespace

const Ask ask_mass_or_volume = {Kind::other, "a mass or a volume", "mass or volume", "900 ml", "g",
                                "ml"};
const Ask ask_temp_delta = {
    Kind::temperature, "a temperature difference", "temperature", "3 C", "C", "F"};
const Ask ask_duration_range = {
    Kind::duration, "a time or a range of times", "time", "25-30 min", "min", "h"};

const Ask& ask(Kind kind) {
  const auto* found = std::find_if(asks.begin(), asks.end(),
                                   [&](const Ask& candidate) { return candidate.kind == kind; });
  base::promise(found != asks.end(), "a reader for a kind that is not in the list");
  return *found;
}

std::string quoted(std::string_view text) { return fmt::format("\"{}\"", base::shown(text)); }

base::Problem fault(std::string code, std::string message, std::string_view found, const Ask& ask,
                    std::string hint) {
  base::Problem problem;
  problem.code = std::move(code);
  problem.message = std::move(message);
  problem.found = base::shown(found);
  problem.expected =
      std::string(ask.wanted) + " with its unit, e.g. \"" + std::string(ask.example) + "\"";
  problem.hint =
      hint.empty() ? "write it like \"" + std::string(ask.example) + "\"" : std::move(hint);
  return problem;
}

base::Problem unit_missing(std::string_view number, std::string_view found, const Ask& ask) {
  const auto with = [&](std::string_view unit) {
    return quoted(std::string(number) + " " + std::string(unit));
  };
  std::string hint = "write " + with(ask.unit);
  if (!ask.other_unit.empty()) hint += " or " + with(ask.other_unit);
  if (ask.kind == Kind::percent && number.starts_with("0.")) {
    hint += "; a share of 0.02 is written \"2 %\"";
  }
  return fault("unit.missing", quoted(number) + " has no unit", found, ask, hint);
}

base::Problem unit_wrong(const Unit& unit, std::string_view found, const Ask& ask) {
  std::string message = quoted(unit.name);
  const auto* own = std::find_if(asks.begin(), asks.end(),
                                 [&](const Ask& candidate) { return candidate.kind == unit.kind; });
  if (own != asks.end()) {
    message += " is a unit of " + std::string(own->noun) + ", not of " + std::string(ask.noun);
  } else {
    message += " is not a unit of " + std::string(ask.noun);
  }
  std::string hint = "use " + either(ask);
  if (ask.kind == Kind::duration && unit.name == "m") {
    hint = "\"m\" is metres; minutes are \"min\"";
  }
  return fault("unit.wrong", message, found, ask, hint);
}

base::Problem unit_unknown(const std::vector<std::string>& words, std::string_view found,
                           const Ask& ask) {
  // A unit followed by something else: the unit is right, the rest is not.
  for (std::size_t n = words.size() - 1; n > 0; --n) {
    const std::vector<std::string> first(words.begin(), words.begin() + static_cast<long>(n));
    const bool cut_in_two = words[n] == "/" || words[n] == "per";
    if (cut_in_two || !find_unit(first)) continue;
    const std::vector<std::string> rest(words.begin() + static_cast<long>(n), words.end());
    return fault(
        "unit.unknown",
        quoted(spelled(rest)) + " after the unit " + quoted(spelled(first)) + " is not understood",
        found, ask, "leave out " + quoted(spelled(rest)));
  }

  const std::string typed = spelled(words);
  std::string hint = "use " + either(ask);
  if (any_of(words, {"imp", "imperial", "uk", "british"})) {
    hint = "fluid measures are US ones here; write millilitres instead";
  } else if (typed.size() > 1) {  // one letter is within one slip of every other
    std::optional<std::string> meant = base::nearest(typed, spellings(ask.kind));
    if (!meant) meant = base::nearest(typed, spellings());
    if (meant) hint = "did you mean " + quoted(*meant) + "?";
  }
  return fault("unit.unknown", quoted(typed) + " is not a unit wetout knows", found, ask, hint);
}

}  // namespace wetout::units
