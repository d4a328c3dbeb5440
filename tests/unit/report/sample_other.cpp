#include "sample.hpp"

namespace wetout::report::sample {
namespace {
constexpr const char* program = "wetout 0.1.0";
constexpr const char* made = "2026-05-02T18:20:00-07:00";
}  // namespace

MixDocument free_mix() {
  MixDocument mix;
  const PlanDocument of = plan();
  mix.program = of.program;
  mix.made = of.made;
  mix.resin = "slow";
  mix.asked = units::Milligrams(130'000);
  mix.ratio = of.plan.coats[2].ratio;
  mix.batch_count = 1;
  mix.batches = of.plan.coats[2].batches;
  mix.cautions = {of.plan.cautions[1].text};
  return mix;
}

base::Problems problems() {
  base::Problem wrong_unit{.code = "unit.missing",
                           .message = "A length needs its unit.",
                           .file = "boards/sandpiper.toml",
                           .line = 12,
                           .column = 10,
                           .key = "board.width.wide",
                           .found = "20.75",
                           .expected = "a length such as \"20 3/4 in\" or \"52.7 cm\"",
                           .source_line = "wide   = \"20.75\""};
  base::Problem missing{.code = "file.missing",
                        .message = "There is no such file.",
                        .file = "shop.tml",
                        .hint = "did you mean shop.toml?"};
  return {wrong_unit, missing};
}

CheckDocument check() {
  CheckDocument document{program, made, {}};
  document.files = {{"shop.toml", {}, {plan().plan.notices[2]}},
                    {"sandpiper.toml", problems(), {}}};
  return document;
}

JobsDocument jobs() {
  JobsDocument document{program, made, {}};
  document.jobs = {{"sandpiper-6-4", "Sandpiper 6-4", "2026-04-30T08:00:00-07:00", std::nullopt, 3,
                    "2026-05-02T18:20:00-07:00"},
                   {"old-log", "Longboard for the shed", "2025-01-11T10:00:00-08:00",
                    "2026-02-01T10:00:00-08:00", std::nullopt, std::nullopt}};
  return document;
}

LogDocument log() {
  return {.program = program,
          .made = made,
          .action = "check",
          .path = "/home/shaper/.local/share/wetout/log.db",
          .schema = 2,
          .size_bytes = 118784,
          .jobs = 2,
          .plans = 3,
          .schedules = 1,
          .events = 12,
          .documents = 8,
          .sound = false,
          .faults = {"page 7 is never used"},
          .copy = {}};
}

NewDocument fresh() {
  return {.program = program,
          .made = made,
          .files = {{"shop", "shop/shop.toml"}, {"job", "shop/board.toml"}},
          .next = "wetout plan shop/board.toml"};
}

ClothDocument cloth() {
  using units::metres;
  ClothDocument document;
  document.program = program;
  document.made = made;
  document.jobs = {{"heron", "Heron & Sons \"fish\" <6-4>", 2}, {"gannet", "Gannet", 0}};
  CutFrom remnant;
  remnant.cloth = "e4";
  remnant.name = "4 oz E-glass";
  remnant.is_remnant = remnant.proved = true;
  remnant.lot = "rest <1>";
  remnant.width = metres(0.4);
  remnant.take = remnant.bound = metres(0.6);
  remnant.one_by_one = metres(0.55);
  remnant.waste = units::square_metres(0.0475);
  remnant.waste_weight = units::Milligrams(6441);
  remnant.pieces = {{1, "heron", "deck-lam", "tail-patch", std::nullopt, metres(0.55), metres(0.35),
                     metres(0), metres(0)}};
  CutFrom roll;
  roll.cloth = "e6";
  roll.name = "6 oz E-glass";
  roll.width = metres(0.76);
  roll.take = metres(6.2);
  roll.one_by_one = metres(6.5);
  roll.bound = metres(6.1);
  roll.waste = units::square_metres(0.5);
  roll.waste_weight = units::Milligrams(101'700);
  roll.waste_cost = units::Money{387, "EUR"};
  roll.pieces = {
      {2, "gannet", "bottom-lam", "e6", "1 of 2", metres(2.9), metres(0.41), metres(0), metres(0)},
      {3, "gannet", "bottom-lam", "e6", "2 of 2", metres(2.9), metres(0.35), metres(0),
       metres(0.41)},
      {4, "heron", "deck-lam", "a-ply-of-a-very-long-name-indeed", std::nullopt, metres(3.3),
       metres(0.7), metres(2.9), metres(0)}};
  document.rolls = {remnant, roll};
  document.notices = {{.code = "cloth.seam",
                       .text = "wider than the roll: joined of 2 strips, which lie over each "
                               "other by",
                       .subject = "gannet bottom-lam/e6",
                       .value = 0.025,
                       .unit = "m"}};
  document.cautions = {"Cut edges of glass shed splinters."};
  return document;
}

}  // namespace wetout::report::sample
