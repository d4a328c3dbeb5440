// [[coat]]: what is done to a face, in file order.
#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "ids.hpp"
#include "job_parts.hpp"
#include "say.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/base/words.hpp"

namespace wetout::files {
namespace {

using laminate::CoatKind;
using laminate::CoatSpec;
using laminate::Laps;

constexpr Word<CoatKind> kinds[] = {{"seal", CoatKind::seal},
                                    {"laminate", CoatKind::laminate},
                                    {"install", CoatKind::install},
                                    {"hotcoat", CoatKind::hotcoat},
                                    {"gloss", CoatKind::gloss}};
constexpr Word<board::Face> faces[] = {{"deck", board::Face::deck},
                                       {"bottom", board::Face::bottom}};
constexpr Word<Laps> laps_words[] = {{"cut", Laps::cut}, {"free", Laps::free}};

constexpr std::string_view coat_example = "[[coat]]";
constexpr std::string_view additives_example = R"([ { material = "white", share = "2 %" } ])";

void additives(Fields& coat, CoatSpec& spec) {
  for (Fields& fields : coat.subtables("additives", additives_example)) {
    laminate::Additive additive;
    if (auto material = fields.text("material", "white", Must::be_there)) {
      additive.material = std::move(*material);
    }
    if (auto share = fields.quantity("share", measures::share, Must::be_there)) {
      additive.share = *share;
    }
    fields.done();
    const bool twice =
        !additive.material.empty() &&
        std::any_of(spec.additives.begin(), spec.additives.end(),
                    [&](const auto& other) { return other.material == additive.material; });
    if (twice) {
      fields.wrong_value("material", {.code = "additive.twice",
                                      .message = "this additive is in the coat already",
                                      .expected = "each additive once, with its whole share"});
    }
    spec.additives.push_back(std::move(additive));
  }
}

void install(Fields& coat, CoatSpec& spec) {
  laminate::Install part;
  if (auto id = coat.text("part", "fin-box", Must::be_there)) part.part = std::move(*id);
  if (auto count = coat.whole("count", 1, 1000, "5", Must::be_there)) part.count = *count;
  if (auto fill = coat.quantity("fill", measures::fill, Must::be_there)) part.fill = *fill;
  if (auto gap = coat.quantity("gap", measures::gap, Must::be_there)) part.gap = *gap;
  spec.install = std::move(part);
}

/// Keys of other kinds of coat, each told where it belongs.
void keys_of_others(Fields& coat, CoatKind kind) {
  struct Belongs {
    std::string_view key;
    bool laminate, install, film;
    std::string_view where;
  };
  constexpr std::array belongs = {
      Belongs{"ply", true, false, false, "a coat of kind laminate"},
      Belongs{"laps", true, false, false, "a coat of kind laminate"},
      Belongs{"part", false, true, false, "a coat of kind install"},
      Belongs{"count", false, true, false, "a coat of kind install"},
      Belongs{"fill", false, true, false, "a coat of kind install"},
      Belongs{"gap", false, true, false, "a coat of kind install"},
      Belongs{"film", false, false, true, "a coat of kind seal, hotcoat or gloss"},
  };
  for (const Belongs& one : belongs) {
    const bool fits = kind == CoatKind::laminate  ? one.laminate
                      : kind == CoatKind::install ? one.install
                                                  : one.film;
    if (fits) continue;
    coat.misplaced(
        one.key,
        "a coat of kind " + std::string(laminate::to_string(kind)) + " has no " + quoted(one.key),
        std::string(one.where));
  }
}

CoatSpec read_coat(Fields& coat) {
  CoatSpec spec;
  const Named named = read_named(coat, "bottom lam");
  spec.id = named.id;
  spec.name = named.name;
  if (const auto face = coat.choice("face", faces, Must::be_there)) spec.face = *face;
  const auto kind = coat.choice("kind", kinds, Must::be_there);
  if (auto resin = coat.text("resin", "slow", Must::be_there)) spec.resin = std::move(*resin);
  additives(coat, spec);
  coat.know("after");
  if (!kind) {
    for (const std::string_view key : {"ply", "laps", "part", "count", "fill", "gap", "film"}) {
      coat.know(key);
    }
    coat.done();
    return spec;
  }
  spec.kind = *kind;
  switch (*kind) {
    case CoatKind::laminate:
      spec.laps = coat.choice("laps", laps_words).value_or(Laps::free);
      read_plies(coat, spec);
      break;
    case CoatKind::install:
      install(coat, spec);
      break;
    case CoatKind::seal:
    case CoatKind::hotcoat:
    case CoatKind::gloss:
      spec.film = coat.quantity("film", measures::film);
      break;
  }
  keys_of_others(coat, *kind);
  coat.done();
  return spec;
}

/// Coats by id and by name, for `after`.
class CoatNames {
 public:
  explicit CoatNames(const std::vector<CoatSpec>& coats) {
    for (const CoatSpec& coat : coats) {
      if (coat.id.empty()) continue;
      by_word_.emplace(coat.id, coat.id);
      all_.push_back(coat.id);
    }
    // An id is meant before a name that happens to read the same.
    for (const CoatSpec& coat : coats) {
      const std::string word = base::slug(coat.name);
      if (!coat.id.empty() && !word.empty()) by_word_.emplace(word, coat.id);
    }
  }

  void resolve(Fields& coat, CoatSpec& spec) const {
    for (const toml::node* node : coat.list("after", R"(after = ["deck hotcoat"])")) {
      const auto wanted = coat.text_in(*node, "after", "deck hotcoat");
      if (!wanted) continue;
      const auto found = by_word_.find(base::slug(*wanted));
      if (found == by_word_.end()) {
        coat.wrong_node(
            *node, "after",
            {.code = "coat.after_unknown",
             .message = "there is no coat \"" + base::shown(*wanted) + "\" in this file",
             .expected = listed(all_, "the name or id of another coat"),
             .hint = did_you_mean(base::slug(*wanted), all_)});
        continue;
      }
      if (std::find(spec.after.begin(), spec.after.end(), found->second) == spec.after.end()) {
        spec.after.push_back(found->second);
      }
    }
  }

 private:
  std::map<std::string, std::string> by_word_;
  std::vector<std::string> all_;
};

}  // namespace

void read_coats(Fields& root, JobFile& job) {
  std::vector<Fields> tables = root.subtables("coat", coat_example, Must::be_there);
  Ids ids("coat");
  for (Fields& coat : tables) {
    if (coat.document().full()) return;
    job.coats.push_back(read_coat(coat));
    ids.add(coat, job.coats.back().id);
  }
  const CoatNames names(job.coats);
  for (std::size_t i = 0; i < tables.size() && !root.document().full(); ++i) {
    names.resolve(tables[i], job.coats[i]);
  }
}

}  // namespace wetout::files
