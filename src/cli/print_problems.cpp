#include "print_problems.hpp"

#include <algorithm>
#include <string_view>

#include "text.hpp"
#include "wetout/report/problems_document.hpp"

namespace wetout::cli {
namespace {

// Select Graphic Rendition of ECMA-48: bold red, bold, none.
constexpr std::string_view red = "\x1b[1;31m";
constexpr std::string_view bold = "\x1b[1m";
constexpr std::string_view plain = "\x1b[0m";
constexpr std::string_view mark = "error:";

std::string painted(std::string_view text, std::string_view colour) {
  return std::string(colour) + std::string(text) + std::string(plain);
}

// The place in bold, the mark and the caret in red. The text itself holds no escape sequences: the
// report has taken control characters out.
std::string paint(std::string_view text) {
  std::string out;
  bool first = true;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size() - 1);
    std::string_view line = text.substr(0, end);
    text.remove_prefix(end + 1);
    const std::size_t at = line.find(mark);
    if (first && at != std::string_view::npos) {
      out += painted(line.substr(0, at), bold) + painted(mark, red);
      line.remove_prefix(at + mark.size());
    } else if (!line.empty() && line.find_first_not_of(' ') == line.size() - 1 &&
               line.back() == '^') {
      out += line.substr(0, line.size() - 1);
      out += painted("^", red);
      line = {};
    }
    first = false;
    out += line;
    out += '\n';
  }
  return out;
}

// Without a line of a file to look at, the message names the argument and what was typed.
void leave_out_what_is_said(base::Problem& problem) {
  problem.file = "wetout";
  if (problem.message.starts_with(problem.key)) problem.key.clear();
  if (problem.message.find(quote(problem.found)) != std::string::npos) {
    if (problem.key == problem.found) problem.key.clear();
    problem.found.clear();
  }
}

}  // namespace

std::string problems_text(const base::Problems& problems, std::size_t most, bool colour) {
  std::string out;
  for (std::size_t i = 0; i < std::min(most, problems.size()); ++i) {
    base::Problem problem = problems[i];
    if (problem.file.empty()) leave_out_what_is_said(problem);
    problem.message = std::string(mark) + ' ' + problem.message;
    const std::string text = report::problems_text({problem});
    out += colour ? paint(text) : text;
  }
  if (problems.size() > most) {
    out += "wetout: " + std::to_string(problems.size() - most) +
           " more problems; --verbose shows them all\n";
  }
  return out;
}

}  // namespace wetout::cli
