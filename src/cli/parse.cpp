// The only file that includes CLI11: it costs seconds to compile.
#include <CLI/CLI.hpp>
#include <algorithm>
#include <iterator>

#include "parsed.hpp"
#include "read_value.hpp"
#include "scan.hpp"
#include "text.hpp"
#include "usage.hpp"
#include "wetout/base/check.hpp"
#include "wetout/base/shown.hpp"

namespace wetout::cli {
namespace {

struct Assigned {
  Parsed::Given given;
  std::vector<std::string> extra;  // arguments there is no place for
};

// CLI11 hands the values out to options and positionals. What is required, how often and of which
// kind is checked here, because its messages cannot be made ours.
class Assigner {
 public:
  Assigner(const Program& program, const Command& command, std::size_t most) {
    app_.set_help_flag();
    app_.allow_extras();
    for (const Argument& argument : command.arguments) add(argument, most);
    for (const Argument& argument : program.globals) add(argument, most);
  }

  Assigned run(std::vector<std::string> args) {
    const bool marked = std::find(args.begin(), args.end(), "--") != args.end();
    std::reverse(args.begin(), args.end());
    app_.parse(std::move(args));
    Assigned out;
    for (const auto& [argument, option] : options_) {
      if (option->count() > 0) out.given.emplace(argument->name, option->results());
    }
    out.extra = app_.remaining();
    // CLI11 puts the mark itself among what is left over.
    if (const auto mark = std::find(out.extra.begin(), out.extra.end(), "--");
        marked && mark != out.extra.end()) {
      out.extra.erase(mark);
    }
    return out;
  }

 private:
  void add(const Argument& argument, std::size_t most) {
    std::string names(argument.name);
    if (!argument.letter.empty()) names += ',' + std::string(argument.letter);
    CLI::Option* option =
        argument.kind == ArgumentKind::flag ? app_.add_flag(names) : app_.add_option(names);
    if (argument.kind != ArgumentKind::flag) {
      // With extra arguments allowed, an option swallows positionals and "[a,b]" is split in two;
      // so a repeatable positional expects as many as there can be.
      const bool many = argument.kind == ArgumentKind::positional && argument.repeatable;
      option->expected(many ? static_cast<int>(most) : 1)->allow_extra_args(false);
    }
    option->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
    options_.emplace_back(&argument, option);
  }

  CLI::App app_;
  std::vector<std::pair<const Argument*, CLI::Option*>> options_;
};

std::string usage_text(const Program& program, const std::vector<std::string_view>& path) {
  std::vector<std::string> lines;
  for (const Usage& usage : usages(program, path)) lines.push_back(to_string(usage));
  return join(lines, "  or  ");
}

class Checker {
 public:
  Checker(const Program& program, const std::vector<std::string_view>& path,
          const Assigned& assigned)
      : program_(program),
        path_(path),
        command_(*find(program, path)),
        given_(assigned.given),
        extra_(assigned.extra) {}

  base::Problems run() {
    too_many();
    const Form* form = chosen();
    if (form == nullptr) {
      clash();
    } else {
      missing(*form);
    }
    check_all(command_.arguments);
    check_all(program_.globals);
    return std::move(problems_);
  }

 private:
  bool has(std::string_view name) const { return given_.find(name) != given_.end(); }

  static bool allows(const Form& form, std::string_view name) {
    const auto in = [&](const std::vector<std::string_view>& names) {
      return std::find(names.begin(), names.end(), name) != names.end();
    };
    return in(form.needs) || in(form.may);
  }

  // The first form that allows all that is given.
  const Form* chosen() {
    forms_ = forms(command_);
    for (const Form& form : forms_) {
      if (std::all_of(command_.arguments.begin(), command_.arguments.end(),
                      [&](const Argument& argument) {
                        return !has(argument.name) || allows(form, argument.name);
                      })) {
        return &form;
      }
    }
    return nullptr;
  }

  // What was given and some of the forms does not take.
  void names_apart(const std::vector<Form>& forms, std::vector<std::string>& names) const {
    names.clear();
    for (const Argument& argument : command_.arguments) {
      const bool everywhere = std::all_of(forms.begin(), forms.end(),
                                          [&](const Form& f) { return allows(f, argument.name); });
      if (has(argument.name) && !everywhere) names.emplace_back(argument.name);
    }
  }

  void clash() {
    std::vector<std::string> names;
    // Forms that have no place for what was given without an option are not meant.
    std::vector<Form> meant;
    for (const Form& form : forms_) {
      if (std::all_of(command_.arguments.begin(), command_.arguments.end(),
                      [&](const Argument& argument) {
                        return argument.kind != ArgumentKind::positional || !has(argument.name) ||
                               allows(form, argument.name);
                      })) {
        meant.push_back(form);
      }
    }
    if (meant.empty()) meant = forms_;
    names_apart(meant, names);
    if (names.size() < 2) names_apart(forms_, names);  // one alone does not clash
    base::Problem problem;
    problem.code = "argument.clash";
    problem.message = "these do not go together: " + join(names, ", ");
    problem.expected = usage_text(program_, path_);
    problems_.push_back(std::move(problem));
  }

  void missing(const Form& form) {
    std::vector<std::string> names;
    for (const std::string_view name : form.needs) {
      if (!has(name)) names.emplace_back(name);
    }
    if (names.empty()) return;
    base::Problem problem;
    problem.code = "argument.missing";
    problem.key = names.front();
    problem.message = join(names, " and ") + (names.size() > 1 ? " are missing" : " is missing");
    problem.expected = usage_text(program_, path_);
    if (!command_.examples.empty()) {
      problem.hint = "for example: " + std::string(command_.examples.front().line);
    }
    problems_.push_back(std::move(problem));
  }

  void too_many() {
    if (extra_.empty()) return;
    base::Problem problem;
    problem.code = "argument.extra";
    problem.message = "there is no place for " + quote(extra_.front());
    problem.found = base::shown(join(extra_, " "));
    problem.expected = usage_text(program_, path_);
    problem.hint = "text with spaces goes in quotes";
    problems_.push_back(std::move(problem));
  }

  void check_all(const std::vector<Argument>& arguments) {
    for (const Argument& argument : arguments) {
      const auto texts = given_.find(argument.name);
      if (texts == given_.end() || argument.kind == ArgumentKind::flag) continue;
      for (const std::string& text : texts->second) {
        const base::Problems found = check_value(argument, text);
        problems_.insert(problems_.end(), found.begin(), found.end());
      }
      if (texts->second.size() > 1 && !argument.repeatable) {
        base::Problem problem;
        problem.code = "option.twice";
        problem.key = argument.name;
        problem.message = std::string(argument.name) + " is given more than once";
        problem.found = base::shown(join(texts->second, ", "));
        problem.hint = "leave one";
        problems_.push_back(std::move(problem));
      }
    }
  }

  const Program& program_;
  const std::vector<std::string_view>& path_;
  const Command& command_;
  const Parsed::Given& given_;
  const std::vector<std::string>& extra_;
  std::vector<Form> forms_;
  base::Problems problems_;
};

}  // namespace

base::Result<Parsed> parse(const Program& program, const std::vector<std::string>& args) {
  Scanned scanned = scan(program, args);
  const auto unknown_command = [](const base::Problem& problem) {
    return problem.code == "command.unknown";
  };
  if (scanned.help || scanned.version) {
    if (std::any_of(scanned.problems.begin(), scanned.problems.end(), unknown_command)) {
      return base::fail(std::move(scanned.problems));
    }
    Parsed::Given asked;
    if (scanned.help) asked["--help"] = {""};
    if (scanned.version) asked["--version"] = {""};
    return Parsed(program, std::move(scanned.path), std::move(asked));
  }
  if (!scanned.problems.empty()) return base::fail(std::move(scanned.problems));

  const Command nothing;
  const Command& command = scanned.path.empty() ? nothing : *find(program, scanned.path);
  Assigned assigned;
  try {
    assigned = Assigner(program, command, std::max<std::size_t>(args.size(), 1))
                   .run(std::move(scanned.rest));
  } catch (const CLI::Error& error) {
    // Everything it can complain of has been looked for before.
    base::broken_promise(std::string("the option parser refused: ") + error.what());
  }
  if (!scanned.path.empty()) {
    if (base::Problems found = Checker(program, scanned.path, assigned).run(); !found.empty()) {
      return base::fail(std::move(found));
    }
  }
  return Parsed(program, std::move(scanned.path), std::move(assigned.given));
}

Answer asked_answer(const std::vector<std::string>& args) {
  constexpr std::string_view color = "--color";
  Answer out;
  for (auto arg = args.begin(); arg != args.end() && *arg != "--"; ++arg) {
    if (*arg == "--json") out.json = true;
    if (arg->starts_with("--color=")) out.color = arg->substr(color.size() + 1);
    if (*arg == color && arg + 1 != args.end()) out.color = *(arg + 1);
  }
  return out;
}

}  // namespace wetout::cli
