#include <string>
#include <string_view>
#include <vector>

#include "help.hpp"
#include "man.hpp"
#include "registry.hpp"
#include "text.hpp"
#include "wetout/base/shown.hpp"

namespace wetout::cli {
namespace {

base::Problem unknown(const std::vector<Command>& among, const std::string& before,
                      const std::string& word) {
  std::vector<std::string> names;
  for (const Command& command : among) {
    if (!command.hidden) names.emplace_back(command.name);
  }
  base::Problem problem;
  problem.code = "command.unknown";
  problem.key = "COMMAND";
  problem.message = "there is no command " + quote(before + word);
  problem.found = base::shown(word);
  problem.expected = names.empty() ? "nothing more" : join(names, ", ");
  problem.hint = did_you_mean(word, names);
  return problem;
}

}  // namespace

int run_help(const Parsed& parsed, Context& context) {
  const Program& program = *context.program;
  std::vector<std::string_view> path;
  std::string before;
  for (const std::string& word : parsed.all("COMMAND")) {
    const std::vector<Command>& among =
        path.empty() ? program.commands : find(program, path)->subcommands;
    path.push_back(word);
    if (find(program, path) == nullptr) {
      return fail(context, {unknown(among, before, word)}, exit_usage);
    }
    before += word + ' ';
  }
  if (parsed.flag("--man")) {
    context.out << (path.empty() ? program_manual(program) : command_manual(program, path.front()));
  } else {
    context.out << (path.empty() ? program_help(program) : command_help(program, path));
  }
  return exit_done;
}

}  // namespace wetout::cli
