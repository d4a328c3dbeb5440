#include "usage.hpp"

#include <iterator>

#include "text.hpp"

namespace wetout::cli {
namespace {

std::vector<Usage> own_usages(const Program& program, const std::vector<std::string_view>& path) {
  const Command& command = *find(program, path);
  std::vector<Usage> out;
  for (const Form& form : forms(command)) {
    Usage usage;
    usage.lead = program.name;
    for (const std::string_view word : path) usage.lead += ' ' + std::string(word);
    for (const std::string_view name : form.needs) {
      usage.items.push_back(usage_of(*find(program, &command, name), Shown::needed));
    }
    for (const std::string_view name : form.may) {
      usage.items.push_back(usage_of(*find(program, &command, name), Shown::optional));
    }
    out.push_back(std::move(usage));
  }
  return out;
}

}  // namespace

std::vector<Usage> usages(const Program& program, const std::vector<std::string_view>& path) {
  const Command& command = *find(program, path);
  std::vector<Usage> out;
  if (command.subcommands.empty() || takes_words(command)) out = own_usages(program, path);
  for (const Command& part : command.subcommands) {
    std::vector<std::string_view> inner = path;
    inner.push_back(part.name);
    std::vector<Usage> more = usages(program, inner);
    // The one that is taken by default may be left out.
    if (part.name == command.default_subcommand) {
      more.front().lead.insert(more.front().lead.size() - part.name.size(), "[");
      more.front().lead += ']';
    }
    std::move(more.begin(), more.end(), std::back_inserter(out));
  }
  return out;
}

std::string to_string(const Usage& usage) {
  return usage.items.empty() ? usage.lead : usage.lead + ' ' + join(usage.items, " ");
}

}  // namespace wetout::cli
