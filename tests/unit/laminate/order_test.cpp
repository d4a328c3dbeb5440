#include "wetout/laminate/order.hpp"

#include <gtest/gtest.h>

#include "sample.hpp"

namespace wetout::laminate {
namespace {

using board::Face;
using sample::film;

using Order = std::vector<std::size_t>;

TEST(Order, FileOrderWhereNothingForbidsIt) {
  const auto order = order_of_coats(sample::input().coats);
  ASSERT_TRUE(order);
  EXPECT_EQ(*order, (Order{0, 1, 2, 3, 4, 5}));
}

TEST(Order, LaminatesOfBothFacesBeforeTheFirstHotcoat) {
  const auto order = order_of_coats({sample::laminate("bl", Face::bottom, Laps::cut),
                                     film("bh", Face::bottom, CoatKind::hotcoat),
                                     sample::laminate("dl", Face::deck, Laps::free)});
  ASSERT_TRUE(order);
  EXPECT_EQ(*order, (Order{0, 2, 1}));
}

TEST(Order, AfterMayOverrideTheRuleAcrossFaces) {
  std::vector<CoatSpec> coats{sample::laminate("bl", Face::bottom, Laps::cut),
                              film("bh", Face::bottom, CoatKind::hotcoat),
                              sample::laminate("dl", Face::deck, Laps::free)};
  coats[2].after = {"bh"};
  const auto order = order_of_coats(coats);
  ASSERT_TRUE(order);
  EXPECT_EQ(*order, (Order{0, 1, 2}));
}

TEST(Order, LoopIsNamed) {
  std::vector<CoatSpec> coats = sample::input().coats;
  coats[0].after = {"deck-lam"};
  coats[1].after = {"bottom-lam"};
  const auto order = order_of_coats(coats);
  ASSERT_FALSE(order);
  EXPECT_EQ(order.error().front().code, "coat.order_loop");
  EXPECT_EQ(order.error().front().key, "coat[0].after");
  EXPECT_NE(order.error().front().message.find("deck-lam"), std::string::npos);
}

TEST(Order, WaitingForItselfIsALoop) {
  std::vector<CoatSpec> coats = sample::input().coats;
  coats[3].after = {"bottom-hot"};
  EXPECT_FALSE(order_of_coats(coats));
}

TEST(Order, UnknownNameIsAProblemWithTheNearest) {
  std::vector<CoatSpec> coats = sample::input().coats;
  coats[5].after = {"dek-hot"};
  const auto order = order_of_coats(coats);
  ASSERT_FALSE(order);
  EXPECT_EQ(order.error().front().code, "coat.after_unknown");
  EXPECT_NE(order.error().front().hint.find("deck-hot"), std::string::npos);
}

}  // namespace
}  // namespace wetout::laminate
