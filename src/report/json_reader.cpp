#include "json_reader.hpp"

#include <fmt/format.h>

#include "wetout/units/read.hpp"

namespace wetout::report {

std::string Path::text() const {
  std::string out = above == nullptr ? std::string() : above->text();
  if (index) return out + fmt::format("[{}]", *index);
  if (!out.empty()) out += '.';
  return out += key;
}

void note_missing(const Path& path, base::Problems& problems) {
  problems.push_back({.code = "document.key",
                      .message = "a key is missing from the document",
                      .key = path.text(),
                      .expected = "the key, null where its value is unknown"});
}

void note_wrong(const nlohmann::json& found, std::string_view expected, const Path& path,
                base::Problems& problems) {
  constexpr std::size_t enough = 40;
  std::string text = found.is_structured()
                         ? std::string(found.type_name())
                         : found.dump(-1, ' ', true, nlohmann::json::error_handler_t::replace);
  if (text.size() > enough) text = text.substr(0, enough) + "...";
  problems.push_back({.code = "document.key",
                      .message = "a key of the document has a value that cannot stand there",
                      .key = path.text(),
                      .found = std::move(text),
                      .expected = std::string(expected)});
}

void read_money(const nlohmann::json& json, units::Money& out, const Path& path,
                base::Problems& problems) {
  constexpr std::string_view expected = R"(money, e.g. {"amount": "12.40", "currency": "USD"})";
  const auto text = [&json](const char* key) -> std::optional<std::string> {
    const auto at = json.find(key);
    if (at == json.end() || !at->is_string()) return std::nullopt;
    return at->get<std::string>();
  };
  if (!json.is_object()) return note_wrong(json, expected, path, problems);
  const std::optional<std::string> amount = text("amount");
  const std::optional<std::string> currency = text("currency");
  if (!amount || !currency) return note_wrong(json, expected, path, problems);
  const base::Result<units::Money> money = units::read_money(*amount + " " + *currency);
  if (!money) return note_wrong(*amount + " " + *currency, expected, path, problems);
  out = *money;
}

base::Result<nlohmann::json> parse_document(std::string_view json, std::string_view format) {
  nlohmann::json parsed =
      nlohmann::json::parse(json.begin(), json.end(), nullptr, /*allow_exceptions=*/false);
  if (!parsed.is_object()) {
    return base::fail({.code = "document.syntax",
                       .message = "the document is not a JSON object",
                       .expected = fmt::format(R"({{"format": "{}", ...}})", format)});
  }
  base::Problems problems;
  const Path path{nullptr, "format", {}};
  const auto at = parsed.find("format");
  if (at == parsed.end()) {
    note_missing(path, problems);
    return base::fail(std::move(problems));
  }
  if (*at != format) {
    note_wrong(*at, format, path, problems);
    problems.back().code = "document.format";
    problems.back().message = "the document is not of a format that this version reads";
    problems.back().hint = "a newer version of the program may have written it";
    return base::fail(std::move(problems));
  }
  return parsed;
}

}  // namespace wetout::report
