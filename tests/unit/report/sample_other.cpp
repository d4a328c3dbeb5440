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

}  // namespace wetout::report::sample
