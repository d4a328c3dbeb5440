#include "scan.hpp"

#include <algorithm>
#include <optional>

#include "read_value.hpp"
#include "text.hpp"
#include "wetout/base/shown.hpp"

namespace wetout::cli {
namespace {

void add_options(const std::vector<Argument>& from, std::vector<const Argument*>& to) {
  for (const Argument& argument : from) {
    if (argument.kind != ArgumentKind::positional) to.push_back(&argument);
  }
}

void add_all_options(const std::vector<Command>& commands, std::vector<const Argument*>& to) {
  for (const Command& command : commands) {
    add_options(command.arguments, to);
    add_all_options(command.subcommands, to);
  }
}

std::vector<std::string> names_of(const std::vector<const Argument*>& options) {
  std::vector<std::string> names;
  for (const Argument* option : options) names.emplace_back(option->name);
  return names;
}

const Argument* by_name(const std::vector<const Argument*>& options, std::string_view name) {
  const auto found = std::find_if(options.begin(), options.end(), [&](const Argument* option) {
    return option->name == name || (!option->letter.empty() && option->letter == name);
  });
  return found == options.end() ? nullptr : *found;
}

bool looks_like_option(std::string_view text) { return text.size() > 1 && text[0] == '-'; }

class Scanner {
 public:
  explicit Scanner(const Program& program) : program_(program) {
    // Before the command is known, an option of any command may stand here; whether one takes a
    // value is the same in all commands (a test sees to that).
    add_options(program.globals, globals_);
    known_ = globals_;
    add_all_options(program.commands, known_);
  }

  Scanned run(const std::vector<std::string>& args) {
    bool ended = false;
    for (std::size_t i = 0; i < args.size(); ++i) {
      const std::string& arg = args[i];
      if (!ended && arg == "--") {
        ended = true;
        out_.rest.push_back(arg);
      } else if (!ended && looks_like_option(arg)) {
        out_.rest.push_back(arg);
        const Argument* option = take_option(arg);
        if (option == nullptr) continue;
        if (i + 1 == args.size() || looks_like_known(args[i + 1])) {
          value_missing(*option, i + 1 == args.size() ? nullptr : &args[i + 1]);
          // What is no option either was meant as the value.
          if (i + 1 < args.size() && args[i + 1] != "--" && !is_option(args[i + 1])) ++i;
        } else {
          out_.rest.push_back(args[++i]);
        }
      } else if (!take_word(arg)) {
        out_.rest.push_back(arg);
      }
    }
    finish();
    return std::move(out_);
  }

 private:
  // The option whose value is the next argument, if this is one.
  const Argument* take_option(const std::string& arg) {
    const std::size_t equals = arg.find('=');
    const std::string name = arg.substr(0, equals);
    if (equals == std::string::npos && arg[1] != '-' && arg.size() > 2 && take_letters(arg)) {
      return nullptr;
    }
    const Argument* option = by_name(known_, name);
    if (option == nullptr) {
      unknown_.push_back(name);
      return nullptr;
    }
    used_.push_back(option);
    if (option->kind == ArgumentKind::flag) {
      note_flag(*option);
      if (equals != std::string::npos) flag_has_value(*option, arg.substr(equals + 1));
      return nullptr;
    }
    if (equals == std::string::npos) return option;
    if (equals + 1 == arg.size()) value_missing(*option, nullptr);
    return nullptr;
  }

  // "-qv": flags by their letters.
  bool take_letters(const std::string& arg) {
    std::vector<const Argument*> flags;
    for (const char letter : arg.substr(1)) {
      const Argument* flag = by_name(globals_, std::string{'-', letter});
      if (flag == nullptr) return false;
      flags.push_back(flag);
    }
    for (const Argument* flag : flags) note_flag(*flag);
    return true;
  }

  void note_flag(const Argument& flag) {
    out_.help = out_.help || flag.name == "--help";
    out_.version = out_.version || flag.name == "--version";
  }

  // A value that is an option itself has been forgotten: `--air --cup quart`. -5C is a value.
  bool looks_like_known(const std::string& text) const {
    return text.starts_with("--") ||
           (looks_like_option(text) && std::all_of(text.begin() + 1, text.end(), [&](char letter) {
              return by_name(globals_, std::string{'-', letter}) != nullptr;
            }));
  }

  bool is_option(const std::string& text) const {
    return !text.starts_with("--") || by_name(known_, text.substr(0, text.find('='))) != nullptr;
  }

  bool take_word(const std::string& word) {
    // After an unknown option a word may be its value: nothing is said about it.
    if (stuck_ || !unknown_.empty()) return false;
    const Command* command = out_.path.empty() ? nullptr : find(program_, out_.path);
    const std::vector<Command>& among =
        command == nullptr ? program_.commands : command->subcommands;
    if (among.empty()) return false;
    const auto found = std::find_if(among.begin(), among.end(),
                                    [&](const Command& one) { return one.name == word; });
    if (found != among.end()) {
      out_.path.push_back(found->name);
      return true;
    }
    stuck_ = true;
    if (command != nullptr && takes_words(*command)) return false;
    unknown_word(word, among);
    return false;
  }

  void unknown_word(const std::string& word, const std::vector<Command>& among) {
    std::vector<std::string> names;
    for (const Command& command : among) {
      if (!command.hidden) names.emplace_back(command.name);
    }
    base::Problem problem;
    problem.code = "command.unknown";
    problem.message = "there is no command " + quote(word);
    problem.found = base::shown(word);
    problem.expected = join(names, ", ");
    problem.hint = did_you_mean(word, names);
    if (!out_.path.empty()) {
      const std::string command(out_.path.front());
      problem.message = quote(word) + " is not something that " + command + " can do";
      const Command* show = find(program_, {out_.path.front(), "show"});
      if (problem.hint.empty() && show != nullptr) {
        problem.hint = "a job is shown by: wetout " + command + " show " + base::shown(word);
      }
    } else if (problem.hint.empty()) {
      const bool a_file = word.ends_with(".toml") && find(program_, {"plan"}) != nullptr;
      problem.hint = a_file ? "the command comes first: wetout plan " + base::shown(word)
                            : "see them explained: wetout help";
    }
    out_.problems.push_back(std::move(problem));
  }

  void value_missing(const Argument& option, const std::string* next) {
    base::Problem problem;
    problem.code = "option.value";
    problem.key = option.name;
    problem.message = std::string(option.name) + ": the value is missing";
    if (next != nullptr) problem.found = base::shown(*next);
    problem.expected = std::string(option.name) + ' ' + value_of(option);
    if (option.reads != Reads::text && option.reads != Reads::choice) {
      problem.expected += ", " + expected(option);
    }
    if (next != nullptr && option.reads == Reads::text) {
      problem.hint = "a value that begins with a hyphen is written " + std::string(option.name) +
                     "=" + base::shown(*next);
    }
    faults_.push_back(std::move(problem));
  }

  void flag_has_value(const Argument& flag, const std::string& value) {
    base::Problem problem;
    problem.code = "option.value";
    problem.key = flag.name;
    problem.message = std::string(flag.name) + " takes no value";
    problem.found = base::shown(value);
    problem.hint = "leave out " + quote("=" + value);
    faults_.push_back(std::move(problem));
  }

  // The first command that has such an option, "jobs show"; empty when none has.
  static std::string owner_of(const std::string& name, const std::vector<Command>& among,
                              const std::string& before) {
    for (const Command& command : among) {
      const std::string words = before + std::string(command.name);
      for (const Argument& argument : command.arguments) {
        if (argument.name == name && !command.hidden) return words;
      }
      const std::string inner = owner_of(name, command.subcommands, words + ' ');
      if (!inner.empty()) return inner;
    }
    return "";
  }

  void unknown_option(const std::string& name, const std::vector<const Argument*>& own) {
    base::Problem problem;
    problem.code = "option.unknown";
    problem.key = base::shown(name);
    problem.found = base::shown(name);
    const std::string command = out_.path.empty() ? "" : std::string(out_.path.front());
    problem.message = "there is no option " + quote(name);
    const std::string owner = owner_of(name, program_.commands, "");
    problem.hint = owner.empty() ? did_you_mean(name, names_of(own)) : "it is one of " + owner;
    const bool is_number = name.size() > 1 && name[1] >= '0' && name[1] <= '9';
    if (is_number) {
      problem.message = "nothing here can be below zero";
      problem.hint = "a value that begins with a hyphen is read as an option";
    } else if (!command.empty()) {
      problem.message = command + " has no option " + quote(name);
      if (problem.hint.empty()) problem.hint = "see its options: wetout help " + command;
    } else if (problem.hint.empty()) {
      problem.hint = "see the options: wetout help";
    }
    out_.problems.push_back(std::move(problem));
  }

  void finish() {
    const Command* command = out_.path.empty() ? nullptr : find(program_, out_.path);
    if (command != nullptr && !command->default_subcommand.empty() && !out_.help && !stuck_) {
      out_.path.push_back(command->default_subcommand);
      command = find(program_, out_.path);
    }
    std::vector<const Argument*> own = globals_;
    if (command != nullptr) add_options(command->arguments, own);
    const std::vector<const Argument*>& near = command == nullptr ? known_ : own;
    for (const std::string& name : unknown_) unknown_option(name, near);
    for (const Argument* option : used_) {
      const std::string name(option->name);
      const bool told = std::find(unknown_.begin(), unknown_.end(), name) != unknown_.end();
      if (command != nullptr && !told && by_name(own, name) == nullptr) {
        unknown_.push_back(name);
        unknown_option(name, own);
      }
    }
    // Values of an option that is not there at all are beside the point.
    if (out_.problems.empty()) out_.problems = std::move(faults_);
  }

  const Program& program_;
  std::vector<const Argument*> globals_;
  std::vector<const Argument*> known_;
  std::vector<std::string> unknown_;
  std::vector<const Argument*> used_;
  base::Problems faults_;  // about values
  bool stuck_ = false;     // a word was no command: none follows
  Scanned out_;
};

}  // namespace

Scanned scan(const Program& program, const std::vector<std::string>& args) {
  return Scanner(program).run(args);
}

}  // namespace wetout::cli
