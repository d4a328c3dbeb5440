// Words typed and lines printed: small helpers for plain text of at most 80 columns.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace wetout::cli {

inline constexpr std::size_t page_columns = 80;

/// `text` broken at spaces into lines of at most `width` bytes; a longer word gets its own line.
/// For our own texts, which are ASCII.
std::vector<std::string> wrap(std::string_view text, std::size_t width);

/// `items` side by side after `lead`, broken between items; following lines are indented to the
/// end of `lead`. Lines of at most page_columns, each with LF.
std::string flow(std::string_view lead, const std::vector<std::string>& items);

/// `text` in lines of at most page_columns, each after `indent` blanks and with LF.
std::string paragraph(std::string_view text, std::size_t indent);

/// "  --air T     the air ..." : `term`, then `text` from column `column` on, in as many lines as
/// it takes; a term that is too long stands on a line of its own.
std::string entry(std::string_view term, std::string_view text, std::size_t column);

std::string join(const std::vector<std::string>& parts, std::string_view between);

/// Between quotes, made safe to print (base::shown).
std::string quote(std::string_view typed);

/// `did you mean "plan"?`, or empty when nothing is near. For commands, options and names.
std::string did_you_mean(std::string_view typed, const std::vector<std::string>& candidates);

}  // namespace wetout::cli
