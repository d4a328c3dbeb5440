// Another program that uses the installed library: areas of a board and a plan's resin.
#include <cstdio>

#include "wetout/board/hull.hpp"
#include "wetout/report/plan_document.hpp"
#include "wetout/resin/weigh.hpp"

int main() {
  using namespace wetout;
  board::Spec spec;
  spec.length = units::inches(72);
  spec.tail.shape = board::EndShape::round;
  spec.nose.shape = board::EndShape::round;
  spec.width = {{units::inches(0), units::inches(0)},
                {units::inches(36), units::inches(20)},
                {units::inches(72), units::inches(0)}};
  spec.thickness = {{units::inches(12), units::inches(1.5)},
                    {units::inches(36), units::inches(2.5)},
                    {units::inches(60), units::inches(1.5)}};
  spec.rail = {{units::inches(36), {0.5, 2.0}}};
  const auto hull = board::Hull::make(spec);
  if (!hull) return 1;
  const double planform = units::in_square_metres(hull->surfaces().planform.area);
  const auto mix = resin::weigh({.target = units::Milligrams(300'000),
                                 .hardener_per_resin = 0.5,
                                 .tolerance = 0.02,
                                 .additive_shares = {},
                                 .step = units::Milligrams(1000)});
  if (!mix) return 1;
  std::printf("planform %.3f m2, part A %.0f g, %s\n", planform, mix->part_a.in_grams(),
              std::string(report::plan_format).c_str());
  return planform > 0.6 && planform < 0.9 && mix->part_a.count() == 200'000 ? 0 : 1;
}
