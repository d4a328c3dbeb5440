// What a command may use of the world: streams, clock, folders, and how messages are to look.
#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <ostream>
#include <string>
#include <string_view>
#include <vector>

#include "environment.hpp"
#include "exit_code.hpp"
#include "parsed.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/base/sink.hpp"
#include "wetout/time/zone.hpp"
#include "wetout/units/print.hpp"

namespace wetout::cli {

/// What a shell may ask names of.
enum class NameKind { jobs, coats, steps, cups, resins, materials };

struct Context {
  std::ostream& out;  ///< the result
  std::ostream& err;  ///< messages
  Environment environment = {};
  std::filesystem::path current_folder = {};
  time::Instant clock = {};  ///< the computer's, when the program began
  bool out_is_terminal = false;
  bool err_is_terminal = false;
  const Program* program = nullptr;

  /// From the call on an interrupt no longer ends the program: the answer says whether there was
  /// one. Empty where nobody can interrupt.
  std::function<std::function<bool()>()> catch_interrupt = {};

  /// Names for completion; `before` holds what stands before the word (the job, for its coats).
  /// May throw whatever the log and files throw. None offered when it is empty.
  using Names = std::function<std::vector<std::string>(
      NameKind kind, const std::vector<std::string>& before, const Parsed&, Context&)>;
  Names names = {};

  // From the global options, see apply().
  bool json = false;
  bool dry_run = false;
  bool quiet = false;
  bool verbose = false;
  bool colour_out = false;  ///< whether escape sequences may be written to out
  bool colour_err = false;
  std::optional<units::System> units = {};         ///< nothing: what the shop file says
  std::optional<std::filesystem::path> shop = {};  ///< --shop or WETOUT_SHOP
};

/// Sets how problems are to be printed, before the command line has been checked.
void apply(const Answer& answer, Context& context);

/// Sets what the global options say.
void apply(const Parsed& parsed, Context& context);

/// Prints problems where the user looks for them: text on err, or with --json a document on out.
/// Returns `code`, for `return fail(context, problems);`.
int fail(Context& context, const base::Problems& problems, ExitCode code = exit_input);

/// One line to err, unless --quiet.
void say(Context& context, std::string_view line);

/// Errors always, warnings unless --quiet, the rest with --verbose.
base::Sink sink(Context& context);

/// --log, WETOUT_LOG, or log.db in wetout's data folder. Throws base::EnvironmentError when the
/// environment names no home.
std::filesystem::path log_path(const Parsed& parsed, const Context& context);

/// shop.toml in wetout's configuration folder, whether it exists or not.
std::optional<std::filesystem::path> configured_shop(const Context& context);

/// --now as read in `zone`, else the clock. Problems of --now.
base::Result<time::Instant> now(const Parsed& parsed, const Context& context,
                                const time::Zone& zone);

/// "wetout 0.1.0", as documents name what made them.
std::string program_and_version(const Program& program);

}  // namespace wetout::cli
