#include "text.hpp"

#include <algorithm>
#include <optional>

#include "wetout/base/shown.hpp"
#include "wetout/base/words.hpp"

namespace wetout::cli {

std::vector<std::string> wrap(std::string_view text, std::size_t width) {
  std::vector<std::string> lines;
  std::string line;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string_view word = text.substr(at, end - at);
    at = end + 1;
    if (word.empty()) continue;
    if (!line.empty() && line.size() + 1 + word.size() > width) {
      lines.push_back(std::move(line));
      line.clear();
    }
    if (!line.empty()) line += ' ';
    line += word;
  }
  if (!line.empty()) lines.push_back(std::move(line));
  return lines;
}

std::string flow(std::string_view lead, const std::vector<std::string>& items) {
  std::string out;
  std::string line(lead);
  bool fresh = true;
  for (const std::string& item : items) {
    if (!fresh && line.size() + 1 + item.size() > page_columns) {
      out += line + '\n';
      line.assign(lead.size(), ' ');
    }
    line += ' ' + item;
    fresh = false;
  }
  return out + line + '\n';
}

std::string paragraph(std::string_view text, std::size_t indent) {
  std::string out;
  for (const std::string& line : wrap(text, page_columns - indent)) {
    out += std::string(indent, ' ') + line + '\n';
  }
  return out;
}

std::string entry(std::string_view term, std::string_view text, std::size_t column) {
  std::string out = "  " + std::string(term);
  if (out.size() + 2 > column) {
    out += '\n';
  } else {
    out.append(column - out.size(), ' ');
  }
  const std::string rest = paragraph(text, column);
  return out + (out.back() == '\n' ? rest : rest.substr(std::min(column, rest.size())));
}

std::string join(const std::vector<std::string>& parts, std::string_view between) {
  std::string out;
  for (const std::string& part : parts) {
    if (!out.empty()) out += between;
    out += part;
  }
  return out;
}

std::string quote(std::string_view typed) { return '"' + base::shown(typed) + '"'; }

std::string did_you_mean(std::string_view typed, const std::vector<std::string>& candidates) {
  const std::optional<std::string> meant = base::nearest(typed, candidates);
  return meant ? "did you mean " + quote(*meant) + "?" : "";
}

}  // namespace wetout::cli
