// `mix`: what to put on the scale now.
#pragma once

#include <optional>
#include <string>

#include "wetout/base/problem.hpp"
#include "wetout/report/mix_document.hpp"
#include "wetout/units/print.hpp"
#include "wetout/work/plan.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

struct MixCoatRequest {
  std::string job;  ///< of the log, or a job file
  std::string coat;
  std::optional<int> batch;
  std::optional<units::Mass> mass;  ///< so much of the coat's resin instead of its batches
  MixingChoices choices;
};
struct MixFreeRequest {
  std::string resin;
  units::Mass mass;
  MixingChoices choices;
};

struct MixCard {
  report::MixDocument document;
  units::System units = units::System::us;
  int now_clock = 0;  ///< minutes after midnight on the shop's wall clock
};

/// Uses the files stored with the job's last plan, and says so through the sink when the shop file
/// has changed since. Problems: "job.unknown", "coat.unknown", "batch.unknown", those of plan().
base::Result<MixCard> mix_coat(const Workshop& workshop, const MixCoatRequest& request);
base::Result<MixCard> mix_free(const Workshop& workshop, const MixFreeRequest& request);

}  // namespace wetout::work
