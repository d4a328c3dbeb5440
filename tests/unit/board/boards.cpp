#include "boards.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace wetout::board {

using units::inches;
using units::Length;
using units::metres;

Spec spec_of(const MeasuringPoints& p) {
  Spec spec;
  const double wide = 0.5 * p.length + p.wide_offset;
  spec.length = inches(p.length);
  spec.tail.shape = p.tail_shape;
  spec.tail.depth = inches(p.notch);
  spec.nose.shape = p.nose_shape;
  spec.wide_point = inches(wide);
  spec.width = {{inches(0), inches(p.tail)},
                {inches(12), inches(p.tail12)},
                {inches(wide), inches(p.wide)},
                {inches(p.length - 12), inches(p.nose12)},
                {inches(p.length), inches(0)}};
  spec.thickness = {{inches(12), inches(p.thick_tail12)},
                    {inches(0.5 * p.length), inches(p.thick_centre)},
                    {inches(p.length - 12), inches(p.thick_nose12)}};
  spec.rocker = {{inches(0), inches(p.rocker_tail)},
                 {inches(12), inches(p.rocker_tail12)},
                 {inches(0.5 * p.length), inches(0)},
                 {inches(p.length - 12), inches(p.rocker_nose12)},
                 {inches(p.length), inches(p.rocker_nose)}};
  spec.rail = {{Length{}, {p.apex_share, p.exponent}}};
  return spec;
}

const std::vector<Named>& shapes() {
  static const std::vector<Named> all = [] {
    MeasuringPoints example;
    MeasuringPoints shortboard;
    shortboard.length = 74;
    shortboard.nose12 = 11.5;
    shortboard.wide = 18.75;
    shortboard.wide_offset = 0;
    shortboard.tail12 = 14.25;
    shortboard.tail = 5;
    shortboard.nose_shape = EndShape::point;
    MeasuringPoints fish;
    fish.length = 66;
    fish.nose12 = 15.5;
    fish.wide = 21.25;
    fish.wide_offset = 2;
    fish.tail12 = 16;
    fish.tail = 9;
    fish.tail_shape = EndShape::swallow;
    fish.notch = 4;
    MeasuringPoints longboard;
    longboard.length = 110;
    longboard.nose12 = 18;
    longboard.wide = 22.75;
    longboard.wide_offset = 2;
    longboard.tail12 = 14.5;
    longboard.apex_share = 0.5;
    longboard.exponent = 2.0;
    MeasuringPoints gun;
    gun.length = 110;
    gun.nose12 = 11;
    gun.wide = 19.5;
    gun.wide_offset = 5;
    gun.tail12 = 10.5;
    gun.tail = 0;
    gun.nose_shape = gun.tail_shape = EndShape::point;
    gun.exponent = 2.0;
    MeasuringPoints round_pin;
    round_pin.length = 78;
    round_pin.wide = 19.5;
    round_pin.wide_offset = -1;
    round_pin.tail12 = 14;
    round_pin.tail = 0;
    round_pin.tail_shape = EndShape::round;
    round_pin.apex_share = 0.3;
    round_pin.exponent = 3.2;
    MeasuringPoints mid_length;
    mid_length.length = 86;
    mid_length.nose12 = 16.5;
    mid_length.wide = 21.5;
    mid_length.wide_offset = 2;
    mid_length.tail = 0;
    mid_length.tail_shape = EndShape::round;
    return std::vector<Named>{{"example", example},
                              {"shortboard", shortboard},
                              {"fish", fish},
                              {"longboard", longboard},
                              {"gun", gun},
                              {"round pin", round_pin},
                              {"mid-length", mid_length}};
  }();
  return all;
}

Spec ellipsoid(double a, double b, double c, int stations, double below) {
  Spec spec;
  spec.length = metres(2.0 * a);
  for (int i = 0; i < stations; ++i) {
    const bool tip = i == 0 || i == stations - 1;
    const double x = 2.0 * a * i / (stations - 1);
    const double share = (x - a) / a;
    const double r = tip ? 0.0 : std::sqrt(1.0 - share * share);
    spec.width.push_back({metres(x), metres(2.0 * b * r)});
    spec.thickness.push_back({metres(x), metres(2.0 * c * r)});
    // Where the apex is level the bottom rises as the board gets thinner.
    spec.rocker.push_back({metres(x), metres(2.0 * c * below * (1.0 - r))});
  }
  spec.rail = {{Length{}, {below, 2.0}}};
  return spec;
}

Spec slab(double length, double width, double thickness, double below, double notch) {
  Spec spec;
  spec.length = metres(length);
  spec.nose.shape = EndShape::square;
  spec.tail.shape = notch > 0.0 ? EndShape::swallow : EndShape::square;
  spec.tail.depth = metres(notch);
  spec.width = {{metres(0), metres(width)}, {metres(length), metres(width)}};
  spec.thickness = {{metres(0), metres(thickness)}, {metres(length), metres(thickness)}};
  spec.rail = {{Length{}, {below, std::numeric_limits<double>::infinity()}}};
  return spec;
}

Spec flat(const Spec& outline, double thickness, double below) {
  Spec spec = outline;
  spec.thickness = {{Length{}, metres(thickness)}, {outline.length, metres(thickness)}};
  spec.rocker.clear();
  spec.rail = {{Length{}, {below, std::numeric_limits<double>::infinity()}}};
  return spec;
}

Spec scaled(Spec spec, double by) {
  spec.length = spec.length * by;
  spec.tail.depth = spec.tail.depth * by;
  if (spec.wide_point) spec.wide_point = *spec.wide_point * by;
  for (auto* list : {&spec.width, &spec.thickness, &spec.rocker}) {
    for (At& at : *list) at = {at.from_tail * by, at.value * by};
  }
  for (RailAt& at : spec.rail) at.from_tail = at.from_tail * by;
  return spec;
}

}  // namespace wetout::board
