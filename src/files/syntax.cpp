#include "syntax.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>

#include "say.hpp"
#include "syntax_line.hpp"
#include "wetout/base/shown.hpp"

namespace wetout::files {
namespace {

using std::string_view_literals::operator""sv;

constexpr std::array curly_quotes = {"\u201c"sv, "\u201d"sv, "\u201e"sv, "\u201f"sv, "\u2018"sv,
                                     "\u2019"sv, "\u201a"sv, "\u00ab"sv, "\u00bb"sv};

/// As a TOML text: in the quotes it does not hold itself.
std::string as_toml(std::string_view text) {
  const bool plain = text.find('"') == none && text.find('\\') == none;
  if (plain) return enclosed(text, '"');
  if (text.find('\'') == none) return enclosed(text, '\'');
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    out += c;
  }
  return out + "\"";
}

std::string with_key(const Around& around, const std::string& value) {
  const std::string_view key = around.member ? std::string_view() : around.key();
  return (key.empty() ? "" : base::shown(key) + " = ") + value;
}

/// `6' 4"` as `6 ft 4 in`.
std::string in_words(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '\'') {
      out += " ft";
    } else if (c == '"') {
      out += " in";
    } else {
      out += c;
    }
  }
  return out;
}

std::string straight(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    bool curly = false;
    for (const std::string_view quote : curly_quotes) {
      if (!text.starts_with(quote)) continue;
      text.remove_prefix(quote.size());
      curly = true;
      break;
    }
    if (!curly) {
      out += text.front();
      text.remove_prefix(1);
    }
  }
  return out;
}

bool has_curly(std::string_view text) { return straight(text).size() != text.size(); }

struct Said {
  std::string code;
  std::size_t byte;
  std::string message;
  std::string expected;
  std::string hint;
  std::string_view found = {};
};

/// `"6 ft”`: a straight quote that was meant to be closed by a curly one.
bool closes_curly(std::string_view rest) {
  if (!rest.starts_with('"')) return false;
  for (std::size_t i = 1; i < rest.size() && rest[i] != '"'; ++i) {
    if (!has_curly(rest.substr(i, 3))) continue;
    const std::string_view after = trimmed(rest.substr(std::min(rest.size(), i + 3)));
    return after.empty() || std::string_view("#,]}").find(after.front()) != none;
  }
  return false;
}

std::optional<Said> curly(const Around& around) {
  const std::string_view rest = around.rest();
  const bool opens = has_curly(rest.substr(0, 3));
  if (!opens && !closes_curly(rest)) return std::nullopt;
  std::string_view inner = around.token();
  while (inner.starts_with('"')) inner.remove_prefix(1);
  return Said{"toml.curly_quotes",
              around.value,
              "curly quotes do not hold a text together",
              "straight quotes, e.g. " + as_toml("6 ft 4 in"),
              "write " + with_key(around, as_toml(base::shown(trimmed(straight(inner))))),
              around.token()};
}

std::optional<Said> quote_in_quotes(const Around& around) {
  const std::string_view rest = around.rest();
  if (rest.empty() || (rest.front() != '"' && rest.front() != '\'')) return std::nullopt;
  const std::size_t close = closing(rest, 0);
  if (close == none) {
    return Said{"toml.syntax", around.value, "the text that begins here is not closed",
                "a quote mark at both ends, on one line", ""};
  }
  const std::size_t next = skip_blanks(rest, close + 1);
  if (next >= rest.size() || std::string_view(",]}#").find(rest[next]) != none) return std::nullopt;
  const std::string_view whole = around.token_with_quotes(close + 1);
  const std::size_t last = whole.find_last_of(rest.front());
  const std::string_view inner = whole.substr(1, (last > close ? last : whole.size()) - 1);
  std::string hint = "write " + with_key(around, as_toml(base::shown(inner)));
  const bool a_measure = inner.find_first_of("0123456789") != none;
  if (a_measure) hint += ", or in words " + as_toml(base::shown(in_words(inner)));
  return Said{
      "toml.quote_in_quotes",
      around.value + close,
      "the text ends at this quote mark, but more follows",
      "a text without its own quote marks inside: '20 3/4\"' or \"6' 4\\\"\" or \"6 ft 4 in\"",
      hint,
      whole};
}

std::optional<Said> unquoted_number(const Around& around) {
  const std::string_view token = around.token();
  std::size_t i = 0;
  while (i < token.size() && std::string_view("+-.").find(token[i]) != none) ++i;
  if (i >= token.size() || !is_digit(token[i])) return std::nullopt;
  // A list over several lines has its elements alone on a line.
  if (around.equals == none && token.find('=') != none) return std::nullopt;
  std::size_t digits = i;
  while (digits < token.size() && is_digit(token[digits])) ++digits;
  const std::string suggestion = "write " + with_key(around, as_toml(base::shown(token)));
  const bool clock = digits < token.size() && token[digits] == ':';
  const bool date = digits - i == 4 && digits < token.size() && token[digits] == '-';
  if (clock || date) {
    return Said{"toml.unquoted_time",
                around.value,
                "times and dates stand in quotes",
                "e.g. \"18:00-22:00\" or \"2026-06-21\"",
                suggestion,
                token};
  }
  const std::string_view after = around.rest().substr(token.size());
  if (!around.in_list && after.size() > 1 && after[0] == ',' && is_digit(after[1])) {
    return Said{"toml.unquoted_quantity",
                around.value,
                "a quantity stands in quotes, and its decimal mark is a point",
                "e.g. \"2.5 in\"",
                "",
                trimmed(around.rest().substr(0, around.rest().find('#')))};
  }
  if (token.find_first_not_of("0123456789.+-eE_") == none) return std::nullopt;
  return Said{"toml.unquoted_quantity", around.value, "a quantity with its unit stands in quotes",
              "e.g. lap = \"2 in\"",    suggestion,   token};
}

/// "[board]" or "[[coat]]" above a line, without brackets; empty at the top of the file.
std::string_view table_above(const Lines& lines, int line) {
  for (int n = line - 1; n > 0; --n) {
    std::string_view text = trimmed(lines.line(n));
    if (!text.starts_with('[')) continue;
    text = text.substr(0, text.find(']'));
    const std::size_t name = text.find_first_not_of("[ ");
    return name == none ? std::string_view() : trimmed(text.substr(name));
  }
  return {};
}

std::optional<Said> inline_table(const Around& around, std::string_view description,
                                 const Lines& lines, int line) {
  const bool at_end = skip_blanks(around.line, around.error) >= around.line.size() ||
                      around.line[skip_blanks(around.line, around.error)] == '#';
  if (around.brace == none || !at_end || description.find("inline table") == none) {
    return std::nullopt;
  }
  const std::string_view before = trimmed(around.line.substr(0, around.brace));
  const bool named = !before.empty() && before.back() == '=';
  const std::string_view key = named ? trimmed(before.substr(0, before.size() - 1)) : ""sv;
  std::string hint = "write it all on one line";
  if (!key.empty() && key.find_first_of("[{,") == none) {
    const std::string above(table_above(lines, line));
    hint += ": " + base::shown(key) + " = { ... }; or give it lines of its own under [" +
            base::shown(above.empty() ? std::string(key) : above + "." + std::string(key)) + "]";
  }
  return Said{
      "toml.inline_table_lines", around.brace, "a table in braces cannot go over several lines",
      "{ ... } on one line",     hint,         around.line.substr(around.brace)};
}

std::optional<Said> bare_word(const Around& around) {
  const std::string_view token = around.token();
  if (around.equals == none || token.empty() || !is_letter(token.front())) return std::nullopt;
  if (token == "True" || token == "TRUE" || token == "yes") {
    return Said{"toml.syntax",
                around.value,
                "this is not a value of TOML",
                "true or false",
                "write " + with_key(around, "true"),
                token};
  }
  if (token == "False" || token == "FALSE" || token == "no") {
    return Said{"toml.syntax",
                around.value,
                "this is not a value of TOML",
                "true or false",
                "write " + with_key(around, "false"),
                token};
  }
  return Said{"toml.syntax",
              around.value,
              "a text stands in quotes",
              "e.g. foam = \"eps\"",
              "write " + with_key(around, as_toml(base::shown(token))),
              token};
}

/// Line of the same key further up in the same table, 0 when there is none to be seen.
int earlier(const Lines& lines, int line, std::string_view key) {
  for (int n = line - 1; n > 0; --n) {
    const std::string_view text = trimmed(lines.line(n));
    if (text.starts_with('[')) return 0;
    if (text.starts_with(key) && trimmed(text.substr(key.size())).starts_with('=')) return n;
  }
  return 0;
}

std::optional<Said> twice(const Around& around, std::string_view description, const Lines& lines,
                          int line) {
  if (description.find("cannot redefine existing") == none) return std::nullopt;
  const std::size_t begin = skip_blanks(around.line, 0);
  if (around.line.substr(begin).starts_with('[')) {
    const std::string_view header = trimmed(around.line.substr(begin));
    const std::string_view inner = trimmed(header.substr(0, header.find(']')));
    std::string name(inner.substr(
        inner.find_first_not_of('[') == none ? inner.size() : inner.find_first_not_of('[')));
    name = base::shown(trimmed(name));
    return Said{"toml.twice", begin, "there is another table of this name", "each table once",
                "tables that may come more than once have double brackets: [[" + name + "]]"};
  }
  const std::string_view key = around.key();
  const int first = key.empty() ? 0 : earlier(lines, line, key);
  return Said{"toml.twice",
              around.in_list ? around.value : begin,
              quoted(key) + " stands twice in one table",
              "each key once",
              first > 0 ? "the first is on line " + std::to_string(first) : "",
              key};
}

std::string hint_for(std::string_view description) {
  const auto says = [&](std::string_view what) { return description.find(what) != none; };
  if (says("expected '=', saw ':'")) return "write key = value, with = and not :";
  if (says("expected '='")) return "write key = value; a key is one word, e.g. wide_point";
  if (says("escape sequence")) return "a backslash is written \\\\, or use single quotes: '...'";
  if (says("dangling comma")) return "leave out the comma before }";
  if (says("expected ']'")) return "close the bracket on the same line";
  return {};
}

}  // namespace

base::Problem explain(std::string_view description, Position at, const Lines& lines,
                      std::string_view name) {
  base::Problem problem{.code = "toml.syntax", .file = std::string(name), .line = at.line};
  // Beyond this a line is no longer something a person wrote.
  constexpr int most_columns = 4000;
  const std::string_view line = at.column <= most_columns ? lines.line(at.line) : ""sv;
  const Around around = look(line, bytes_of(line, at.column - 1));

  std::optional<Said> said = twice(around, description, lines, at.line);
  if (!said) said = inline_table(around, description, lines, at.line);
  if (!said) said = curly(around);
  if (!said) said = quote_in_quotes(around);
  if (!said) said = unquoted_number(around);
  if (!said) said = bare_word(around);
  if (said) {
    problem.code = std::move(said->code);
    problem.column = characters_of(line.substr(0, said->byte)) + 1;
    problem.message = std::move(said->message);
    problem.expected = std::move(said->expected);
    problem.hint = std::move(said->hint);
  } else {
    const std::size_t colon = description.find(": ");
    const std::string_view what = description.starts_with("Error while") && colon != none
                                      ? description.substr(colon + 2)
                                      : description;
    constexpr int longest = 200;
    problem.column = at.column;
    problem.message = "this is not TOML: " + std::string(what.substr(0, bytes_of(what, longest)));
    problem.hint = hint_for(description);
  }
  if (said && !said->found.empty()) {
    problem.found = base::shown(said->found);
  } else {
    problem.found = lines.slice({problem.line, problem.column}, {problem.line, most_columns});
  }
  problem.source_line = lines.shown({problem.line, problem.column});
  return problem;
}

}  // namespace wetout::files
