// Impossible boards: each refused with its reason, all reasons at once.
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <limits>
#include <string>
#include <vector>

#include "boards.hpp"

namespace wetout::board {
namespace {

using units::inches;
using units::Length;
using units::metres;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double inf = std::numeric_limits<double>::infinity();

struct Bad {
  std::string name;
  std::function<void(Spec&)> spoil;  // of the example board
  std::string code;
  std::string key;
};

void swallow(Spec& s, Length depth) {
  s.tail.shape = EndShape::swallow;
  s.tail.depth = depth;
}

const std::vector<Bad>& bad_boards() {
  static const std::vector<Bad> all = {
      {"no length", [](Spec& s) { s.length = Length{}; }, "board.length", "length"},
      {"negative length", [](Spec& s) { s.length = inches(-76); }, "board.length", "length"},
      {"length NaN", [](Spec& s) { s.length = metres(nan); }, "board.length", "length"},
      {"length infinite", [](Spec& s) { s.length = metres(inf); }, "board.length", "length"},
      {"a mile long", [](Spec& s) { s.length = metres(1609); }, "board.length", "length"},
      {"no width", [](Spec& s) { s.width[2].value = Length{}; }, "board.width", "width[2]"},
      {"negative width", [](Spec& s) { s.width[2].value = inches(-20); }, "board.width",
       "width[2]"},
      {"width NaN", [](Spec& s) { s.width[1].value = metres(nan); }, "board.width", "width[1]"},
      {"width infinite", [](Spec& s) { s.width[2].value = metres(inf); }, "board.width",
       "width[2]"},
      {"width in feet", [](Spec& s) { s.width[2].value = units::feet(2000); }, "board.width",
       "width[2]"},
      {"no stations of width", [](Spec& s) { s.width.clear(); }, "board.width_at_ends", "width"},
      {"no width at the nose", [](Spec& s) { s.width.pop_back(); }, "board.width_at_ends", "width"},
      {"no width at the tail", [](Spec& s) { s.width.erase(s.width.begin()); },
       "board.width_at_ends", "width"},
      {"a square tail without width", [](Spec& s) { s.width[0].value = Length{}; },
       "board.end_width", "width[0]"},
      {"a square nose without width", [](Spec& s) { s.nose.shape = EndShape::square; },
       "board.end_width", "width[4]"},
      {"wide again", [](Spec& s) { s.width[1].value = inches(5); }, "board.width_steady",
       "width[1]"},
      {"wider before the nose",
       [](Spec& s) {
         s.wide_point.reset();
         s.width.insert(s.width.begin() + 3, {inches(50), inches(11)});
       },
       "board.width_steady", "width[3]"},
      {"stations swapped", [](Spec& s) { s.thickness[1].from_tail = inches(6); },
       "board.station_order", "thickness[1]"},
      {"a station twice", [](Spec& s) { s.rocker[1].from_tail = Length{}; }, "board.station_twice",
       "rocker[1]"},
      {"a station behind the tail", [](Spec& s) { s.thickness[0].from_tail = inches(-1); },
       "board.station_outside", "thickness[0]"},
      {"a station before the nose", [](Spec& s) { s.rail[0].from_tail = inches(80); },
       "board.station_outside", "rail[0]"},
      {"a station nowhere", [](Spec& s) { s.rocker[0].from_tail = metres(nan); },
       "board.station_outside", "rocker[0]"},
      {"wide point past a measuring point",
       [](Spec& s) { s.wide_point = s.width[2].from_tail = inches(66); }, "board.wide_point",
       "wide_point"},
      {"wide point not measured", [](Spec& s) { s.wide_point = inches(41); }, "board.wide_point",
       "wide_point"},
      {"wide point off the board", [](Spec& s) { s.wide_point = inches(80); }, "board.wide_point",
       "wide_point"},
      {"wide point NaN", [](Spec& s) { s.wide_point = metres(nan); }, "board.wide_point",
       "wide_point"},
      {"wider elsewhere", [](Spec& s) { s.wide_point = inches(12); }, "board.wide_point",
       "wide_point"},
      {"no thickness", [](Spec& s) { s.thickness.clear(); }, "board.thickness", "thickness"},
      {"zero thickness", [](Spec& s) { s.thickness[1].value = Length{}; }, "board.thickness",
       "thickness[1]"},
      {"negative thickness", [](Spec& s) { s.thickness[1].value = inches(-2); }, "board.thickness",
       "thickness[1]"},
      {"thickness NaN", [](Spec& s) { s.thickness[1].value = metres(nan); }, "board.thickness",
       "thickness[1]"},
      {"a tail block without thickness",
       [](Spec& s) {
         s.thickness.insert(s.thickness.begin(), {Length{}, Length{}});
       },
       "board.thickness", "thickness[0]"},
      {"thicker than wide", [](Spec& s) { s.thickness[1].value = inches(21); },
       "board.thicker_than_wide", "thickness[1]"},
      {"rocker NaN", [](Spec& s) { s.rocker[4].value = metres(nan); }, "board.rocker", "rocker[4]"},
      {"rocker of a wheel", [](Spec& s) { s.rocker[4].value = inches(80); }, "board.rocker",
       "rocker[4]"},
      {"no rail", [](Spec& s) { s.rail.clear(); }, "board.rail", "rail"},
      {"apex at the bottom", [](Spec& s) { s.rail[0].rail.apex_share = 0.0; }, "board.rail_share",
       "rail[0]"},
      {"apex above the deck", [](Spec& s) { s.rail[0].rail.apex_share = 1.0; }, "board.rail_share",
       "rail[0]"},
      {"apex nowhere", [](Spec& s) { s.rail[0].rail.apex_share = nan; }, "board.rail_share",
       "rail[0]"},
      {"a hollow rail", [](Spec& s) { s.rail[0].rail.exponent = 1.9; }, "board.rail_exponent",
       "rail[0]"},
      {"exponent NaN", [](Spec& s) { s.rail[0].rail.exponent = nan; }, "board.rail_exponent",
       "rail[0]"},
      {"a notch without depth", [](Spec& s) { swallow(s, Length{}); }, "board.notch", "tail.depth"},
      {"a notch of half the board", [](Spec& s) { swallow(s, inches(39)); }, "board.notch",
       "tail.depth"},
      {"a notch without a swallow", [](Spec& s) { s.tail.depth = inches(4); }, "board.notch",
       "tail.depth"},
      {"a notch in the nose",
       [](Spec& s) {
         s.nose.shape = EndShape::swallow;
         s.nose.depth = inches(4);
         s.width[4].value = inches(4);
       },
       "board.notch", "nose"},
      {"a notch through the rail",
       [](Spec& s) {
         swallow(s, inches(30));
         s.wide_point.reset();
         s.width = {{Length{}, inches(20)}, {inches(5), inches(8)}, {inches(76), Length{}}};
       },
       "board.notch", "tail.depth"},
      {"a core of nothing", [](Spec& s) { s.core_weight = units::Mass{}; }, "board.mass",
       "core_weight"},
      {"a floating stringer", [](Spec& s) { s.stringer_weight = units::grams(-1); }, "board.mass",
       "stringer_weight"},
      {"foam of nothing", [](Spec& s) { s.foam_density = units::kilograms_per_cubic_metre(nan); },
       "board.mass", "foam_density"},
  };
  return all;
}

TEST(ImpossibleBoard, IsRefusedWithItsReason) {
  for (const Bad& bad : bad_boards()) {
    Spec spec = spec_of(MeasuringPoints{});
    bad.spoil(spec);
    const auto hull = Hull::make(spec);
    ASSERT_FALSE(hull) << bad.name;
    bool found = false;
    for (const base::Problem& p : hull.error()) {
      EXPECT_FALSE(p.message.empty()) << bad.name;
      found = found || (p.code == bad.code && p.key == bad.key);
    }
    EXPECT_TRUE(found) << bad.name << ": " << hull.error()[0].code << " at " << hull.error()[0].key
                       << ", " << hull.error()[0].message;
  }
}

TEST(ImpossibleBoard, IsToldEverythingAtOnce) {
  Spec spec = spec_of(MeasuringPoints{});
  spec.width[2].value = inches(-20);
  spec.thickness[0].value = Length{};
  spec.rocker[1].from_tail = inches(90);
  spec.rail[0].rail.exponent = 1.0;
  const auto hull = Hull::make(spec);
  ASSERT_FALSE(hull);
  EXPECT_EQ(hull.error().size(),
            5U);  // the rocker station beyond the nose puts the next out of order
}

TEST(PossibleBoard, IsNotRefusedForWhatATapeMeasures) {
  // A millimetre of dip is the tape's.
  Spec spec = spec_of(MeasuringPoints{});
  spec.width.insert(spec.width.begin() + 2, {inches(36), inches(20.7)});
  spec.width.insert(spec.width.begin() + 4, {inches(41), inches(20.78)});
  EXPECT_TRUE(Hull::make(spec));
  // Where the outline closes it gets narrower than thick.
  spec = spec_of(MeasuringPoints{});
  spec.thickness.push_back({inches(75.8), inches(0.7)});
  EXPECT_TRUE(Hull::make(spec));
  // Without a rocker it is flat; with a single thickness it is a slab.
  spec.rocker.clear();
  spec.thickness = {{inches(30), inches(2)}};
  EXPECT_TRUE(Hull::make(spec));
}

TEST(CoreMass, IsWeighedOrComesFromTheFoam) {
  Spec spec = spec_of(MeasuringPoints{});
  const units::Volume volume = units::litres(30);
  EXPECT_FALSE(core_mass(spec, volume));
  spec.foam_density = units::kilograms_per_cubic_metre(32);
  EXPECT_NEAR(core_mass(spec, volume)->si(), 0.96, 1e-12);
  spec.stringer_weight = units::grams(120);
  EXPECT_NEAR(core_mass(spec, volume)->si(), 1.08, 1e-12);
  spec.core_weight = units::kilograms(2.4);
  EXPECT_EQ(core_mass(spec, volume)->si(), 2.4);
}

}  // namespace
}  // namespace wetout::board
