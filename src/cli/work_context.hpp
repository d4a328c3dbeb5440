// What the commands that do something share: from the command line to a work::Workshop.
#pragma once

#include <string>
#include <vector>

#include "context.hpp"
#include "parsed.hpp"
#include "wetout/work/plan.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::cli {

work::Workshop workshop(const Parsed& parsed, Context& context);

/// --air, --resin-temp, --cup of a command that has them.
work::MixingChoices mixing_choices(const Parsed& parsed);

/// --units, else the shop's.
units::System units_of(const Context& context, units::System shop);

/// Names for completion (Context::names).
std::vector<std::string> names_for_completion(NameKind kind, const std::vector<std::string>& before,
                                              const Parsed& parsed, Context& context);

}  // namespace wetout::cli
