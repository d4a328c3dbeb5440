#include "random_coats.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "board_work.hpp"

namespace wetout::schedule::sample {
namespace {

std::string resin(Random& random) {
  constexpr std::array<const char*, 5> resins = {"kelp-slow", "kelp-slow", "kelp-quick", "reed",
                                                 "no-window"};
  return resins[static_cast<std::size_t>(random.between(0, 4))];
}

std::vector<CoatSpec> of_face(Random& random, Face face) {
  const std::string side = face == Face::deck ? "deck" : "bottom";
  std::vector<CoatSpec> coats;
  if (random.chance(20)) coats.push_back(coat(side + "-seal", face, CoatKind::seal));
  const int lams = random.chance(80) ? random.between(1, 2) : 0;
  for (int i = 1; i <= lams; ++i) {
    coats.push_back(lam(side + "-lam-" + std::to_string(i), face,
                        random.chance(50) ? Laps::cut : Laps::free, random.chance(80) ? 2.0 : 0.0));
  }
  if (random.chance(40)) coats.push_back(boxes(side + "-boxes", face));
  if (random.chance(70)) coats.push_back(coat(side + "-hot", face, CoatKind::hotcoat));
  if (random.chance(30)) coats.push_back(coat(side + "-gloss", face, CoatKind::gloss));
  for (CoatSpec& one : coats) one.resin = resin(random);
  return coats;
}

}  // namespace

std::vector<CoatSpec> random_coats(Random& random) {
  while (true) {
    std::vector<CoatSpec> deck = of_face(random, Face::deck);
    std::vector<CoatSpec> bottom = of_face(random, Face::bottom);
    std::vector<CoatSpec> all;
    std::size_t d = 0, b = 0;
    while (d < deck.size() || b < bottom.size()) {
      const bool from_deck = b == bottom.size() || (d < deck.size() && random.chance(50));
      all.push_back(from_deck ? std::move(deck[d++]) : std::move(bottom[b++]));
    }
    if (!all.empty()) return all;
  }
}

}  // namespace wetout::schedule::sample
