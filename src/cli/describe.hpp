// What a command takes, as plain data. Parsing, help, man pages and completion are made from it,
// so that none of them can say something else than the others.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace wetout::cli {

enum class ArgumentKind { positional, option, flag };

/// What a value must be; checked before the command runs.
enum class Reads {
  text,
  temperature,  ///< above absolute zero
  mass,         ///< above zero
  amount,       ///< a mass, zero or above
  percent,      ///< 0 to 100 %
  duration,     ///< above zero
  time,
  past_time,  ///< a time of day alone is the latest past one
  date,       ///< "2026-06-14"
  money,      ///< with its currency, zero or above
  count,      ///< 1, 2, 3 ...
  choice,     ///< one of Argument::choices
};

/// What the shell offers for a value.
enum class Completes {
  nothing,
  toml,
  file,
  folder,
  job,
  coat,
  step,
  cup,
  resin,
  material,
  command,
  choice
};

struct Argument {
  ArgumentKind kind = ArgumentKind::flag;
  std::string_view name = {};    ///< "--air", or "FILE" for a positional
  std::string_view letter = {};  ///< "-q", or empty
  std::string_view value = {};   ///< of an option, as the help calls it: "T"
  std::string_view help = {};    ///< a phrase, without a full stop
  Reads reads = Reads::text;
  Completes completes = Completes::nothing;
  std::vector<std::string_view> choices = {};
  bool required = false;
  bool repeatable = false;
};

/// One of several ways to give the arguments: names out of Command::arguments.
struct Form {
  std::vector<std::string_view> needs = {};
  std::vector<std::string_view> may = {};
};

struct Example {
  std::string_view line = {};
  std::string_view what = {};
};

struct ExitMeaning {
  int code = 0;
  std::string_view text = {};
};

struct Command {
  std::string_view name = {};
  std::string_view summary = {};            ///< a phrase, without a full stop
  std::vector<std::string_view> text = {};  ///< paragraphs
  std::vector<Argument> arguments = {};     ///< in the order of the help; positionals in theirs
  std::vector<Form> forms = {};             ///< empty: one form, as the arguments are marked
  /// "show" of "jobs show". A command that also takes positionals itself ("record JOB STEP") takes
  /// a first word that is no subcommand as one of those.
  std::vector<Command> subcommands = {};
  std::string_view default_subcommand = {};  ///< taken when none is given
  std::vector<Example> examples = {};
  std::vector<ExitMeaning> exits = {};  ///< beyond those every command shares
  bool hidden = false;                  ///< for the shells, not for people
};

/// The program as offered: what is left out here does not exist for the user.
struct Program {
  std::string_view name = {};
  std::string_view version = {};
  std::string_view summary = {};
  std::vector<std::string_view> text = {};
  std::vector<Argument> globals = {};  ///< accepted before and after every command
  std::vector<Command> commands = {};
};

/// The command or subcommand at the end of `path` ("jobs", "show"); null when there is none.
const Command* find(const Program& program, const std::vector<std::string_view>& path);

/// The argument of that name among the command's own and the global ones; null when there is none.
/// `command` may be null.
const Argument* find(const Program& program, const Command* command, std::string_view name);

/// True when the command can be given words of its own, whatever subcommands it has.
bool takes_words(const Command& command);

/// Each way to give the arguments, a command without forms as a single one.
std::vector<Form> forms(const Command& command);

/// "FILE...", "[--air T]", "--units us|metric": as a usage line shows it.
enum class Shown { needed, optional };
std::string usage_of(const Argument& argument, Shown shown);

/// "T", or "us|metric" for a choice; empty for a flag.
std::string value_of(const Argument& argument);

}  // namespace wetout::cli
