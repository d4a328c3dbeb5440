#include "completion.hpp"

namespace wetout::cli {
namespace {

// Text inside a specification of _arguments: brackets and colons have a meaning there.
std::string safe(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '[' || c == ']' || c == ':' || c == '\\') out += '\\';
    out += c;
  }
  return out;
}

std::string action(const Argument& argument) {
  if (const std::string_view kind = names_kind(argument.completes); !kind.empty()) {
    return "->" + std::string(kind);
  }
  switch (argument.completes) {
    case Completes::toml:
      return "_files -g \"*.toml\"";
    case Completes::file:
      return "_files";
    case Completes::folder:
      return "_files -/";
    case Completes::command:
      return "_wetout_commands";
    case Completes::choice: {
      std::string out = "(";
      for (const std::string_view choice : argument.choices) {
        out += (out.size() > 1 ? " " : "") + std::string(choice);
      }
      return out + ')';
    }
    default:
      return " ";
  }
}

std::vector<std::string> specifications(const Argument& argument, int position) {
  if (argument.kind == ArgumentKind::positional) {
    const std::string at = argument.repeatable ? "*" : std::to_string(position);
    return {at + ':' + safe(argument.name) + ':' + action(argument)};
  }
  const std::string help = '[' + safe(argument.help) + ']';
  const std::string value = argument.kind == ArgumentKind::option
                                ? ':' + safe(argument.value) + ':' + action(argument)
                                : "";
  const std::string name = std::string(argument.name) + (value.empty() ? "" : "=");
  std::vector<std::string> out = {name + help + value};
  if (!argument.letter.empty()) out.push_back(std::string(argument.letter) + help + value);
  return out;
}

std::string specifications(const std::vector<Argument>& arguments, std::string_view indent) {
  std::string out;
  int position = 1;
  for (const Argument& argument : arguments) {
    for (const std::string& one : specifications(argument, position)) {
      out += std::string(indent) + in_quotes(one) + " \\\n";
    }
    if (argument.kind == ArgumentKind::positional) ++position;
  }
  return out;
}

std::string described(const std::vector<Command>& commands, std::string_view indent) {
  std::string out;
  for (const Command& command : commands) {
    if (command.hidden) continue;
    out += std::string(indent) +
           in_quotes(std::string(command.name) + ':' + safe(command.summary)) + '\n';
  }
  return out;
}

// A function that is called with its own command as the first word.
std::string function_of(const Place& place) {
  std::string name = "_wetout";
  for (const std::string_view word : place.path) name += '_' + std::string(word);
  std::string out = name + "() {\n";
  const bool has_parts = !place.command->subcommands.empty();
  if (!has_parts || takes_words(*place.command)) {
    // A first word is a part of the command or its first argument.
    if (has_parts) {
      out += "  if (( CURRENT > 2 && $+functions[" + name +
             "_$words[2]] )); then\n"
             "    shift words\n    (( CURRENT-- ))\n    " +
             name + "_$words[1]\n    return\n  fi\n";
      out += "  local -a parts=(\n" + described(place.command->subcommands, "    ") + "  )\n";
      out += "  (( CURRENT == 2 )) && [[ $words[2] != -* ]] && _describe -t commands part parts\n";
    }
    out += "  _arguments -s -S -C : \"${_wetout_globals[@]}\" \\\n";
    out += specifications(place.command->arguments, "    ");
    out += "    && return\n  _wetout_names\n}\n\n";
    return out;
  }
  out += "  local -a parts=(\n" + described(place.command->subcommands, "    ") + "  )\n";
  out +=
      "  _arguments -s -S -C -A '-*' : \"${_wetout_globals[@]}\" '1:part:->part' "
      "'*::argument:->rest' \\\n"
      "    && return\n"
      "  _wetout_keep\n"
      "  case $state in\n"
      "    part) _describe -t commands part parts ;;\n"
      "    rest) (( $+functions[" +
      name + "_$line[1]] )) && " + name +
      "_$line[1] ;;\n"
      "    *) _wetout_names ;;\n"
      "  esac\n}\n\n";
  return out;
}

constexpr std::string_view before_commands =
    R"shell(# The log and the shop that are named on the line.
_wetout_keep() {
  local option
  for option in --log --shop; do
    # A part of a command sees what the whole has seen already.
    (( $+opt_args[$option] && ! $_wetout_from[(Ie)$option] )) && _wetout_from+=($option ${(Q)opt_args[$option]})
  done
}

# Names of jobs, coats, steps, cups, resins; $line holds the arguments before this one.
_wetout_names() {
  [[ $state == (jobs|coats|steps|cups|resins) ]] || return 1
  _wetout_keep
  local -a names=(${(f)"$(_call_program names $_wetout_program $_wetout_from \
    complete-words $state -- $line[1] 2>/dev/null)"})
  compadd -a names
}

)shell";

constexpr std::string_view after_commands = R"shell(_wetout() {
  local curcontext=$curcontext state state_descr _wetout_program=$words[1]
  local -a line _wetout_from
  typeset -A opt_args
  _arguments -s -S -C -A '-*' : "${_wetout_globals[@]}" '1:command:->command' '*::argument:->rest' \
    && return
  _wetout_keep
  case $state in
    command) _wetout_commands ;;
    rest) (( $+functions[_wetout_$line[1]] )) && _wetout_$line[1] ;;
    *) _wetout_names ;;
  esac
}

if [[ $funcstack[1] == _wetout ]]; then
  _wetout "$@"
else
  compdef _wetout wetout
fi
)shell";

}  // namespace

std::string zsh_completion(const Program& program) {
  std::string out = "#compdef wetout\n# Completion of wetout for zsh 5.\n\n";
  out += "typeset -ga _wetout_globals=( \\\n" + specifications(program.globals, "  ") + ")\n\n";
  out += "_wetout_commands() {\n  local -a commands=(\n" + described(program.commands, "    ") +
         "  )\n  _describe -t commands command commands\n}\n\n";
  out += before_commands;
  for (const Place& place : places(program)) out += function_of(place);
  return out + std::string(after_commands);
}

}  // namespace wetout::cli
