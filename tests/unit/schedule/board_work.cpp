#include "board_work.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "wetout/resin/answer_cache.hpp"

namespace wetout::schedule::sample {
namespace {

namespace demo = laminate::sample;

using units::hours;
using units::minutes;
using units::Temperature;

units::DurationRange just(units::Duration time) { return {time, time}; }

resin::Product epoxy(std::string id, std::string family) {
  resin::Product product = demo::slow();
  product.id = product.name = std::move(id);
  product.family = std::move(family);
  const Temperature air = Temperature::celsius(25);
  product.humidity_limit = 0.8;
  product.tg = Temperature::celsius(62);
  product.gel = {{air, just(hours(4)), {}}};
  product.tack_free = {{air, just(hours(6)), {}}};
  product.recoat = {{air, just(hours(5)), just(hours(14))}};
  product.sand = {{air, just(hours(24)), {}}};
  product.full_cure = {{air, just(hours(168)), {}}};
  return product;
}

}  // namespace

resin::Product kelp_slow() { return epoxy("kelp-slow", "kelp"); }

resin::Product kelp_quick() {
  resin::Product product = epoxy("kelp-quick", "kelp");
  const Temperature air = Temperature::celsius(25);
  product.pot_life = {{air, {minutes(20), minutes(24)}, units::grams(150)}};
  product.gel = {{air, just(minutes(100)), {}}};
  product.tack_free = {{air, just(hours(3)), {}}};
  product.recoat = {{air, just(hours(2)), just(hours(8))}};
  product.sand = {{air, just(hours(12)), {}}};
  product.full_cure = {{air, just(hours(120)), {}}};
  return product;
}

resin::Product reed() {
  resin::Product product = epoxy("reed", "");
  product.lowest_air.reset();
  product.humidity_limit.reset();
  return product;
}

resin::Product no_window() {
  resin::Product product = epoxy("no-window", "kelp");
  product.recoat.clear();
  return product;
}

resin::Product laminating_polyester() {
  resin::Product product = demo::polyester();
  product.id = product.name = "poly";
  product.family = "poly";
  return product;
}

resin::Product waxed_polyester() {
  resin::Product product = laminating_polyester();
  product.id = product.name = "poly-waxed";
  product.waxed = true;
  return product;
}

laminate::Shop shop() {
  laminate::Shop shop = demo::shop();
  shop.resins = {kelp_slow(), kelp_quick(),           reed(),
                 no_window(), laminating_polyester(), waxed_polyester()};
  return shop;
}

CoatSpec lam(std::string id, Face face, Laps laps, double lap_in) {
  CoatSpec coat = demo::laminate(std::move(id), face, laps);
  coat.resin = "kelp-slow";
  coat.plies.front().lap = units::inches(lap_in);
  return coat;
}

CoatSpec coat(std::string id, Face face, CoatKind kind, std::string resin) {
  CoatSpec coat = demo::film(std::move(id), face, kind);
  coat.resin = std::move(resin);
  return coat;
}

CoatSpec boxes(std::string id, Face face, std::string resin) {
  CoatSpec coat = demo::boxes();
  coat.id = coat.name = std::move(id);
  coat.face = face;
  coat.resin = std::move(resin);
  return coat;
}

std::vector<CoatSpec> usual_coats() {
  return {lam("bottom-lam", Face::bottom, Laps::cut), lam("deck-lam", Face::deck, Laps::free),
          boxes("boxes", Face::bottom), coat("bottom-hot", Face::bottom, CoatKind::hotcoat),
          coat("deck-hot", Face::deck, CoatKind::hotcoat)};
}

BoardWork planned(std::vector<CoatSpec> coats, double length_in, double width_in,
                  board::Foam foam) {
  static resin::MemoryCache cups;
  laminate::PlanInput input;
  input.board = demo::board_spec(length_in, width_in);
  input.board.foam = foam;
  input.coats = coats;
  input.shop = shop();
  input.air = input.shop.air;
  auto plan = make_plan(input, laminate::defaults(), &cups);
  if (!plan) {
    ADD_FAILURE() << demo::told(plan.error());
    return {};
  }
  BoardWork work;
  work.job = "sample";
  work.plan = std::move(*plan);
  work.coats = std::move(coats);
  return work;
}

BoardWork rough(std::vector<CoatSpec> coats, double square_metres) {
  BoardWork work;
  work.job = "rough";
  laminate::Plan& plan = work.plan;
  plan.air = Temperature::celsius(22);
  plan.board.deck = plan.board.bottom = plan.board.planform = units::square_metres(square_metres);
  plan.board.perimeter = units::metres(3.5);
  plan.board.volume = units::litres(30);
  for (const CoatSpec& coat : coats) {
    laminate::CoatNeed& need = plan.coats.emplace_back();
    need.id = coat.id;
    need.kind = coat.kind;
    need.face = coat.face;
    need.resin = coat.resin;
    need.batches.resize(1);
    need.spread = minutes(5 * square_metres);
    for (const laminate::PlySpec& spec : coat.plies) {
      laminate::PlyNeed& ply = plan.plies.emplace_back();
      ply.id = spec.id;
      ply.coat = coat.id;
      ply.area = units::square_metres(square_metres);
    }
  }
  work.coats = std::move(coats);
  return work;
}

BoardSteps steps(const BoardWork& board, const StepDefaults& defaults) {
  auto steps = steps_of(board, shop(), defaults);
  if (!steps) {
    ADD_FAILURE() << demo::told(steps.error());
    return {};
  }
  return std::move(*steps);
}

int find(const BoardSteps& steps, std::string_view name) {
  for (std::size_t i = 0; i < steps.steps.size(); ++i) {
    if (to_string(steps.steps[i].name) == name) return static_cast<int>(i);
  }
  return -1;
}

int find_group(const BoardSteps& steps, std::string_view id) {
  for (std::size_t g = 0; g < steps.groups.size(); ++g) {
    if (steps.groups[g].id == id) return static_cast<int>(g);
  }
  return -1;
}

std::vector<std::string> names(const BoardSteps& steps) {
  std::vector<std::string> all;
  for (const Step& step : steps.steps) all.push_back(to_string(step.name));
  return all;
}

std::vector<Link> links(const BoardSteps& steps, std::string_view from, std::string_view to) {
  const int a = find(steps, from), b = find(steps, to);
  std::vector<Link> found;
  for (const Link& link : steps.links) {
    if (a >= 0 && link.from == a && link.to == b) found.push_back(link);
  }
  return found;
}

bool waits(const BoardSteps& steps, std::string_view step, std::string_view from, Moment moment,
           When when) {
  const std::vector<Link> all = links(steps, from, step);
  return std::any_of(all.begin(), all.end(), [&](const Link& link) {
    return link.moment == moment && link.min && *link.min == units::Duration{} && !link.max &&
           link.when == when && !link.to_end && !link.good_film;
  });
}

}  // namespace wetout::schedule::sample
