// [board]: everything but the measures themselves.
#include <optional>
#include <string>
#include <utility>

#include "ids.hpp"
#include "job_parts.hpp"

namespace wetout::files {
namespace {

using board::EndShape;
using board::Foam;

constexpr Word<Foam> foams[] = {{"eps", Foam::eps}, {"xps", Foam::xps}, {"pu", Foam::pu}};
constexpr Word<EndShape> noses[] = {
    {"round", EndShape::round}, {"point", EndShape::point}, {"square", EndShape::square}};
constexpr Word<EndShape> tails[] = {{"round", EndShape::round},
                                    {"point", EndShape::point},
                                    {"square", EndShape::square},
                                    {"swallow", EndShape::swallow}};

constexpr std::string_view tail_example = R"({ shape = "swallow", depth = "4 in" })";
constexpr std::string_view nose_example = R"({ shape = "round" })";
constexpr std::string_view rail_example = R"({ name = "60/40", fullness = "medium" })";

template <std::size_t n>
board::End read_end(Fields& board, std::string_view key, const Word<EndShape> (&shapes)[n],
                    std::string_view example) {
  board::End end;
  const toml::node* node = board.find(key);
  if (node == nullptr || !node->is_table()) {
    if (const auto shape = board.choice(key, shapes, Must::be_there)) end.shape = *shape;
    if (end.shape == EndShape::swallow) {
      board.wrong_value(key, {.code = "key.missing",
                              .message = "a swallow tail needs the depth of its notch",
                              .expected = std::string(key) + " = " + std::string(example)});
    }
    return end;
  }
  Fields fields(board.document(), *node->as_table(), board.path_of(key));
  if (const auto shape = fields.choice("shape", shapes, Must::be_there)) end.shape = *shape;
  if (end.shape == EndShape::swallow) {
    if (const auto depth = fields.quantity("depth", measures::depth, Must::be_there)) {
      end.depth = *depth;
    }
  } else if (fields.has("shape")) {
    fields.misplaced("depth", "only a swallow tail has a depth", "no depth here");
  } else {
    fields.know("depth");
  }
  fields.done();
  return end;
}

void read_core(Fields& board, board::Spec& spec) {
  if (const auto foam = board.choice("foam", foams, Must::be_there)) spec.foam = *foam;
  spec.foam_density = board.quantity("foam_density", measures::foam_density);
  spec.core_weight = board.quantity("core_weight", measures::core_weight);
  spec.stringer_weight = board.quantity("stringer_weight", measures::small_mass);
  if (!board.has("core_weight")) return;
  for (const std::string_view key : {"foam_density", "stringer_weight"}) {
    if (!board.has(key)) continue;
    board.wrong_key(key, {.code = "key.conflict",
                          .message = "core_weight is the whole core, foam and stringer",
                          .expected = "either core_weight alone, or foam_density with or without "
                                      "stringer_weight"});
  }
}

bool has_tables(const Fields& board) {
  return board.has("width") || board.has("thickness") || board.has("rocker");
}

void refuse_mixed(Fields& board) {
  for (const std::string_view key : {"width", "thickness", "rocker"}) {
    if (!board.has(key)) continue;
    board.wrong_key(
        "station",
        {.code = "key.conflict",
         .message = "stations and [board." + std::string(key) + "] (line " +
                    std::to_string(board.position_of(key).line) + ") both describe the board",
         .expected = "either [board.width], [board.thickness] and [board.rocker], or "
                     "[[board.station]] tables"});
    return;
  }
}

}  // namespace

void read_board(Fields fields, JobFile& job, const board::Defaults& defaults,
                const ReadBeside& read) {
  BoardReading reading{std::move(fields), job, defaults, std::nullopt, {}};
  Fields& board = reading.board;
  board::Spec& spec = job.board;

  const Named named = read_named(board, "Sandpiper 6-4");
  spec.id = named.id;
  spec.name = named.name;
  reading.length = board.quantity("length", measures::board_length, Must::be_there);
  if (reading.length) spec.length = *reading.length;
  read_core(board, spec);
  spec.nose = read_end(board, "nose", noses, nose_example);
  spec.tail = read_end(board, "tail", tails, tail_example);

  if (auto rail = board.subtable("rail", rail_example)) {
    spec.rail = {{units::Length{}, read_rail(std::move(*rail), job, defaults)}};
    reading.member("rail", "board.rail");
  }

  if (board.has("outline")) {
    if (board.has("station")) {
      board.wrong_key("station", {.code = "key.conflict",
                                  .message = "stations and an outline both describe the board",
                                  .expected = "either [[board.station]] tables, or outline with "
                                              "[board.thickness] and [board.rocker]"});
    }
    read_outline(reading, read);
    read_measuring_points(reading);
    board.know("station");
  } else if (board.has("station")) {
    if (has_tables(board)) {
      refuse_mixed(board);
      for (const std::string_view key : {"width", "thickness", "rocker", "station"}) {
        board.know(key);
      }
    } else {
      read_stations(reading);
      for (const std::string_view key : {"width", "thickness", "rocker"}) board.know(key);
    }
  } else {
    read_measuring_points(reading);
    board.know("station");
  }
  if (spec.rail.empty()) {
    spec.rail = {{units::Length{}, default_rail(job, defaults)}};
    reading.member("rail", "board.rail");
  }
  compare_figures(reading);
  board.done();
}

}  // namespace wetout::files
