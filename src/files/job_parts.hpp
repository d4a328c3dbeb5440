// The parts of a job file.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "fields.hpp"
#include "wetout/board/defaults.hpp"
#include "wetout/files/job_file.hpp"

namespace wetout::files {

/// A width that a file says beside its drawing.
struct Figure {
  std::string key;                         ///< "nose12"
  std::optional<units::Length> from_tail;  ///< nothing: where the board is widest
  units::Length width;
};

/// What the parts of a board share while it is being read.
struct BoardReading {
  Fields board;
  JobFile& job;
  const board::Defaults& defaults;
  std::optional<units::Length> length;
  std::vector<Figure> figures = {};

  [[nodiscard]] board::Spec& spec() const { return job.board; }
  /// A value of Spec that stands at `key` in the file.
  void member(const std::string& list, std::string key) const {
    job.source.members["board." + list].push_back(std::move(key));
  }
};

/// [board] and everything in it.
void read_board(Fields fields, JobFile& job, const board::Defaults& defaults,
                const ReadBeside& read);

/// [board.width], [board.thickness], [board.rocker]: the trade's measuring points.
void read_measuring_points(BoardReading& reading);
/// outline = "board.svg": widths out of a drawing; and how they agree with those of the file.
void read_outline(BoardReading& reading, const ReadBeside& read);
void compare_figures(BoardReading& reading);
/// [[board.station]]: any number of places.
void read_stations(BoardReading& reading);

/// { name = "60/40", fullness = "medium" }; what it does not say is filled in and noted in `job`.
board::Rail read_rail(Fields fields, JobFile& job, const board::Defaults& defaults);
board::Rail default_rail(JobFile& job, const board::Defaults& defaults);

/// [[coat]] and the plies in it.
void read_coats(Fields& root, JobFile& job);
void read_plies(Fields& coat, laminate::CoatSpec& spec);

}  // namespace wetout::files
