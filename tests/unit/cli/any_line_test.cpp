// Whatever is typed, the answer is a parsed line or problems; never an exception.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <string>
#include <vector>

#include "everything.hpp"
#include "print_problems.hpp"

namespace wetout::cli {
namespace {

std::vector<std::string> usual_words() {
  std::vector<std::string> out = {"",    "-",     "--",     "---",  "--=", "-=",     "=",
                                  "-5C", "-.5C",  "a.toml", "245g", "3",   "0",      "us",
                                  "++",  "[a,b]", "{}",     "%%",   "-qv", "-qx",    "-q=1",
                                  "-h",  "ä",     "\xff",   "a b",  "zsh", "--air=", "--json=1"};
  const auto add = [&](const std::vector<Argument>& arguments) {
    for (const Argument& argument : arguments) {
      if (argument.kind == ArgumentKind::positional) continue;
      out.emplace_back(argument.name);
      out.push_back(std::string(argument.name) + '=' + a_value(argument));
      out.push_back(std::string(argument.name).substr(0, argument.name.size() - 1));
    }
  };
  add(everything().globals);
  for (const Place& place : all_places()) {
    out.emplace_back(place.path.back());
    add(place.command->arguments);
  }
  return out;
}

rc::Gen<std::vector<std::string>> lines() {
  static const std::vector<std::string> usual = usual_words();
  return rc::gen::container<std::vector<std::string>>(rc::gen::weightedOneOf<std::string>(
      {{9, rc::gen::elementOf(usual)}, {1, rc::gen::arbitrary<std::string>()}}));
}

// A command with options and values of its own, so that most lines get past the first look.
std::vector<std::string> line_of_a_command() {
  const Place place = *rc::gen::elementOf(all_places());
  std::vector<std::string> line(place.path.begin(), place.path.end());
  std::vector<Argument> arguments = place.command->arguments;
  arguments.insert(arguments.end(), everything().globals.begin(), everything().globals.end());
  const int most = *rc::gen::inRange(0, 6);
  for (int i = 0; i < most; ++i) {
    const Argument argument = *rc::gen::elementOf(arguments);
    if (argument.kind != ArgumentKind::positional) line.emplace_back(argument.name);
    if (argument.kind != ArgumentKind::flag) {
      const bool good = *rc::gen::weightedElement<bool>({{4, true}, {1, false}});
      line.push_back(good ? a_value(argument) : *rc::gen::elementOf(usual_words()));
    }
  }
  return line;
}

void must_be_answered(const std::vector<std::string>& line) {
  const auto result = parse(everything(), line);
  RC_CLASSIFY(result.has_value(), "good");
  if (result) return;
  RC_ASSERT(!result.error().empty());
  for (const base::Problem& problem : result.error()) {
    RC_ASSERT(!problem.code.empty());
    RC_ASSERT(!problem.message.empty());
    RC_ASSERT(!problem.expected.empty() || !problem.hint.empty());
  }
  for (const char c : problems_text(result.error(), 100, false)) {
    RC_ASSERT(c == '\n' || static_cast<unsigned char>(c) >= 0x20);
  }
}

RC_GTEST_PROP(AnyLine, IsAnsweredWithoutAnException, ()) { must_be_answered(*lines()); }

RC_GTEST_PROP(AnyLine, OfACommandIsAnsweredWithoutAnException, ()) {
  must_be_answered(line_of_a_command());
}

RC_GTEST_PROP(AnyLine, OfArgumentsIsKeptWordForWord, ()) {
  // After `--` every word that is not empty is an argument, whatever it looks like.
  std::vector<std::string> words = *lines();
  std::erase(words, "");
  RC_PRE(!words.empty());
  std::vector<std::string> line = {"check", "--"};
  line.insert(line.end(), words.begin(), words.end());
  const auto result = parse(everything(), line);
  RC_ASSERT(result.has_value());
  RC_ASSERT(result->all("FILE") == words);
}

}  // namespace
}  // namespace wetout::cli
