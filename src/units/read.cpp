// Quantities with a plain factor to SI.
#include "wetout/units/read.hpp"

#include <algorithm>
#include <string>

#include "combine.hpp"
#include "fault.hpp"
#include "scan.hpp"

namespace wetout::units {
namespace {

template <class Q>
base::Result<Q> from(const base::Result<double>& si) {
  if (!si) return base::fail(si.error());
  return Q::from_si(*si);
}

template <class Q>
base::Result<Q> read_as(Kind kind, std::string_view text) {
  const Ask& wanted = ask(kind);
  const base::Result<Scanned> scanned = scan(text, wanted);
  if (!scanned) return base::fail(scanned.error());
  return from<Q>(combine(*scanned, text, wanted));
}

bool only_bare_oz(const Scanned& scanned) {
  return std::all_of(scanned.terms.begin(), scanned.terms.end(),
                     [](const Term& term) { return term.unit.bare_oz; });
}

}  // namespace

base::Result<Length> read_length(std::string_view text) {
  return read_as<Length>(Kind::length, text);
}

base::Result<Area> read_area(std::string_view text) { return read_as<Area>(Kind::area, text); }

base::Result<Volume> read_volume(std::string_view text) {
  const Ask& wanted = ask(Kind::volume);
  const base::Result<Scanned> scanned = scan(text, wanted);
  if (!scanned) return base::fail(scanned.error());
  if (only_bare_oz(*scanned)) {
    return base::fail(fault("unit.ambiguous", "\"oz\" is an ounce of mass unless it says \"fl oz\"",
                            text, wanted, "write \"fl oz\" for a volume"));
  }
  return from<Volume>(combine(*scanned, text, wanted));
}

base::Result<Mass> read_mass(std::string_view text) { return read_as<Mass>(Kind::mass, text); }

base::Result<ArealWeight> read_areal_weight(std::string_view text) {
  const Ask& wanted = ask(Kind::areal_weight);
  base::Result<Scanned> scanned = scan(text, wanted);
  if (!scanned) return base::fail(scanned.error());
  for (Term& term : scanned->terms) {
    if (term.unit.bare_oz) term.unit = *find_unit({"oz", "/", "yd2"});
  }
  return from<ArealWeight>(combine(*scanned, text, wanted));
}

base::Result<Density> read_density(std::string_view text) {
  return read_as<Density>(Kind::density, text);
}

base::Result<LinearWeight> read_linear_weight(std::string_view text) {
  return read_as<LinearWeight>(Kind::linear_weight, text);
}

base::Result<Duration> read_duration(std::string_view text) {
  return read_as<Duration>(Kind::duration, text);
}

base::Result<Pace> read_pace(std::string_view text) { return read_as<Pace>(Kind::pace, text); }

base::Result<MassOrVolume> read_mass_or_volume(std::string_view text) {
  const base::Result<Scanned> scanned = scan(text, ask_mass_or_volume);
  if (!scanned) return base::fail(scanned.error());
  if (only_bare_oz(*scanned)) {
    return base::fail(fault("unit.ambiguous", "this \"oz\" may be a mass or a volume", text,
                            ask_mass_or_volume,
                            "write \"oz wt\" for a mass, \"fl oz\" for a volume"));
  }
  const Unit& first = scanned->terms.front().unit;
  if (first.kind != Kind::mass && first.kind != Kind::volume) {
    return base::fail(unit_wrong(first, text, ask_mass_or_volume));
  }
  const base::Result<double> si = combine(*scanned, text, ask(first.kind));
  if (!si) return base::fail(si.error());
  MassOrVolume out;
  out.is_volume = first.kind == Kind::volume;
  if (out.is_volume) {
    out.volume = Volume::from_si(*si);
  } else {
    out.mass = Mass::from_si(*si);
  }
  return out;
}

}  // namespace wetout::units
