#include <exception>
#include <string>

#include "registry.hpp"
#include "wetout/base/check.hpp"

namespace wetout::cli {
namespace {

NameKind kind_of(const std::string& word) {
  if (word == "jobs") return NameKind::jobs;
  if (word == "coats") return NameKind::coats;
  if (word == "steps") return NameKind::steps;
  if (word == "cups") return NameKind::cups;
  if (word == "materials") return NameKind::materials;
  base::promise(word == "resins", "a kind of names that is not one of the choices");
  return NameKind::resins;
}

}  // namespace

int run_complete_words(const Parsed& parsed, Context& context) {
  const NameKind kind = kind_of(parsed.needed("KIND"));
  if (!context.names) return exit_done;
  try {
    for (const std::string& name : context.names(kind, parsed.all("WORD"), parsed, context)) {
      context.out << name << '\n';
    }
  } catch (const std::exception&) {
    // Someone is in the middle of typing: without a log or a shop there is just nothing to offer.
  }
  return exit_done;
}

}  // namespace wetout::cli
