// General cautions of the trade (common practice, no source, unless a reference stands beside one).
// They defer to the product's safety data sheet, local rules and licensed practice.
#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "lookup.hpp"
#include "parts_of_plan.hpp"

namespace wetout::laminate {

std::vector<std::string> mixing_cautions(resin::Chemistry chemistry) {
  if (chemistry == resin::Chemistry::polyester) {
    return {
        "A cup left standing gets hot, smokes, can burn: carry it outside onto something that "
        "cannot burn. Resin rags spread out, never in a heap.",
        "Catalyst (an organic peroxide) blinds: goggles on; in the eye, rinse with water at once "
        "and for long, then a doctor. Never let it meet a promoter or an amine: fire, explosion. "
        "No more than the sheet's dose.",
        "Styrene vapour burns and makes ill: no flame, no glowing element, air through the room, "
        "a mask for organic vapour, gloves and sleeves. Acetone likewise.",
        "Safety data sheets, local rules and licensed practice come first."};
  }
  return {
      "A cup left standing gets hot, smokes, can burn: spread it out, or carry it outside onto "
      "something that cannot burn; never on foam or in a bin. Mix nothing you cannot use before "
      "you leave.",
      "Nitrile gloves, sleeves, eye protection, fresh air: uncured epoxy burns and can sensitise "
      "for life. Never solvent on skin: wipe, then soap and water.",
      "Safety data sheets, local rules and licensed practice come first."};
}

std::vector<Caution> cautions_of(const PlanInput& input) {
  std::vector<Caution> cautions;
  const auto say = [&](std::string step, std::string text) {
    cautions.push_back({std::move(step), std::move(text)});
  };
  for (const resin::Chemistry chemistry : {resin::Chemistry::epoxy, resin::Chemistry::polyester}) {
    const bool used =
        std::any_of(input.coats.begin(), input.coats.end(), [&](const CoatSpec& coat) {
          return get(input.shop.resins, coat.resin).chemistry == chemistry;
        });
    if (!used) continue;
    for (std::string& text : mixing_cautions(chemistry)) {
      const auto same = [&](const Caution& said) { return said.text == text; };
      if (std::none_of(cautions.begin(), cautions.end(), same)) say("all", std::move(text));
    }
  }
  say("all", "Heaters: ventilate, never unattended, no open flame or glowing element near vapour.");
  const bool polystyrene = input.board.foam != board::Foam::pu;
  say("all",
      polystyrene
          ? "Polystyrene core: no acetone, solvent spackle, spray paint or contact glue; out "
            "of the sun and out of hot cars, glassed or not."
          : "Out of the sun and out of hot cars while it cures: a warming core blows bubbles.");
  for (const CoatSpec& coat : input.coats) {
    switch (coat.kind) {
      case CoatKind::laminate:
        say(coat.id,
            coat.laps == Laps::cut
                ? "Trim laps with a fresh blade, away from your hand; cut glass edges are needles. "
                  "Resin rags and trimmings: spread out, not in a heap."
                : "Wet down the lap's edge. Resin rags: spread out, not in a heap.");
        break;
      case CoatKind::install:
        say(coat.id,
            "A filled hole is a small cup: it heats. Fill deep gaps in two goes; routing makes "
            "foam dust and static: mask, goggles, extraction.");
        break;
      case CoatKind::hotcoat:
      case CoatKind::gloss:
        say(coat.id,
            "Sand only when cured: dust of partly cured epoxy sensitises. Dust mask (P2, N95 or "
            "better), extraction or wet sanding, eyes covered.");
        break;
      case CoatKind::seal:
        say(coat.id, "Sanding foam before: dust mask, eyes covered, dust swept up, no sparks.");
        break;
    }
  }
  return cautions;
}

}  // namespace wetout::laminate
