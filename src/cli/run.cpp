#include "run.hpp"

#include <algorithm>

#include "help.hpp"
#include "registry.hpp"
#include "wetout/base/check.hpp"

namespace wetout::cli {
namespace {

int without_command(Context& context) {
  if (context.json) {
    base::Problem problem;
    problem.code = "argument.missing";
    problem.key = "COMMAND";
    problem.message = "COMMAND is missing";
    problem.hint = "see the commands: wetout help";
    return fail(context, {problem}, exit_usage);
  }
  context.err << short_help(*context.program);
  return exit_usage;
}

std::vector<std::string_view> path_of(const Parsed& parsed) {
  std::vector<std::string_view> path = {parsed.command()};
  if (!parsed.subcommand().empty()) path.push_back(parsed.subcommand());
  return path;
}

}  // namespace

int run(const std::vector<std::string>& args, Context& context) {
  const Program& program = offered_program();
  context.program = &program;
  // A command line that cannot be read still says how it wants to be answered.
  apply(asked_answer(args), context);

  const base::Result<Parsed> parsed = parse(program, args);
  if (!parsed) return fail(context, parsed.error(), exit_usage);
  apply(*parsed, context);

  if (parsed->flag("--help")) {
    context.out << (parsed->command().empty() ? program_help(program)
                                              : command_help(program, path_of(*parsed)));
    return exit_done;
  }
  if (parsed->flag("--version")) {
    context.out << program_and_version(program) << '\n';
    return exit_done;
  }
  if (parsed->command().empty()) return without_command(context);

  const auto row = std::find_if(registry().begin(), registry().end(),
                                [&](const Row& r) { return r.name == parsed->command(); });
  base::promise(row != registry().end(), "an offered command without a row");
  return row->run(*parsed, context);
}

}  // namespace wetout::cli
