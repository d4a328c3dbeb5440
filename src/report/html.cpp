#include "html.hpp"

#include <algorithm>

#include "layout.hpp"
#include "svg.hpp"
#include "wetout/base/check.hpp"

namespace wetout::report {
namespace {

bool is_name(std::string_view text) {
  const auto fits = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
  };
  return !text.empty() && text.front() >= 'a' && text.front() <= 'z' &&
         std::all_of(text.begin(), text.end(), fits);
}

// A line break after one of these would show as a space.
bool is_inline(std::string_view tag) {
  for (const std::string_view one : {"a", "b", "bdi", "code", "label", "span"}) {
    if (tag == one) return true;
  }
  return false;
}

// What would run, or load from elsewhere, whatever its value is.
bool is_harmless(const Attribute& attribute) {
  if (attribute.name.starts_with("on")) return false;
  if (attribute.name == "href") return attribute.value.starts_with('#');
  for (const std::string_view leads_out : {"src", "srcset", "srcdoc", "action", "formaction",
                                           "data", "poster", "background", "ping", "style"}) {
    if (attribute.name == leads_out) return false;
  }
  return true;
}

}  // namespace

std::string html_text(std::string_view text) {
  std::string out;
  std::string part;
  const auto finish = [&] {
    for (const char c : escaped(part)) {
      if (c == '\'') {
        out += "&#39;";
      } else {
        out += c;
      }
    }
    part.clear();
  };
  for (const char c : text) {
    if (c != layout::glue) {
      part += c;
      continue;
    }
    finish();
    out += "\u00a0";
  }
  finish();
  return out;
}

void Html::begin(std::string_view tag, const Attributes& attributes) {
  base::promise(is_name(tag), "tags are plain names");
  out_ += '<';
  out_ += tag;
  for (const Attribute& attribute : attributes) {
    base::promise(is_name(attribute.name) && is_harmless(attribute),
                  "attributes are plain names that run and load nothing");
    out_ += ' ';
    out_ += attribute.name;
    out_ += "=\"" + html_text(attribute.value) + '"';
  }
  out_ += '>';
}

Html& Html::open(std::string_view tag, const Attributes& attributes) {
  begin(tag, attributes);
  open_.emplace_back(tag);
  return *this;
}

Html& Html::close(std::string_view tag) {
  base::promise(!open_.empty() && open_.back() == tag, "tags are closed in turn");
  open_.pop_back();
  out_ += "</";
  out_ += tag;
  out_ += is_inline(tag) ? ">" : ">\n";
  return *this;
}

Html& Html::text(std::string_view text) {
  out_ += html_text(text);
  return *this;
}

Html& Html::put(std::string_view tag, std::string_view text, const Attributes& attributes) {
  return open(tag, attributes).text(text).close(tag);
}

Html& Html::single(std::string_view tag, const Attributes& attributes) {
  begin(tag, attributes);
  return *this;
}

Html& Html::raw(const Markup& markup) {
  out_ += markup.text();
  return *this;
}

Html& Html::code(std::string_view tag, const Markup& code) {
  base::promise(tag == "style" || tag == "script", "code is a style or a script");
  base::promise(code.text().find("</") == std::string::npos, "code does not end its own element");
  return open(tag).raw(code).close(tag);
}

std::string Html::take() {
  base::promise(open_.empty(), "all tags are closed");
  return std::move(out_);
}

}  // namespace wetout::report
