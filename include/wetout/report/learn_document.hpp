// What records say of the shop's own losses and speeds: the answer of `learn`.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/notice.hpp"

namespace wetout::report {

inline constexpr std::string_view learn_format = "wetout.learn/1";

struct LearnedLine {
  std::string key;             ///< of the shop file: "uptake.eps"; "speed.slow" of a resin
  std::string table;           ///< of the shop file where the key stands: "losses", "pace", "resin"
  std::string standing;        ///< "fitted" from records, else "assumed"
  std::string unit;            ///< "g/m2"; empty: a share
  double value = 0.0;          ///< learned
  double spread = 0.0;         ///< standard deviation
  double standard = 0.0;       ///< the default
  double standard_spread = 0;  ///< of the default, before anything was recorded
  int records = 0;             ///< coats that say something of it
};
struct RecordLine {
  std::string job;
  std::string coat;
  std::string of;  ///< "resin": grams that it took; "time": minutes to spread it; "speed":
                   ///< of its film, over the sheet
  double value = 0.0;
  double expected = 0.0;   ///< with what was learned
  double weight = 1.0;     ///< how far it was believed, 0 to 1
  std::int64_t event = 0;  ///< by which `learn --forget` names it
};
struct AsideLine {
  std::int64_t event = 0;
  std::string job, step;
  std::string kind;  ///< "mixed", "done", "milestone"
};
struct LearnDocument {
  std::string program;
  std::string made;
  int boards = 0;
  std::vector<LearnedLine> values;
  std::vector<RecordLine> records;
  std::vector<AsideLine> aside;         ///< events that do not count
  std::vector<std::string> shop_lines;  ///< to be put into the shop file
  base::Notices notices;
};

/// One line; docs/formats/learn.schema.json.
std::string to_json(const LearnDocument& document);
std::string to_text(const LearnDocument& document);

}  // namespace wetout::report
