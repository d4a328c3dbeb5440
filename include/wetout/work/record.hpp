// `record`: what was done to a board, kept in the log.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/report/record_document.hpp"
#include "wetout/units/print.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

/// Facts of one step. Times are texts as time::read_near reads them, a time of day alone being the
/// latest past one on the clock of the shop that the job was planned with.
struct RecordRequest {
  std::string job;                   ///< of the log; with `begin` one that is not there yet
  std::string step;                  ///< "bottom lam", "bottom-lam/trim", "weigh"
  std::optional<units::Mass> mixed;  ///< in all; split at the planned ratio
  std::optional<units::Mass> part_a, part_b;  ///< as weighed: both or neither, not with `mixed`
  /// Of the shop, for what is mixed where no plan tells which: splits `mixed`, names the parts.
  std::optional<std::string> resin;
  std::optional<units::Mass> left, spilled;  ///< not negative
  std::optional<std::string> start;          ///< when the step began
  std::optional<std::string> at;             ///< when the rest happened; else now
  std::optional<units::Temperature> air;
  std::optional<double> humidity;          ///< share of saturation
  std::vector<std::string> observed = {};  ///< "gel=21:40"
  std::vector<std::string> cloth = {};     ///< "e4=1.9 m": length off the roll
  std::vector<std::string> used = {};      ///< "side-box=2", "foam-white=12 g": what is not cloth
  std::vector<std::string> remnants = {};  ///< "e4=60 cm x 40 cm": a piece of what is cut is kept
  std::vector<std::string> lots = {};      ///< "kelp-a=2026-05-04": take it from this lot
  bool done = false;
  std::optional<std::string> note;
  /// Names the call: the same token again records nothing twice.
  std::string token;
  /// Begin the job, by the name in `job`, when the log does not know it.
  bool begin = false;
};

struct UndoRequest {
  std::int64_t event = 0;  ///< number
  std::optional<std::string> note;
  std::string token;
};

/// A document with what printing it needs beside it.
struct Recorded {
  report::RecordDocument document;
  units::System units = units::System::us;  ///< of the shop
};

/// Keeps all facts of the request or none, nothing on a dry run. With them, where stock is kept,
/// what they take from it is booked into the board (the parts of what was mixed with its additives;
/// cloth and other goods that are named; when a coat is done, its cloth and inserts that were not
/// named, as planned), and the work from start to done where the shop file says what an hour costs.
/// Coats are those of the job's last plan; of a job without one, whatever they are called.
/// Problems: "log.none", "job.unknown", "job.ambiguous", "job.id"; "coat.unknown",
/// "coat.ambiguous", "step.unknown", "step.ambiguous"; "record.nothing", "record.step" (a fact that
/// this step cannot have), "record.order" (done or seen before the step began); those of
/// time::read_near and "time.future"; "observed.form", "observed.milestone", "observed.twice";
/// "value.range"; "event.token"; "goods.form", "goods.kind", "goods.lot", "remnant.form",
/// "remnant.no_cut", "remnant.large", "resin.unknown", "resin.ambiguous", "goods.no_shop",
/// "material.unknown", "material.ambiguous", "amount.*", "unit.*", "number.*"; those of
/// joblog::Log::book. Throws joblog::StoreError.
base::Result<Recorded> record(const Workshop& workshop, const RecordRequest& request);

/// All that was recorded of a job.
base::Result<Recorded> recorded(const Workshop& workshop, std::string_view job);

/// Takes an event back, and what was booked for it. Problems: "log.none", "event.unknown",
/// "event.undone", "event.is_undo", "event.token".
base::Result<Recorded> undo_record(const Workshop& workshop, const UndoRequest& request);

}  // namespace wetout::work
