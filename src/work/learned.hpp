// What the log says of the shop's own losses and speeds: coats that were recorded, compared with
// what their boards' plans say of cloth, areas and rails.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "job_and_shop.hpp"
#include "wetout/base/notice.hpp"
#include "wetout/joblog/log.hpp"
#include "wetout/laminate/coat.hpp"
#include "wetout/learn/robust_fit.hpp"

namespace wetout::work {

struct LearnedRate {
  std::string key = {};        ///< of the shop file: "uptake.eps"; "speed.slow" of a [[resin]]
  std::string_view unit = {};  ///< "g/m2"; empty: a share
  double value = 0.0;
  double spread = 0.0;  ///< standard deviation
  double standard = 0.0;
  double standard_spread = 0.0;
  int records = 0;  ///< coats that say something of it
};

/// What a record tells: grams that a coat took, minutes to spread it or of other
/// work on it, how fast its film was over
/// the sheet of its resin.
enum class RecordOf { resin, time, speed };

/// One coat that was recorded.
struct WeighedRecord {
  std::string job = {};
  std::string coat = {};
  laminate::CoatKind kind = laminate::CoatKind::laminate;
  RecordOf of = RecordOf::resin;
  double value = 0.0;      ///< as recorded
  double expected = 0.0;   ///< with what was learned of all records
  double weight = 1.0;     ///< how far it was believed, 0 to 1
  std::int64_t event = 0;  ///< without which it would not be: mixed, done, the milestone
};

struct Learned {
  std::vector<LearnedRate> rates = {};  ///< losses, pace of spreading; of work by hand and of
                                        ///< resins as far as it was seen
  std::vector<WeighedRecord> records = {};
  learn::Fit losses = {};                    ///< of loss_rates()
  int boards = 0;                            ///< with a coat that counts
  std::vector<joblog::EventRow> aside = {};  ///< that do not count, by number
  base::Notices notices = {};                ///< boards whose plan cannot be read any more
};

/// Events by number, and whether they count, against what the log says of them.
using Lessons = std::map<std::int64_t, bool>;

/// Of every board with a plan, archived ones too: coats that were mixed, whose rest was weighed
/// ("left", 0 g counts), and that are done; times of wet steps with start and end. What was undone
/// does not count, nor what rests on an event that was left aside. Films of which milestones were
/// seen (FilmWatch). Without any the rates are the defaults.
Learned learned_from(const joblog::Log& log, const Lessons& lessons = {});

/// What each coat of a board will take, in grams, in file order: kept and lost, but for what stays
/// in cups. Empty when its plan cannot be made.
std::vector<learn::Prediction> predictions(const Learned& learned, const JobAndShop& both);

}  // namespace wetout::work
