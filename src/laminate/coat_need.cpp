#include "coat_need.hpp"

#include <algorithm>
#include <string>

#include "lookup.hpp"
#include "wetout/resin/polyester.hpp"
#include "wetout/resin/ratio.hpp"

namespace wetout::laminate {
namespace {

using units::Area;
using units::Length;
using units::Milligrams;

board::Face other(board::Face face) {
  return face == board::Face::deck ? board::Face::bottom : board::Face::deck;
}

std::string coat_key(std::size_t i) { return "coat[" + std::to_string(i) + "]"; }

units::ArealWeight uptake_of(board::Foam foam, const Defaults& settings) {
  switch (foam) {
    case board::Foam::eps:
      return settings.uptake_eps.value;
    case board::Foam::xps:
      return settings.uptake_xps.value;
    case board::Foam::pu:
      return settings.uptake_pu.value;
  }
  base::broken_promise("foam outside its list");
}

// Puts the coat's or ply's key on problems that geometry found.
tl::unexpected<base::Problems> at(std::string key, base::Problems problems) {
  for (base::Problem& problem : problems) problem.key = key;
  return base::fail(std::move(problems));
}

struct PlyRegions {
  Region own;                    // on its face
  std::optional<Region> lapped;  // on the other
};

PlyRegions regions_of(const PlySpec& ply, board::Face face, Length length) {
  Region own{.face = face,
             .from = std::max(Length{}, ply.from_tail.value_or(Length{})),
             .to = std::min(length, ply.to.value_or(length)),
             .width = ply.width,
             .reach = std::nullopt};
  PlyRegions regions{own, std::nullopt};
  if (!ply.width && ply.lap > Length{}) {
    Region lapped = own;
    lapped.face = other(face);
    lapped.reach = ply.lap;
    regions.lapped = lapped;
  }
  return regions;
}

class Builder {
 public:
  Builder(const PlanInput& input, std::size_t index, const Geometry& geometry,
          const Defaults& settings, Progress& progress)
      : input_(input),
        coat_(input.coats[index]),
        index_(index),
        geometry_(geometry),
        settings_(settings),
        progress_(progress),
        resin_(get(input.shop.resins, coat_.resin)),
        cured_(resin_.cured_density.value_or(settings.resin.cured_density.value)) {}

  base::Result<CoatState> build() {
    CoatNeed& need = state_.need;
    need.id = coat_.id;
    need.name = coat_.name;
    need.kind = coat_.kind;
    need.face = coat_.face;
    need.resin = coat_.resin;
    need.additives = coat_.additives;
    base::Result<void> built;
    switch (coat_.kind) {
      case CoatKind::laminate:
        need.laps = coat_.laps;
        built = laminate();
        break;
      case CoatKind::seal:
        built = seal();
        break;
      case CoatKind::install:
        built = install();
        break;
      case CoatKind::hotcoat:
        built = film(coat_.film.value_or(settings_.film_hotcoat.value),
                     settings_.pace_hotcoat.value, progress_.hotcoat_done);
        break;
      case CoatKind::gloss:
        built = film(coat_.film.value_or(settings_.film_gloss.value), settings_.pace_gloss.value,
                     progress_.gloss_done);
        break;
    }
    if (!built) return tl::unexpected(built.error());
    need.losses += Milligrams::nearest(settings_.brush.value);
    return std::move(state_);
  }

 private:
  // `region` gets wet: bare foam in it takes up resin, and it counts to this coat's own area.
  base::Result<void> wet(const Region& region, Wetted& own) {
    const auto fresh = progress_.foam.wet(region);
    if (!fresh) return at(coat_key(index_), fresh.error());
    state_.need.uptake += Milligrams::nearest(uptake_of(input_.board.foam, settings_) * *fresh);
    const auto covered = own.wet(region);
    if (!covered) return at(coat_key(index_), covered.error());
    state_.need.area += *covered;
    return {};
  }

  base::Result<void> laminate() {
    Wetted own(geometry_);  // this coat alone, for the area it wets
    Length rail;
    units::Duration spread;
    for (std::size_t p = 0; p < coat_.plies.size(); ++p) {
      const PlySpec& spec = coat_.plies[p];
      const std::string key = coat_key(index_) + ".ply[" + std::to_string(p) + "]";
      const PlyRegions regions = regions_of(spec, coat_.face, geometry_.hull().length());
      if (auto laid = ply(spec, regions, key); !laid) return tl::unexpected(laid.error());
      if (auto done = wet(regions.own, own); !done) return done;
      if (regions.lapped) {
        if (auto done = wet(*regions.lapped, own); !done) return done;
      }
      const PlyNeed& last = state_.plies.back();
      spread += settings_.pace_laminate.value * (last.area + last.lap_area);
      if (!spec.width) {
        rail = std::max(rail, geometry_.edge_length(regions.own.from, regions.own.to));
      }
    }
    CoatNeed& need = state_.need;
    need.kept += need.uptake;
    need.losses += need.trimmed + Milligrams::nearest(settings_.run_off_laminate.value * rail);
    need.spread = spread;
    if (settings_.fibre_mass_fraction.value > settings_.fibre_fraction_reach.value) {
      state_.notices.push_back({.code = "laminate.fibre_fraction",
                                .text = "less resin than hand lay-up reaches: dry cloth is likely",
                                .subject = coat_.id,
                                .value = settings_.fibre_mass_fraction.value,
                                .limit = settings_.fibre_fraction_reach.value,
                                .unit = "share"});
    }
    return {};
  }

  base::Result<void> ply(const PlySpec& spec, const PlyRegions& regions, const std::string& key) {
    const board::Hull& hull = geometry_.hull();
    const Cloth& cloth = get(input_.shop.cloths, spec.cloth);
    const auto area = geometry_.area(regions.own);
    if (!area) return at(key, area.error());
    PlyNeed ply;
    ply.id = spec.id;
    ply.coat = coat_.id;
    ply.cloth = spec.cloth;
    ply.face = coat_.face;
    ply.area = *area;
    ply.lap = spec.width ? Length{} : spec.lap;
    ply.from_tail = spec.from_tail;
    ply.to = spec.to;
    ply.width = spec.width;
    ply.cloth_area = ply.area;
    // Only cloth that goes past the apex is trimmed back to a line.
    const bool trimmed = coat_.laps == Laps::cut && ply.lap > Length{};
    const Length allowance = trimmed ? settings_.trim_allowance.value : Length{};
    Area strip_off;
    if (regions.lapped) {
      const auto lapped = geometry_.area(*regions.lapped);
      if (!lapped) return at(key + ".lap", lapped.error());
      ply.lap_area = *lapped;
      const Area strip = geometry_.strip_area(ply.lap, regions.own.from, regions.own.to);
      ply.cloth_area += strip;
      strip_off =
          geometry_.strip_area(ply.lap + allowance, regions.own.from, regions.own.to) - strip;
    }
    const double fibre_share = settings_.fibre_mass_fraction.value;
    const double resin_per_fibre = (1.0 - fibre_share) / fibre_share;
    ply.fibre_fraction = fibre_share;
    ply.fibre = Milligrams::nearest(cloth.weight * ply.cloth_area);
    ply.resin = Milligrams::nearest(cloth.weight * ply.cloth_area * resin_per_fibre);
    const units::Density fibre_density =
        cloth.fibre_density.value_or(settings_.fibre_density.value);
    ply.thickness = cloth.weight / fibre_density + cloth.weight * resin_per_fibre / cured_;
    const Length past = ply.lap + allowance;
    const Length girth = geometry_.max_girth(coat_.face, regions.own.from, regions.own.to);
    ply.cut_length = geometry_.surface_length(coat_.face, regions.own.from, regions.own.to);
    // Cloth that reaches an end of the board goes past it there as it does at the rails.
    if (regions.own.from <= Length{}) ply.cut_length += past;
    if (regions.own.to >= hull.length()) ply.cut_length += past;
    ply.cut_width = spec.width ? std::min(*spec.width, girth) : girth + past * 2.0;
    if (ply.cut_width > cloth.width) {
      state_.notices.push_back({.code = "cloth.narrow",
                                .text = "the roll of \"" + cloth.id +
                                        "\" is narrower than face and laps: join two pieces, lap "
                                        "less, or take a wider cloth",
                                .subject = coat_.id + "/" + ply.id,
                                .value = units::in_metres(ply.cut_width),
                                .limit = units::in_metres(cloth.width),
                                .unit = "m"});
    }
    CoatNeed& need = state_.need;
    need.fibre += ply.fibre;
    need.kept += ply.resin;
    need.trimmed += Milligrams::nearest(cloth.weight * strip_off * resin_per_fibre);
    state_.plies.push_back(std::move(ply));
    return {};
  }

  Region whole_face() const {
    return {.face = coat_.face,
            .from = Length{},
            .to = geometry_.hull().length(),
            .width = std::nullopt,
            .reach = std::nullopt};
  }

  base::Result<void> seal() {
    CoatNeed& need = state_.need;
    Wetted own(geometry_);
    if (auto done = wet(whole_face(), own); !done) return done;
    const Length thickness = coat_.film.value_or(settings_.film_seal.value);
    need.kept = need.uptake + Milligrams::nearest(cured_ * thickness * need.area);
    need.spread = settings_.pace_hotcoat.value * need.area;
    return {};
  }

  base::Result<void> film(Length thickness, units::Pace pace, bool& kind_done) {
    CoatNeed& need = state_.need;
    Wetted own(geometry_);
    if (auto done = wet(whole_face(), own); !done) return done;
    if (!kind_done) {
      Region past = whole_face();
      past.face = other(coat_.face);
      past.reach = settings_.overlap.value;
      if (auto done = wet(past, own); !done) return done;
      kind_done = true;
    }
    need.kept = need.uptake + Milligrams::nearest(cured_ * thickness * need.area);
    need.losses +=
        Milligrams::nearest(settings_.run_off_hotcoat.value * geometry_.surfaces().perimeter);
    need.spread = pace * need.area;
    need.sanded =
        Milligrams::nearest(cured_ * std::min(thickness, settings_.sanded.value) * need.area);
    return {};
  }

  base::Result<void> install() {
    base::promise(coat_.install.has_value(), "an install coat without a part");
    const Install& part = *coat_.install;
    const units::Density liquid = liquid_density();
    state_.need.kept = Milligrams::nearest(liquid * (part.fill * static_cast<double>(part.count)));
    return {};
  }

  // Of the mix as poured: what fills a gap.
  units::Density liquid_density() const {
    // A polyester's little catalyst is dosed later: the middle of its range stands for it.
    const bool dosed = resin_.chemistry == resin::Chemistry::polyester;
    const double b = dosed ? resin::middle_dose(resin_) : resin::hardener_per_resin(resin_);
    const units::Mass a_mass = units::kilograms(1.0);
    if (!(resin_.density_b.si() > 0.0)) return resin_.density_a;
    const units::Volume volume = a_mass / resin_.density_a + a_mass * b / resin_.density_b;
    return (a_mass * (1.0 + b)) / volume;
  }

  const PlanInput& input_;
  const CoatSpec& coat_;
  std::size_t index_;
  const Geometry& geometry_;
  const Defaults& settings_;
  Progress& progress_;
  const resin::Product& resin_;
  units::Density cured_;
  CoatState state_;
};

}  // namespace

base::Result<CoatState> coat_need(const PlanInput& input, std::size_t index,
                                  const Geometry& geometry, const Defaults& settings,
                                  Progress& progress) {
  return Builder(input, index, geometry, settings, progress).build();
}

}  // namespace wetout::laminate
