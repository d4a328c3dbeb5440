// The rates that are learned: where each stands in the shop file, what is believed of it before
// anything was recorded.
#pragma once

#include <array>
#include <span>
#include <string>
#include <string_view>

#include "wetout/laminate/shop.hpp"
#include "wetout/learn/robust_fit.hpp"
#include "wetout/schedule/step_word.hpp"

namespace wetout::work {

/// What a coat takes is linear in these.
struct LossRate {
  std::string_view key;
  std::string_view unit;
  learn::Belief belief;  ///< the default, a quarter of its range
  /// In terms of the rate, and as shown.
  void (*set_rate)(laminate::Losses& losses, double value);
  void (*set)(laminate::Losses& losses, double shown);
  bool (*is_given)(const laminate::Losses& losses);
  /// As the shop file has it, and by how much that moves with the rate.
  double (*shown)(double value);
  double (*slope)(double value);
};
std::span<const LossRate> loss_rates();

struct PaceRate {
  std::string_view key;
  learn::Belief belief;  ///< min/m2
  std::optional<units::Pace> laminate::Spreading::*member;
};
std::span<const PaceRate> pace_rates();

/// "step.sand": how many times the usual minutes a step takes. Its belief.
std::string step_pace_of(schedule::StepWord word);
/// The word of the step; empty for another rate.
std::string_view step_of_pace(std::string_view key);
learn::Belief belief_of_step_pace();

/// "speed.slow": of a resin of the shop.
std::string speed_of(std::string_view resin);
/// The resin's id; empty for another rate.
std::string_view resin_of_speed(std::string_view key);

}  // namespace wetout::work
