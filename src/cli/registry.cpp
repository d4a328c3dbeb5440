#include "registry.hpp"

#include <algorithm>

#include "commands.hpp"
#include "wetout/base/check.hpp"

namespace wetout::cli {

#define WETOUT_COMMAND(name, run) int run(const Parsed&, Context&);
#include "registry_rows.inc"
#undef WETOUT_COMMAND

const std::vector<Row>& registry() {
  static const std::vector<Row> rows = {
#define WETOUT_COMMAND(name, run) {name, run},
#include "registry_rows.inc"
#undef WETOUT_COMMAND
  };
  return rows;
}

bool is_offered(std::string_view command) {
  return std::any_of(registry().begin(), registry().end(),
                     [&](const Row& row) { return row.name == command; });
}

const Program& offered_program() {
  static const Program program = described_program(is_offered);
  base::promise(program.commands.size() == registry().size(),
                "a command in the registry that is not described");
  return program;
}

}  // namespace wetout::cli
