// The goods that somebody names in a record: cloth, parts, consumables, and from which lot.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "record_job.hpp"
#include "stock_goods.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/joblog/log.hpp"
#include "wetout/work/record.hpp"

namespace wetout::work {

struct NamedGood {
  joblog::Material material;
  std::int64_t quantity = 0;  ///< above zero
};

/// A piece of a cut that is kept.
struct KeptPiece {
  joblog::Material material;
  std::int64_t length_um = 0;    ///< above zero
  std::int64_t width_um = 0;     ///< above zero, at most that of the roll
  std::int64_t off_roll_um = 0;  ///< length of roll that it is worth, by its area
};

struct GoodsOfRecord {
  std::vector<NamedGood> named;  ///< a material once
  std::vector<KeptPiece> kept;
  std::map<std::string, std::string> lots;  ///< label by id of the material
  /// In words, as the log keeps it: "used 6 ft 3 in e4, 2 side-box; kept 2 ft x 16 in of e4";
  /// empty: nothing.
  std::string said;
};

/// `log` may be null. Problems, all of them: "goods.no_shop", "goods.form", "goods.kind",
/// "goods.twice" (two lots of one material), "remnant.form", "remnant.large" (wider than the roll),
/// those of good_meant() and read_amount(); keys are the options.
base::Result<GoodsOfRecord> goods_of_record(const RecordRequest& request, const JobOfRecord& job,
                                            const joblog::Log* log);

}  // namespace wetout::work
