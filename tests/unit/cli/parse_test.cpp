#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "everything.hpp"

namespace wetout::cli {
namespace {

using Words = std::vector<std::string>;

TEST(Parse, FindsCommandsAndTheirParts) {
  EXPECT_EQ(parsed({"plan", "a.toml"})->command(), "plan");
  EXPECT_EQ(parsed({"plan", "a.toml"})->subcommand(), "");
  EXPECT_EQ(parsed({"jobs", "show", "sand"})->command(), "jobs");
  EXPECT_EQ(parsed({"jobs", "show", "sand"})->subcommand(), "show");
  EXPECT_EQ(parsed({"jobs", "show", "sand"})->needed("JOB"), "sand");
}

TEST(Parse, TakesTheDefaultPartWhenNoneIsGiven) {
  EXPECT_EQ(parsed({"jobs"})->subcommand(), "list");
  EXPECT_EQ(parsed({"log", "--json"})->subcommand(), "info");
  EXPECT_EQ(parsed({"--json", "log"})->subcommand(), "info");
}

TEST(Parse, ACommandMayHavePartsAndArgumentsOfItsOwn) {
  const auto list = parsed({"record", "sandpiper"});
  ASSERT_TRUE(list);
  EXPECT_EQ(list->command(), "record");
  EXPECT_EQ(list->subcommand(), "");
  EXPECT_EQ(list->needed("JOB"), "sandpiper");
  EXPECT_FALSE(list->has("STEP"));
  const auto record = parsed({"--json", "record", "--done", "sandpiper", "bottom lam"});
  ASSERT_TRUE(record);
  EXPECT_EQ(record->needed("STEP"), "bottom lam");
  EXPECT_TRUE(record->flag("--done"));
  const auto undo = parsed({"record", "undo", "12"});
  ASSERT_TRUE(undo);
  EXPECT_EQ(undo->subcommand(), "undo");
  EXPECT_EQ(undo->count("EVENT"), 12);
  // Only the first word can be a part of the command.
  const auto step = parsed({"record", "sandpiper", "undo"});
  ASSERT_TRUE(step);
  EXPECT_EQ(step->subcommand(), "");
  EXPECT_EQ(step->needed("STEP"), "undo");
  EXPECT_EQ(problem({"record"}), "argument.missing JOB");
  EXPECT_EQ(problem({"record", "undo"}), "argument.missing EVENT");
  EXPECT_EQ(problem({"record", "undo", "first"}), "count.bad EVENT");
  EXPECT_EQ(problem({"record", "a", "b", "c"}), "argument.extra");
  EXPECT_EQ(problem({"record", "undo", "1", "--done"}), "option.unknown --done");
}

TEST(Parse, AFactNeedsItsStepAndAPartTheOther) {
  EXPECT_EQ(problem({"record", "sandpiper", "--done"}), "argument.missing STEP");
  EXPECT_EQ(problem({"record", "sandpiper", "deck-lam", "--part-a", "100g"}),
            "argument.missing --part-b");
  EXPECT_EQ(problem({"record", "sandpiper", "deck-lam", "--part-b", "40g"}),
            "argument.missing --part-a");
  EXPECT_EQ(problem({"record", "sandpiper", "deck-lam", "--mixed", "140g", "--part-a", "100g",
                     "--part-b", "40g"}),
            "argument.clash");
  const auto both = parsed({"record", "sandpiper", "deck-lam", "--part-a", "100g", "--part-b",
                            "40g", "--observed", "gel=18:30", "--observed=tack-free=20:00"});
  ASSERT_TRUE(both);
  EXPECT_EQ(units::in_grams(*both->mass("--part-a")), 100.0);
  EXPECT_EQ(both->all("--observed"), (std::vector<std::string>{"gel=18:30", "tack-free=20:00"}));
  EXPECT_FALSE(both->mass("--left"));
  EXPECT_EQ(parsed({"record", "a", "b", "--humidity", "62%"})->percent("--humidity"), 0.62);
  EXPECT_EQ(parsed({"record", "a", "b", "--left", "0g"})->mass("--left"), units::Mass{});
}

TEST(Parse, NoCommandIsLeftToTheCaller) {
  ASSERT_TRUE(parsed({}));
  EXPECT_EQ(parsed({})->command(), "");
  EXPECT_EQ(parsed({"--json"})->command(), "");
  EXPECT_TRUE(parsed({"--json"})->flag("--json"));
}

TEST(Parse, GlobalOptionsStandAnywhere) {
  const std::vector<Words> lines = {
      {"--log", "x.db", "jobs", "show", "sand", "--revision", "2"},
      {"jobs", "--log", "x.db", "show", "sand", "--revision", "2"},
      {"jobs", "show", "--log=x.db", "sand", "--revision=2"},
      {"jobs", "show", "sand", "--revision", "2", "--log", "x.db"},
  };
  for (const Words& line : lines) {
    const auto result = parsed(line);
    ASSERT_TRUE(result) << line.front();
    EXPECT_EQ(result->text("--log"), "x.db");
    EXPECT_EQ(result->subcommand(), "show");
    EXPECT_EQ(result->needed("JOB"), "sand");
    EXPECT_EQ(result->count("--revision"), 2);
  }
}

TEST(Parse, NegativeTemperaturesAreValues) {
  for (const Words& line :
       {Words{"plan", "a.toml", "--air", "-5C"}, Words{"plan", "--air", "-5C", "a.toml"},
        Words{"plan", "a.toml", "--air=-5C"}, Words{"plan", "a.toml", "--air", "-5 °C"},
        Words{"plan", "a.toml", "--air", "23F"}}) {
    const auto result = parsed(line);
    ASSERT_TRUE(result) << line[2];
    EXPECT_NEAR(result->temperature("--air")->in_celsius(), -5.0, 1e-9);
    EXPECT_EQ(result->all("FILE"), Words{"a.toml"});
  }
  EXPECT_NEAR(parsed({"plan", "a", "--air", "-.5C"})->temperature("--air")->in_celsius(), -0.5,
              1e-9);
}

TEST(Parse, QuantitiesAreReadGluedOrInQuotes) {
  const auto result = parsed({"mix", "--resin", "slow", "--mass", "245g"});
  ASSERT_TRUE(result);
  EXPECT_DOUBLE_EQ(units::in_grams(*result->mass("--mass")), 245.0);
  EXPECT_DOUBLE_EQ(
      units::in_grams(*parsed({"mix", "--resin", "slow", "--mass", "245 g"})->mass("--mass")),
      245.0);
  EXPECT_FALSE(result->temperature("--air"));
}

TEST(Parse, RepeatablePositionalsKeepTheirOrderAndStopAtNoOption) {
  EXPECT_EQ(parsed({"check", "b.toml", "a.toml", "b.toml"})->all("FILE"),
            (Words{"b.toml", "a.toml", "b.toml"}));
  EXPECT_EQ(parsed({"plan", "a.toml", "--as", "x", "b.toml", "--json", "c.toml"})->all("FILE"),
            (Words{"a.toml", "b.toml", "c.toml"}));
}

TEST(Parse, AnOptionTakesOneValueAndNoMore) {
  const auto result = parsed({"plan", "--as", "x", "a.toml", "b.toml"});
  ASSERT_TRUE(result);
  EXPECT_EQ(result->text("--as"), "x");
  EXPECT_EQ(result->all("FILE"), (Words{"a.toml", "b.toml"}));
}

TEST(Parse, TwoHyphensEndTheOptions) {
  EXPECT_EQ(parsed({"check", "--", "--json", "-q", "a.toml"})->all("FILE"),
            (Words{"--json", "-q", "a.toml"}));
  EXPECT_FALSE(parsed({"check", "--", "--json"})->flag("--json"));
  EXPECT_EQ(parsed({"new", "--", "--"})->text("DIR"), "--");
  EXPECT_EQ(parsed({"--", "jobs", "show", "sand"})->needed("JOB"), "sand");
  EXPECT_EQ(parsed({"jobs", "--", "show", "-sand"})->needed("JOB"), "-sand");
  EXPECT_EQ(problem({"new", "a", "--", "--json"}), "argument.extra");
}

TEST(Parse, WordsOfCommandsCanBeArguments) {
  EXPECT_EQ(parsed({"new", "plan"})->text("DIR"), "plan");
  EXPECT_EQ(parsed({"check", "check", "jobs"})->all("FILE"), (Words{"check", "jobs"}));
  EXPECT_EQ(parsed({"jobs", "show", "list"})->needed("JOB"), "list");
  EXPECT_EQ(parsed({"mix", "mix", "mix"})->needed("COAT"), "mix");
}

TEST(Parse, OddWordsArriveAsTheyWereTyped) {
  for (const std::string odd : {"[a,b]", "{}", "%%", "a=b", "++", "/x", "-", "a b", "'", "\"", "\\",
                                "\xff\xfe", "ä", "\t"}) {
    const auto result = parsed({"check", odd, "last"});
    ASSERT_TRUE(result) << odd;
    EXPECT_EQ(result->all("FILE"), (Words{odd, "last"}));
    EXPECT_EQ(parsed({"jobs", "rename", "sand", odd})->needed("NAME"), odd);
    EXPECT_EQ(parsed({"plan", "a", "--as", odd})->text("--as"), odd);
    EXPECT_EQ(parsed({"plan", "a", "--as=" + odd})->text("--as"), odd);
  }
  EXPECT_EQ(parsed({"plan", "a", "--as=--json"})->text("--as"), "--json");
}

TEST(Parse, LettersOfFlagsGoTogether) {
  const auto result = parsed({"jobs", "-qv"});
  ASSERT_TRUE(result);
  EXPECT_TRUE(result->flag("--quiet"));
  EXPECT_TRUE(result->flag("--verbose"));
  EXPECT_TRUE(parsed({"jobs", "-vh"})->flag("--help"));
  EXPECT_EQ(problem({"jobs", "-qx"}), "option.unknown -qx");
  EXPECT_TRUE(parsed({"jobs", "-v", "-v"}));
}

TEST(Parse, EmptyTextsAreRefusedByName) {
  EXPECT_EQ(problem({"check", ""}), "argument.empty FILE");
  EXPECT_EQ(problem({"check", "a", ""}), "argument.empty FILE");
  EXPECT_EQ(problem({"plan", "a", "--as", ""}), "argument.empty --as");
  EXPECT_EQ(problem({"plan", "a", "--as="}), "option.value --as");
  EXPECT_EQ(problem({"plan", "a", "--air", ""}), "argument.empty --air");
  EXPECT_EQ(problem({""}), "command.unknown");
}

TEST(Parse, UnknownCommandsAreToldWithTheNearest) {
  const base::Problems found = problems({"plna", "a.toml"});
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].code, "command.unknown");
  EXPECT_EQ(found[0].hint, "did you mean \"plan\"?");
  EXPECT_EQ(problems({"jobs", "sohw", "x"})[0].hint, "did you mean \"show\"?");
  EXPECT_EQ(problems({"logg"})[0].hint, "did you mean \"log\"?");
  // Hidden commands are no one's near miss.
  EXPECT_EQ(problems({"complete-word"})[0].hint.find("complete-words"), std::string::npos);
}

TEST(Parse, AFileOrAJobInTheCommandsPlaceIsUnderstood) {
  EXPECT_EQ(problems({"a.toml"})[0].hint, "the command comes first: wetout plan a.toml");
  EXPECT_EQ(problems({"jobs", "sandpiper"})[0].hint,
            "a job is shown by: wetout jobs show sandpiper");
}

TEST(Parse, UnknownOptionsAreToldWithTheNearest) {
  EXPECT_EQ(problem({"plan", "a", "--ari", "5C"}), "option.unknown --ari");
  EXPECT_EQ(problems({"plan", "a", "--ari", "5C"})[0].hint, "did you mean \"--air\"?");
  EXPECT_EQ(problems({"--jsno", "jobs"})[0].hint, "did you mean \"--json\"?");
  EXPECT_EQ(problem({"plan", "a", "-x"}), "option.unknown -x");
  EXPECT_EQ(problem({"plan", "a", "--xyz=3"}), "option.unknown --xyz");
  // An option of another command is none of this one.
  EXPECT_EQ(problem({"plan", "a", "--batch", "2"}), "option.unknown --batch");
  EXPECT_EQ(problems({"plan", "a", "--batch", "2"})[0].hint, "it is one of mix");
  EXPECT_EQ(problems({"jobs", "--revision", "2"})[0].hint, "it is one of jobs show");
  EXPECT_EQ(problem({"--batch", "2", "plan", "a"}), "option.unknown --batch");
  EXPECT_EQ(problems({"plan", "a", "--xx", "--yy"}).size(), 2U);
  EXPECT_EQ(problem({"plan", "a", "--batch", "--batch"}), "option.unknown --batch");
}

TEST(Parse, AbbreviatedOptionsAreNotAccepted) {
  EXPECT_EQ(problem({"jobs", "--js"}), "option.unknown --js");
  EXPECT_EQ(problem({"jobs", "--verb"}), "option.unknown --verb");
  EXPECT_EQ(problem({"jobs", "--JSON"}), "option.unknown --JSON");
  EXPECT_EQ(problem({"pla", "a"}), "command.unknown");
}

TEST(Parse, ForgottenValuesAreNoticed) {
  EXPECT_EQ(problem({"plan", "a", "--air"}), "option.value --air");
  EXPECT_EQ(problem({"plan", "a", "--air", "--cup", "quart"}), "option.value --air");
  EXPECT_EQ(problem({"plan", "a", "--air", "-q"}), "option.value --air");
  EXPECT_EQ(problem({"plan", "a", "--as", "--"}), "option.value --as");
  EXPECT_EQ(problem({"--log"}), "option.value --log");
  EXPECT_EQ(problems({"plan", "a", "--as", "--odd"})[0].hint,
            "a value that begins with a hyphen is written --as=--odd");
}

TEST(Parse, FlagsTakeNoValue) {
  EXPECT_EQ(problem({"jobs", "--json=yes"}), "option.value --json");
  EXPECT_EQ(problem({"jobs", "--json="}), "option.value --json");
  EXPECT_EQ(problem({"jobs", "-q=1"}), "option.value --quiet");
}

TEST(Parse, OptionsAreGivenOnce) {
  EXPECT_EQ(problem({"plan", "a", "--air", "5C", "--air", "6C"}), "option.twice --air");
  EXPECT_EQ(problem({"--units", "us", "jobs", "--units", "us"}), "option.twice --units");
}

TEST(Parse, MissingArgumentsAreNamedWithUsageAndExample) {
  const base::Problems found = problems({"plan"});
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].code, "argument.missing");
  EXPECT_EQ(found[0].message, "FILE is missing");
  EXPECT_EQ(found[0].expected.substr(0, 19), "wetout plan FILE...");
  EXPECT_EQ(found[0].hint, "for example: wetout plan sandpiper.toml");
  EXPECT_EQ(problems({"mix"})[0].message, "JOB and COAT are missing");
  EXPECT_EQ(problems({"mix", "sand"})[0].message, "COAT is missing");
  EXPECT_EQ(problem({"log", "backup"}), "argument.missing FILE");
}

TEST(Parse, TooManyArgumentsAreRefused) {
  EXPECT_EQ(problem({"mix", "a", "b", "c"}), "argument.extra");
  EXPECT_EQ(problems({"jobs", "rename", "a", "My", "Board"})[0].hint,
            "text with spaces goes in quotes");
  EXPECT_EQ(problem({"jobs", "list", "a"}), "argument.extra");
}

TEST(Parse, FormsAreKeptApart) {
  EXPECT_TRUE(parsed({"mix", "--resin", "slow", "--mass", "60g", "--air", "20C"}));
  EXPECT_EQ(problem({"mix", "--resin", "slow"}), "argument.missing --mass");
  EXPECT_EQ(problem({"mix", "sand", "lam", "--resin", "slow"}), "argument.clash");
  EXPECT_EQ(problem({"mix", "--resin", "slow", "--mass", "60g", "--batch", "2"}), "argument.clash");
  EXPECT_EQ(problems({"mix", "sand", "--resin", "slow"})[0].message,
            "these do not go together: JOB, --resin");
  EXPECT_TRUE(parsed({"jobs", "diff", "sand"}));
  EXPECT_EQ(parsed({"jobs", "diff", "sand", "1", "3"})->count("B"), 3);
  EXPECT_EQ(problem({"jobs", "diff", "sand", "1"}), "argument.missing B");
}

TEST(Parse, EveryFaultIsToldAtOnce) {
  const base::Problems found =
      problems({"mix", "sand", "--air", "22", "--batch", "0", "--units", "imperial"});
  std::vector<std::string> codes;
  for (const auto& one : found) codes.push_back(one.code + " " + one.key);
  std::sort(codes.begin(), codes.end());
  EXPECT_EQ(codes, (Words{"argument.missing COAT", "choice.unknown --units", "count.bad --batch",
                          "unit.missing --air"}));
}

TEST(Parse, HelpAndVersionGoBeforeEveryFaultButTheCommand) {
  EXPECT_TRUE(parsed({"plan", "--help"})->flag("--help"));
  EXPECT_TRUE(parsed({"plan", "-h", "--nonsense", "--air", "x"})->flag("--help"));
  EXPECT_EQ(parsed({"jobs", "-h"})->subcommand(), "");
  EXPECT_EQ(parsed({"jobs", "show", "-h"})->subcommand(), "show");
  EXPECT_TRUE(parsed({"--version"})->flag("--version"));
  EXPECT_EQ(problem({"plna", "--help"}), "command.unknown");
  EXPECT_FALSE(parsed({"check", "--", "-h"})->flag("--help"));
}

TEST(Parse, AskingForWhatIsNotDescribedIsABug) {
  const auto result = parsed({"jobs", "show", "sand"});
  EXPECT_THROW((void)result->text("--nonsense"), std::logic_error);
  EXPECT_THROW((void)result->has("--batch"), std::logic_error);
  EXPECT_THROW((void)result->flag("--revision"), std::logic_error);
  EXPECT_THROW((void)result->temperature("--revision"), std::logic_error);
  EXPECT_THROW((void)result->all("JOB"), std::logic_error);
  EXPECT_THROW((void)parsed({"mix", "--resin", "a", "--mass", "1g"})->needed("JOB"),
               std::logic_error);
}

TEST(Parse, ABadLineStillSaysHowToAnswer) {
  EXPECT_TRUE(asked_answer({"plna", "--json"}).json);
  EXPECT_FALSE(asked_answer({"plna", "--", "--json"}).json);
  EXPECT_EQ(asked_answer({"--color=never", "x"}).color, "never");
  EXPECT_EQ(asked_answer({"x", "--color", "always"}).color, "always");
  EXPECT_FALSE(asked_answer({"x", "--color"}).color);
}

}  // namespace
}  // namespace wetout::cli
