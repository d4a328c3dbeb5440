#include "wetout/search/solve.hpp"

#include <algorithm>
#include <utility>

#include "chain.hpp"
#include "chain_frame.hpp"
#include "domains.hpp"
#include "general.hpp"
#include "many.hpp"
#include "model.hpp"
#include "run.hpp"
#include "wetout/base/check.hpp"

namespace wetout::search {
namespace {

Schedule to_schedule(const Model& model, const Found& found) {
  Schedule schedule;
  schedule.choice = found.choice;
  schedule.start.resize(model.problem->ops.size());
  for (std::size_t i = 0; i < model.ops.size(); ++i) {
    if (found.start[i] >= 0) schedule.start[at(model.ops[i].id)] = found.start[i];
  }
  return schedule;
}

Budget budget(Run& run) {
  return {[&run] { return run.step(); }, &run.extensions, run.limits().memory_bytes};
}

State run_chain(const Model& model, Run& run) {
  ChainOptions options;
  options.found = [&](const Found& found) { run.offer(to_schedule(model, found)); };
  options.bound = [&](const Value& bound) { run.raise_bound(bound); };
  const ChainResult result = solve_chain(model, options, budget(run));
  if (result.best) run.offer(to_schedule(model, *result.best));
  return result.state;
}

State run_general(const Model& model, Run& run) {
  General general(model, budget(run));
  general.found = [&](const Found& found) { run.offer(to_schedule(model, found)); };
  const State state = general.run();
  run.raise_bound(general.bound());
  return state;
}

/// Below this many operations branch and bound proves more than insertion can.
constexpr std::size_t few_ops = 24;

bool some_are_away(const Problem& problem) {
  return std::any_of(problem.resources.begin(), problem.resources.end(),
                     [](const Resource& resource) { return !resource.away.empty(); });
}

Engine choose_engine(const Problem& problem, const Objective& objective, const Model& model) {
  const bool away = some_are_away(problem);
  if ((problem.ops.size() > few_ops || away) && many_fits(problem, objective)) return Engine::many;
  return chain_fits(model) ? Engine::chain : Engine::general;
}

}  // namespace

Answer solve(const Problem& problem, const Objective& objective, const Limits& limits) {
  check(problem);
  check(objective, problem);
  Run run(problem, objective, limits);
  const Model model = compile(problem, objective);
  Answer answer;
  answer.effort.engine =
      limits.engine != Engine::automatic ? limits.engine : choose_engine(problem, objective, model);
  if (answer.effort.engine == Engine::chain) {
    base::promise(chain_fits(model), "search: this problem is no chain");
    answer.state = run_chain(model, run);
  } else if (answer.effort.engine == Engine::many) {
    base::promise(many_fits(problem, objective), "search: this problem has no parts");
    answer.state = Many(problem, objective, run).solve();
    const bool general = answer.state == State::stopped && !run.stopped();
    if (general && !some_are_away(problem)) answer.state = run_general(model, run);
    answer.bound_leaves_out = "people, room modes, where in its span work lies, later terms";
  } else {
    base::promise(!some_are_away(problem), "search: with some away a problem is of chains");
    answer.state = run_general(model, run);
  }
  if (answer.state == State::proved) answer.bound_leaves_out.clear();
  if (run.best()) {
    answer.schedule = *run.best();
    answer.value = run.value();
  }
  answer.bound = answer.state == State::proved ? answer.value : run.bound();
  answer.effort.steps = run.steps();
  answer.effort.extensions = run.extensions;
  return answer;
}

}  // namespace wetout::search
