#include "commands.hpp"

namespace wetout::cli {
namespace {

using enum ArgumentKind;

Argument job() {
  return {.kind = positional,
          .name = "JOB",
          .help = "job of the log",
          .completes = Completes::job,
          .required = true};
}

const ExitMeaning no_job = {1, "the job is not found or not the only one so named"};

Command jobs_list() {
  return {.name = "list",
          .summary = "list the jobs",
          .text = {"Archived jobs are left out."},
          .examples = {{"wetout jobs", "list the jobs"}}};
}

Command jobs_show() {
  return {.name = "show",
          .summary = "print a saved plan",
          .arguments = {job(),
                        {.kind = option,
                         .name = "--revision",
                         .value = "N",
                         .help = "this revision; else the last one",
                         .reads = Reads::count}},
          .examples = {{"wetout jobs show sandpiper", "print the last plan of a job"},
                       {"wetout jobs show sandpiper --revision 1 --units metric",
                        "print its first plan in metric units"}},
          .exits = {{1, "the job or the revision is not found, or the job's name is not clear"}}};
}

Command jobs_diff() {
  return {
      .name = "diff",
      .summary = "show what differs between two revisions of a plan",
      .text = {"Without A and B the last two revisions are compared."},
      .arguments =
          {job(),
           {.kind = positional, .name = "A", .help = "the earlier revision", .reads = Reads::count},
           {.kind = positional, .name = "B", .help = "the later revision", .reads = Reads::count}},
      .forms = {{.needs = {"JOB"}}, {.needs = {"JOB", "A", "B"}}},
      .examples = {{"wetout jobs diff sandpiper 1 3", "from revision 1 to revision 3"}},
      .exits = {{1, "the job or a revision is not found, or the job's name is not clear"}}};
}

Command jobs_rename() {
  return {
      .name = "rename",
      .summary = "give a job another name",
      .text = {"Its plans stay with it."},
      .arguments = {job(),
                    {.kind = positional, .name = "NAME", .help = "the new name", .required = true}},
      .examples = {{"wetout jobs rename sandpiper \"Sandpiper for the shop\"",
                    "the job is sandpiper-for-the-shop from now on"}},
      .exits = {{1, "the job is not found, or the new name is taken or cannot be used"}}};
}

Command jobs_archive() {
  return {.name = "archive",
          .summary = "take a job off the list",
          .text = {"Nothing is deleted; planning it again brings it back."},
          .arguments = {job()},
          .examples = {{"wetout jobs archive sandpiper", "put a finished job away"}},
          .exits = {no_job}};
}

Command jobs() {
  return {.name = "jobs",
          .summary = "list the jobs of the log; show, compare, rename, archive them",
          .subcommands = {jobs_list(), jobs_show(), jobs_diff(), jobs_rename(), jobs_archive()},
          .default_subcommand = "list",
          .examples = {{"wetout jobs", "list the jobs"},
                       {"wetout jobs show sandpiper", "print the last plan of a job"}},
          .exits = {no_job}};
}

Command log_info() {
  return {.name = "info",
          .summary = "say where the log is and what it holds",
          .examples = {{"wetout log", "where the log is and what it holds"}}};
}

Command log_check() {
  return {.name = "check",
          .summary = "read the whole log through and say what is damaged",
          .examples = {{"wetout log check", "look for damage"}},
          .exits = {{3, "the log cannot be read, or is damaged"}}};
}

Command log_backup() {
  return {.name = "backup",
          .summary = "copy the log while it may be in use",
          .text = {"Nothing is overwritten."},
          .arguments = {{.kind = positional,
                         .name = "FILE",
                         .help = "the copy to make",
                         .completes = Completes::file,
                         .required = true}},
          .examples = {{"wetout log backup /media/stick/log.db", "copy the log to a stick"}},
          .exits = {{1, "there is a file of that name already"}}};
}

Command log_restore() {
  return {.name = "restore",
          .summary = "put a copy in the place of the log",
          .text = {"The copy is read through first, and the log that was there is kept beside "
                   "it under another name."},
          .arguments = {{.kind = positional,
                         .name = "FILE",
                         .help = "a copy made by log backup",
                         .completes = Completes::file,
                         .required = true}},
          .examples = {{"wetout log restore /media/stick/log.db", "take the log from a stick"}},
          .exits = {{1, "the copy is damaged, or is the log itself"}}};
}

Command log() {
  return {.name = "log",
          .summary = "look after the job log: what it holds, check, copy, restore",
          .subcommands = {log_info(), log_check(), log_backup(), log_restore()},
          .default_subcommand = "info",
          .examples = {{"wetout log", "where the log is and what it holds"},
                       {"wetout log backup log-copy.db", "copy it while it may be in use"}}};
}

}  // namespace

std::vector<Command> log_commands() { return {jobs(), log()}; }

}  // namespace wetout::cli
