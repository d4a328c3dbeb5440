// Reads described objects from parsed JSON. Everything wrong is noted with its key path; unknown
// keys are ignored, because later versions of a format may add some.
#pragma once

#include <cmath>
#include <concepts>
#include <cstdint>
#include <limits>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "fields.hpp"
#include "numbers.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/units/money.hpp"

namespace wetout::report {

/// Where a value stands: `coats[2].mix_g`. Put into words only when something is wrong.
struct Path {
  const Path* above = nullptr;
  std::string_view key;
  std::optional<std::size_t> index;

  [[nodiscard]] std::string text() const;
};

void note_missing(const Path& path, base::Problems& problems);
void note_wrong(const nlohmann::json& found, std::string_view expected, const Path& path,
                base::Problems& problems);
void read_money(const nlohmann::json& json, units::Money& out, const Path& path,
                base::Problems& problems);

class JsonReader {
 public:
  JsonReader(const nlohmann::json& object, const Path* path, base::Problems& problems)
      : object_(object), path_(path), problems_(problems) {}

  template <class T, class... Unit>
  void operator()(std::string_view key, T& out, Unit... unit) {
    const Path here{path_, key, {}};
    const auto at = object_.find(key);
    if (at == object_.end()) {
      note_missing(here, problems_);
    } else {
      read(*at, out, here, unit...);
    }
  }

  /// A key that came later within the format's number: unknown in older documents.
  template <class T, class... Unit>
  void later(std::string_view key, std::optional<T>& out, Unit... unit) {
    out.reset();
    if (object_.contains(key)) (*this)(key, out, unit...);
  }

 private:
  using Json = nlohmann::json;

  void read(const Json& json, std::string& out, const Path& path) {
    if (!json.is_string()) return note_wrong(json, "a string", path, problems_);
    out = json.get_ref<const std::string&>();
  }
  void read(const Json& json, bool& out, const Path& path) {
    if (!json.is_boolean()) return note_wrong(json, "true or false", path, problems_);
    out = json.get<bool>();
  }
  void read(const Json& json, int& out, const Path& path) {
    if (!json.is_number_integer() || json > std::numeric_limits<int>::max() || json < 0) {
      return note_wrong(json, "a whole number from 0", path, problems_);
    }
    out = json.get<int>();
  }
  void read(const Json& json, units::Money& out, const Path& path) {
    read_money(json, out, path, problems_);
  }
  void read(const Json& json, double& out, const Path& path, as::Plain /*unit*/) {
    if (!json.is_number()) return note_wrong(json, "a number", path, problems_);
    out = json.get<double>();
  }
  template <class T, class Unit>
  requires requires(double value) {
    { Unit::in(value) } -> std::same_as<T>;
  }
  void read(const Json& json, T& out, const Path& path, Unit /*unit*/) {
    if (!json.is_number() || std::abs(json.get<double>()) > as::largest) {
      return note_wrong(json, "a number of sensible size", path, problems_);
    }
    out = Unit::in(json.get<double>());
  }
  template <Worded E>
  void read(const Json& json, E& out, const Path& path) {
    std::string expected;
    for (const E value : Words<E>::all) {
      const std::string_view word = Words<E>::word(value);
      if (json.is_string() && json.get_ref<const std::string&>() == word) {
        out = value;
        return;
      }
      if (!expected.empty()) expected += " | ";
      expected += word;
    }
    note_wrong(json, expected, path, problems_);
  }
  template <Described T>
  void read(const Json& json, T& out, const Path& path) {
    if (!json.is_object()) return note_wrong(json, "an object", path, problems_);
    JsonReader inner(json, &path, problems_);
    Fields<T>::visit(inner, out);
  }
  template <class T, class... Unit>
  void read(const Json& json, std::optional<T>& out, const Path& path, Unit... unit) {
    out.reset();
    if (json.is_null()) return;
    read(json, out.emplace(), path, unit...);
  }
  template <class T>
  void read(const Json& json, std::vector<T>& out, const Path& path) {
    out.clear();
    if (!json.is_array()) return note_wrong(json, "an array", path, problems_);
    out.reserve(json.size());
    for (std::size_t i = 0; i < json.size(); ++i) {
      read(json[i], out.emplace_back(), Path{&path, {}, i});
    }
  }

  const Json& object_;
  const Path* path_;
  base::Problems& problems_;
};

/// The JSON object of a document of this format. Codes "document.syntax", "document.key" (no
/// format), "document.format".
base::Result<nlohmann::json> parse_document(std::string_view json, std::string_view format);

/// What document_json() wrote; problems as of parse_document(), and "document.key" for every key
/// that is missing or wrong.
template <class T>
base::Result<T> read_document(std::string_view json, std::string_view format) {
  const base::Result<nlohmann::json> parsed = parse_document(json, format);
  if (!parsed) return base::fail(parsed.error());
  base::Problems problems;
  T document;
  JsonReader reader(*parsed, nullptr, problems);
  Fields<T>::visit(reader, document);
  if (!problems.empty()) return base::fail(std::move(problems));
  return document;
}

}  // namespace wetout::report
