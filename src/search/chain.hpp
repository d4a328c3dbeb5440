// Labelling: the best order and starts of operations that follow one another, such as those of one
// board worked on by one person.
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

#include "domains.hpp"
#include "model.hpp"
#include "wetout/search/solve.hpp"

namespace wetout::search {

/// What one call may use.
struct Budget {
  std::function<bool()> step = {};  ///< once per label; true: stop
  std::uint64_t* extensions = nullptr;
  std::size_t memory_bytes = std::size_t{64} << 20U;
};

/// Starts per operation of a model (-1: does not take place), choices per group of the problem.
struct Found {
  std::vector<Slot> start = {};
  std::vector<int> choice = {};
  Value value = {};  ///< additive part
};

struct ChainOptions {
  int beam = 0;                          ///< labels kept per layer; 0: all, with proof
  std::optional<std::int64_t> last_end;  ///< nothing later is wanted
  std::function<void(const Found&)> found = {};
  std::function<void(const Value&)> bound = {};  ///< additive part
};

struct ChainResult {
  State state = State::stopped;
  std::optional<Found> best = {};
  Value bound = {};  ///< additive part
};

/// The model must be a chain (chain_fits). Exact unless the budget ends or a beam is asked for.
ChainResult solve_chain(const Model& model, const ChainOptions& options, const Budget& budget);

/// Additive parts first, then starts, then choices, as far as the objective has them.
bool better(const Model& model, const Found& a, const Found& b);

}  // namespace wetout::search
