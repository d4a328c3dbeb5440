#include "help.hpp"

#include <algorithm>

#include "commands.hpp"
#include "text.hpp"
#include "usage.hpp"

namespace wetout::cli {
namespace {

constexpr std::size_t indent = 2;
constexpr std::size_t text_column = 22;

std::string heading(std::string_view text) { return '\n' + std::string(text) + '\n'; }

std::string usage_text(const Program& program, const std::vector<std::string_view>& path) {
  std::string out = heading("Usage");
  for (const Usage& usage : usages(program, path)) {
    out += flow(std::string(indent, ' ') + usage.lead, usage.items);
  }
  return out;
}

// "-q, --quiet", "--air T", "FILE...".
std::string term(const Argument& argument) {
  std::string out = argument.letter.empty() ? "" : std::string(argument.letter) + ", ";
  return out + usage_of(argument, Shown::needed);
}

std::string arguments_text(std::string_view title, const std::vector<Argument>& arguments,
                           bool positional) {
  std::string out;
  for (const Argument& argument : arguments) {
    if ((argument.kind == ArgumentKind::positional) != positional) continue;
    out += entry(term(argument), argument.help, text_column);
  }
  return out.empty() ? out : heading(title) + out;
}

std::string commands_text(const std::vector<Command>& commands) {
  std::string out;
  for (const Command& command : commands) {
    if (!command.hidden) out += entry(command.name, command.summary, text_column);
  }
  return out;
}

std::string examples_text(const std::vector<Example>& examples) {
  if (examples.empty()) return "";
  std::string out = heading(examples.size() == 1 ? "Example" : "Examples");
  for (const Example& example : examples) {
    out += std::string(indent, ' ') + std::string(example.line) + '\n';
    out += paragraph(example.what, indent + 4);
  }
  return out;
}

std::string exits_text(const std::vector<ExitMeaning>& exits) {
  std::string out = heading("Exit codes");
  for (const ExitMeaning& exit : exits) out += entry(std::to_string(exit.code), exit.text, 7);
  return out;
}

std::string globals_line(const Program& program) {
  std::vector<std::string> names;
  for (const Argument& argument : program.globals) {
    names.push_back(argument.letter.empty()
                        ? std::string(argument.name)
                        : std::string(argument.letter) + '/' + std::string(argument.name));
  }
  return heading("Options of every command (explained by: " + std::string(program.name) +
                 " help)") +
         paragraph(join(names, " "), indent);
}

}  // namespace

std::vector<ExitMeaning> exits_of(const Command& command) {
  std::vector<ExitMeaning> out = shared_exits();
  for (const ExitMeaning& own : command.exits) {
    std::find_if(out.begin(), out.end(), [&](const ExitMeaning& shared) {
      return shared.code == own.code;
    })->text = own.text;
  }
  return out;
}

std::string program_help(const Program& program) {
  const std::string name(program.name);
  std::string out =
      name + ' ' + std::string(program.version) + " - " + std::string(program.summary) + '\n';
  out += heading("Usage") + "  " + name + " COMMAND [ARGUMENT...] [OPTION...]\n";
  for (const std::string_view text : program.text) out += '\n' + paragraph(text, 0);
  out += heading("Commands") + commands_text(program.commands);
  out += arguments_text("Options of every command", program.globals, false);
  std::string variables;
  for (const Example& variable : environment_variables()) {
    variables += entry(variable.line, variable.what, text_column);
  }
  out += heading("Environment") + variables;
  out += exits_text(shared_exits());
  return out + "\nA command is explained by: " + name + " help COMMAND\n";
}

std::string short_help(const Program& program) {
  const std::string name(program.name);
  return name + ' ' + std::string(program.summary) + ".\n" + heading("Usage") + "  " + name +
         " COMMAND [ARGUMENT...] [OPTION...]\n" + heading("Commands") +
         commands_text(program.commands) + "\nMore is said by: " + name + " help\n";
}

std::string command_help(const Program& program, const std::vector<std::string_view>& path) {
  const Command& command = *find(program, path);
  std::string out(program.name);
  for (const std::string_view word : path) out += ' ' + std::string(word);
  out = paragraph(out + " - " + std::string(command.summary), 0);
  out += usage_text(program, path);
  for (const std::string_view text : command.text) out += '\n' + paragraph(text, 0);
  out += arguments_text("Arguments", command.arguments, true);
  out += arguments_text("Options", command.arguments, false);
  if (!command.subcommands.empty()) {
    out += heading(takes_words(command) ? "What else it can do" : "What it can do");
    out += commands_text(command.subcommands);
    for (const Command& part : command.subcommands) {
      const std::string title(part.name);
      out += arguments_text("Arguments of " + title, part.arguments, true);
      out += arguments_text("Options of " + title, part.arguments, false);
    }
  }
  out += globals_line(program);
  out += examples_text(command.examples);
  out += exits_text(exits_of(command));
  return out;
}

}  // namespace wetout::cli
