// Syntax errors of TOML said in the words of someone who is not a programmer.
#pragma once

#include <string_view>

#include "lines.hpp"
#include "wetout/base/problem.hpp"

namespace wetout::files {

/// What the parser said and where; the usual slips are recognised on the line itself and get a
/// code, place and hint of their own: "toml.quote_in_quotes", "toml.curly_quotes",
/// "toml.unquoted_quantity", "toml.unquoted_time", "toml.inline_table_lines". Others are
/// "toml.syntax" or "toml.twice".
base::Problem explain(std::string_view description, Position at, const Lines& lines,
                      std::string_view name);

}  // namespace wetout::files
