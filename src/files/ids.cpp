#include "ids.hpp"

#include <algorithm>
#include <utility>

#include "wetout/base/shown.hpp"
#include "wetout/base/words.hpp"

namespace wetout::files {
namespace {

std::string reserved_listed() {
  std::string out;
  for (const std::string& word : base::reserved_words()) out += (out.empty() ? "" : ", ") + word;
  return out;
}

constexpr std::string_view what_ids_are = "a-z, 0-9 and single hyphens between them, at most 64";

}  // namespace

Named read_named(Fields& fields, std::string_view example, bool may_be_unnamed) {
  Named named;
  const std::optional<std::string> name = fields.text("name", example);
  const std::optional<std::string> id = fields.text("id", base::slug(example));
  if (name) named.name = *name;
  std::string from = "id";
  if (id) {
    if (base::is_slug(*id)) {
      named.id = *id;
    } else {
      const std::string better = base::slug(*id);
      fields.wrong_value(
          "id", {.code = "id.bad",
                 .message = "\"" + base::shown(*id) + "\" cannot be an id",
                 .expected = std::string(what_ids_are),
                 .hint = base::is_slug(better) ? "write \"" + better + "\"" : std::string()});
      return named;
    }
  } else if (fields.has("id")) {
    return named;  // said by text()
  } else if (name) {
    from = "name";
    named.id = base::slug(*name);
    if (!base::is_slug(named.id)) {
      fields.wrong_value("name",
                         {.code = "id.bad",
                          .message = named.id.empty() ? "no id can be made from this name"
                                                      : "the id made from this name is too long",
                          .expected = "an id beside it, e.g. id = \"" + base::slug(example) + "\"",
                          .hint = std::string(what_ids_are)});
      named.id.clear();
      return named;
    }
  } else if (!fields.has("name") && !may_be_unnamed) {
    fields.missing("id", "an id or a name, e.g. id = \"" + base::slug(example) + "\"");
  }
  if (base::is_reserved(named.id)) {
    fields.wrong_value(from, {.code = "id.reserved",
                              .message = "\"" + named.id + "\" is a word of the command line",
                              .expected = "an id other than " + reserved_listed(),
                              .hint = "write id = \"" + named.id + "-1\""});
    named.id.clear();
  }
  if (named.name.empty()) named.name = named.id;
  return named;
}

bool Ids::add(Fields& fields, const std::string& id) {
  if (id.empty()) return false;
  const int line = fields.position_of(fields.has("id") ? "id" : "name").line;
  const auto [first, is_new] = lines_.emplace(id, line);
  if (is_new) return true;
  const std::string_view key = fields.has("id") ? "id" : fields.has("name") ? "name" : "";
  base::Problem problem{.code = "id.twice",
                        .message = "another " + std::string(what_) + " has the id \"" + id +
                                   "\" already, on line " + std::to_string(first->second),
                        .expected = "an id of its own",
                        .hint = "write id = \"" + id + "-2\" beside it"};
  if (key.empty()) {
    fields.wrong_table(std::move(problem));
  } else {
    fields.wrong_value(key, std::move(problem));
  }
  return false;
}

std::string did_you_mean(std::string_view typed, const std::vector<std::string>& candidates) {
  constexpr std::size_t most = 500;
  if (candidates.size() > most) return {};
  const auto near = base::nearest(typed, candidates);
  return near ? "did you mean \"" + *near + "\"?" : std::string();
}

std::string listed(const std::vector<std::string>& candidates, std::string_view otherwise) {
  constexpr std::size_t longest = 120;
  std::string out;
  for (const std::string& candidate : candidates) {
    if (out.size() > longest) return out + ", ...";
    out += (out.empty() ? "" : ", ") + candidate;
  }
  return out.empty() ? std::string(otherwise) : out;
}

}  // namespace wetout::files
