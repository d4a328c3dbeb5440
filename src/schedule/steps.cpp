#include "wetout/schedule/steps.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "step_builder.hpp"
#include "wetout/base/check.hpp"
#include "wetout/laminate/order.hpp"

namespace wetout::schedule {
namespace {

constexpr double grid_minutes = 5.0;

}  // namespace

units::Duration on_grid_minutes(double m) {
  return units::minutes(grid_minutes * std::max(1.0, std::ceil(m / grid_minutes - 1e-3)));
}

board::Face other_face(board::Face face) {
  return face == board::Face::deck ? board::Face::bottom : board::Face::deck;
}
std::size_t side_of(board::Face face) { return face == board::Face::deck ? 0 : 1; }

base::Result<BoardSteps> StepBuilder::build() {
  auto order = laminate::order_of_coats(board_.coats);
  if (!order) return tl::unexpected(order.error());
  order_ = std::move(*order);
  begin();
  for (const std::size_t i : order_) {
    if (spec(i).kind == laminate::CoatKind::gloss) sand_hotcoats();
    coat(i);
  }
  finish_feathers();
  sand_hotcoats();
  spot();
  polish_glosses();
  add({.name = {"", StepWord::weigh, ""},
       .attended = on_grid_minutes(d_.weigh.value),
       .title = "Weigh the board"});
  return std::move(out_);
}

const resin::Product& StepBuilder::product(std::size_t i) const {
  const auto found =
      std::find_if(shop_.resins.begin(), shop_.resins.end(),
                   [&](const resin::Product& one) { return one.id == spec(i).resin; });
  base::promise(found != shop_.resins.end(), "a planned coat has a resin of the shop");
  return *found;
}

double StepBuilder::face_m2(board::Face face) const {
  return units::in_square_metres(face == board::Face::deck ? board_.plan.board.deck
                                                           : board_.plan.board.bottom);
}

int StepBuilder::add(Step step) {
  const int index = static_cast<int>(out_.steps.size());
  const When when = step.when;
  out_.steps.push_back(std::move(step));
  for (const int before : tails_) {
    link({.from = before, .moment = Moment::end, .to = index, .min = units::Duration{}});
  }
  // A step of one option stands beside what took place without it.
  if (when.group < 0) tails_.clear();
  tails_.push_back(index);
  return index;
}

int StepBuilder::add(std::size_t coat, StepWord word, std::string detail, double m,
                     std::string title, std::string how, bool dusty, When when) {
  const bool has_pace = has_own_pace(word);
  const auto own = shop_.step_pace.find(to_string(word));
  const double times = has_pace && own != shop_.step_pace.end() ? own->second : 1.0;
  return add({.name = {spec(coat).id, word, std::move(detail)},
              .coat = static_cast<int>(coat),
              .attended = on_grid_minutes(times * m),
              .usual_minutes = has_pace ? m : 0.0,
              .dusty = dusty,
              .title = std::move(title),
              .how = std::move(how),
              .when = when});
}

void StepBuilder::after(std::size_t coat, Moment moment, int to, When when) {
  link({.from = out_.wets[coat],
        .moment = moment,
        .to = to,
        .min = units::Duration{},
        .when = when});
}

int StepBuilder::group(std::string id, std::vector<std::string> options,
                       std::vector<std::string> texts) {
  out_.groups.push_back({std::move(id), std::move(options), std::move(texts)});
  return static_cast<int>(out_.groups.size()) - 1;
}

void StepBuilder::begin() {
  const int warm = add({.name = {"", StepWord::acclimatise, ""},
                        .attended = on_grid_minutes(d_.acclimatise.value),
                        .title = "Bring board, cloth and resin into the room",
                        .how = "until they are as warm as it is"});
  waits_.push_back({warm, d_.acclimatise_wait.value});
  const auto named = [&](const std::optional<units::Duration>& time, StepWord word,
                         std::string title, std::string how, double dries) {
    if (!time) return;
    const int step = add({.name = {"", word, ""},
                          .attended = on_grid_minutes(units::in_minutes(*time)),
                          .title = std::move(title),
                          .how = std::move(how)});
    waits_.push_back({step, dries});
  };
  named(board_.spackle, StepWord::spackle, "Fill dents and torn foam",
        "water-based spackle on polystyrene; sand flush when dry", d_.spackle_dries.value);
  named(board_.artwork, StepWord::artwork, "Artwork on the foam",
        "water-based paint on polystyrene", d_.artwork_dries.value);
}

void StepBuilder::spot() {
  if (!board_.spot) return;
  add({.name = {"", StepWord::spot, ""},
       .attended = on_grid_minutes(units::in_minutes(*board_.spot)),
       .title = "Spot pinholes and what was sanded through",
       .how = "a little resin, flush"});
}

std::string_view to_string(Moment moment) {
  if (moment == Moment::start) return "start";
  if (moment == Moment::end) return "end";
  return resin::to_string(*milestone(moment));
}

std::optional<resin::Milestone> milestone(Moment moment) {
  using M = resin::Milestone;
  switch (moment) {
    case Moment::start:
    case Moment::end:
      return std::nullopt;
    case Moment::gel:
      return M::gel;
    case Moment::trim_until:
      return M::trim_until;
    case Moment::recoat_from:
      return M::recoat_from;
    case Moment::tack_free:
      return M::tack_free;
    case Moment::handle:
      return M::handle;
    case Moment::sandable:
      return M::sandable;
    case Moment::recoat_until:
      return M::recoat_until;
    case Moment::full_cure:
      return M::full_cure;
  }
  base::broken_promise("every moment is known");
}

base::Result<BoardSteps> steps_of(const BoardWork& board, const laminate::Shop& shop,
                                  const StepDefaults& defaults) {
  return StepBuilder(board, shop, defaults).build();
}

}  // namespace wetout::schedule
