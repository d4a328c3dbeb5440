#include "completion.hpp"
#include "registry.hpp"

namespace wetout::cli {

int run_completion(const Parsed& parsed, Context& context) {
  const std::string& shell = parsed.needed("SHELL");
  if (shell == "bash") {
    context.out << bash_completion(*context.program);
  } else if (shell == "zsh") {
    context.out << zsh_completion(*context.program);
  } else {
    context.out << fish_completion(*context.program);
  }
  return exit_done;
}

}  // namespace wetout::cli
