// What the labelling knows before it starts: who must come before whom, which places matter, what
// the rest costs at least.
#pragma once

#include <vector>

#include "domains.hpp"
#include "model.hpp"

namespace wetout::search {

/// Operation `first` before the other, whenever the arc is in force.
struct Before {
  int first = -1;
  int arc = -1;
};

struct ChainFrame {
  std::vector<std::vector<Before>> before = {};
  std::vector<bool> place_matters = {};
  std::vector<Value> least_cost = {};  ///< additive, per operation that takes place
};

/// True when one resource of count 1 is held by every operation from its start to its end, and the
/// objective has one set where it has sets: then everything happens one after the other.
bool chain_fits(const Model& model);

/// Sizes the frame to the open starts of `domains`.
ChainFrame make_frame(const Model& model, const Domains& domains);

/// What an operation adds to the additive part at least when it takes place; without LastEnd and
/// Visits.
Value least_cost(const Model& model, const Domains& domains, int op);

/// Adds `least` of an operation to a lower bound: all of it when it is sure to take place, only
/// what lowers the sum when it may.
void add_least_cost(const Model& model, const Domains& domains, int op, const Value& least,
                    Value& bound);

/// The resource that makes the chain; -1 when there is none.
int chain_place(const Model& model);

}  // namespace wetout::search
