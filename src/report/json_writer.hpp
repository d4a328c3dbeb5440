// Writes described objects as JSON text on one line. Numbers are printed from whole counts of the
// key's last decimal, so that 0.001 steps come out as the shortest decimals and the same text
// comes out of a document that was read back.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "fields.hpp"
#include "numbers.hpp"
#include "wetout/units/money.hpp"

namespace wetout::report {

/// `value` to `decimals`, without trailing zeros; a value that is not finite is a bug.
void append_fixed(std::string& out, double value, int decimals);
/// Twelve significant digits.
void append_plain(std::string& out, double value);
/// Quoted; bytes that are not UTF-8 become U+FFFD.
void append_quoted(std::string& out, std::string_view text);
void append_money(std::string& out, const units::Money& money);

class JsonWriter {
 public:
  explicit JsonWriter(std::string& out) : out_(out) {}

  template <class T, class... Unit>
  void operator()(std::string_view key, const T& value, Unit... unit) {
    if (!first_) out_ += ',';
    first_ = false;
    out_ += '"';
    out_ += key;
    out_ += "\":";
    write(value, unit...);
  }

  /// A key that the reader does not expect of older documents.
  template <class T, class... Unit>
  void later(std::string_view key, const std::optional<T>& value, Unit... unit) {
    (*this)(key, value, unit...);
  }

  template <class T>
  void object(const T& value) {
    JsonWriter inner(out_);
    out_ += '{';
    Fields<T>::visit(inner, value);
    out_ += '}';
  }

 private:
  void write(const std::string& text) { append_quoted(out_, text); }
  void write(bool value) { out_ += value ? "true" : "false"; }
  void write(int value) { out_ += std::to_string(value); }
  void write(std::int64_t value) { out_ += std::to_string(value); }
  void write(const units::Money& money) { append_money(out_, money); }
  void write(double value, as::Plain /*unit*/) { append_plain(out_, value); }
  template <class T, class Unit>
  requires requires(T value) { Unit::out(value); }
  void write(const T& value, Unit /*unit*/) {
    append_fixed(out_, Unit::out(value), Unit::decimals);
  }
  template <Worded E>
  void write(E value) {
    append_quoted(out_, Words<E>::word(value));
  }
  template <Described T>
  void write(const T& value) {
    object(value);
  }
  template <class T, class... Unit>
  void write(const std::optional<T>& value, Unit... unit) {
    if (value) {
      write(*value, unit...);
    } else {
      out_ += "null";
    }
  }
  template <class T>
  void write(const std::vector<T>& values) {
    out_ += '[';
    bool first = true;
    for (const T& value : values) {
      if (!first) out_ += ',';
      first = false;
      write(value);
    }
    out_ += ']';
  }

  std::string& out_;
  bool first_ = true;
};

/// `{"format": ..., <fields>}` and LF.
template <class T>
std::string document_json(std::string_view format, const T& document) {
  std::string out;
  out.reserve(16384);
  out += "{\"format\":";
  append_quoted(out, format);
  out += ',';
  JsonWriter writer(out);
  Fields<T>::visit(writer, document);
  out += "}\n";
  return out;
}

}  // namespace wetout::report
