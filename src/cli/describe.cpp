#include "describe.hpp"

#include <algorithm>

namespace wetout::cli {
namespace {

template <class T>
const T* named(const std::vector<T>& all, std::string_view name) {
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const T& one) { return one.name == name; });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace

const Command* find(const Program& program, const std::vector<std::string_view>& path) {
  const Command* at = nullptr;
  for (const std::string_view word : path) {
    at = named(at == nullptr ? program.commands : at->subcommands, word);
    if (at == nullptr) return nullptr;
  }
  return at;
}

const Argument* find(const Program& program, const Command* command, std::string_view name) {
  if (command != nullptr) {
    if (const Argument* own = named(command->arguments, name)) return own;
  }
  return named(program.globals, name);
}

bool takes_words(const Command& command) {
  return std::any_of(
      command.arguments.begin(), command.arguments.end(),
      [](const Argument& argument) { return argument.kind == ArgumentKind::positional; });
}

std::vector<Form> forms(const Command& command) {
  if (!command.forms.empty()) return command.forms;
  Form one;
  for (const Argument& argument : command.arguments) {
    (argument.required ? one.needs : one.may).push_back(argument.name);
  }
  return {one};
}

std::string value_of(const Argument& argument) {
  if (argument.reads != Reads::choice) return std::string(argument.value);
  std::string out;
  for (const std::string_view choice : argument.choices) {
    if (!out.empty()) out += '|';
    out += choice;
  }
  return out;
}

std::string usage_of(const Argument& argument, Shown shown) {
  std::string out(argument.name);
  if (argument.kind == ArgumentKind::option) out += ' ' + value_of(argument);
  const bool positional = argument.kind == ArgumentKind::positional;
  if (positional && argument.repeatable) out += "...";
  if (shown == Shown::optional) out = '[' + out + ']';
  if (!positional && argument.repeatable) out += "...";
  return out;
}

}  // namespace wetout::cli
