// Amounts of goods as people say them.
#include <charconv>
#include <cmath>
#include <string>
#include <utility>

#include "stock_goods.hpp"
#include "wetout/base/check.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/base/table_text.hpp"
#include "wetout/units/milligrams.hpp"
#include "wetout/units/read.hpp"

namespace wetout::work {
namespace {

using joblog::MaterialUnit;

constexpr std::int64_t most_at_once = 10'000;

base::Problem about(std::string code, std::string message, std::string_view text) {
  return {.code = std::move(code),
          .message = std::move(message),
          .key = "AMOUNT",
          .found = base::shown(text)};
}

base::Problem fitting(base::Problem problem, const Good& good) {
  problem.key = "AMOUNT";
  switch (good.material.unit) {
    case MaterialUnit::milligram:
      problem.expected = good.density ? "a mass or a volume, e.g. \"5 kg\" or \"1 gal\""
                                      : "a mass, e.g. \"250 g\"";
      break;
    case MaterialUnit::micrometre:
      problem.expected = "a length off the roll, e.g. \"10 m\" or \"10 yd\"";
      break;
    case MaterialUnit::piece:
      problem.expected = "a number of pieces, e.g. 12";
      break;
  }
  if (good.any_unit) problem.expected = "an amount, e.g. \"250 g\", \"10 m\" or \"12 pieces\"";
  return problem;
}

struct Counted {
  std::int64_t count = 0;
  std::string_view rest;  ///< behind the number
};

// The whole number at the beginning; nothing for none, or one that goes on with a point.
std::optional<Counted> leading_count(std::string_view text) {
  Counted out;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), out.count);
  if (error != std::errc{} || out.count < 0) return std::nullopt;
  out.rest = base::trimmed(text.substr(static_cast<std::size_t>(end - text.data())));
  if (out.rest.starts_with('.') || out.rest.starts_with(',')) return std::nullopt;
  return out;
}

bool is_one_of(std::string_view word, std::initializer_list<std::string_view> words) {
  for (const std::string_view one : words) {
    if (word == one) return true;
  }
  return false;
}

// Behind "2 x", "2x", "2 ×": what there are two of.
std::optional<std::string_view> behind_times(std::string_view rest) {
  for (const std::string_view mark : {"x", "X", "\xc3\x97"}) {
    if (rest.starts_with(mark)) return base::trimmed(rest.substr(mark.size()));
  }
  return std::nullopt;
}

base::Result<std::int64_t> rounded(double units, std::string_view text, const Good& good,
                                   Least least) {
  if (units < 0.0) {
    return base::fail(fitting(about("value.range", "an amount is not below zero", text), good));
  }
  if (units > static_cast<double>(joblog::most_of_a_line)) {
    return base::fail(fitting(about("value.range", "this is more than any shop has", text), good));
  }
  const std::int64_t whole = std::llround(units);
  if (whole == 0 && least == Least::something) {
    return base::fail(fitting(about("value.range", "an amount must be above zero", text), good));
  }
  return whole;
}

base::Problems named(base::Problems problems, const Good& good) {
  for (base::Problem& problem : problems) {
    std::string hint = std::move(problem.hint);
    problem = fitting(std::move(problem), good);
    problem.hint = std::move(hint);
  }
  return problems;
}

base::Result<std::int64_t> by_mass(std::string_view text, const Good& good, Least least) {
  const auto read = units::read_mass_or_volume(text);
  if (!read) return base::fail(named(read.error(), good));
  if (read->is_volume && !good.density) {
    base::Problem problem =
        about("amount.density", "a volume is not enough: the shop file gives no density", text);
    problem.expected = "a mass, e.g. \"250 g\"";
    problem.hint = "or add density = \"1.1 g/ml\" to \"" + good.material.slug + "\" in it";
    return base::fail(std::move(problem));
  }
  const units::Mass mass = read->is_volume ? *good.density * read->volume : read->mass;
  return rounded(units::in_grams(mass) * 1e3, text, good, least);
}

base::Result<std::int64_t> by_length(std::string_view text, const Good& good, Least least) {
  const auto read = units::read_length(text);
  if (!read) return base::fail(named(read.error(), good));
  return rounded(units::in_metres(*read) * 1e6, text, good, least);
}

base::Result<std::int64_t> by_pieces(std::string_view text, const Good& good, Least least) {
  std::string_view body = text;
  const bool negative = body.starts_with('-');
  if (negative) body.remove_prefix(1);
  const auto counted = leading_count(body);
  if (!counted || !is_one_of(counted->rest, {"", "piece", "pieces", "pc", "pcs"})) {
    return base::fail(
        fitting(about("amount.pieces", "this is counted in whole pieces", text), good));
  }
  return rounded(static_cast<double>(negative ? -counted->count : counted->count), text, good,
                 least);
}

// The first kind of unit that the text has.
void settle_unit(std::string_view text, Good& good) {
  if (!good.any_unit) return;
  const auto count = leading_count(text);
  if (units::read_length(text)) {
    good.material.unit = MaterialUnit::micrometre;
  } else if (count && is_one_of(count->rest, {"", "piece", "pieces", "pc", "pcs"})) {
    good.material.unit = MaterialUnit::piece;
  } else {
    good.material.unit = MaterialUnit::milligram;
    if (!units::read_mass_or_volume(text)) return;
  }
  good.any_unit = false;
}

base::Result<std::int64_t> in_packs(std::int64_t count, std::string_view text, const Good& good,
                                    Least least) {
  std::vector<std::pair<std::int64_t, std::string>> sizes;
  for (const laminate::Pack& pack : good.packs) {
    if (const auto size = holds(pack, good)) sizes.emplace_back(*size, pack_text(pack));
  }
  if (sizes.size() == 1) {
    return rounded(static_cast<double>(count) * static_cast<double>(sizes.front().first), text,
                   good, least);
  }
  base::Problem problem = about("amount.pack", "", text);
  if (sizes.empty()) {
    problem.message = "the shop file has no packs of \"" + good.material.slug + "\"";
    return base::fail(fitting(std::move(problem), good));
  }
  problem.message = "\"" + good.material.slug + "\" is sold in several packs";
  std::string list;
  for (const auto& [size, name] : sizes) list += (list.empty() ? "" : ", ") + name;
  problem.expected = "how many of which, e.g. \"" + std::to_string(count) + " x " +
                     sizes.front().second + "\"; packs are " + list;
  return base::fail(std::move(problem));
}

}  // namespace

base::Result<std::int64_t> read_amount(std::string_view text, Good& good, Least least) {
  const std::string_view body = base::trimmed(text);
  const auto counted = leading_count(body);
  if (counted && is_one_of(counted->rest, {"pack", "packs"})) {
    return in_packs(counted->count, text, good, least);
  }
  if (const auto each = counted ? behind_times(counted->rest) : std::nullopt) {
    if (counted->count < 1 || counted->count > most_at_once) {
      return base::fail(about("value.range", "so many at once make no sense", text));
    }
    const auto one = read_amount(*each, good, least);
    if (!one) return one;
    return rounded(static_cast<double>(*one) * static_cast<double>(counted->count), text, good,
                   least);
  }
  settle_unit(body, good);
  switch (good.material.unit) {
    case MaterialUnit::milligram:
      return by_mass(body, good, least);
    case MaterialUnit::micrometre:
      return by_length(body, good, least);
    case MaterialUnit::piece:
      return by_pieces(body, good, least);
  }
  base::broken_promise("unit of a material outside its list");
}

}  // namespace wetout::work
