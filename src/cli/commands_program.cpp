#include "commands.hpp"

namespace wetout::cli {
namespace {

using enum ArgumentKind;

Command completion() {
  return {
      .name = "completion",
      .summary = "print a script that completes commands in a shell",
      .text = {"Commands, options, files, and the names of jobs, coats, steps, cups, resins and "
               "materials are completed. Names come from the log and the shop file at the moment "
               "they are asked "
               "for."},
      .arguments = {{.kind = positional,
                     .name = "SHELL",
                     .help = "bash, zsh or fish",
                     .reads = Reads::choice,
                     .completes = Completes::choice,
                     .choices = {"bash", "zsh", "fish"},
                     .required = true}},
      .examples = {{"source <(wetout completion bash)", "in ~/.bashrc"},
                   {"wetout completion zsh > ~/.zfunc/_wetout",
                    "with ~/.zfunc in fpath, before compinit"},
                   {"wetout completion fish > ~/.config/fish/completions/wetout.fish",
                    "for fish, from its next start on"}},
  };
}

Command help() {
  return {
      .name = "help",
      .summary = "explain a command",
      .text = {"Without a COMMAND, the commands and the options that all of them take."},
      .arguments = {{.kind = positional,
                     .name = "COMMAND",
                     .help = "command, and its part where it has any: jobs show",
                     .completes = Completes::command,
                     .repeatable = true},
                    {.kind = flag, .name = "--man", .help = "print the manual page (roff)"}},
      .examples = {{"wetout help plan", "explain a command"},
                   {"wetout help plan --man | man -l -", "read its manual page"}},
  };
}

// Asked by the completion scripts, so it stays out of the help.
Command complete_words() {
  return {
      .name = "complete-words",
      .summary = "print names for the completion scripts, one a line",
      .arguments = {{.kind = positional,
                     .name = "KIND",
                     .help = "what to list",
                     .reads = Reads::choice,
                     .completes = Completes::choice,
                     .choices = {"jobs", "coats", "steps", "cups", "resins", "materials"},
                     .required = true},
                    {.kind = positional,
                     .name = "WORD",
                     .help = "words before the one to complete: the job, for its coats",
                     .repeatable = true}},
      .hidden = true,
  };
}

}  // namespace

std::vector<Command> program_commands() { return {completion(), help(), complete_words()}; }

}  // namespace wetout::cli
