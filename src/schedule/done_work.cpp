#include "done_work.hpp"

#include <algorithm>
#include <functional>
#include <utility>

namespace wetout::schedule {
namespace {

using resin::Milestone;

bool waits_for_a_coat(const BoardSetting& board) {
  return std::any_of(board.steps.wets.begin(), board.steps.wets.end(), [&](int wet) {
    const auto i = static_cast<std::size_t>(wet);
    return !board.facts[i] && !board.passed[i];
  });
}

struct Soft {
  double until_s = 0.0;
  std::size_t board = 0, step = 0;
  friend auto operator<=>(const Soft&, const Soft&) = default;
};

}  // namespace

DoneWork done_work(const Setting& setting) {
  DoneWork done;
  std::vector<Soft> last;  // film of each board
  for (std::size_t b = 0; b < setting.boards.size(); ++b) {
    const BoardSetting& board = setting.boards[b];
    done.films.emplace_back(board.facts.size());
    done.holds_stand.emplace_back(board.facts.size(), false);
    std::optional<Soft> latest;
    for (std::size_t i = 0; i < board.facts.size(); ++i) {
      const auto& fact = board.facts[i];
      if (!fact) continue;
      const Step& step = board.steps.steps[i];
      if (step.dusty) {
        done.settled_s = std::max(done.settled_s, setting.grid.seconds(fact->end) +
                                                      setting.defaults.dust_settles.value * 60.0);
      }
      if (!step.is_wet()) continue;
      auto& film = done.films[b][i];
      film = film_of(setting, board, step.coat, fact->start, fact->end, &*fact);
      latest = std::max(latest, std::optional(Soft{(*film)[Milestone::handle], b, i}));
    }
    if (!latest) continue;
    last.push_back(*latest);
    const bool soft = latest->until_s > setting.begin * setting.grid.step_s();
    if (!soft && waits_for_a_coat(board)) ++done.lying;
  }
  std::sort(last.begin(), last.end(), std::greater<>());
  if (last.size() > static_cast<std::size_t>(setting.stands)) {
    last.resize(static_cast<std::size_t>(setting.stands));
  }
  for (const Soft& film : last) done.holds_stand[film.board][film.step] = true;
  return done;
}

}  // namespace wetout::schedule
