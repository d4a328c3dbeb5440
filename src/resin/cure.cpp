#include "wetout/resin/cure.hpp"

#include <algorithm>

namespace wetout::resin {

std::string_view to_string(Milestone milestone) {
  switch (milestone) {
    case Milestone::gel:
      return "gel";
    case Milestone::trim_until:
      return "trim_until";
    case Milestone::recoat_from:
      return "recoat_from";
    case Milestone::tack_free:
      return "tack_free";
    case Milestone::handle:
      return "handle";
    case Milestone::sandable:
      return "sandable";
    case Milestone::recoat_until:
      return "recoat_until";
    case Milestone::full_cure:
      return "full_cure";
  }
  return "";
}

std::string_view sheet_key(Milestone milestone) {
  switch (milestone) {
    case Milestone::trim_until:
      return "trim";
    case Milestone::recoat_from:
    case Milestone::recoat_until:
      return "recoat";
    case Milestone::sandable:
      return "sand";
    case Milestone::gel:
    case Milestone::tack_free:
    case Milestone::handle:
    case Milestone::full_cure:
      return to_string(milestone);
  }
  return "";
}

CupRun cup_run(const Cure& cure, const Fill& fill, units::Temperature air,
               units::Temperature resin) {
  CupRun run;
  run.kinetics = cure.kinetics;
  run.bulk = cure.bulk;
  run.cooling = cure.cooling;
  run.fill = fill;
  run.air = air;
  run.resin = resin;
  run.gel_conversion = cure.gel_conversion;
  run.usable_rise_kelvin = cure.usable_rise_kelvin;
  run.usable_share = cure.usable_share;
  return run;
}

std::optional<units::Duration> usable(const CupCourse& course) {
  if (!course.risen) return course.part_gelled;
  if (!course.part_gelled) return course.risen;
  return std::min(*course.risen, *course.part_gelled);
}

}  // namespace wetout::resin
