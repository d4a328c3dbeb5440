// Pages for people: tags, attributes and texts. Whatever comes out of a file is text and stays
// text; markup is put in as it stands only where its type says that this program wrote it.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace wetout::report {

/// Markup that this program wrote itself: drawings, styles, scripts. A text of a plan, a shop or a
/// weather file is never made one.
class Markup {
 public:
  static Markup ours(std::string text) { return Markup(std::move(text)); }
  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  explicit Markup(std::string text) : text_(std::move(text)) {}
  std::string text_;
};

/// `name="value"`, the value escaped.
struct Attribute {
  std::string_view name;
  std::string value = {};
};
using Attributes = std::vector<Attribute>;

/// Writes elements in their order. Control characters become spaces, bytes that are not UTF-8 '?'.
/// A tag or attribute that is no plain name, an attribute that runs a script or leads out of the
/// page, and a tag that is closed out of turn are bugs.
class Html {
 public:
  Html& open(std::string_view tag, const Attributes& attributes = {});
  Html& close(std::string_view tag);
  Html& text(std::string_view text);
  /// An element that holds a text only.
  Html& put(std::string_view tag, std::string_view text, const Attributes& attributes = {});
  /// An element that holds nothing and is not closed: input, meta, br.
  Html& single(std::string_view tag, const Attributes& attributes = {});
  Html& raw(const Markup& markup);
  /// A style or script as it stands.
  Html& code(std::string_view tag, const Markup& code);
  /// Everything; all tags are closed by now.
  [[nodiscard]] std::string take();

 private:
  void begin(std::string_view tag, const Attributes& attributes);

  std::string out_;
  std::vector<std::string> open_;
};

/// For a text between tags or quotes: `& < > " '` as references, glue (layout.hpp) as a space that
/// does not break.
std::string html_text(std::string_view text);

}  // namespace wetout::report
