#include "wetout/search/bits.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "random_problem.hpp"

namespace wetout::search::test {
namespace {

/// The same set twice.
struct Twin {
  Bits bits;
  std::set<Slot> slow;
};

Twin random_twin(Random& random, Slot size) {
  Twin twin{Bits(size), {}};
  const int percent = random.between(0, 100);
  for (Slot s = 0; s < size; ++s) {
    if (!random.chance(percent)) continue;
    twin.bits.set(s);
    twin.slow.insert(s);
  }
  return twin;
}

void expect_same(const Twin& twin) {
  std::set<Slot> seen;
  for (Slot s = twin.bits.next(-5); s >= 0; s = twin.bits.next(s + 1)) seen.insert(s);
  EXPECT_EQ(seen, twin.slow);
  std::set<Slot> backwards;
  for (Slot s = twin.bits.previous(twin.bits.size() + 70); s >= 0; s = twin.bits.previous(s - 1)) {
    backwards.insert(s);
  }
  EXPECT_EQ(backwards, twin.slow);
  EXPECT_EQ(twin.bits.count(), static_cast<Slot>(twin.slow.size()));
  EXPECT_EQ(twin.bits.none(), twin.slow.empty());
}

TEST(Bits, AgreesWithASetOfNumbers) {
  Random random(7);
  for (int round = 0; round < 300; ++round) {
    const Slot size = random.between(1, 200);
    Twin a = random_twin(random, size);
    const Twin b = random_twin(random, size);
    expect_same(a);
    const Slot from = random.between(-3, size + 3);
    const Slot to = random.between(-3, size + 3);
    const auto in_both = [&](Slot s) { return s >= from && a.slow.contains(s); };
    EXPECT_EQ(a.bits.meets(b.bits, from), std::any_of(b.slow.begin(), b.slow.end(), in_both));
    EXPECT_EQ(a.bits.covers(b.bits, from), std::all_of(b.slow.begin(), b.slow.end(), [&](Slot s) {
                return s < from || a.slow.contains(s);
              }));
    switch (round % 6) {
      case 0:
        a.bits.set_range(from, to);
        for (Slot s = std::max(from, 0); s < std::min(to, size); ++s) a.slow.insert(s);
        break;
      case 1:
        a.bits.clear_range(from, to);
        std::erase_if(a.slow, [&](Slot s) { return s >= from && s < to; });
        break;
      case 2:
        a.bits.clear_before(from);
        std::erase_if(a.slow, [&](Slot s) { return s < from; });
        break;
      case 3:
        a.bits.clear_from(from);
        std::erase_if(a.slow, [&](Slot s) { return s >= from; });
        break;
      case 4:
        a.bits &= b.bits;
        std::erase_if(a.slow, [&](Slot s) { return !b.slow.contains(s); });
        break;
      default:
        a.bits |= b.bits;
        a.slow.insert(b.slow.begin(), b.slow.end());
    }
    expect_same(a);
  }
}

TEST(Bits, FilledHasExactlyItsSize) {
  for (const Slot size : {0, 1, 63, 64, 65, 130}) {
    const Bits bits(size, true);
    EXPECT_EQ(bits.count(), size);
    EXPECT_EQ(bits.next(size), -1);
  }
}

}  // namespace
}  // namespace wetout::search::test
