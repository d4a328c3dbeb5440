#include "svg_path.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <numbers>

namespace wetout::board {
namespace {

constexpr double pi = std::numbers::pi;
// Beyond what any drawing has; a sum of a million of them is finite.
constexpr double most_number = 1e12;

bool is_space(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f'; }
bool is_digit(char c) { return c >= '0' && c <= '9'; }

// From end points to a centre: SVG 2, appendix B.2.4; radii too small are enlarged (B.2.5).
void add_arc(std::vector<Cubic>& into, Vec from, Vec to, double rx, double ry, double degrees,
             bool large, bool sweep) {
  rx = std::abs(rx);
  ry = std::abs(ry);
  if (rx == 0.0 || ry == 0.0) {
    into.push_back(straight(from, to));
    return;
  }
  const double angle = degrees * pi / 180.0, cosine = std::cos(angle), sine = std::sin(angle);
  const Vec half = 0.5 * (from - to);
  const Vec turned{cosine * half.x + sine * half.y, -sine * half.x + cosine * half.y};
  const double need = std::hypot(turned.x / rx, turned.y / ry);
  if (need > 1.0) {
    rx *= need;
    ry *= need;
  }
  const double u = turned.x / rx, v = turned.y / ry;
  const double square = u * u + v * v;
  const double away = std::sqrt(std::max(0.0, (1.0 - square) / square)) * (large == sweep ? -1 : 1);
  const Vec centre_turned{away * rx * v, -away * ry * u};
  const Vec middle = 0.5 * (from + to);
  const Vec centre{cosine * centre_turned.x - sine * centre_turned.y + middle.x,
                   sine * centre_turned.x + cosine * centre_turned.y + middle.y};
  const double begin =
      std::atan2((turned.y - centre_turned.y) / ry, (turned.x - centre_turned.x) / rx);
  const double end =
      std::atan2((-turned.y - centre_turned.y) / ry, (-turned.x - centre_turned.x) / rx);
  double turn = end - begin;
  if (sweep && turn < 0.0) turn += 2.0 * pi;
  if (!sweep && turn > 0.0) turn -= 2.0 * pi;
  std::vector<Cubic> pieces =
      arc({cosine * rx, sine * rx, -sine * ry, cosine * ry, centre.x, centre.y}, begin, turn);
  pieces.front().p[0] = from;
  pieces.back().p[3] = to;
  into.insert(into.end(), pieces.begin(), pieces.end());
}

class PathReader {
 public:
  explicit PathReader(std::string_view d) : text_(d) {}

  std::vector<Chain> run(std::optional<SvgWrong>& wrong) {
    text_.skip_space();
    char command = '\0';
    while (!text_.done() && !wrong_) {
      const char c = text_.next();
      if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z')) {
        command = text_.take();
        if (chains_.empty() && command != 'M' && command != 'm') fail("M first");
      } else if (command == '\0' || command == 'Z' || command == 'z') {
        fail("a command, e.g. M or L");
      } else if (command == 'M' || command == 'm') {
        command = command == 'M' ? 'L' : 'l';  // further pairs are lines
      }
      if (!wrong_) one(command);
      text_.skip_comma();
    }
    if (wrong_) {
      wrong = std::move(wrong_);
      return {};
    }
    std::erase_if(chains_, [](const Chain& chain) { return chain.pieces.empty(); });
    return std::move(chains_);
  }

 private:
  void fail(std::string expected) {
    if (!wrong_) wrong_ = SvgWrong{text_.place(), std::move(expected)};
  }

  double number() {
    text_.skip_comma();
    const auto value = text_.number();
    if (!value) fail("a number");
    return value.value_or(0.0);
  }
  bool flag() {
    text_.skip_comma();
    const auto value = text_.flag();
    if (!value) fail("a flag, 0 or 1");
    return value.value_or(false);
  }
  Vec point(bool relative) {
    const double x = number(), y = number();
    return relative ? at_ + Vec{x, y} : Vec{x, y};
  }

  void add(const Cubic& piece) {
    // After Z without a move a new sub-path begins where that one did.
    if (chains_.back().closed) chains_.emplace_back();
    chains_.back().pieces.push_back(piece);
    at_ = piece.p[3];
  }
  void line(Vec to) {
    if (length(to - at_) > 0.0) add(straight(at_, to));
  }
  void cubic(Vec a, Vec b, Vec to) {
    const Vec from = at_;
    if (length(a - from) + length(b - from) + length(to - from) > 0.0) add({{from, a, b, to}});
    control_ = b;
  }
  void quadratic(Vec control, Vec to) {
    const Vec from = at_;
    cubic(from + 2.0 / 3.0 * (control - from), to + 2.0 / 3.0 * (control - to), to);
    control_ = control;
  }

  void one(char command) {
    const bool relative = command >= 'a';
    const char kind = relative ? static_cast<char>(command - 'a' + 'A') : command;
    const char before = before_;
    before_ = kind;
    text_.skip_space();
    switch (kind) {
      case 'M': {
        const Vec to = point(relative);
        if (wrong_) return;
        chains_.emplace_back();
        at_ = begin_ = to;
        return;
      }
      case 'L': {
        const Vec to = point(relative);
        if (!wrong_) line(to);
        return;
      }
      case 'H': {
        const double x = number();
        if (!wrong_) line({relative ? at_.x + x : x, at_.y});
        return;
      }
      case 'V': {
        const double y = number();
        if (!wrong_) line({at_.x, relative ? at_.y + y : y});
        return;
      }
      case 'C': {
        const Vec a = point(relative), b = point(relative), to = point(relative);
        if (!wrong_) cubic(a, b, to);
        return;
      }
      case 'S': {
        const Vec a = before == 'C' || before == 'S' ? 2.0 * at_ - control_ : at_;
        const Vec b = point(relative), to = point(relative);
        if (!wrong_) cubic(a, b, to);
        return;
      }
      case 'Q': {
        const Vec control = point(relative), to = point(relative);
        if (!wrong_) quadratic(control, to);
        return;
      }
      case 'T': {
        const Vec control = before == 'Q' || before == 'T' ? 2.0 * at_ - control_ : at_;
        const Vec to = point(relative);
        if (!wrong_) quadratic(control, to);
        return;
      }
      case 'A': {
        const double rx = number(), ry = number(), degrees = number();
        const bool large = flag(), sweep = flag();
        const Vec to = point(relative);
        if (wrong_ || length(to - at_) == 0.0) return;
        std::vector<Cubic> pieces;
        add_arc(pieces, at_, to, rx, ry, degrees, large, sweep);
        for (const Cubic& piece : pieces) add(piece);
        return;
      }
      case 'Z':
        line(begin_);
        chains_.back().closed = true;
        at_ = begin_;
        return;
      default:
        fail("one of the commands M L H V C S Q T A Z");
        return;
    }
  }

  SvgText text_;
  std::optional<SvgWrong> wrong_;
  std::vector<Chain> chains_;
  Vec at_, begin_, control_;
  char before_ = '\0';
};

}  // namespace

void SvgText::skip_space() {
  while (!done() && is_space(next())) ++at_;
}
void SvgText::skip_comma() {
  skip_space();
  if (next() == ',') {
    ++at_;
    skip_space();
  }
}

std::optional<double> SvgText::number() {
  std::size_t end = at_;
  const auto peek = [&] { return end < text_.size() ? text_[end] : '\0'; };
  if (peek() == '+' || peek() == '-') ++end;
  const std::size_t digits = end;
  std::size_t count = 0;
  for (; is_digit(peek()); ++end) ++count;
  if (peek() == '.') {
    ++end;
    for (; is_digit(peek()); ++end) ++count;
  }
  if (count == 0) return std::nullopt;
  if (peek() == 'e' || peek() == 'E') {
    std::size_t power = end + 1;
    if (power < text_.size() && (text_[power] == '+' || text_[power] == '-')) ++power;
    if (power < text_.size() && is_digit(text_[power])) {
      end = power;
      while (is_digit(peek())) ++end;
    }
  }
  double value = 0.0;
  const auto read = std::from_chars(text_.data() + digits, text_.data() + end, value);
  if (read.ec == std::errc::result_out_of_range) value = 0.0;  // 1e-999, or refused below
  if (read.ec == std::errc::result_out_of_range &&
      text_.substr(at_, end - at_).find("e-") == std::string_view::npos &&
      text_.substr(at_, end - at_).find("E-") == std::string_view::npos) {
    return std::nullopt;
  }
  if (std::abs(value) > most_number) return std::nullopt;
  const bool negative = text_[at_] == '-';
  at_ = end;
  return negative ? -value : value;
}

std::optional<bool> SvgText::flag() {
  if (next() != '0' && next() != '1') return std::nullopt;
  return take() == '1';
}

std::vector<Chain> read_path(std::string_view d, std::optional<SvgWrong>& wrong) {
  return PathReader(d).run(wrong);
}

std::optional<Affine> read_transform(std::string_view text) {
  Affine all;
  SvgText in(text);
  for (in.skip_comma(); !in.done(); in.skip_comma()) {
    std::string word;
    while (!in.done() && in.next() != '(' && !is_space(in.next())) word += in.take();
    in.skip_space();
    if (in.next() != '(') return std::nullopt;
    in.take();
    std::vector<double> v;
    for (in.skip_comma(); !in.done() && in.next() != ')'; in.skip_comma()) {
      const auto number = in.number();
      if (!number || v.size() == 6) return std::nullopt;
      v.push_back(*number);
    }
    if (in.done()) return std::nullopt;
    in.take();
    const auto radians = [&](std::size_t i) { return v[i] * pi / 180.0; };
    Affine one;
    if (word == "matrix" && v.size() == 6) {
      one = {v[0], v[1], v[2], v[3], v[4], v[5]};
    } else if (word == "translate" && (v.size() == 1 || v.size() == 2)) {
      one.e = v[0];
      one.f = v.size() == 2 ? v[1] : 0.0;
    } else if (word == "scale" && (v.size() == 1 || v.size() == 2)) {
      one.a = v[0];
      one.d = v.size() == 2 ? v[1] : v[0];
    } else if (word == "rotate" && (v.size() == 1 || v.size() == 3)) {
      const double c = std::cos(radians(0)), s = std::sin(radians(0));
      one = {c, s, -s, c, 0, 0};
      if (v.size() == 3)
        one = Affine{1, 0, 0, 1, v[1], v[2]}.after(one).after({1, 0, 0, 1, -v[1], -v[2]});
    } else if (word == "skewX" && v.size() == 1) {
      one.c = std::tan(radians(0));
    } else if (word == "skewY" && v.size() == 1) {
      one.b = std::tan(radians(0));
    } else {
      return std::nullopt;
    }
    all = all.after(one);
  }
  return all;
}

Chain ellipse(Vec centre, double rx, double ry) {
  Chain chain{arc({rx, 0, 0, ry, centre.x, centre.y}, 0.0, 2.0 * pi), true};
  chain.pieces.back().p[3] = chain.pieces.front().p[0];
  return chain;
}

}  // namespace wetout::board
