#include "wetout/resin/ratio.hpp"

#include <gtest/gtest.h>

namespace wetout::resin {
namespace {

Product two_to_one_by_volume() {
  Product product;
  product.id = "slow";
  product.density_a = units::grams_per_millilitre(1.13);
  product.density_b = units::grams_per_millilitre(0.97);
  product.by_volume = Parts{By::volume, 2.0, 1.0};
  return product;
}

TEST(Ratio, VolumePartsBecomeMassByDensities) {
  // By hand: 1 x 0.97 over 2 x 1.13.
  EXPECT_DOUBLE_EQ(hardener_per_resin(two_to_one_by_volume()), 0.97 / 2.26);
}

TEST(Ratio, MassPartsWinOnTheScale) {
  Product product = two_to_one_by_volume();
  product.by_mass = Parts{By::mass, 100.0, 44.0};
  EXPECT_DOUBLE_EQ(hardener_per_resin(product), 0.44);
  EXPECT_EQ(printed_parts(product).by, By::mass);
  EXPECT_NEAR(parts_clash(product), 0.97 / 2.26 / 0.44 - 1.0, 1e-15);
}

TEST(Ratio, OnePrintedRatioCannotClash) { EXPECT_EQ(parts_clash(two_to_one_by_volume()), 0.0); }

}  // namespace
}  // namespace wetout::resin
