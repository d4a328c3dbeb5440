#include "completion.hpp"

namespace wetout::cli {
namespace {

std::string values(const Argument& argument) {
  if (const std::string_view kind = names_kind(argument.completes); !kind.empty()) {
    return " -x -a '(__wetout_names " + std::string(kind) + ")'";
  }
  switch (argument.completes) {
    case Completes::toml:
      return " -x -a '(__fish_complete_suffix .toml)'";
    case Completes::file:
      return " -r -F";
    case Completes::folder:
      return " -x -a '(__fish_complete_directories)'";
    case Completes::command:
      return " -x -a '(__wetout_commands)'";
    case Completes::choice: {
      std::string out = " -x -a '";
      bool first = true;
      for (const std::string_view choice : argument.choices) {
        out += (first ? "" : " ") + std::string(choice);
        first = false;
      }
      return out + '\'';
    }
    default:
      return " -x";
  }
}

std::string option(const Argument& argument, const std::string& condition) {
  std::string out = "complete -c wetout" + condition;
  if (!argument.letter.empty()) out += " -s " + std::string(argument.letter.substr(1));
  out += " -l " + std::string(argument.name.substr(2)) + " -d " + in_quotes(argument.help);
  if (argument.kind == ArgumentKind::option) out += values(argument);
  return out + '\n';
}

std::string positional(const Argument& argument, const std::string& words, int before) {
  if (argument.completes == Completes::nothing) return "";
  const std::string at = argument.repeatable ? "" : ' ' + std::to_string(before);
  return "complete -c wetout -n '__wetout_at \"" + words + "\"" + at + "' -d " +
         in_quotes(argument.help) + values(argument) + '\n';
}

std::string command(const Command& one, const std::string& before) {
  return "complete -c wetout -n '__wetout_at \"" + before + "\" 0' -x -a " + std::string(one.name) +
         " -d " + in_quotes(one.summary) + '\n';
}

std::string words_function(const Program& program) {
  std::string out =
      "# Commands that may follow.\nfunction __wetout_words\n  switch \"$argv[1]\"\n    case ''\n"
      "      echo";
  for (const Command& one : program.commands) {
    if (!one.hidden) out += ' ' + std::string(one.name);
  }
  out += '\n';
  for (const Place& place : places(program)) {
    if (place.command->subcommands.empty()) continue;
    out += "    case " + in_quotes(words(place)) + "\n      echo";
    for (const Command& part : place.command->subcommands) out += ' ' + std::string(part.name);
    out += '\n';
  }
  return out + "  end\nend\n\n";
}

std::string options_with_values(const Program& program) {
  std::string out;
  const auto add = [&](const std::vector<Argument>& arguments) {
    for (const Argument& argument : arguments) {
      const std::string name = ' ' + std::string(argument.name);
      const bool told = (out + ' ').find(name + ' ') != std::string::npos;
      if (argument.kind == ArgumentKind::option && !told) out += name;
    }
  };
  add(program.globals);
  for (const Place& place : places(program)) add(place.command->arguments);
  return "set -g __wetout_valued" + out + "\n\n";
}

std::string commands_function(const Program& program) {
  std::string out = "function __wetout_commands\n";
  for (const Command& one : program.commands) {
    if (one.hidden) continue;
    out += "  printf '%s\\t%s\\n' " + std::string(one.name) + ' ' + in_quotes(one.summary) + '\n';
  }
  return out + "end\n\n";
}

constexpr std::string_view logic =
    R"shell(# What is on the line: the command in __wetout_command, its arguments so far in __wetout_given, the
# log and shop that it names in __wetout_from.
function __wetout_look
  set -g __wetout_command ''
  set -g __wetout_given
  set -g __wetout_from
  set -l pending ''
  set -l ended ''
  for word in (commandline -opc)[2..-1]
    if test -n "$pending"
      contains -- $pending --log --shop; and set -ga __wetout_from $pending $word
      set pending ''
    else if test -z "$ended"; and test "$word" = --
      set ended 1
    else if test -z "$ended"; and string match -q -r -- '^-.' $word
      contains -- $word $__wetout_valued; and set pending $word
      string match -q -r -- '^--(log|shop)=' $word; and set -ga __wetout_from $word
    else if test (count $__wetout_given) -eq 0; and contains -- $word (__wetout_words $__wetout_command | string split ' ')
      set __wetout_command (string trim "$__wetout_command $word")
    else
      set -ga __wetout_given $word
    end
  end
end

# Whether the command is $argv[1] and, when a number follows, so many arguments have been given.
function __wetout_at
  __wetout_look
  test "$__wetout_command" = "$argv[1]"; or return 1
  test (count $argv) -lt 2; or test (count $__wetout_given) -eq $argv[2]
end

function __wetout_names
  __wetout_look
  set -l program (commandline -opc)[1]
  command $program $__wetout_from complete-words $argv[1] -- $__wetout_given 2>/dev/null
end

complete -c wetout -e
complete -c wetout -f
)shell";

}  // namespace

std::string fish_completion(const Program& program) {
  std::string out = "# Completion of wetout for fish 3.\n\n" + words_function(program) +
                    options_with_values(program) + commands_function(program) + std::string(logic);
  for (const Argument& argument : program.globals) out += option(argument, "");
  for (const Command& one : program.commands) {
    if (!one.hidden) out += command(one, "");
  }
  for (const Place& place : places(program)) {
    const std::string at = words(place);
    for (const Command& part : place.command->subcommands) out += command(part, at);
    int before = 0;
    for (const Argument& argument : place.command->arguments) {
      if (argument.kind == ArgumentKind::positional) {
        out += positional(argument, at, before++);
      } else {
        out += option(argument, " -n '__wetout_at \"" + at + "\"'");
      }
    }
  }
  return out;
}

}  // namespace wetout::cli
