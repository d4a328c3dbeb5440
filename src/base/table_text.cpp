#include "wetout/base/table_text.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <string>

namespace wetout::base {
namespace {

bool blank(char c) { return c == ' ' || c == '\t'; }

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

bool of_a_word(char c) {
  return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0x80;
}

std::string_view without_plus(std::string_view text) {
  if (text.size() > 1 && text[0] == '+' && text[1] != '-' && text[1] != '+') text.remove_prefix(1);
  return text;
}

}  // namespace

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && blank(text.back())) text.remove_suffix(1);
  return text;
}

std::string plain_name(std::string_view text) {
  std::string out;
  for (const char c : text) {
    const char small = lower(c);
    if (of_a_word(small)) {
      out += small;
    } else if (!out.empty() && out.back() != ' ') {
      out += ' ';
    }
  }
  if (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

bool equal_but_for_case(std::string_view a, std::string_view b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](char x, char y) { return lower(x) == lower(y); });
}

bool TextLines::next() {
  if (rest_.empty()) return false;
  ++number_;
  const std::size_t end = rest_.find(mark_);
  cut_off_ = end == std::string_view::npos;
  line_ = rest_.substr(0, end);
  rest_.remove_prefix(cut_off_ ? rest_.size() : end + 1);
  if (line_.ends_with('\r')) line_.remove_suffix(1);
  return true;
}

Split split(std::string_view line, char delimiter, std::vector<std::string_view>& cells) {
  cells.clear();
  std::size_t at = 0;
  while (true) {
    std::size_t from = at;
    while (from < line.size() && blank(line[from]) && line[from] != delimiter) ++from;
    if (from < line.size() && line[from] == '"') {
      std::size_t close = from + 1;
      while ((close = line.find('"', close)) != std::string_view::npos &&
             line.substr(close).starts_with("\"\"")) {
        close += 2;
      }
      if (close == std::string_view::npos) return Split::open_quote;
      cells.push_back(trimmed(line.substr(from + 1, close - from - 1)));
      at = close + 1;
      while (at < line.size() && blank(line[at])) ++at;
      if (at < line.size() && line[at] != delimiter) return Split::open_quote;
    } else {
      at = std::min(line.find(delimiter, from), line.size());
      cells.push_back(trimmed(line.substr(from, at - from)));
    }
    if (at == line.size()) return Split::whole;
    if (cells.size() == most_cells) return Split::too_many;
    ++at;
  }
}

int column_of(std::string_view line, std::string_view part) {
  int column = 1;
  for (const char* c = line.data(); c < part.data(); ++c) {
    if ((static_cast<unsigned char>(*c) & 0xC0U) != 0x80U) ++column;
  }
  return column;
}

std::optional<double> to_number(std::string_view text, bool decimal_comma) {
  text = without_plus(text);
  std::array<char, 64> buffer{};
  if (decimal_comma && text.find(',') != std::string_view::npos) {
    if (text.size() > buffer.size()) return std::nullopt;
    // A point as well as a comma, or two commas, is no number.
    if (text.find('.') != std::string_view::npos) return std::nullopt;
    std::replace_copy(text.begin(), text.end(), buffer.begin(), ',', '.');
    text = std::string_view(buffer.data(), text.size());
  }
  double out = 0.0;
  const char* const end = text.data() + text.size();
  const auto [stop, error] = std::from_chars(text.data(), end, out);
  if (error != std::errc{} || stop != end) return std::nullopt;
  return out;
}

std::optional<int> to_int(std::string_view text) {
  text = without_plus(text);
  int out = 0;
  const char* const end = text.data() + text.size();
  const auto [stop, error] = std::from_chars(text.data(), end, out);
  if (error != std::errc{} || stop != end) return std::nullopt;
  return out;
}

}  // namespace wetout::base
