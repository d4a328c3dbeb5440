#include "run.hpp"

#include <utility>

namespace wetout::search {
namespace {

constexpr std::uint64_t steps_between_looks = 64;
constexpr double seconds_a_day = 86400.0;

}  // namespace

bool Run::step() {
  ++steps_;
  if (limits_.max_steps != 0 && steps_ >= limits_.max_steps) stopped_ = true;
  if (stopped_) return true;
  return steps_ % steps_between_looks == 0 ? look() : false;
}

bool Run::look() {
  if (limits_.time_limit_s > 0.0 && left_s() <= 0.0) stopped_ = true;
  if (limits_.interrupted && limits_.interrupted()) stopped_ = true;
  tell();
  return stopped_;
}

double Run::left_s() const {
  return limits_.time_limit_s > 0.0 ? limits_.time_limit_s - elapsed_s() : seconds_a_day;
}

bool Run::offer(Schedule schedule) {
  Value value = evaluate(problem_, objective_, schedule);
  if (best_ && value >= value_) return false;
  best_ = std::move(schedule);
  value_ = std::move(value);
  tell();
  return true;
}

void Run::raise_bound(const Value& bound) {
  if (bound > bound_) bound_ = bound;
}

void Run::tell() {
  if (!limits_.progress) return;
  Progress progress;
  progress.elapsed_s = elapsed_s();
  progress.steps = steps_;
  progress.best = best_ ? &*best_ : nullptr;
  progress.value = best_ ? &value_ : nullptr;
  progress.bound = bound_.empty() ? nullptr : &bound_;
  limits_.progress(progress);
}

}  // namespace wetout::search
