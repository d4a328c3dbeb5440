#include "words.hpp"

#include <algorithm>
#include <array>
#include <span>

namespace wetout::units {
namespace {

// Exact by definition (nistsp811, appendix B.8); the inch of 1959, the avoirdupois pound,
// the US gallon of 231 cubic inches.
constexpr Ratio inch = {127, 5000};
constexpr Ratio pound = {45359237, 100000000};
constexpr Ratio square_yard = times({1143, 1250}, {1143, 1250});
constexpr Ratio cubic_foot = times({381, 1250}, times({381, 1250}, {381, 1250}));
constexpr Ratio gallon = times({231, 1}, times(inch, times(inch, inch)));

struct Base {
  Kind kind;
  Ratio si;
  std::string_view name;
  std::string_view words;  // separated by '|', the name itself left out
};

constexpr auto bases = std::to_array<Base>({
    {Kind::length,
     {1, 1000000},
     "um",
     "micron|microns|micrometre|micrometres|micrometer|micrometers"},
    {Kind::length, {1, 1000}, "mm", "mms|millimetre|millimetres|millimeter|millimeters"},
    {Kind::length, {1, 100}, "cm", "cms|centimetre|centimetres|centimeter|centimeters"},
    {Kind::length, {1, 1}, "m", "metre|metres|meter|meters"},
    {Kind::length, inch, "in", "\"|''|inch|inches|ins"},
    {Kind::length, times({12, 1}, inch), "ft", "'|foot|feet"},
    {Kind::length, times({36, 1}, inch), "yd", "yds|yard|yards"},
    {Kind::volume, {1, 1000000}, "ml", "mls|cc|ccm|millilitre|millilitres|milliliter|milliliters"},
    {Kind::volume, {1, 100000}, "cl", "centilitre|centilitres|centiliter|centiliters"},
    {Kind::volume, {1, 10000}, "dl", "decilitre|decilitres|deciliter|deciliters"},
    {Kind::volume, {1, 1000}, "l", "ltr|litre|litres|liter|liters"},
    {Kind::volume, over(gallon, {128, 1}), "fl oz",
     "floz|fluid oz|fluid ounce|fluid ounces|fl ounce|fl ounces"},
    {Kind::volume, over(gallon, {8, 1}), "pt", "pts|pint|pints"},
    {Kind::volume, over(gallon, {4, 1}), "qt", "qts|quart|quarts"},
    {Kind::volume, gallon, "gal", "gals|gallon|gallons"},
    {Kind::mass, {1, 1000000}, "mg", "milligram|milligrams|milligramme|milligrammes"},
    {Kind::mass, {1, 1000}, "g", "gm|gms|gram|grams|gramme|grammes"},
    {Kind::mass, {1, 1}, "kg", "kgs|kilo|kilos|kilogram|kilograms|kilogramme|kilogrammes"},
    {Kind::mass, over(pound, {16, 1}), "oz", "ozs|ounce|ounces"},
    {Kind::mass, over(pound, {16, 1}), "oz wt", "oz av|oz avdp|oz weight|wt oz|ounces weight"},
    {Kind::mass, pound, "lb", "lbs|pound|pounds"},
    {Kind::areal_weight, {1, 1000}, "g/m2", "gsm"},
    {Kind::areal_weight, over(over(pound, {16, 1}), square_yard), "oz/yd2", "osy"},
    {Kind::density, over(pound, cubic_foot), "lb/ft3", "pcf"},
    {Kind::duration, {1, 1}, "s", "sec|secs|second|seconds"},
    {Kind::duration, {60, 1}, "min", "mins|minute|minutes"},
    {Kind::duration, {3600, 1}, "h", "hr|hrs|hour|hours"},
    {Kind::duration, {86400, 1}, "days", "d|day"},
    {Kind::duration, {604800, 1}, "weeks", "wk|wks|week"},
    {Kind::temperature,
     {1, 1},
     "C",
     "c|deg c|degc|degree c|degrees c|celsius|deg celsius|degree celsius|degrees "
     "celsius|centigrade|degrees centigrade"},
    {Kind::temperature,
     {5, 9},
     "F",
     "f|deg f|degf|degree f|degrees f|fahrenheit|deg fahrenheit|degree fahrenheit|degrees "
     "fahrenheit"},
    {Kind::temperature, {1, 1}, "K", "k|kelvin|kelvins"},
    {Kind::percent, {1, 100}, "%", "percent|per cent|pct"},
});

template <class Visit>
void each_word(const Base& base, Visit visit) {
  visit(base.name);
  std::string_view rest = base.words;
  while (!rest.empty()) {
    const std::size_t bar = std::min(rest.find('|'), rest.size());
    visit(rest.substr(0, bar));
    rest.remove_prefix(std::min(bar + 1, rest.size()));
  }
}

const Base* find_base(std::string_view word) {
  for (const Base& base : bases) {
    bool hit = false;
    each_word(base, [&](std::string_view spelling) { hit = hit || spelling == word; });
    if (hit) return &base;
  }
  return nullptr;
}

Unit make(const Base& base, std::string_view word) {
  return {.kind = base.kind,
          .si = base.si,
          .name = std::string(base.name),
          .bare_oz = base.name == "oz",
          .foot_mark = word == "'"};
}

std::optional<Unit> raised(const Unit& length, int power) {
  if (length.kind != Kind::length || (power != 2 && power != 3)) return std::nullopt;
  const Ratio square = times(length.si, length.si);
  return Unit{.kind = power == 2 ? Kind::area : Kind::volume,
              .si = power == 2 ? square : times(square, length.si),
              .name = length.name + (power == 2 ? "2" : "3")};
}

std::string joined(std::span<const std::string> words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : " ") + word;
  return out;
}

// One side of a "/": "sq yd", "yd^2", "m2", "us fl oz", "sqft".
std::optional<Unit> find_side(std::span<const std::string> words) {
  if (words.size() > 1 && words[0] == "us") words = words.subspan(1);
  if (words.empty()) return std::nullopt;
  const std::string whole = joined(words);
  if (const Base* base = find_base(whole)) return make(*base, whole);

  constexpr auto squares = std::to_array<std::string_view>({"square ", "sq ", "sq"});
  constexpr auto cubes = std::to_array<std::string_view>({"cubic ", "cu ", "cu"});
  for (const int power : {2, 3}) {
    for (const std::string_view prefix : power == 2 ? squares : cubes) {
      if (!whole.starts_with(prefix)) continue;
      if (const Base* base = find_base(std::string_view(whole).substr(prefix.size()))) {
        return raised(make(*base, ""), power);
      }
    }
  }
  if (whole.size() < 2) return std::nullopt;
  const char digit = whole.back();
  if (digit != '2' && digit != '3') return std::nullopt;
  std::string_view stem = std::string_view(whole).substr(0, whole.size() - 1);
  if (stem.ends_with('^')) stem.remove_suffix(1);
  const Base* base = find_base(stem);
  return base == nullptr ? std::nullopt : raised(make(*base, ""), digit - '0');
}

Kind quotient(Kind over, Kind under) {
  if (over == Kind::mass && under == Kind::area) return Kind::areal_weight;
  if (over == Kind::mass && under == Kind::volume) return Kind::density;
  if (over == Kind::mass && under == Kind::length) return Kind::linear_weight;
  if (over == Kind::duration && under == Kind::area) return Kind::pace;
  return Kind::other;
}

}  // namespace

std::optional<Unit> find_unit(const std::vector<std::string>& words) {
  // "per cent" is one word written as two.
  if (joined(words) == "per cent") return make(*find_base("%"), "%");
  const auto is_per = [](const std::string& word) { return word == "/" || word == "per"; };
  const auto slash = std::find_if(words.begin(), words.end(), is_per);
  if (slash == words.end()) return find_side(words);
  const std::optional<Unit> top = find_side({words.begin(), slash});
  const std::optional<Unit> bottom = find_side({slash + 1, words.end()});
  if (!top || !bottom) return std::nullopt;
  const Kind kind = quotient(top->kind, bottom->kind);
  return Unit{.kind = kind,
              .si = kind == Kind::other ? Ratio{} : over(top->si, bottom->si),
              .name = top->name + "/" + bottom->name};
}

std::vector<std::string> spellings(Kind kind) {
  std::vector<std::string> out;
  for (const Base& base : bases) {
    if (base.kind != kind) continue;
    each_word(base, [&](std::string_view word) {
      if (word.size() > 1) out.emplace_back(word);
    });
  }
  switch (kind) {
    case Kind::area:
      for (const char* word : {"ft2", "m2", "in2", "yd2", "cm2", "mm2", "sq ft", "sq m", "sq yd",
                               "square feet", "square metres"}) {
        out.emplace_back(word);
      }
      break;
    case Kind::areal_weight:
      for (const char* word : {"oz/sq yd", "oz/yd^2", "kg/m2", "g/m^2"}) out.emplace_back(word);
      break;
    case Kind::density:
      for (const char* word : {"kg/m3", "kg/m^3", "lb/ft^3", "g/ml", "g/cm3", "kg/l", "lb/cu ft"}) {
        out.emplace_back(word);
      }
      break;
    case Kind::linear_weight:
      for (const char* word : {"g/m", "oz/ft", "g/ft", "lb/ft", "kg/m"}) out.emplace_back(word);
      break;
    case Kind::pace:
      for (const char* word : {"min/m2", "min/ft2", "min/sq ft", "h/m2", "s/m2"}) {
        out.emplace_back(word);
      }
      break;
    default:
      break;
  }
  return out;
}

std::vector<std::string> spellings() {
  std::vector<std::string> out;
  for (const Kind kind :
       {Kind::length, Kind::area, Kind::volume, Kind::mass, Kind::areal_weight, Kind::density,
        Kind::linear_weight, Kind::duration, Kind::pace, Kind::temperature, Kind::percent}) {
    for (std::string& word : spellings(kind)) out.push_back(std::move(word));
  }
  return out;
}

}  // namespace wetout::units
