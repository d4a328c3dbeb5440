#include <gtest/gtest.h>

#include <string>

#include "everything.hpp"
#include "read_value.hpp"

namespace wetout::cli {
namespace {

const Argument& option(std::string_view command, std::string_view name) {
  return *find(everything(), find(everything(), {command}), name);
}

std::string code(std::string_view command, std::string_view name, std::string_view text) {
  const base::Problems found = check_value(option(command, name), text);
  return found.empty() ? "" : found.front().code;
}

TEST(Value, TemperaturesNeedAUnitAndSense) {
  EXPECT_EQ(code("plan", "--air", "22C"), "");
  EXPECT_EQ(code("plan", "--air", "-40 F"), "");
  EXPECT_EQ(code("plan", "--air", "22"), "unit.missing");
  EXPECT_EQ(code("plan", "--air", "22g"), "unit.wrong");
  EXPECT_EQ(code("plan", "--air", "nan C"), "number.not_finite");
  EXPECT_EQ(code("plan", "--air", "warm"), "number.bad");
  EXPECT_EQ(code("plan", "--air", "-273.15 C"), "value.range");
  EXPECT_EQ(code("plan", "--air", "-273 C"), "");
}

TEST(Value, MassesAreAboveZero) {
  EXPECT_EQ(code("mix", "--mass", "245g"), "");
  EXPECT_EQ(code("mix", "--mass", "8 oz"), "");
  EXPECT_EQ(code("mix", "--mass", "0 g"), "value.range");
  EXPECT_EQ(code("mix", "--mass", "-3g"), "value.range");
  EXPECT_EQ(code("mix", "--mass", "245"), "unit.missing");
  EXPECT_EQ(code("mix", "--mass", "1e999 g"), "number.not_finite");
}

TEST(Value, AmountsMayBeZeroButNotBelow) {
  EXPECT_EQ(code("record", "--left", "0 g"), "");
  EXPECT_EQ(code("record", "--left", "12g"), "");
  EXPECT_EQ(code("record", "--left", "100 kg"), "");
  EXPECT_EQ(code("record", "--left", "-3g"), "value.range");
  EXPECT_EQ(code("record", "--left", "100.1 kg"), "value.range");
  EXPECT_EQ(code("record", "--left", "0"), "unit.missing");
  EXPECT_EQ(code("record", "--left", "3 ml"), "unit.wrong");
  EXPECT_EQ(code("record", "--mixed", "0 g"), "value.range") << "a mix is of something";
}

TEST(Value, PercentagesLieBetweenNothingAndAll) {
  EXPECT_EQ(code("record", "--humidity", "0%"), "");
  EXPECT_EQ(code("record", "--humidity", "62.5 %"), "");
  EXPECT_EQ(code("record", "--humidity", "100%"), "");
  EXPECT_EQ(code("record", "--humidity", "100.1%"), "value.range");
  EXPECT_EQ(code("record", "--humidity", "-1%"), "value.range");
  EXPECT_EQ(code("record", "--humidity", "62"), "unit.missing");
  EXPECT_EQ(code("record", "--humidity", "damp"), "number.bad");
}

TEST(Value, PastTimesMayBeTimesOfDayAlone) {
  EXPECT_EQ(code("record", "--start", "18:30"), "");
  EXPECT_EQ(code("record", "--start", "8:30"), "");
  EXPECT_EQ(code("record", "--at", "2026-06-14 18:30"), "");
  EXPECT_EQ(code("record", "--at", "2026-06-14T18:30:00-07:00"), "");
  for (const char* bad : {"25:00", "18", "6:30 pm", "2026-06-14", "yesterday"}) {
    EXPECT_EQ(code("record", "--start", bad), "time.bad") << bad;
  }
}

TEST(Value, CountsAreWholeAndAboveZero) {
  for (const char* good : {"1", "2", "1000000"}) EXPECT_EQ(code("mix", "--batch", good), "");
  for (const char* bad : {"0", "-1", "1.0", "two", "1 ", "+1", "1000001", "99999999999999999999"}) {
    EXPECT_EQ(code("mix", "--batch", bad), "count.bad") << bad;
  }
  EXPECT_EQ(*read_count("17"), 17);
}

TEST(Value, ChoicesAreTakenWholeAndAsTheyAreWritten) {
  EXPECT_EQ(code("plan", "--units", "us"), "");
  EXPECT_EQ(code("plan", "--units", "US"), "choice.unknown");
  EXPECT_EQ(code("plan", "--units", "u"), "choice.unknown");
  EXPECT_EQ(check_value(option("plan", "--units"), "metrik").front().hint,
            "did you mean \"metric\"?");
  EXPECT_EQ(check_value(option("completion", "SHELL"), "tcsh").front().expected, "bash, zsh, fish");
}

TEST(Value, TimesAreCheckedAsFarAsTheyCanBeWithoutAZone) {
  EXPECT_EQ(code("plan", "--now", "2026-06-14 18:30"), "");
  EXPECT_EQ(code("plan", "--now", "2026-06-14T18:30:00-07:00"), "");
  EXPECT_EQ(code("plan", "--now", "2026-02-30 18:30"), "time.bad");
  EXPECT_EQ(code("plan", "--now", "soon"), "time.bad");
}

TEST(Value, AProblemNamesItsArgumentWhatWasFoundAndAnExample) {
  const base::Problems found = check_value(option("plan", "--air"), "22");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].key, "--air");
  EXPECT_EQ(found[0].message, "--air: \"22\" has no unit");
  EXPECT_EQ(found[0].found, "22");
  EXPECT_NE(found[0].expected.find("22 C"), std::string::npos);
  EXPECT_NE(found[0].hint.find("without the space"), std::string::npos);
}

TEST(Value, TimesOfDayAreReadInTheZoneOfTheShop) {
  const auto parsed_line = parsed({"jobs", "--now", "2026-06-14 18:30"});
  ASSERT_TRUE(parsed_line);
  const time::Zone pacific = time::Zone::named("America/Los_Angeles").value();
  const auto instant = parsed_line->time("--now", pacific);
  ASSERT_TRUE(instant);
  // 18:30 at UTC-7 is 01:30 UTC of the next day.
  EXPECT_EQ(*instant, time::read_instant("2026-06-15T01:30:00Z", time::Zone()).value());
  EXPECT_FALSE(*parsed({"jobs"})->time("--now", pacific));

  const auto skipped = parsed({"jobs", "--now", "2026-03-08 02:30"})->time("--now", pacific);
  ASSERT_FALSE(skipped);
  EXPECT_EQ(skipped.error().front().code, "time.skipped");
  EXPECT_EQ(skipped.error().front().key, "--now");
}

TEST(Value, WhatIsExpectedReadsBack) {
  // The example in the message is one that would have been accepted.
  Argument argument;
  argument.kind = ArgumentKind::option;
  argument.name = "--x";
  for (const Reads reads : {Reads::temperature, Reads::mass, Reads::duration, Reads::count}) {
    argument.reads = reads;
    std::string example = expected(argument);
    example = example.substr(example.find("e.g. ") + 5);
    example = example.substr(0, example.find(' '));
    EXPECT_TRUE(check_value(argument, example).empty()) << example;
  }
}

}  // namespace
}  // namespace wetout::cli
