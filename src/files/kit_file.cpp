#include "wetout/files/kit_file.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "shop_parts.hpp"
#include "text_file.hpp"

namespace wetout::files {
namespace {

constexpr auto homes = std::to_array<Home>({
    {"name", "[kit]"},
    {"price", "[kit]"},
    {"material", "[[part]]"},
    {"amount", "[[part]]"},
    {"worth", "[[part]]"},
    {"lot", "[[part]]"},
    {"batch", "[[part]]"},
    {"expires", "[[part]]"},
});

constexpr FileKind kit_kind{largest_file, "a kit file", "at most 4 MiB of TOML text", "kit.toml",
                            ""};

// A date of TOML's own, or the same in quotes.
std::optional<time::Date> date(Fields& fields, std::string_view key) {
  const toml::node* node = fields.find(key);
  if (node == nullptr) return std::nullopt;
  if (const auto* own = node->as_date()) {
    const toml::date& d = own->get();
    return time::Date{std::chrono::year(d.year), std::chrono::month(d.month),
                      std::chrono::day(d.day)};
  }
  const auto text = fields.text(key, "2027-06-30");
  if (!text) return std::nullopt;
  const base::Result<time::Date> read = time::read_date(*text);
  if (read) return *read;
  for (base::Problem problem : read.error()) fields.wrong_value(key, std::move(problem));
  return std::nullopt;
}

KitPart read_part(Fields& fields, const std::string& currency) {
  KitPart part;
  part.material = fields.text("material", "resin-a", Must::be_there).value_or("");
  if (const toml::node* node = fields.table().get("amount");
      node != nullptr && node->is_integer()) {
    fields.know("amount");  // pieces are counted without a unit
    part.amount = std::to_string(**node->as_integer());
  } else {
    part.amount = fields.text("amount", "5 kg", Must::be_there).value_or("");
  }
  part.worth = read_in_currency(fields, "worth", measures::price, currency);
  part.lot = fields.text("lot", "jug-3").value_or("");
  part.batch = fields.text("batch", "B2041").value_or("");
  part.expires = date(fields, "expires");
  fields.done();
  return part;
}

// A price is shared by what the parts are worth: of all, or of none.
void check_worths(Fields& root, const std::vector<KitPart>& parts, Document& document) {
  const auto given = [](const KitPart& part) { return part.worth.has_value(); };
  const auto with = std::count_if(parts.begin(), parts.end(), given);
  if (with == 0 || with == static_cast<std::ptrdiff_t>(parts.size())) return;
  std::vector<Fields> tables = root.subtables("part", "[[part]]");
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (tables[i].has("worth")) continue;
    document.add(
        {.code = "kit.worth",
         .message = "the worth of this part is missing",
         .key = tables[i].path_of("worth"),
         .expected = "a worth of every part, or of none: the shop file's prices count then"},
        tables[i].position());
  }
}

}  // namespace

base::Result<KitFile> parse_kit(std::string text, std::string name, const std::string& currency) {
  KitFile kit;
  kit.source = {std::move(name), std::move(text), {"kit", "part"}};
  base::Result<Document> document = Document::parse(kit.source.text, kit.source.name);
  if (!document) return base::fail(std::move(document.error()));
  document->set_homes(homes);

  Fields root(*document, document->root(), "");
  for (const std::string_view other : {"board", "shop"}) {
    if (!root.has(other) || root.has("kit")) continue;
    return base::fail({.code = "file.other_kind",
                       .message = "this is a " + std::string(other == "shop" ? "shop" : "job") +
                                  " file, not a kit file",
                       .file = kit.source.name,
                       .expected = "a kit file, with a table [kit] and its [[part]]s"});
  }
  if (auto fields = root.subtable("kit", "[kit]", Must::be_there)) {
    kit.name = fields->text("name", "starter kit").value_or("");
    const Must must = Must::be_there;
    if (!fields->has("price")) fields->quantity("price", measures::price, must);
    if (auto price = read_in_currency(*fields, "price", measures::price, currency)) {
      kit.price = std::move(*price);
    }
    fields->done();
  }
  for (Fields& part : root.subtables("part", "[[part]]", Must::be_there)) {
    kit.parts.push_back(read_part(part, currency));
  }
  if (document->faultless()) check_worths(root, kit.parts, *document);
  root.done();
  if (!document->faultless()) return base::fail(document->take_problems());
  return kit;
}

base::Result<KitFile> read_kit(const std::filesystem::path& path, const std::string& currency) {
  base::Result<std::string> text = read_bytes(path, kit_kind);
  if (!text) return base::fail(std::move(text.error()));
  return parse_kit(std::move(*text), path.string(), currency);
}

}  // namespace wetout::files
