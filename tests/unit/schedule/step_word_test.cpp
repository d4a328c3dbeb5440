// Names of steps as people type them and logs keep them.
#include "wetout/schedule/step_word.hpp"

#include <gtest/gtest.h>

namespace {

using namespace wetout::schedule;

TEST(StepWord, everyWordComesBack) {
  for (const StepWord word : step_words) EXPECT_EQ(read_step_word(to_string(word)), word);
  EXPECT_EQ(read_step_word("glue"), std::nullopt);
}

TEST(StepWord, everyNameComesBack) {
  for (const StepWord word : step_words) {
    for (const char* detail : {"", "laps", "30"}) {
      const StepName name{is_of_board(word) ? "" : "deck-lam", word, detail};
      EXPECT_EQ(read_step_name(to_string(name)), name) << to_string(name);
    }
  }
}

TEST(StepWord, aCoatAloneIsItsWet) {
  EXPECT_EQ(read_step_name("bottom-lam"), (StepName{"bottom-lam", StepWord::wet, ""}));
  EXPECT_EQ(read_step_name("weigh"), (StepName{"", StepWord::weigh, ""}));
}

TEST(StepWord, whatIsNoName) {
  for (const char* text :
       {"", "/wet", "lam/", "lam/glue", "lam/weigh", "lam/watch-", "lam/wet/now"}) {
    EXPECT_EQ(read_step_name(text), std::nullopt) << text;
  }
}

}  // namespace
