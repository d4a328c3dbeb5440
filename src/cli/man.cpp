#include "man.hpp"

#include <algorithm>

#include "commands.hpp"
#include "help.hpp"
#include "usage.hpp"

namespace wetout::cli {
namespace {

// Text as roff: a hyphen or quote that may be copied into a shell is the one of ASCII, and a line
// must not begin with a control character.
std::string roff(std::string_view text) {
  std::string out;
  for (const char c : text) {
    switch (c) {
      case '\\':
        out += "\\e";
        break;
      case '-':
        out += "\\-";
        break;
      case '~':
        out += "\\(ti";
        break;
      case '^':
        out += "\\(ha";
        break;
      case '\'':
        out += "\\(aq";
        break;
      case '`':
        out += "\\(ga";
        break;
      default:
        if (c == '.' && out.empty()) out += "\\&";
        out += c;
    }
  }
  return out;
}

std::string bold(std::string_view text) { return "\\fB" + roff(text) + "\\fR"; }
std::string italic(std::string_view text) { return "\\fI" + roff(text) + "\\fR"; }

std::string section(std::string_view title) { return ".SH " + std::string(title) + '\n'; }

std::string tagged(const std::string& term, std::string_view text) {
  return ".TP\n" + term + '\n' + roff(text) + '\n';
}

std::string upper(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(), [](char c) {
    return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  });
  return out;
}

std::string title(const Program& program, std::string_view page) {
  return ".TH \"" + upper(page) + "\" 1 \"\" \"" + std::string(program.name) + ' ' +
         std::string(program.version) + "\"\n";
}

// Never broken across lines, so that an option stays with its value.
std::string unbroken(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == ' ') out += '\\';
    out += c;
  }
  return out;
}

std::string synopsis(const Program& program, const std::vector<std::string_view>& path) {
  std::string out = section("SYNOPSIS");
  bool first = true;
  for (const Usage& usage : usages(program, path)) {
    if (!first) out += ".br\n";
    first = false;
    out += bold(usage.lead);
    for (const std::string& item : usage.items) out += ' ' + unbroken(roff(item));
    out += '\n';
  }
  return out;
}

std::string term(const Argument& argument) {
  if (argument.kind == ArgumentKind::positional) {
    return italic(argument.name) + (argument.repeatable ? "..." : "");
  }
  std::string out;
  if (!argument.letter.empty()) out += bold(argument.letter) + ", ";
  out += bold(argument.name);
  if (argument.kind == ArgumentKind::option) {
    const std::string value = value_of(argument);
    out += ' ' + (argument.reads == Reads::choice ? roff(value) : italic(value));
  }
  return out;
}

std::string arguments(const std::vector<Argument>& all, bool positional) {
  std::string out;
  for (const Argument& argument : all) {
    if ((argument.kind == ArgumentKind::positional) != positional) continue;
    out += tagged(term(argument), argument.help);
  }
  return out;
}

std::string titled(std::string_view heading, const std::string& body) {
  return body.empty() ? "" : section(heading) + body;
}

std::string paragraphs(const std::vector<std::string_view>& texts) {
  std::string out;
  for (const std::string_view text : texts) {
    if (!out.empty()) out += ".PP\n";
    out += roff(text) + '\n';
  }
  return out;
}

std::string examples(const std::vector<Example>& all) {
  std::string out;
  for (const Example& example : all) {
    if (!out.empty()) out += ".PP\n";
    out += roff(example.what) + ":\n.PP\n.RS 4\n.nf\n" + roff(example.line) + "\n.fi\n.RE\n";
  }
  return out;
}

std::string exits(const std::vector<ExitMeaning>& all) {
  std::string out = section("EXIT STATUS");
  for (const ExitMeaning& exit : all) out += tagged(bold(std::to_string(exit.code)), exit.text);
  return out;
}

std::string page_reference(std::string_view page) { return bold(page) + "(1)"; }

std::string subcommand_part(const Command& part) {
  std::string out = ".SS " + roff(part.name) + '\n' + upper(part.summary.substr(0, 1)) +
                    roff(part.summary.substr(1)) + ".\n";
  for (const std::string_view text : part.text) out += roff(text) + '\n';
  return out + arguments(part.arguments, true) + arguments(part.arguments, false);
}

}  // namespace

std::string program_manual(const Program& program) {
  const std::string name(program.name);
  std::string out = title(program, name);
  out += section("NAME") + roff(name) + " \\- " + roff(program.summary) + '\n';
  out += section("SYNOPSIS") + bold(name) + ' ' + italic("COMMAND") + " [" + italic("ARGUMENT") +
         "...] [" + italic("OPTION") + "...]\n";
  out += section("DESCRIPTION") + paragraphs(program.text);
  out += section("COMMANDS");
  std::string see;
  for (const Command& command : program.commands) {
    if (command.hidden) continue;
    out += tagged(bold(command.name), command.summary);
    see += (see.empty() ? "" : ",\n") + page_reference(name + '-' + std::string(command.name));
  }
  out += section("OPTIONS") + "Every command takes these, before or after its name.\n" +
         arguments(program.globals, false);
  out += section("ENVIRONMENT");
  for (const Example& variable : environment_variables()) {
    out += tagged(bold(variable.line), variable.what);
  }
  out += exits(shared_exits());
  return out + titled("SEE ALSO", see.empty() ? see : see + '\n');
}

std::string command_manual(const Program& program, std::string_view command_name) {
  const Command& command = *find(program, {command_name});
  const std::string name = std::string(program.name) + '-' + std::string(command_name);
  std::string out = title(program, name);
  out += section("NAME") + roff(name) + " \\- " + roff(command.summary) + '\n';
  out += synopsis(program, {command_name});
  std::string about = paragraphs(command.text);
  for (const Command& part : command.subcommands) about += subcommand_part(part);
  out += titled("DESCRIPTION", about);
  out += titled("ARGUMENTS", arguments(command.arguments, true));
  out += titled("OPTIONS", arguments(command.arguments, false));
  out += section("OPTIONS OF EVERY COMMAND") + "Explained in " + page_reference(program.name) +
         ".\n" + ".PP\n";
  bool first = true;
  for (const Argument& argument : program.globals) {
    out += (first ? "" : ",\n") + unbroken(term(argument));
    first = false;
  }
  out += '\n';
  std::vector<Example> all = command.examples;
  for (const Command& part : command.subcommands) {
    for (const Example& example : part.examples) {
      const bool told = std::any_of(all.begin(), all.end(),
                                    [&](const Example& e) { return e.line == example.line; });
      if (!told) all.push_back(example);
    }
  }
  out += titled(all.size() == 1 ? "EXAMPLE" : "EXAMPLES", examples(all));
  out += exits(exits_of(command));
  return out + section("SEE ALSO") + page_reference(program.name) + '\n';
}

}  // namespace wetout::cli
