#include "completion.hpp"

namespace wetout::cli {
namespace {

void add_places(const std::vector<Command>& commands, const std::vector<std::string_view>& before,
                std::vector<Place>& out) {
  for (const Command& command : commands) {
    if (command.hidden) continue;
    std::vector<std::string_view> path = before;
    path.push_back(command.name);
    out.push_back({path, &command});
    add_places(command.subcommands, path, out);
  }
}

}  // namespace

std::string words(const Place& place) {
  std::string out;
  for (const std::string_view word : place.path) {
    if (!out.empty()) out += ' ';
    out += word;
  }
  return out;
}

std::vector<Place> places(const Program& program) {
  std::vector<Place> out;
  add_places(program.commands, {}, out);
  return out;
}

std::string_view names_kind(Completes completes) {
  switch (completes) {
    case Completes::job:
      return "jobs";
    case Completes::coat:
      return "coats";
    case Completes::step:
      return "steps";
    case Completes::cup:
      return "cups";
    case Completes::resin:
      return "resins";
    case Completes::material:
      return "materials";
    default:
      return "";
  }
}

std::string in_quotes(std::string_view text) {
  std::string out = "'";
  for (const char c : text) {
    if (c == '\'') {
      out += "'\\''";
    } else {
      out += c;
    }
  }
  return out + '\'';
}

}  // namespace wetout::cli
