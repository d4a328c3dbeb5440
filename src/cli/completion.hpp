// Completion scripts, made from the description. Names of jobs, coats, steps, cups and resins are
// asked for by `wetout complete-words` when they are needed.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "describe.hpp"

namespace wetout::cli {

std::string bash_completion(const Program& program);
std::string zsh_completion(const Program& program);
std::string fish_completion(const Program& program);

/// A command or subcommand that can be typed, with the words that lead to it.
struct Place {
  std::vector<std::string_view> path;
  const Command* command;
};

/// "jobs show".
std::string words(const Place& place);

/// All that is not hidden; a command stands before its subcommands.
std::vector<Place> places(const Program& program);

/// "jobs", as complete-words calls what it lists; empty for what is not a list of names.
std::string_view names_kind(Completes completes);

/// `text` in single quotes, as every shell here reads it.
std::string in_quotes(std::string_view text);

}  // namespace wetout::cli
