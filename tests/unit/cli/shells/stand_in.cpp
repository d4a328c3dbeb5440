// A wetout whose commands only know how to complete: all that is described is offered, and the
// names are invented. The shells are tried with it.
#include <iostream>
#include <string>
#include <vector>

#include "commands.hpp"
#include "context.hpp"
#include "help.hpp"
#include "man.hpp"
#include "registry.hpp"

namespace wetout::cli {
int run_completion(const Parsed& parsed, Context& context);
int run_complete_words(const Parsed& parsed, Context& context);
int run_help(const Parsed& parsed, Context& context);
}  // namespace wetout::cli

int main(int argc, char** argv) {
  using namespace wetout::cli;
  const Program program = described_program([](std::string_view) { return true; });
  Context context{.out = std::cout, .err = std::cerr};
  context.program = &program;
  context.names = [](NameKind kind, const std::vector<std::string>& before, const Parsed& parsed,
                     Context&) -> std::vector<std::string> {
    // A log of its own name holds a job of its own name.
    if (kind == NameKind::jobs && parsed.has("--log")) return {"from-" + parsed.needed("--log")};
    if (kind == NameKind::jobs) return {"sandpiper", "step-up"};
    if (kind == NameKind::cups && parsed.has("--shop")) return {"from-" + parsed.needed("--shop")};
    if (kind == NameKind::cups) return {"quart", "tray"};
    if (kind == NameKind::resins) return {"slow", "fast"};
    if (before.empty()) return {};
    if (kind == NameKind::steps)
      return {before.front() + "-bottom-lam", "bottom-lam/trim", "weigh"};
    return {before.front() + "-bottom-lam", before.front() + "-deck-lam"};
  };
  const auto parsed = parse(program, std::vector<std::string>(argv + 1, argv + argc));
  if (!parsed) return fail(context, parsed.error(), exit_usage);
  apply(*parsed, context);
  if (parsed->command() == "completion") return run_completion(*parsed, context);
  if (parsed->command() == "complete-words") return run_complete_words(*parsed, context);
  if (parsed->command() == "help") return run_help(*parsed, context);
  return exit_usage;
}
