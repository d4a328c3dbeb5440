#include "wetout/resin/cure.hpp"

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

}  // namespace wetout::resin
