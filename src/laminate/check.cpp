#include <algorithm>
#include <string>
#include <string_view>

#include "lookup.hpp"
#include "parts_of_plan.hpp"
#include "wetout/base/words.hpp"
#include "wetout/laminate/make_plan.hpp"

namespace wetout::laminate {
namespace {

// Where the models hold; beyond the outer range there is no answer (docs/models/working_time.md).
constexpr double air_answer_low_c = 0.0, air_answer_high_c = 40.0;
constexpr double air_sure_low_c = 10.0;

// By the words on the can; the safety data sheet calls it an organic peroxide.
bool names_peroxide(std::string_view material) {
  return material.find("peroxide") != std::string_view::npos ||
         material.find("mekp") != std::string_view::npos;
}

class Checker {
 public:
  explicit Checker(const PlanInput& input) : input_(input) {}

  base::Problems run() {
    temperatures();
    if (input_.cup) refer("", "cup", *input_.cup, input_.shop.cups, "--cup");
    for (std::size_t i = 0; i < input_.coats.size(); ++i) coat(i);
    if (input_.coats.empty()) {
      problems_.push_back({.code = "job.no_coats",
                           .message = "the job has no coat",
                           .key = "coat",
                           .expected = "at least one [[coat]]"});
    }
    return std::move(problems_);
  }

 private:
  void temperatures() {
    const auto within = [&](units::Temperature t, const char* what, const char* option) {
      if (t.in_celsius() >= air_answer_low_c && t.in_celsius() <= air_answer_high_c) return;
      problems_.push_back({.code = "air.out_of_range",
                           .message = std::string(what) + " is outside what the models hold for",
                           .found = std::to_string(static_cast<long>(t.in_celsius())) + " C",
                           .expected = std::string("0 C to 40 C, e.g. ") + option + " 22C"});
    };
    within(input_.air, "the air", "--air");
    if (input_.resin_temp) within(*input_.resin_temp, "the resin's temperature", "--resin-temp");
  }

  template <class Thing>
  const Thing* refer(const std::string& key, const char* what, const std::string& id,
                     const std::vector<Thing>& things, const std::string& where) {
    if (const Thing* thing = find(things, id)) return thing;
    const std::vector<std::string> ids = ids_of(things);
    const auto near = base::nearest(id, ids);
    std::string known;
    for (const std::string& one : ids) {
      if (known.size() > 120) {
        known += ", ...";
        break;
      }
      known += (known.empty() ? "" : ", ") + one;
    }
    problems_.push_back(
        {.code = std::string("reference.") + what,
         .message = "the shop has no " + std::string(what) + " \"" + id + "\"" +
                    (key.empty() ? " (" + where + ")" : ""),
         .key = key,
         .found = id,
         .expected = known.empty() ? "a [[" + where + "]] table in the shop file" : known,
         .hint = near ? "did you mean \"" + *near + "\"?" : ""});
    return nullptr;
  }

  void coat(std::size_t i) {
    const CoatSpec& spec = input_.coats[i];
    const std::string key = "coat[" + std::to_string(i) + "]";
    if (const auto* product =
            refer(key + ".resin", "resin", spec.resin, input_.shop.resins, "resin")) {
      chemistry(*product, key);
    }
    for (std::size_t p = 0; p < spec.plies.size(); ++p) {
      const PlySpec& ply = spec.plies[p];
      const std::string ply_key = key + ".ply[" + std::to_string(p) + "]";
      refer(ply_key + ".cloth", "cloth", ply.cloth, input_.shop.cloths, "cloth");
      place(ply, ply_key);
    }
    for (std::size_t a = 0; a < spec.additives.size(); ++a) {
      const std::string additive_key = key + ".additives[" + std::to_string(a) + "].material";
      const auto* material = refer(additive_key, "material", spec.additives[a].material,
                                   input_.shop.materials, "material");
      if (material == nullptr) continue;
      if (material->styrene) styrene(material->id, additive_key);
      if (is_part_of_resin(material->id) || is_piece(*material)) {
        problems_.push_back({.code = "additive.wrong_kind",
                             .message = "\"" + material->id +
                                        "\" is not something to stir in: it would spoil the ratio",
                             .key = additive_key,
                             .found = material->id,
                             .expected = "a pigment, filler or thickener of the shop"});
      }
    }
    if (spec.install) {
      const auto* part =
          refer(key + ".part", "material", spec.install->part, input_.shop.materials, "material");
      if (part != nullptr && is_part_of_resin(part->id)) {
        problems_.push_back(
            {.code = "install.wrong_kind",
             .message = "\"" + part->id + "\" is resin or hardener, not a part to set",
             .key = key + ".part",
             .found = part->id,
             .expected = "a box or plug of the shop, with packs in pieces"});
      }
    }
  }

  bool is_part_of_resin(std::string_view id) const {
    return std::any_of(input_.shop.resins.begin(), input_.shop.resins.end(),
                       [&](const resin::Product& product) {
                         return product.part_a == id || product.part_b == id;
                       });
  }

  static bool is_piece(const Material& material) {
    return material.weight || std::any_of(material.packs.begin(), material.packs.end(),
                                          [](const Pack& pack) { return pack.pieces.has_value(); });
  }

  void place(const PlySpec& ply, const std::string& key) {
    const units::Length from = ply.from_tail.value_or(units::Length{});
    const units::Length to = ply.to.value_or(input_.board.length);
    if (from >= to) {
      problems_.push_back({.code = "ply.empty",
                           .message = "the ply ends before it begins",
                           .key = key + (ply.to ? ".to" : ".from_tail"),
                           .expected = "from_tail smaller than to, both on the board"});
    } else if (to > input_.board.length) {
      problems_.push_back({.code = "ply.off_board",
                           .message = "the ply reaches past the nose",
                           .key = key + ".to",
                           .expected = "at most the board's length; leave it out for the nose"});
    }
    if (ply.width && ply.lap > units::Length{}) {
      problems_.push_back({.code = "ply.lap_and_width",
                           .message = "a ply with a width ends before the apex and has no lap",
                           .key = key + ".lap",
                           .expected = "either width or lap"});
    }
  }

  void chemistry(const resin::Product& product, const std::string& key) {
    if (product.chemistry == resin::Chemistry::polyester || product.styrene) {
      if (input_.board.foam != board::Foam::pu) {
        styrene(product.id, key + ".resin");
      } else if (product.chemistry == resin::Chemistry::polyester) {
        polyester(product, key);
      }
      return;
    }
    for (const std::string& part : {product.part_a, product.part_b}) {
      const Material* material = find(input_.shop.materials, part);
      if (material != nullptr && material->styrene && input_.board.foam != board::Foam::pu) {
        styrene(part, key + ".resin");
      }
    }
    if (names_peroxide(product.part_b)) {
      problems_.push_back({.code = "chemistry.peroxide",
                           .message =
                               "an organic peroxide is no hardener of an epoxy, and must not "
                               "come near its amines: they can catch fire together",
                           .key = key + ".resin",
                           .found = product.part_b,
                           .expected = "the amine hardener of this epoxy as part_b"});
    }
  }

  void polyester(const resin::Product& product, const std::string& key) {
    if (product.light_cured) {
      problems_.push_back(
          {.code = "polyester.light_cured",
           .message = "\"" + product.id + "\" is cured by light: its times hang on the lamp or sun",
           .key = key + ".resin",
           .found = product.id,
           .expected = "a resin that a catalyst or hardener cures"});
    } else if (product.catalyst.empty()) {
      const auto ids = ids_of(input_.shop.resins);
      const auto at = std::find(ids.begin(), ids.end(), product.id) - ids.begin();
      problems_.push_back({.code = "polyester.no_table",
                           .message = "the sheet of \"" + product.id + "\" has no catalyst table",
                           .key = "resin[" + std::to_string(at) + "].catalyst",
                           .found = "nothing",
                           .expected = "catalyst = [ { air = \"20 C\", dose = \"1.5 %\", gel = "
                                       "\"25 min\" } ]"});
    }
  }

  void styrene(const std::string& id, const std::string& key) {
    problems_.push_back(
        {.code = "chemistry.styrene",
         .message = "\"" + id +
                    "\" holds styrene, which dissolves polystyrene foam; one pinhole "
                    "in a seal coat is enough",
         .key = key,
         .found = id + " on " + std::string(to_string(input_.board.foam)),
         .expected = "an epoxy on EPS and XPS"});
  }

  const PlanInput& input_;
  base::Problems problems_;
};

}  // namespace

base::Problems check(const PlanInput& input) { return Checker(input).run(); }

void edge_notice(units::Temperature air, units::Temperature resin_temp, base::Notices& notices) {
  const double coldest = std::min(air, resin_temp).in_celsius();
  if (coldest >= air_sure_low_c) return;
  notices.push_back({.code = "air.edge",
                     .text = "colder than the models were checked for: times are rough",
                     .subject = "",
                     .value = coldest,
                     .limit = air_sure_low_c,
                     .unit = "C"});
}

void sheet_range_notices(const resin::Product& product, units::Temperature air,
                         units::Temperature resin_temp, base::Notices& notices) {
  const units::Temperature coldest = std::min(air, resin_temp);
  const units::Temperature warmest = std::max(air, resin_temp);
  if (product.lowest_air && coldest < *product.lowest_air) {
    notices.push_back({.code = "resin.below_lowest",
                       .text = "colder than the data sheet allows: times are extrapolated and "
                               "full cure is not claimed",
                       .subject = product.id,
                       .value = coldest.in_celsius(),
                       .limit = product.lowest_air->in_celsius(),
                       .unit = "C"});
  }
  if (product.highest_air && warmest > *product.highest_air) {
    notices.push_back({.code = "resin.above_highest",
                       .text = "warmer than the data sheet allows",
                       .subject = product.id,
                       .value = warmest.in_celsius(),
                       .limit = product.highest_air->in_celsius(),
                       .unit = "C"});
  }
}

void notices_of(const PlanInput& input, base::Notices& notices) {
  const units::Temperature resin_temp = input.resin_temp.value_or(input.air);
  edge_notice(input.air, resin_temp, notices);
  std::vector<std::string> seen;
  const CoatSpec* below[2] = {nullptr, nullptr};  // the coat under this one, by face
  for (const CoatSpec& coat : input.coats) {
    const resin::Product& product = get(input.shop.resins, coat.resin);
    const CoatSpec*& under = below[coat.face == board::Face::deck ? 0 : 1];
    if (under != nullptr) {
      const resin::Product& old = get(input.shop.resins, under->resin);
      const auto family = [](const resin::Product& p) {
        return p.family.empty() ? p.id : p.family;
      };
      // Hardeners that share part A are one system; their makers mix them freely.
      if (family(old) != family(product) && old.part_a != product.part_a) {
        notices.push_back({.code = "chemistry.family",
                           .text = "another resin family than the coat below: only over a cured "
                                   "and sanded coat, never wet on wet",
                           .subject = coat.id});
      }
    }
    under = &coat;
    if (std::find(seen.begin(), seen.end(), product.id) != seen.end()) continue;
    seen.push_back(product.id);
    sheet_range_notices(product, input.air, resin_temp, notices);
  }
}

}  // namespace wetout::laminate
