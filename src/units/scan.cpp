#include "scan.hpp"

#include <algorithm>
#include <charconv>
#include <optional>

#include "text.hpp"

namespace wetout::units {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
// Bytes beyond ASCII that plain() left alone belong to words we do not know.
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80; }

class Scanner {
 public:
  Scanner(std::string_view typed, std::string_view plain, const Ask& ask)
      : typed_(typed), text_(plain), ask_(ask) {}

  base::Result<Scanned> all() {
    Scanned out;
    if (peek() == '-' || peek() == '+') {
      out.negative = peek() == '-';
      ++at_;
      skip_blanks();
      if (peek() == '-' || peek() == '+') {
        return base::fail(problem("number.bad", "two signs stand before the number", ""));
      }
    }
    do {
      base::Result<Term> term = next_term(out.terms);
      if (!term) return base::fail(term.error());
      out.terms.push_back(*std::move(term));
      skip_separator(out.terms.back());
    } while (at_ < text_.size());
    return out;
  }

  /// Value, and whether it was typed as a whole number.
  base::Result<Term> number() {
    if (!starts_number(at_)) return base::fail(no_number());
    const std::size_t begin = at_;
    Term out;
    const char* const first = text_.data() + at_;
    const auto [last, error] = std::from_chars(first, text_.data() + text_.size(), out.value);
    at_ += static_cast<std::size_t>(last - first);
    if (error == std::errc::result_out_of_range) {
      return base::fail(problem("number.not_finite",
                                quoted(since(begin)) + " is too large or too small a number",
                                "check its exponent"));
    }
    out.whole = since(begin).find_first_not_of("0123456789") == std::string_view::npos;
    if (out.whole) {
      base::Result<void> done = fraction(out);
      if (!done) return base::fail(done.error());
    }
    if (peek() == ',' && is_digit(peek(1))) {
      return base::fail(problem("number.bad", "a comma inside a number can mean two things",
                                "the decimal mark is a point, thousands have none: 2.5, 1200"));
    }
    if (peek() == '.' || (!out.whole && peek() == '/' && is_digit(peek(1)))) {
      return base::fail(problem("number.bad", "this number cannot be read", ""));
    }
    return out;
  }

  [[nodiscard]] bool at_end() const { return at_ == text_.size(); }

 private:
  [[nodiscard]] char peek(std::size_t ahead = 0) const {
    return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\0';
  }
  [[nodiscard]] std::string_view since(std::size_t begin) const {
    return text_.substr(begin, at_ - begin);
  }
  [[nodiscard]] bool starts_number(std::size_t i) const {
    if (i >= text_.size()) return false;
    if (is_digit(text_[i])) return true;
    return text_[i] == '.' && i + 1 < text_.size() && is_digit(text_[i + 1]);
  }
  void skip_blanks() {
    while (peek() == ' ') ++at_;
  }
  [[nodiscard]] std::size_t digits_from(std::size_t i) const {
    while (i < text_.size() && is_digit(text_[i])) ++i;
    return i;
  }
  [[nodiscard]] base::Problem problem(std::string code, std::string message,
                                      std::string hint) const {
    return fault(std::move(code), std::move(message), typed_, ask_, std::move(hint));
  }

  [[nodiscard]] base::Problem no_number() const {
    const std::string_view rest = text_.substr(at_);
    if (rest.starts_with("nan") || rest.starts_with("inf")) {
      return problem("number.not_finite", "the number must be finite", "");
    }
    if (at_ == 0 || rest.empty())
      return problem("number.bad", quoted(typed_) + " does not begin with a number", "");
    if (rest.front() == '-') return not_one_value();
    return problem("number.bad", "a number should stand before " + quoted(rest), "");
  }

  // "3/4" after "20 ", "20-" or nothing; `out` holds the whole number just read.
  base::Result<void> fraction(Term& out) {
    if (peek() == '/' && is_digit(peek(1))) return over(out, 0.0, out.value);
    std::size_t i = at_;
    if (peek() == '-') {
      ++i;
    } else {
      while (i < text_.size() && text_[i] == ' ') ++i;
    }
    const std::size_t end = digits_from(i);
    const bool follows = i > at_ && end > i && end + 1 < text_.size() && text_[end] == '/' &&
                         is_digit(text_[end + 1]);
    if (!follows) return {};
    double above = 0.0;
    std::from_chars(text_.data() + i, text_.data() + end, above);
    at_ = end;
    return over(out, out.value, above);
  }

  // `at_` is on the "/" of whole + above / below.
  base::Result<void> over(Term& out, double whole, double above) {
    const std::size_t begin = at_ + 1;
    at_ = digits_from(begin);
    double below = 0.0;
    std::from_chars(text_.data() + begin, text_.data() + at_, below);
    if (below == 0.0) return base::fail(problem("number.bad", "a fraction over zero", ""));
    if (whole > 0.0 && above >= below) {
      return base::fail(
          problem("number.bad", "the fraction after a whole number must be less than one", ""));
    }
    out.value = whole + above / below;
    out.whole = false;
    return {};
  }

  base::Result<Term> next_term(const std::vector<Term>& before) {
    const std::size_t begin = at_;
    base::Result<Term> term = number();
    if (!term) return term;
    const std::string_view digits = since(begin);
    const std::vector<std::string> words = unit_words();
    if (!words.empty()) {
      const std::optional<Unit> unit = find_unit(words);
      if (!unit) return base::fail(unknown(words, digits));
      term->unit = *unit;
      return term;
    }
    if (!at_end()) return base::fail(no_unit_but_more());
    const bool inches_after_feet = before.size() == 1 && before.front().unit.foot_mark;
    if (!inches_after_feet) return base::fail(unit_missing(digits, typed_, ask_));
    term->unit = *find_unit({"in"});
    return term;
  }

  [[nodiscard]] base::Problem unknown(const std::vector<std::string>& words,
                                      std::string_view digits) const {
    if (words.size() == 1 && (words[0] == "deg" || words[0] == "degree" || words[0] == "degrees")) {
      const std::string number(digits);
      return problem("unit.ambiguous", "these degrees may be Celsius or Fahrenheit",
                     "write " + quoted(number + " C") + " or " + quoted(number + " F"));
    }
    return unit_unknown(words, typed_, ask_);
  }

  [[nodiscard]] base::Problem no_unit_but_more() const {
    if (starts_number(at_)) {
      return problem("number.bad", "two numbers stand side by side",
                     "each number needs its unit; no blanks inside a number");
    }
    if (peek() == '-') return not_one_value();
    return problem("unit.unknown", quoted(text_.substr(at_)) + " is not a unit wetout knows", "");
  }

  [[nodiscard]] base::Problem not_one_value() const {
    std::string hint = "write one of the two";
    if (ask_.kind == Kind::length) hint += "; six feet four is \"6 ft 4 in\"";
    return problem("number.bad", "one value is wanted here, not a range", hint);
  }

  // Stops before the next number, sign or comma.
  std::vector<std::string> unit_words() {
    std::vector<std::string> words;
    for (;;) {
      skip_blanks();
      const char c = peek();
      if (at_end() || c == ',' || c == '+' || starts_number(at_)) break;
      if (c == '-') {
        if (words.empty() || !is_letter(peek(1))) break;
        ++at_;  // "fl-oz"
      } else if (c == '\'' || c == '"') {
        if (!words.empty()) break;
        ++at_;
        if (c == '\'' && peek() == '\'') {
          ++at_;
          return {"''"};
        }
        return {std::string(1, c)};
      } else if (is_letter(c)) {
        const std::size_t begin = at_;
        std::string word = letters();
        if (word == "and" && !words.empty()) {
          at_ = begin;
          break;
        }
        words.push_back(std::move(word));
      } else {
        words.emplace_back(1, c);
        ++at_;
      }
    }
    return words;
  }

  // A word with its power: "yd2", "m^3"; points of abbreviations fall away.
  std::string letters() {
    std::string word;
    while (is_letter(peek()) || (peek() == '.' && !starts_number(at_))) {
      if (peek() != '.') word += peek();
      ++at_;
    }
    if (peek() == '^' && is_digit(peek(1))) {
      word += peek();
      word += peek(1);
      at_ += 2;
    } else if (peek() == '2' || peek() == '3') {
      // "yd2", but not the inches of "6ft2in" and "6ft2 1/2in" or the minutes of "1h30min".
      const char after = peek(1);
      const std::size_t next = std::min(text_.find_first_not_of(' ', at_ + 1), text_.size());
      if (!is_digit(after) && !is_letter(after) && after != '.' && !starts_number(next)) {
        word += peek();
        ++at_;
      }
    }
    return word;
  }

  // What may stand between two parts: "3 lb, 4 oz", "3 lb and 4 oz", `6'-4"`.
  void skip_separator(const Term& before) {
    skip_blanks();
    std::size_t i = at_;
    if (peek() == ',') {
      ++i;
    } else if (text_.substr(at_).starts_with("and ")) {
      i += 4;
    } else if (peek() == '-' && before.unit.foot_mark) {
      ++i;
    }
    while (i < text_.size() && text_[i] == ' ') ++i;
    if (starts_number(i)) at_ = i;
  }

  std::string_view typed_;
  std::string_view text_;
  const Ask& ask_;
  std::size_t at_ = 0;
};

}  // namespace

base::Result<Scanned> scan(std::string_view text, const Ask& ask) {
  if (text.size() > longest_text) {
    return base::fail(fault("number.bad", "this is too long to be a quantity", text, ask, ""));
  }
  const std::string plain_text = plain(text);
  const std::string_view body = trimmed(plain_text);
  if (body.empty()) return base::fail(fault("number.bad", "nothing stands here", text, ask, ""));
  return Scanner(text, body, ask).all();
}

bool is_bare_number(std::string_view text) {
  if (text.size() > longest_text) return false;
  const std::string plain_text = plain(text);
  Scanner scanner(text, trimmed(plain_text), ask(Kind::duration));
  return scanner.number().has_value() && scanner.at_end();
}

}  // namespace wetout::units
