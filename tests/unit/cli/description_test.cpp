// The description against itself, and everything that is made from it against the description.
#include <gtest/gtest.h>

#include <map>
#include <set>
#include <string>

#include "everything.hpp"
#include "help.hpp"
#include "man.hpp"
#include "registry.hpp"
#include "text.hpp"

namespace wetout::cli {
namespace {

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = text.find('\n', at);
    out.push_back(text.substr(at, end - at));
    at = end == std::string::npos ? text.size() : end + 1;
  }
  return out;
}

// A command line that gives everything a form takes.
std::vector<std::string> full_line(const Place& place, const Form& form) {
  std::vector<std::string> line(place.path.begin(), place.path.end());
  for (const auto* names : {&form.needs, &form.may}) {
    for (const std::string_view name : *names) {
      const Argument& argument = *find(everything(), place.command, name);
      if (argument.kind != ArgumentKind::positional) line.emplace_back(name);
      if (argument.kind != ArgumentKind::flag) line.push_back(a_value(argument));
    }
  }
  return line;
}

// The text as someone sees it: roff escapes taken out.
std::string unescaped(std::string text) {
  for (const auto& [from, to] : std::map<std::string, std::string>{{"\\-", "-"},
                                                                   {"\\ ", " "},
                                                                   {"\\fB", ""},
                                                                   {"\\fI", ""},
                                                                   {"\\fR", ""},
                                                                   {"\\(aq", "'"},
                                                                   {"\\(ti", "~"}}) {
    for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at)) {
      text.replace(at, from.size(), to);
    }
  }
  return text;
}

TEST(Description, EveryCommandIsOfferedByThisBuild) {
  for (const Command& command : everything().commands) {
    EXPECT_TRUE(is_offered(command.name)) << command.name;
  }
  for (const Row& row : registry()) EXPECT_NE(find(everything(), {row.name}), nullptr) << row.name;
}

TEST(Description, EveryFormOfEveryCommandIsParsed) {
  for (const Place& place : all_places()) {
    if (!place.command->subcommands.empty() && !takes_words(*place.command)) continue;
    for (const Form& form : forms(*place.command)) {
      const auto result = parsed(full_line(place, form));
      ASSERT_TRUE(result) << words(place) << ": " << result.error().front().message;
      EXPECT_EQ(result->description(), place.command);
      for (const auto* names : {&form.needs, &form.may}) {
        for (const std::string_view name : *names) EXPECT_TRUE(result->has(name)) << name;
      }
    }
  }
}

TEST(Description, EveryArgumentBelongsToAFormAndEveryFormToArguments) {
  for (const Place& place : all_places()) {
    std::set<std::string_view> in_forms;
    for (const Form& form : forms(*place.command)) {
      in_forms.insert(form.needs.begin(), form.needs.end());
      in_forms.insert(form.may.begin(), form.may.end());
    }
    std::set<std::string_view> described;
    for (const Argument& argument : place.command->arguments) described.insert(argument.name);
    EXPECT_EQ(in_forms, described) << words(place);
  }
}

TEST(Description, EveryGlobalOptionIsParsedBeforeAndAfterEveryCommand) {
  for (const Place& place : all_places()) {
    if (!place.command->subcommands.empty() && !takes_words(*place.command)) continue;
    for (const Argument& global : everything().globals) {
      if (global.name == "--help" || global.name == "--version") continue;
      std::vector<std::string> option = {std::string(global.name)};
      if (global.kind == ArgumentKind::option) option.push_back(a_value(global));
      std::vector<std::string> before = full_line(place, forms(*place.command).front());
      std::vector<std::string> after = before;
      before.insert(before.begin(), option.begin(), option.end());
      after.insert(after.end(), option.begin(), option.end());
      for (const auto& line : {before, after}) {
        const auto result = parsed(line);
        ASSERT_TRUE(result) << words(place) << ' ' << global.name;
        EXPECT_TRUE(result->has(global.name)) << words(place) << ' ' << global.name;
      }
    }
  }
}

TEST(Description, NamesDoNotMeetAndMeanTheSameEverywhere) {
  std::map<std::string_view, ArgumentKind> kinds;
  std::set<std::string_view> letters;
  for (const Argument& global : everything().globals) {
    kinds[global.name] = global.kind;
    if (!global.letter.empty()) {
      EXPECT_TRUE(letters.insert(global.letter).second) << global.letter;
    }
  }
  const auto globals = kinds;
  for (const Place& place : all_places()) {
    std::set<std::string_view> own;
    for (const Argument& argument : place.command->arguments) {
      EXPECT_TRUE(own.insert(argument.name).second) << argument.name;
      EXPECT_EQ(globals.count(argument.name), 0U) << argument.name;
      // Before the command is known, only the name tells whether a value follows.
      const auto [known, is_new] = kinds.emplace(argument.name, argument.kind);
      EXPECT_EQ(known->second, argument.kind) << argument.name;
      EXPECT_TRUE(argument.letter.empty()) << "letters are for global flags";
    }
  }
}

TEST(Description, IsWholeAndInPlainWords) {
  const auto plain = [](std::string_view text) {
    EXPECT_FALSE(text.empty());
    for (const char c : text) EXPECT_TRUE(c >= ' ' && c <= '~') << text;
  };
  const auto phrase = [&](std::string_view text) {
    plain(text);
    EXPECT_NE(text.back(), '.') << text;
  };
  for (const Place& place : all_places()) {
    phrase(place.command->summary);
    for (const std::string_view text : place.command->text) {
      plain(text);
      EXPECT_EQ(text.back(), '.') << text;
    }
    for (const Argument& argument : place.command->arguments) phrase(argument.help);
    for (const Example& example : place.command->examples) phrase(example.what);
    if (!place.command->hidden) {
      EXPECT_FALSE(place.command->examples.empty()) << words(place);
    }
    if (!place.command->default_subcommand.empty()) {
      std::vector<std::string_view> path = place.path;
      path.push_back(place.command->default_subcommand);
      EXPECT_NE(find(everything(), path), nullptr);
    }
  }
  for (const Argument& global : everything().globals) phrase(global.help);
}

TEST(Description, ExamplesAreGoodCommandLines) {
  for (const Place& place : places(everything())) {
    for (const Example& example : place.command->examples) {
      // Up to what belongs to the shell; text in quotes is one word.
      std::vector<std::string> line;
      std::string word;
      bool quoted_text = false;
      for (const char c : std::string(example.line) + ' ') {
        if (c == '"') {
          quoted_text = !quoted_text;
        } else if (c == ' ' && !quoted_text) {
          if (word == ">" || word == "|") break;
          if (!word.empty()) line.push_back(word);
          word.clear();
        } else if (c == ')') {
          continue;
        } else {
          word += c;
        }
      }
      if (line.front() == "source") line.erase(line.begin());
      ASSERT_TRUE(line.front() == "wetout" || line.front() == "<(wetout") << example.line;
      line.erase(line.begin());
      const auto result = parsed(line);
      ASSERT_TRUE(result) << example.line << ": " << result.error().front().message;
      EXPECT_EQ(result->command(), place.path.front()) << example.line;
    }
  }
}

TEST(Help, ShowsEveryArgumentOfEveryCommandWithinEightyColumns) {
  for (const Place& place : places(everything())) {
    const std::string help = command_help(everything(), place.path);
    for (const std::string& line : lines_of(help)) {
      EXPECT_LE(line.size(), page_columns) << line;
      if (!line.empty()) {
        EXPECT_NE(line.back(), ' ') << line;
      }
    }
    EXPECT_EQ(help.find("wetout " + words(place) + " - "), 0U);
    for (const Argument& argument : place.command->arguments) {
      EXPECT_NE(help.find("\n  " + usage_of(argument, Shown::needed)), std::string::npos)
          << words(place) << ' ' << argument.name;
    }
    for (const Argument& global : everything().globals) {
      EXPECT_NE(help.find(std::string(global.name)), std::string::npos) << global.name;
    }
    EXPECT_NE(help.find("\nUsage\n  wetout " + words(place)), std::string::npos);
    EXPECT_NE(help.find("\nExample"), std::string::npos) << words(place);
    EXPECT_NE(help.find("\nExit codes\n  0    done\n  1 "), std::string::npos);
  }
}

TEST(Help, OfTheProgramShowsEveryCommandAndEveryGlobalOption) {
  const std::string help = program_help(everything());
  for (const std::string& line : lines_of(help)) EXPECT_LE(line.size(), page_columns) << line;
  for (const std::string& line : lines_of(short_help(everything()))) {
    EXPECT_LE(line.size(), page_columns) << line;
  }
  for (const Command& command : everything().commands) {
    const bool shown = help.find("\n  " + std::string(command.name) + ' ') != std::string::npos;
    EXPECT_NE(shown, command.hidden) << command.name;
  }
  for (const Argument& global : everything().globals) {
    EXPECT_NE(help.find(usage_of(global, Shown::needed)), std::string::npos) << global.name;
    EXPECT_NE(help.find(std::string(global.letter)), std::string::npos) << global.name;
  }
}

TEST(Help, TellsWhatACommandMeansByItsExitCodes) {
  const std::vector<ExitMeaning> exits = exits_of(*find(everything(), {"check"}));
  ASSERT_EQ(exits.size(), 5U);
  EXPECT_EQ(exits[1].code, 1);
  EXPECT_EQ(exits[1].text, "there is something wrong with a file");
  EXPECT_EQ(exits[2].text, shared_exits()[2].text);
}

TEST(Manual, ShowsEveryArgumentOfEveryCommand) {
  for (const Command& command : everything().commands) {
    if (command.hidden) continue;
    const std::string page = unescaped(command_manual(everything(), command.name));
    for (const Place& place : places(everything())) {
      if (place.path.front() != command.name) continue;
      for (const Argument& argument : place.command->arguments) {
        EXPECT_NE(page.find(".TP\n" + std::string(argument.name)), std::string::npos)
            << words(place) << ' ' << argument.name;
        EXPECT_NE(page.find('\n' + std::string(argument.help) + '\n'), std::string::npos)
            << argument.help;
      }
      for (const Example& example : place.command->examples) {
        EXPECT_NE(page.find(std::string(example.line)), std::string::npos) << example.line;
      }
    }
    for (const Argument& global : everything().globals) {
      EXPECT_NE(page.find(std::string(global.name)), std::string::npos) << global.name;
    }
  }
  const std::string page = unescaped(program_manual(everything()));
  for (const Argument& global : everything().globals) {
    EXPECT_NE(page.find(std::string(global.help)), std::string::npos) << global.name;
  }
}

TEST(Completion, KnowsEveryOptionOfEveryCommandInEveryShell) {
  const std::string bash = bash_completion(everything());
  const std::string zsh = zsh_completion(everything());
  const std::string fish = fish_completion(everything());
  for (const Place& place : places(everything())) {
    // In each shell the options of a command stand together: that is where they are looked for.
    const std::string row = "    '" + words(place) + "') echo '--shop ";
    const std::size_t at = bash.find(row);
    const std::string of_bash =
        at == std::string::npos ? "" : bash.substr(at, bash.find('\n', at) - at) + ' ';
    std::string function = "\n_wetout";
    for (const std::string_view word : place.path) function += '_' + std::string(word);
    const std::size_t body = zsh.find(function + "() {\n");
    ASSERT_NE(body, std::string::npos) << function;
    const std::string of_zsh = zsh.substr(body, zsh.find("\n}\n", body) - body);
    for (const Argument& argument : place.command->arguments) {
      const std::string name(argument.name);
      if (argument.kind == ArgumentKind::positional) {
        EXPECT_NE(of_zsh.find(':' + name + ':'), std::string::npos) << words(place) << ' ' << name;
        continue;
      }
      EXPECT_TRUE(of_bash.find(' ' + name + ' ') != std::string::npos ||
                  of_bash.find(' ' + name + '\'') != std::string::npos)
          << words(place) << ' ' << name;
      EXPECT_NE(of_zsh.find('\'' + name), std::string::npos) << words(place) << ' ' << name;
      EXPECT_NE(fish.find("'__wetout_at \"" + words(place) + "\"' -l " + name.substr(2) + ' '),
                std::string::npos)
          << words(place) << ' ' << name;
    }
  }
  for (const Argument& global : everything().globals) {
    const std::string name(global.name);
    EXPECT_NE(bash.find(name), std::string::npos) << name;
    EXPECT_NE(zsh.find('\'' + name), std::string::npos) << name;
    EXPECT_NE(fish.find(" -l " + name.substr(2) + ' '), std::string::npos) << name;
  }
}

}  // namespace
}  // namespace wetout::cli
