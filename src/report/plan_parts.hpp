// The parts of plan_text, each written to the same page.
#pragma once

#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "layout.hpp"
#include "wetout/report/plan_document.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {

struct PlanWriter {
  const PlanDocument& document;
  units::System system;
  layout::Page page;

  void heading();
  void board();
  void every_coat();  ///< cautions of step "all"
  void overview();
  void coats();
  void totals();
  void finished_weight();
  void assumptions();
  void notices();  ///< those that belong to no coat

 private:
  void coat(std::size_t index);
  void plies(const laminate::CoatNeed& coat);
  void resin(const laminate::CoatNeed& coat);
  void batches(const laminate::CoatNeed& coat);
  void coat_notices(std::size_t index);
  void coat_cautions(std::size_t index);
  [[nodiscard]] std::string coat_title(std::size_t index) const;  ///< "2 (deck lam)"
  void materials();
  /// Ids that a notice of this coat may carry: the coat's and its plies'.
  [[nodiscard]] bool concerns(const base::Notice& notice, const laminate::CoatNeed& coat) const;
};

}  // namespace wetout::report
