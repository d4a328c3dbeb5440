// A resin of the shop that is used here, and what is said of any of them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/files/shop_file.hpp"
#include "wetout/laminate/plan.hpp"
#include "wetout/report/resin_parts.hpp"
#include "wetout/resin/defaults.hpp"
#include "wetout/time/zone.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

struct OneResin {
  files::ShopFile shop;
  std::size_t index = 0;  ///< of the resin
  time::Zone zone;
  time::Instant now;

  [[nodiscard]] const resin::Product& product() const { return shop.shop.resins[index]; }
};

/// The shop as a job in the current folder would find it, and the resin that `typed` names. The
/// key of a problem with the name is RESIN.
base::Result<OneResin> find_resin(const Workshop& workshop, std::string_view typed);
/// The same, or the shop's first resin where none is typed; problems with the name have `key`.
base::Result<OneResin> find_resin(const Workshop& workshop, const std::optional<std::string>& typed,
                                  std::string key);

/// Problems with the keys of a data sheet ("gel"): with file, line and what is written there.
base::Problems in_sheet(base::Problems problems, const OneResin& resin);

/// Those of the names that are defaults of resins, in their order.
std::vector<laminate::Assumption> assumptions(const std::vector<std::string>& names,
                                              const std::string& resin,
                                              const resin::Defaults& defaults);

/// Where the air lies outside 0 to 40 C.
base::Problems senseless_air(units::Temperature air, std::string_view code);

report::MissingLine missing_line(std::string line);

int minutes_of_day(time::Instant now, const time::Zone& zone);

}  // namespace wetout::work
