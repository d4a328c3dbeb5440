// The times a data sheet prints, and that they come in the order in which a resin cures.
#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "shop_parts.hpp"
#include "wetout/units/print.hpp"

namespace wetout::files {
namespace {

using resin::Product;
using units::DurationRange;
using units::Temperature;

constexpr std::string_view pot_life_example =
    R"([ { mass = "150 g", air = "25 C", time = "25-30 min" } ])";
constexpr std::string_view time_example = R"([ { air = "25 C", time = "4 h" } ])";
constexpr std::string_view recoat_example = R"([ { air = "25 C", from = "4 h", until = "12 h" } ])";

/// One line of a sheet, for comparing lines with each other.
struct Line {
  std::string name;  ///< "tack-free"
  int milestone;
  std::string path;
  Position place;
  std::string found;
  Temperature air;
  DurationRange time;
};

class Sheet {
 public:
  Sheet(Fields& resin, Product& product) : resin_(resin), product_(product) {}

  void read() {
    times("pot_life", product_.pot_life, "", no_milestone, true);
    times("gel", product_.gel, "gel", gel, false);
    times("tack_free", product_.tack_free, "tack-free", tack_free, false);
    times("handle", product_.handle, "", no_milestone, false);
    times("sand", product_.sand, "sandable", sand, false);
    times("full_cure", product_.full_cure, "full cure", full_cure, false);
    times("trim", product_.trim, "", no_milestone, false);
    windows();
    order();
  }

 private:
  enum Milestone { gel, tack_free, sand, full_cure, recoat_from, recoat_until, no_milestone };

  void note(Fields& fields, std::string_view key, std::string name, Milestone milestone,
            Temperature air, DurationRange time) {
    if (milestone == no_milestone) return;
    const toml::node* node = fields.table().get(key);
    lines_.push_back({std::move(name), milestone, fields.path_of(key), begin_of(node->source()),
                      fields.document().written(*node), air, time});
  }

  // Two lines for one temperature cannot both be meant.
  template <class Entry>
  void same_air(Fields& fields, const std::vector<Entry>& entries, const Entry& entry) {
    const bool twice = std::any_of(entries.begin(), entries.end(), [&](const Entry& other) {
      if constexpr (requires { other.mass; }) {
        if (other.mass != entry.mass) return false;
      }
      return other.air == entry.air;
    });
    if (!twice) return;
    fields.wrong_value("air", {.code = "sheet.twice",
                               .message = "there is a line for this temperature already",
                               .expected = "each temperature once"});
  }

  void times(std::string_view key, std::vector<resin::SheetTime>& out, std::string_view name,
             Milestone milestone, bool with_mass) {
    for (Fields& fields : resin_.subtables(key, with_mass ? pot_life_example : time_example)) {
      const auto air = fields.quantity("air", measures::sheet_air, Must::be_there);
      const auto time = fields.quantity(
          "time", with_mass ? measures::pot_life_time : measures::sheet_time, Must::be_there);
      std::optional<units::Mass> mass;
      if (with_mass) {
        mass = fields.quantity("mass", measures::positive_mass, Must::be_there);
      } else {
        fields.misplaced("mass", "only a pot life depends on the mass in the cup",
                         "no mass here: these are times of a film");
      }
      fields.done();
      if (!air || !time || (with_mass && !mass)) continue;
      const resin::SheetTime entry{*air, *time, mass};
      same_air(fields, out, entry);
      note(fields, "time", std::string(name), milestone, *air, *time);
      out.push_back(entry);
    }
  }

  void windows() {
    for (Fields& fields : resin_.subtables("recoat", recoat_example)) {
      const auto air = fields.quantity("air", measures::sheet_air, Must::be_there);
      const auto from = fields.quantity("from", measures::sheet_time, Must::be_there);
      const auto until = fields.quantity("until", measures::sheet_time);
      fields.done();
      if (!air || !from || (fields.has("until") && !until)) continue;
      const resin::SheetWindow entry{*air, *from, until};
      same_air(fields, product_.recoat, entry);
      note(fields, "from", "recoat from", recoat_from, *air, *from);
      if (until) note(fields, "until", "recoat until", recoat_until, *air, *until);
      product_.recoat.push_back(entry);
    }
  }

  /// The end of a range that counts: the lower one of what must not be too late, else the upper.
  static units::Duration end(const Line& line) {
    return line.milestone == recoat_until ? line.time.low : line.time.high;
  }

  // gel < tack-free <= sandable < full cure; gel <= recoat from < recoat until. Equal upper ends
  // of two ranges are no contradiction when the lower ends differ.
  static bool wrong(const Line& early, const Line& late, bool may_be_equal) {
    if (end(late) != end(early)) return end(late) < end(early);
    return !may_be_equal && (late.milestone == recoat_until || late.time.low <= early.time.low);
  }

  void order() {
    struct Rule {
      Milestone early, late;
      bool may_be_equal;
    };
    constexpr Rule rules[] = {
        {gel, tack_free, false},
        {tack_free, sand, true},
        {sand, full_cure, false},
        {gel, recoat_from, true},
        {recoat_from, recoat_until, false},
        // where the line between them is missing
        {gel, sand, false},
        {gel, full_cure, false},
        {tack_free, full_cure, false},
    };
    std::vector<const Line*> told;  // one contradiction a line is enough
    for (const Rule& rule : rules) {
      for (const Line& late : lines_) {
        if (late.milestone != rule.late) continue;
        for (const Line& early : lines_) {
          if (early.milestone != rule.early || early.air != late.air) continue;
          if (std::find(told.begin(), told.end(), &late) != told.end()) continue;
          if (!wrong(early, late, rule.may_be_equal)) continue;
          told.push_back(&late);
          say(early, late);
        }
      }
    }
  }

  void say(const Line& early, const Line& late) {
    const auto time = [](const Line& line) {
      return " (" + units::print(end(line), units::System::metric) + ")";
    };
    const bool equal = end(early) == end(late);
    resin_.document().add(
        {.code = "sheet.order",
         .message = late.name + time(late) + (equal ? " is not later than " : " comes before ") +
                    early.name + time(early) + ", on line " + std::to_string(early.place.line),
         .key = late.path,
         .found = late.found,
         .expected = "gel < tack-free <= sandable < full cure, and gel <= recoat from < recoat "
                     "until, at the same temperature"},
        late.place);
  }

  Fields& resin_;
  Product& product_;
  std::vector<Line> lines_;
};

}  // namespace

void read_sheet(Fields& resin, Product& product) { Sheet(resin, product).read(); }

}  // namespace wetout::files
