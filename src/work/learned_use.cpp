#include "learned_use.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <functional>
#include <optional>
#include <utility>

#include "learned_rates.hpp"
#include "wetout/laminate/defaults.hpp"
#include "wetout/learn/newsvendor.hpp"
#include "wetout/resin/speed.hpp"

namespace wetout::work {
namespace {

constexpr std::string_view margin_of = "margin.";

double stays_in_cups(const laminate::CoatNeed& coat, const JobAndShop& both) {
  const units::Mass left_in_cup =
      both.shop.shop.losses.left_in_cup.value_or(laminate::defaults().left_in_cup.value);
  return units::in_grams(left_in_cup) * static_cast<double>(coat.batches.size());
}

// Before so many coats of a kind were weighed, a margin would be made of not knowing.
constexpr int known_from = 3;

bool is_known(laminate::CoatKind kind, const Learned& learned) {
  if (kind == laminate::CoatKind::install) return false;
  return known_from <= std::count_if(learned.records.begin(), learned.records.end(),
                                     [&](const WeighedRecord& record) {
                                       return record.of == RecordOf::resin && record.kind == kind;
                                     });
}

// In minor units, of both parts as the plan buys them; nothing where one has no price.
std::optional<double> cost_of_a_gram(const laminate::CoatNeed& coat,
                                     const laminate::Totals& totals) {
  double cost = 0.0;
  double mass = 0.0;
  for (const laminate::Batch& batch : coat.batches) {
    for (const laminate::Pour& pour : batch.pours) {
      const auto bought = std::find_if(
          totals.materials.begin(), totals.materials.end(),
          [&](const laminate::MaterialTotal& one) { return one.material == pour.what; });
      if (bought == totals.materials.end() || !bought->cost || bought->unit != "g" ||
          bought->amount <= 0.0) {
        return std::nullopt;
      }
      cost += static_cast<double>(bought->cost->minor) / bought->amount * pour.add.in_grams();
      mass += pour.add.in_grams();
    }
  }
  if (mass <= 0.0) return std::nullopt;
  return cost / mass;
}

// A line of what was learned: "uptake.eps 71.9", "speed.slow 1.08 0.06".
struct Line {
  std::string_view key;
  double value = 0.0;
  std::optional<double> spread = {};
};

std::string to_text(const Line& line) {
  std::string text = fmt::format("{} {:.9g}", line.key, line.value);
  if (line.spread) text += fmt::format(" {:.3g}", *line.spread);
  return text + "\n";
}

void each_line(std::string_view text, const std::function<void(const Line&)>& read) {
  while (!text.empty()) {
    const std::string_view line = text.substr(0, text.find('\n'));
    text.remove_prefix(std::min(text.size(), line.size() + 1));
    const std::size_t space = line.find(' ');
    if (space == std::string_view::npos) continue;
    const char* const end = line.data() + line.size();
    Line out{.key = line.substr(0, space)};
    const auto value = std::from_chars(line.data() + space + 1, end, out.value);
    if (double spread = 0.0;
        value.ptr != end && std::from_chars(value.ptr + 1, end, spread).ec == std::errc()) {
      out.spread = spread;
    }
    read(out);
  }
}

// True when the rate is one of these and the shop has not said it.
bool put(const Line& line, laminate::Shop& shop) {
  const auto& [key, value, spread] = line;
  for (const LossRate& rate : loss_rates()) {
    if (rate.key != key) continue;
    if (rate.is_given(shop.losses)) return false;
    rate.set(shop.losses, value);
    return true;
  }
  if (const std::string_view step = step_of_pace(key); !step.empty()) {
    return shop.step_pace.emplace(step, value).second;
  }
  if (const std::string_view id = resin_of_speed(key); !id.empty()) {
    for (resin::Product& product : shop.resins) {
      if (product.id != id || product.speed) continue;
      product = resin::at_speed(product, value);
      product.speed_spread = spread;
      return true;
    }
    return false;
  }
  for (const PaceRate& rate : pace_rates()) {
    if (rate.key != key) continue;
    auto& pace = shop.pace.*rate.member;
    if (pace) return false;
    pace = units::minutes_per_square_metre(value);
    return true;
  }
  return false;
}

}  // namespace

Learned learned_by(const Workshop& workshop) {
  if (!joblog::Log::exists(workshop.log)) return {};
  return learned_from(joblog::Log::open(workshop.log));
}

std::string usable(const Learned& learned) {
  std::string text;
  for (const LearnedRate& rate : learned.rates) {
    if (rate.records == 0) continue;
    Line line{.key = rate.key, .value = rate.value};
    if (!resin_of_speed(rate.key).empty()) line.spread = rate.spread / rate.value;
    text += to_text(line);
  }
  return text;
}

void use_learned(JobAndShop& both, std::string_view text) {
  each_line(text, [&](const Line& line) {
    bool is_used = false;
    if (line.key.starts_with(margin_of)) {
      is_used = !both.shop.shop.losses.margin;
      if (is_used) both.margins[std::string(line.key.substr(margin_of.size()))] = line.value;
    } else {
      is_used = put(line, both.shop.shop);
    }
    if (is_used) both.learned += to_text(line);
  });
}

std::string margins_for(const Learned& learned, const JobAndShop& both,
                        const laminate::Plan& plan) {
  std::string text;
  if (!both.shop.short_coat) return text;
  const auto next = predictions(learned, both);
  for (std::size_t i = 0; i < next.size() && i < plan.coats.size(); ++i) {
    const laminate::CoatNeed& coat = plan.coats[i];
    const auto minor_per_gram = cost_of_a_gram(coat, plan.totals);
    if (!minor_per_gram || !is_known(coat.kind, learned)) continue;
    const double wanted =
        learn::best_quantity(next[i], static_cast<double>(both.shop.short_coat->minor),
                             *minor_per_gram) +
        stays_in_cups(coat, both);
    const double without = (coat.kept + coat.losses).in_grams();
    const double share = std::clamp(wanted / without - 1.0, 0.0, 1.0);
    text += fmt::format("{}{} {:.3f}\n", margin_of, coat.id, share);
  }
  return text;
}

std::string in_words(std::string_view text) {
  std::string words;
  each_line(text, [&](const Line& line) {
    const auto& [key, value, spread] = line;
    if (key.starts_with(margin_of)) {
      words += fmt::format("{}margin of {} {:.0f} %", words.empty() ? "" : ", ",
                           key.substr(margin_of.size()), value * 100.0);
      return;
    }
    const bool is_times = !resin_of_speed(key).empty() || !step_of_pace(key).empty();
    std::string_view unit = is_times ? "" : "min/m2";
    for (const LossRate& rate : loss_rates()) {
      if (rate.key == key) unit = rate.unit;
    }
    words += words.empty() ? "" : ", ";
    words += fmt::format("{} {:.3g}", key, value);
    if (!unit.empty()) words += fmt::format(" {}", unit);
  });
  return words;
}

base::Notices chances_short(const Learned& learned, const JobAndShop& both,
                            const laminate::Plan& plan) {
  base::Notices notices;
  const auto next = predictions(learned, both);
  for (std::size_t i = 0; i < next.size() && i < plan.coats.size(); ++i) {
    const laminate::CoatNeed& coat = plan.coats[i];
    if (coat.kind == laminate::CoatKind::install) continue;
    const double chance = next[i].chance_above(coat.mix.in_grams() - stays_in_cups(coat, both));
    notices.push_back({.code = "plan.short_chance",
                       .text = "chance that " + coat.name + " runs short, by the records",
                       .subject = coat.id,
                       .value = std::round(chance * 1e4) / 1e4,
                       .unit = "share"});
  }
  return notices;
}

base::Result<laminate::Plan> plan_as_learned(const Workshop& workshop, JobAndShop& both,
                                             const MixingChoices& choices, const Learned& learned) {
  use_learned(both, usable(learned));
  auto planned = plan_of(workshop, both, choices);
  if (!planned || both.learned.empty()) return planned;
  if (const std::string margins = margins_for(learned, both, *planned); !margins.empty()) {
    use_learned(both, margins);
    planned = plan_of(workshop, both, choices);
    if (!planned) return planned;
  }
  for (base::Notice& odds : chances_short(learned, both, *planned)) {
    planned->notices.push_back(std::move(odds));
  }
  return planned;
}

}  // namespace wetout::work
