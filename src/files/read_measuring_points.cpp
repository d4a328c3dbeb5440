// Width, thickness and rocker at the ends, 12 in from each end and at the middle.
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "job_parts.hpp"
#include "wetout/units/print.hpp"

namespace wetout::files {
namespace {

using units::Length;

constexpr Length twelve_inches = units::inches(12);

bool is_cut(board::EndShape shape) {
  return shape == board::EndShape::square || shape == board::EndShape::swallow;
}

/// Adds a value that is there, and where it stands.
void add(const BoardReading& reading, const std::string& list, std::vector<board::At>& values,
         Length from_tail, std::optional<Length> value, std::string_view key) {
  if (!value) return;
  values.push_back({from_tail, *value});
  std::string path = "board." + list;
  if (!key.empty()) path.append(".").append(key);
  reading.member(list, std::move(path));
}

/// A round or pointed end has no width; a cut one must say how wide it is.
std::optional<Length> end_width(Fields& table, std::string_view key, const board::End& end) {
  if (is_cut(end.shape)) {
    const bool square = end.shape == board::EndShape::square;
    const auto width = table.quantity(key, measures::tip_width);
    if (!table.has(key)) {
      table.missing(key, std::string("the width of the ") + (square ? "square " : "swallow ") +
                             std::string(key) + ", e.g. \"6 in\"");
    } else if (width && *width <= Length{}) {
      table.wrong_value(key, {.code = "value.range",
                              .message = "a cut " + std::string(key) + " has a width",
                              .expected = "a length, more than 0, e.g. \"6 in\""});
    }
    return width;
  }
  const auto width = table.quantity(key, measures::tip_width);
  if (width && *width > Length{}) {
    table.wrong_value(
        key, {.code = "board.end_width",
              .message = "a " +
                         std::string(end.shape == board::EndShape::point ? "pointed " : "round ") +
                         std::string(key) + " ends in a width of 0",
              .expected = "no width here, or " + std::string(key) + " = \"square\" in [board]"});
  }
  return Length{};
}

void read_width(BoardReading& reading, Fields table, Length length) {
  board::Spec& spec = reading.spec();
  const Length middle = length / 2.0;
  const auto tail = end_width(table, "tail", spec.tail);
  const auto tail12 = table.quantity("tail12", measures::width, Must::be_there);
  const auto wide = table.quantity("wide", measures::width, Must::be_there);
  const auto offset = table.quantity("wide_point", measures::offset);
  const auto nose12 = table.quantity("nose12", measures::width, Must::be_there);
  const auto nose = end_width(table, "nose", spec.nose);

  const Length wide_point = middle + offset.value_or(Length{});
  if (offset && reading.length &&
      (wide_point <= twelve_inches || wide_point >= length - twelve_inches)) {
    table.wrong_value(
        "wide_point",
        {.code = "board.wide_point",
         .message = "the wide point lies beyond the measuring point " +
                    std::string(wide_point > middle ? "nose12" : "tail12"),
         .expected = "less than " + units::print_inches(middle - twelve_inches, units::System::us) +
                     " from mid-length, + toward the nose"});
  }
  spec.wide_point = wide_point;
  reading.job.source.aliases["board.wide_point"] = "board.width.wide_point";

  const auto key_of_end = [&](std::string_view key) {
    return table.has(key) ? key : std::string_view();
  };
  add(reading, "width", spec.width, Length{}, tail, key_of_end("tail"));
  add(reading, "width", spec.width, twelve_inches, tail12, "tail12");
  add(reading, "width", spec.width, wide_point, wide, "wide");
  add(reading, "width", spec.width, length - twelve_inches, nose12, "nose12");
  add(reading, "width", spec.width, length, nose, key_of_end("nose"));
  table.done();
}

// Beside a drawing the widths of the file are there to be compared.
void read_figures(BoardReading& reading, Fields table, Length length) {
  const auto figure = [&](const char* key, std::optional<Length> from_tail, const auto& measure) {
    if (const auto width = table.quantity(key, measure)) {
      reading.figures.push_back({key, from_tail, *width});
    }
  };
  figure("tail", Length{}, measures::tip_width);
  figure("tail12", twelve_inches, measures::width);
  figure("wide", std::nullopt, measures::width);
  figure("nose12", length - twelve_inches, measures::width);
  figure("nose", length, measures::tip_width);
  table.quantity("wide_point", measures::offset);
  table.done();
}

void read_thickness(BoardReading& reading, Fields table, Length length) {
  board::Spec& spec = reading.spec();
  const auto tail = table.quantity("tail", measures::tip_thickness);
  const auto tail12 = table.quantity("tail12", measures::thickness, Must::be_there);
  const auto centre = table.quantity("centre", measures::thickness, Must::be_there);
  const auto nose12 = table.quantity("nose12", measures::thickness, Must::be_there);
  const auto nose = table.quantity("nose", measures::tip_thickness);
  add(reading, "thickness", spec.thickness, Length{}, tail, "tail");
  add(reading, "thickness", spec.thickness, twelve_inches, tail12, "tail12");
  add(reading, "thickness", spec.thickness, length / 2.0, centre, "centre");
  add(reading, "thickness", spec.thickness, length - twelve_inches, nose12, "nose12");
  add(reading, "thickness", spec.thickness, length, nose, "nose");
  table.done();
}

// From a straight bar that touches the bottom at mid-length (common practice, no source).
void read_rocker(BoardReading& reading, Fields table, Length length) {
  board::Spec& spec = reading.spec();
  const auto tail = table.quantity("tail", measures::rocker, Must::be_there);
  const auto tail12 = table.quantity("tail12", measures::rocker);
  const auto nose12 = table.quantity("nose12", measures::rocker);
  const auto nose = table.quantity("nose", measures::rocker, Must::be_there);
  add(reading, "rocker", spec.rocker, Length{}, tail, "tail");
  add(reading, "rocker", spec.rocker, twelve_inches, tail12, "tail12");
  add(reading, "rocker", spec.rocker, length / 2.0, Length{}, "");
  add(reading, "rocker", spec.rocker, length - twelve_inches, nose12, "nose12");
  add(reading, "rocker", spec.rocker, length, nose, "nose");
  table.done();
}

}  // namespace

void read_measuring_points(BoardReading& reading) {
  Fields& board = reading.board;
  const bool has_drawing = board.has("outline");
  auto width = board.subtable("width", "[board.width] or [[board.station]] tables",
                              has_drawing ? Must::not_be_there : Must::be_there);
  auto thickness = board.subtable("thickness", "[board.thickness]", Must::be_there);
  auto rocker = board.subtable("rocker", "[board.rocker]");

  if (reading.length && *reading.length <= twelve_inches * 2.0 && (width || thickness)) {
    board.wrong_value("length",
                      {.code = "board.too_short",
                       .message = "the measuring points 12 in from each end meet on a "
                                  "board this short",
                       .expected = "more than 24 in, or [[board.station]] tables instead "
                                   "of [board.width], [board.thickness], [board.rocker]"});
    reading.length.reset();
  }
  // Without a length the places are wrong, but the values can still be checked.
  const Length length = reading.length.value_or(units::feet(6));
  if (width && has_drawing) {
    read_figures(reading, std::move(*width), length);
  } else if (width) {
    read_width(reading, std::move(*width), length);
  }
  if (thickness) read_thickness(reading, std::move(*thickness), length);
  if (rocker) read_rocker(reading, std::move(*rocker), length);
}

}  // namespace wetout::files
