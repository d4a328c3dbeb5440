#include "learned_use.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <functional>
#include <optional>

#include "learned_rates.hpp"
#include "wetout/laminate/defaults.hpp"

namespace wetout::work {
namespace {

// Calls read(key, value) for each line.
void each_line(std::string_view text, const std::function<void(std::string_view, double)>& read) {
  while (!text.empty()) {
    const std::string_view line = text.substr(0, text.find('\n'));
    text.remove_prefix(std::min(text.size(), line.size() + 1));
    const std::size_t space = line.find(' ');
    if (space == std::string_view::npos) continue;
    double value = 0.0;
    std::from_chars(line.data() + space + 1, line.data() + line.size(), value);
    read(line.substr(0, space), value);
  }
}

// True when the rate is one of these and the shop has not said it.
bool put(std::string_view key, double value, laminate::Shop& shop) {
  for (const LossRate& rate : loss_rates()) {
    if (rate.key != key) continue;
    if (rate.is_given(shop.losses)) return false;
    rate.set(shop.losses, value);
    return true;
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
    if (rate.records > 0) text += fmt::format("{} {:.9g}\n", rate.key, rate.value);
  }
  return text;
}

void use_learned(JobAndShop& both, std::string_view text) {
  each_line(text, [&](std::string_view key, double value) {
    if (put(key, value, both.shop.shop)) both.learned += fmt::format("{} {:.9g}\n", key, value);
  });
}

std::string in_words(std::string_view text) {
  std::string words;
  each_line(text, [&](std::string_view key, double value) {
    std::string_view unit = "min/m2";
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
  const units::Mass left_in_cup =
      both.shop.shop.losses.left_in_cup.value_or(laminate::defaults().left_in_cup.value);
  for (std::size_t i = 0; i < next.size() && i < plan.coats.size(); ++i) {
    const laminate::CoatNeed& coat = plan.coats[i];
    if (coat.kind == laminate::CoatKind::install) continue;
    const double stays = units::in_grams(left_in_cup) * static_cast<double>(coat.batches.size());
    const double chance = next[i].chance_above(coat.mix.in_grams() - stays);
    notices.push_back({.code = "plan.short_chance",
                       .text = "chance that " + coat.name + " runs short, by the records",
                       .subject = coat.id,
                       .value = std::round(chance * 1e4) / 1e4,
                       .unit = "share"});
  }
  return notices;
}

}  // namespace wetout::work
