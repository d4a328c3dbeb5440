// The job file: one board and how it is to be glassed (docs/formats/job.md).
#pragma once

#include <filesystem>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/board/defaults.hpp"
#include "wetout/board/spec.hpp"
#include "wetout/laminate/coat.hpp"
#include "wetout/laminate/plan.hpp"
#include "wetout/units/quantity.hpp"

namespace wetout::files {

/// A file as read. Where its keys stand is not kept: locate() reads the text again, for problems
/// are rare and files may hold a hundred thousand keys.
struct Source {
  std::string name;  ///< as the user named it
  std::string text;  ///< byte for byte
  /// First words of the keys that this kind of file has: "board", "coat".
  std::vector<std::string> tables = {};
  /// Keys of the data structs that are written elsewhere in the file: "board.wide_point" is
  /// "board.width.wide_point", and the members of "board.width" are "board.width.tail",
  /// "board.width.tail12", ... or "board.station[0].width", ...
  std::map<std::string, std::string> aliases = {};
  std::map<std::string, std::vector<std::string>> members = {};
};

/// [steps]: what a board has only if it is named there, with its attended time.
struct NamedSteps {
  std::optional<units::Duration> spackle, artwork, spot;
};

/// A file that the job file names.
struct Attachment {
  std::string name;  ///< as it is named there
  std::string bytes;
};
/// The bytes of such a file, by its name, or why not.
using ReadBeside = std::function<base::Result<std::string>(const std::string& name)>;

struct JobFile {
  Source source;
  std::optional<Attachment> outline;  ///< the drawing
  board::Spec board;
  std::vector<laminate::CoatSpec> coats;
  NamedSteps steps;
  /// Values the reader filled in because the file names no number ("rail.medium"), by standing.
  std::vector<laminate::Assumption> assumed;
  /// Worth knowing: those of board::read_outline(), "outline.figures" (a width of the file that the
  /// drawing does not have).
  base::Notices notices;
};

/// Reads and checks a job file. Everything wrong in it is reported at once (above 1000 problems
/// the first ones), in the order of the file; a syntax error alone. Files above 4 MiB, folders,
/// binary and empty files are refused, each with its own code "file.*".
base::Result<JobFile> read_job(const std::filesystem::path& path,
                               const board::Defaults& defaults = board::defaults());
/// The same from text; `name` is used in messages, `read` for a drawing that it names.
base::Result<JobFile> parse_job(std::string text, std::string name,
                                const board::Defaults& defaults = board::defaults(),
                                const ReadBeside& read = {});

/// Adds file, line, column, source line and the written value to problems whose `key` belongs to
/// this file ("coat[3].ply[1].cloth", "board.width[2]"), and turns the key into the one the file
/// uses. A key that is missing takes the place of the nearest table above it. Problems that have a
/// place already, no key, or a key of another kind of file stay as they are.
base::Problems locate(base::Problems problems, const Source& source);

}  // namespace wetout::files
