#include "context.hpp"

#include <algorithm>

#include "print_problems.hpp"
#include "wetout/base/check.hpp"
#include "wetout/base/environment_error.hpp"
#include "wetout/report/problems_document.hpp"

namespace wetout::cli {
namespace {

namespace fs = std::filesystem;

bool colour(const std::optional<std::string>& when, bool terminal, bool plain) {
  if (when == "always") return true;
  if (when == "never") return false;
  return terminal && !plain;
}

}  // namespace

void apply(const Answer& answer, Context& context) {
  context.json = answer.json;
  const bool plain = context.environment.plain;
  context.colour_out = colour(answer.color, context.out_is_terminal, plain);
  context.colour_err = colour(answer.color, context.err_is_terminal, plain);
}

void apply(const Parsed& parsed, Context& context) {
  apply(Answer{parsed.flag("--json"), parsed.text("--color")}, context);
  context.dry_run = parsed.flag("--dry-run");
  context.quiet = parsed.flag("--quiet");
  context.verbose = parsed.flag("--verbose");
  if (const auto units = parsed.text("--units")) {
    context.units = units::read_system(*units).value();
  }
  if (const auto shop = parsed.text("--shop")) {
    context.shop = *shop;
  } else if (context.environment.shop) {
    context.shop = *context.environment.shop;
  }
}

namespace {

// A time that cannot be is a bad value of its option, wherever it was found out.
bool is_bad_value(const base::Problem& problem) {
  if (problem.key.substr(0, 2) != "--") return false;
  const std::string_view kind = std::string_view(problem.code).substr(0, problem.code.find('.'));
  for (const std::string_view bad : {"time", "date", "span", "hours", "fix", "observed", "value"}) {
    if (kind == bad) return true;
  }
  return false;
}

}  // namespace

int fail(Context& context, const base::Problems& problems, ExitCode code) {
  base::promise(!problems.empty(), "a failure without a problem");
  if (context.json) {
    context.out << report::problems_json(problems);
  } else {
    const std::size_t most = context.verbose ? problems.size() : 50;
    context.err << problems_text(problems, most, context.colour_err);
  }
  return std::all_of(problems.begin(), problems.end(), is_bad_value) ? exit_usage : code;
}

void say(Context& context, std::string_view line) {
  if (!context.quiet) context.err << line << '\n';
}

base::Sink sink(Context& context) {
  return [&context](base::Level level, std::string_view text) {
    const bool wanted = level == base::Level::error ||
                        (level == base::Level::warn && !context.quiet) || context.verbose;
    if (wanted) context.err << text << '\n';
  };
}

fs::path log_path(const Parsed& parsed, const Context& context) {
  if (const auto given = parsed.text("--log")) return *given;
  if (context.environment.log) return *context.environment.log;
  if (context.environment.data_folder) return *context.environment.data_folder / "log.db";
  throw base::EnvironmentError("environment.home",
                               "there is no place for the job log: HOME is not set",
                               "name a file with --log or WETOUT_LOG");
}

std::optional<fs::path> configured_shop(const Context& context) {
  if (!context.environment.config_folder) return std::nullopt;
  return *context.environment.config_folder / "shop.toml";
}

base::Result<time::Instant> now(const Parsed& parsed, const Context& context,
                                const time::Zone& zone) {
  base::Result<std::optional<time::Instant>> given = parsed.time("--now", zone);
  if (!given) return base::fail(std::move(given.error()));
  return given->value_or(context.clock);
}

std::string program_and_version(const Program& program) {
  return std::string(program.name) + ' ' + std::string(program.version);
}

}  // namespace wetout::cli
