#include "wetout/base/words.hpp"

#include <gtest/gtest.h>

namespace wetout::base {
namespace {

TEST(Nearest, FindsOneSlip) {
  EXPECT_EQ(nearest("tikness", {"width", "thickness"}), "thickness");  // two edits in seven
  EXPECT_EQ(nearest("tiknes", {"width", "thickness"}), std::nullopt);  // three in six
  EXPECT_EQ(nearest("thicknes", {"width", "thickness"}), "thickness");
  EXPECT_EQ(nearest("foma", {"foam", "name"}), "foam");  // neighbours swapped: one edit
}

TEST(Nearest, RefusesFarWords) {
  EXPECT_EQ(nearest("zzz", {"width", "thickness"}), std::nullopt);
  EXPECT_EQ(nearest("", {"a"}), std::nullopt);
}

TEST(Slug, KeepsLettersDigitsAndSingleHyphens) {
  EXPECT_EQ(slug("Bottom Lam #2"), "bottom-lam-2");
  EXPECT_EQ(slug("  --  "), "");
  EXPECT_TRUE(is_slug("sandpiper-6-4"));
  EXPECT_FALSE(is_slug("-a"));
  EXPECT_FALSE(is_slug("A"));
}

TEST(Reserved, HoldsWordsOfTheCommandLineAndNothingElse) {
  for (const char* word : {"list", "show", "diff", "rename", "archive", "undo", "import"}) {
    EXPECT_TRUE(is_reserved(word)) << word;
  }
  EXPECT_FALSE(is_reserved("lists"));
  EXPECT_FALSE(is_reserved(""));
}

TEST(Matches, ExactWinsOverBeginnings) {
  const std::vector<std::string> ids = {"lam", "lam-2", "hotcoat"};
  EXPECT_EQ(matches("Lam", ids), std::vector<std::size_t>({0}));
  EXPECT_EQ(matches("la", ids), std::vector<std::size_t>({0, 1}));
  EXPECT_EQ(matches("LAM 2", ids), std::vector<std::size_t>({1}));
  EXPECT_TRUE(matches("x", ids).empty());
}

}  // namespace
}  // namespace wetout::base
