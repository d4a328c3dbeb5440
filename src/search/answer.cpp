#include "domains.hpp"
#include "model.hpp"
#include "wetout/search/solve.hpp"

namespace wetout::search {

std::string_view to_string(Engine engine) {
  switch (engine) {
    case Engine::automatic:
      return "automatic";
    case Engine::chain:
      return "chain";
    case Engine::general:
      return "general";
    case Engine::many:
      return "many";
  }
  return "";
}

std::string_view to_string(State state) {
  switch (state) {
    case State::proved:
      return "proved";
    case State::infeasible:
      return "infeasible";
    case State::feasible:
      return "feasible";
    case State::stopped:
      return "stopped";
  }
  return "";
}

std::optional<double> gap(const Answer& answer) {
  if (answer.state == State::proved) return 0.0;
  if (answer.value.empty() || answer.bound.empty() || answer.value[0] == 0) return std::nullopt;
  const auto value = static_cast<double>(answer.value[0]);
  return (value - static_cast<double>(answer.bound[0])) / value;
}

std::vector<Bits> possible_starts(const Problem& problem) {
  check(problem);
  const Model model = compile(problem, {});
  Propagator propagator(model);
  Domains domains;
  if (!propagator.init(domains) || !propagator.probe(domains)) return {};
  return domains.starts;
}

}  // namespace wetout::search
