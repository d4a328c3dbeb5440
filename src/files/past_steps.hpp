// What the two ways of writing down past boards share.
#pragma once

#include <string>
#include <string_view>

#include "wetout/files/past_boards.hpp"

namespace wetout::files {

/// cloth, used, lot, note.
bool may_repeat(std::string_view fact);
/// Puts the facts of a step into the order of past_facts.
void put_in_order(PastStep& step);

base::Result<PastBoards> parse_past_table(std::string_view text, std::string name);

}  // namespace wetout::files
