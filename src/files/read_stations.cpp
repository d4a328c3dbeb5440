// A board given by any number of stations, each with what was measured there.
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "job_parts.hpp"
#include "wetout/units/print.hpp"

namespace wetout::files {
namespace {

using units::Length;

constexpr std::string_view example = R"([[board.station]] at = "12 in", width = "15 in", ...)";
constexpr std::size_t most_stations = 100000;  // far more than a scan needs
constexpr std::string_view rail_example = R"({ name = "60/40", fullness = "medium" })";

bool is_cut(board::EndShape shape) {
  return shape == board::EndShape::square || shape == board::EndShape::swallow;
}

class Stations {
 public:
  explicit Stations(BoardReading& reading) : reading_(reading), spec_(reading.spec()) {}

  void read(std::vector<Fields> stations) {
    if (stations.empty()) return;
    for (Fields& station : stations) {
      if (station.document().full()) return;
      one(station);
    }
    // An end without a station of its own: nothing to measure on a round or pointed one.
    if (!cut_end_missing(spec_.tail, "tail", first_width_at_tail_)) add_tail();
    if (!cut_end_missing(spec_.nose, "nose", last_width_at_nose_)) add_nose();
    need_somewhere("width", any_width_);
    need_somewhere("thickness", any_thickness_);
  }

 private:
  void one(Fields& station) {
    const auto at = station.quantity("at", measures::place, Must::be_there);
    const bool in_order = at && place(station, *at);
    const bool at_tail = at && *at == Length{};
    const bool at_nose = at && reading_.length && *at == *reading_.length;
    const bool tip = at_tail || at_nose;

    const auto width = station.quantity("width", tip ? measures::tip_width : measures::width);
    const auto thickness =
        station.quantity("thickness", tip ? measures::tip_thickness : measures::thickness);
    const auto rocker = station.quantity("rocker", measures::rocker);
    auto rail = station.subtable("rail", rail_example);
    if (!station.has("width") && !station.has("thickness") && !station.has("rocker") && !rail) {
      station.wrong_table({.code = "board.station_empty",
                           .message = "nothing is measured at this station",
                           .expected = "width, thickness, rocker or rail"});
    }
    any_width_ = any_width_ || station.has("width");
    any_thickness_ = any_thickness_ || station.has("thickness");
    if (tip && width)
      end_width(station, *width, at_tail ? spec_.tail : spec_.nose, at_tail ? "tail" : "nose");
    if (in_order) {
      if (at_tail && (width || station.has("width"))) first_width_at_tail_ = true;
      if (at_nose && (width || station.has("width"))) last_width_at_nose_ = true;
      add(station, "width", spec_.width, *at, width);
      add(station, "thickness", spec_.thickness, *at, thickness);
      add(station, "rocker", spec_.rocker, *at, rocker);
    }
    if (rail) {
      if (reading_.board.has("rail")) {
        station.wrong_key("rail",
                          {.code = "key.conflict",
                           .message = "the rail is given for the whole board too, on line " +
                                      std::to_string(reading_.board.position_of("rail").line),
                           .expected = "either rail in [board], or rail at stations"});
        station.know("rail");
      } else {
        const board::Rail shape = read_rail(std::move(*rail), reading_.job, reading_.defaults);
        if (in_order) {
          spec_.rail.push_back({*at, shape});
          reading_.member("rail", station.path_of("rail"));
        }
      }
    }
    station.done();
  }

  /// False, with a problem, when the station is not beyond the one before it or off the board.
  bool place(Fields& station, Length at) {
    if (reading_.length && at > *reading_.length) {
      station.wrong_value("at", {.code = "board.station_off_board",
                                 .message = "the station lies beyond the nose",
                                 .expected = "at most the board's length, from the tail"});
      return false;
    }
    if (before_ && at <= *before_) {
      station.wrong_value(
          "at", {.code = "board.station_order",
                 .message = at == *before_ ? "there is a station here already, on line " +
                                                 std::to_string(line_before_)
                                           : "the station lies before the one above it, on line " +
                                                 std::to_string(line_before_),
                 .expected = "stations from the tail to the nose, each further than the last"});
      return false;
    }
    before_ = at;
    line_before_ = station.position().line;
    return true;
  }

  void add(const Fields& station, const char* list, std::vector<board::At>& values, Length at,
           std::optional<Length> value) const {
    if (!value) return;
    values.push_back({at, *value});
    reading_.member(list, station.path_of(list));
  }

  static void end_width(Fields& station, Length width, const board::End& end,
                        const std::string& which) {
    const std::string shape = end.shape == board::EndShape::point    ? "pointed "
                              : end.shape == board::EndShape::round  ? "round "
                              : end.shape == board::EndShape::square ? "square "
                                                                     : "swallow ";
    if (is_cut(end.shape) && width <= Length{}) {
      station.wrong_value("width", {.code = "value.range",
                                    .message = "a " + shape + which + " has a width",
                                    .expected = "a length, more than 0, e.g. \"6 in\""});
    } else if (!is_cut(end.shape) && width > Length{}) {
      station.wrong_value("width",
                          {.code = "board.end_width",
                           .message = "a " + shape + which + " ends in a width of 0",
                           .expected = "no width here, or " + which + " = \"square\" in [board]"});
    }
  }

  bool cut_end_missing(const board::End& end, const std::string& which, bool given) {
    if (given || !is_cut(end.shape)) return given;
    reading_.board.wrong_key(
        "station",
        {.code = "board.end_missing",
         .message = "a cut " + which + " needs a station at the very end, with its width",
         .expected = which == "tail"
                         ? "a first station with at = \"0 in\" and its width"
                         : "a last station with at = the board's length and its width"});
    return true;
  }

  void add_tail() {
    if (spec_.width.empty() || spec_.width.front().from_tail == Length{}) return;
    spec_.width.insert(spec_.width.begin(), {Length{}, Length{}});
    auto& members = reading_.job.source.members["board.width"];
    members.insert(members.begin(), "board.tail");
  }
  void add_nose() {
    if (spec_.width.empty() || !reading_.length) return;
    if (spec_.width.back().from_tail == *reading_.length) return;
    spec_.width.push_back({*reading_.length, Length{}});
    reading_.member("width", "board.nose");
  }

  void need_somewhere(const char* key, bool given) {
    if (given) return;
    reading_.board.wrong_key("station", {.code = "key.missing",
                                         .message = "no station has a " + std::string(key),
                                         .expected = std::string(key) + " at some stations"});
  }

  BoardReading& reading_;
  board::Spec& spec_;
  std::optional<Length> before_;
  int line_before_ = 0;
  bool any_width_ = false;
  bool any_thickness_ = false;
  bool first_width_at_tail_ = false;
  bool last_width_at_nose_ = false;
};

}  // namespace

void read_stations(BoardReading& reading) {
  Stations stations(reading);
  stations.read(reading.board.subtables("station", example, Must::be_there, most_stations));
}

}  // namespace wetout::files
