// The best starts, and how far that is proved.
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "wetout/search/objective.hpp"

namespace wetout::search {

enum class Engine {
  automatic,
  chain,    ///< labelling: one person, everything one after the other
  general,  ///< branch and bound by precedence: any problem
  many,     ///< insertion, neighbourhoods, bound by spans: boards that share people and places
};

std::string_view to_string(Engine engine);

struct Progress {
  double elapsed_s = 0.0;   ///< 0 without a clock
  std::uint64_t steps = 0;  ///< labels, nodes or trials so far
  const Schedule* best = nullptr;
  const Value* value = nullptr;  ///< of `best`
  const Value* bound = nullptr;  ///< no schedule is better than this
};

/// The library reads no clock: `elapsed_s` returns seconds since a moment of the caller's choice,
/// usually the call. Callbacks are called from the calling thread, every few milliseconds and
/// whenever a better schedule is found; they must not throw.
struct Limits {
  std::function<double()> elapsed_s = {};
  double time_limit_s = 0.0;  ///< 0: none
  std::function<bool()> interrupted = {};
  std::function<void(const Progress&)> progress = {};
  std::size_t memory_bytes = std::size_t{64} << 20U;  ///< of labels, about
  std::uint64_t max_steps = 0;                        ///< 0: none; the same answer on every machine
  std::uint64_t seed = 1;                             ///< of the neighbourhoods
  Engine engine = Engine::automatic;
};

enum class State {
  proved,      ///< no schedule of this problem is better
  infeasible,  ///< proved: no schedule keeps the rules
  feasible,    ///< stopped with a schedule; `bound` says how good it may still get
  stopped,     ///< stopped without one
};

std::string_view to_string(State state);

struct Effort {
  Engine engine = Engine::automatic;  ///< which one answered
  std::uint64_t steps = 0;            ///< labels, nodes or trials
  std::uint64_t extensions = 0;       ///< starts tried
};

/// The proof is of the problem as given on its grid, not of the world.
struct Answer {
  State state = State::stopped;
  Schedule schedule = {};  ///< empty unless proved or feasible
  Value value = {};
  /// Lexicographic lower bound: equal to `value` when proved. For boards that share places it
  /// bounds the first term only, the other terms by what is trivially true.
  Value bound = {};
  std::string bound_leaves_out = {};  ///< what the bound does not see; empty when proved
  Effort effort = {};
};

/// Malformed input is a std::logic_error (see check()).
/// The same input gives the same answer unless time or an interruption stops it.
Answer solve(const Problem& problem, const Objective& objective, const Limits& limits = {});

/// (value - bound) / value of the first term, 0 when proved; nothing without a schedule or when the
/// value is 0.
std::optional<double> gap(const Answer& answer);

/// The starts of each operation that arc consistency leaves open, with the options that it rules
/// out taken away: what is missing here is impossible, what is there may still be. Empty vector
/// when it proves that nothing fits.
std::vector<Bits> possible_starts(const Problem& problem);

}  // namespace wetout::search
