#include "completion.hpp"

namespace wetout::cli {
namespace {

std::string list(const std::vector<Command>& commands) {
  std::string out;
  for (const Command& command : commands) {
    if (!command.hidden) out += (out.empty() ? "" : " ") + std::string(command.name);
  }
  return out;
}

std::string options(const std::vector<Argument>& arguments) {
  std::string out;
  for (const Argument& argument : arguments) {
    if (argument.kind == ArgumentKind::positional) continue;
    out += ' ' + std::string(argument.name);
    if (!argument.letter.empty()) out += ' ' + std::string(argument.letter);
  }
  return out;
}

// What a value is completed with, as _wetout_offer reads it.
std::string offer(const Program& program, const Argument& argument) {
  if (const std::string_view kind = names_kind(argument.completes); !kind.empty()) {
    return "names " + std::string(kind);
  }
  switch (argument.completes) {
    case Completes::toml:
      return "toml";
    case Completes::file:
      return "file";
    case Completes::folder:
      return "folder";
    case Completes::choice: {
      std::string out = "words";
      for (const std::string_view choice : argument.choices) out += ' ' + std::string(choice);
      return out;
    }
    case Completes::command:
      return "words " + list(program.commands);
    default:
      return "nothing";
  }
}

std::string row(const std::string& pattern, const std::string& text) {
  return "    " + pattern + ") echo " + in_quotes(text) + " ;;\n";
}

std::string table(const std::string& function, const std::string& subject,
                  const std::string& rows) {
  return function + "() {\n  case " + subject + " in\n" + rows + "  esac\n}\n\n";
}

std::string words_table(const Program& program) {
  std::string rows = row("''", list(program.commands));
  for (const Place& place : places(program)) {
    if (!place.command->subcommands.empty()) {
      rows += row(in_quotes(words(place)), list(place.command->subcommands));
    }
  }
  return "# Commands that may follow.\n" + table("_wetout_words", "\"$1\"", rows);
}

std::string options_table(const Program& program) {
  std::string rows;
  for (const Place& place : places(program)) {
    if (const std::string own = options(place.command->arguments); !own.empty()) {
      rows += row(in_quotes(words(place)), options(program.globals).substr(1) + own);
    }
  }
  rows += row("*", options(program.globals).substr(1));
  return "# Options of a command.\n" + table("_wetout_options", "\"$1\"", rows);
}

std::string values_table(const Program& program) {
  std::string rows;
  for (const Argument& argument : program.globals) {
    if (argument.kind == ArgumentKind::option) {
      rows += row("*' " + std::string(argument.name) + "'", offer(program, argument));
    }
  }
  for (const Place& place : places(program)) {
    for (const Argument& argument : place.command->arguments) {
      if (argument.kind != ArgumentKind::option) continue;
      rows +=
          row(in_quotes(words(place) + ' ' + std::string(argument.name)), offer(program, argument));
    }
  }
  return "# What the value of an option is; nothing for an option without one.\n" +
         table("_wetout_value", "\"$1 $2\"", rows);
}

std::string positionals_table(const Program& program) {
  std::string rows;
  for (const Place& place : places(program)) {
    int before = 0;
    for (const Argument& argument : place.command->arguments) {
      if (argument.kind != ArgumentKind::positional) continue;
      const std::string at = argument.repeatable ? "*" : std::to_string(before);
      rows += row("'" + words(place) + " '" + at, offer(program, argument));
      ++before;
    }
  }
  return "# What an argument is, by the number of those before it.\n" +
         table("_wetout_argument", "\"$1 $2\"", rows);
}

constexpr std::string_view logic = R"shell(# Sets COMPREPLY for $current from a kind of value.
_wetout_offer() {
  (($# > 0)) || return 0
  local kind=$1
  shift
  case $kind in
    words) mapfile -t COMPREPLY < <(compgen -W "$*" -- "$current") ;;
    names)
      mapfile -t COMPREPLY < <(compgen -W "$("$program" "${from[@]}" \
        complete-words "$1" -- "${given[@]}" 2>/dev/null)" -- "$current")
      ;;
    toml)
      compopt -o filenames
      mapfile -t COMPREPLY < <(compgen -d -- "$current"; compgen -f -X '!*.toml' -- "$current")
      ;;
    file)
      compopt -o filenames
      mapfile -t COMPREPLY < <(compgen -f -- "$current")
      ;;
    folder)
      compopt -o filenames
      mapfile -t COMPREPLY < <(compgen -d -- "$current")
      ;;
  esac
}

_wetout() {
  local program=${COMP_WORDS[0]} current=${COMP_WORDS[COMP_CWORD]}
  local command='' pending='' ended='' word next i
  local -a given=() from=()
  COMPREPLY=()
  for ((i = 1; i < COMP_CWORD; i++)); do
    word=${COMP_WORDS[i]}
    if [[ -n $pending ]]; then
      # Bash takes --units=us apart at the equals sign.
      [[ $word == = ]] && continue
      [[ $pending == --log || $pending == --shop ]] && from+=("$pending" "$word")
      pending=
    elif [[ -z $ended && $word == -- ]]; then
      ended=1
    elif [[ -z $ended && $word == -?* ]]; then
      [[ -n $(_wetout_value "$command" "$word") ]] && pending=$word
    else
      # An argument ends the words of the command.
      next=
      ((${#given[@]} == 0)) && next=$(_wetout_words "$command")
      if [[ -n $next && " $next " == *" $word "* ]]; then
        command=${command:+$command }$word
      else
        given+=("$word")
      fi
    fi
  done
  [[ -n $pending && $current == = ]] && current=
  if [[ -n $pending ]]; then
    _wetout_offer $(_wetout_value "$command" "$pending")
  elif [[ -z $ended && $current == -* ]]; then
    _wetout_offer words $(_wetout_options "$command")
  else
    local -a words=()
    if ((${#given[@]} == 0)); then
      _wetout_offer words $(_wetout_words "$command")
      words=("${COMPREPLY[@]}")
    fi
    COMPREPLY=()
    _wetout_offer $(_wetout_argument "$command" "${#given[@]}")
    COMPREPLY+=("${words[@]}")
  fi
}
complete -F _wetout wetout
)shell";

}  // namespace

std::string bash_completion(const Program& program) {
  return "# Completion of wetout for bash 4.4 and later.\n\n" + words_table(program) +
         options_table(program) + values_table(program) + positionals_table(program) +
         std::string(logic);
}

}  // namespace wetout::cli
