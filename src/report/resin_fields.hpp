// The keys of what the documents about one resin share.
#pragma once

#include <array>

#include "plan_fields.hpp"
#include "wetout/report/resin_parts.hpp"
#include "wetout/resin/cure.hpp"

namespace wetout::report {

template <>
struct Words<resin::Chemistry> {
  static constexpr std::array all = {resin::Chemistry::epoxy, resin::Chemistry::polyester};
  static std::string_view word(resin::Chemistry chemistry) {
    return chemistry == resin::Chemistry::epoxy ? "epoxy" : "polyester";
  }
};
template <>
struct Words<resin::Milestone> {
  static constexpr std::array all = resin::milestones;
  static std::string_view word(resin::Milestone milestone) { return resin::to_string(milestone); }
};

template <>
struct Fields<MissingLine> {
  static void visit(auto& v, auto& missing) {
    v("line", missing.line);
    v("gives", missing.gives);
  }
};

}  // namespace wetout::report
