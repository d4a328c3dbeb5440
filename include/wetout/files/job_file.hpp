// The job file: one board and how it is to be glassed (docs/formats/job.md).
#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/board/spec.hpp"
#include "wetout/laminate/coat.hpp"
#include "wetout/laminate/plan.hpp"

namespace wetout::files {

/// Where a key stands in a file, for problems found later than reading.
struct Where {
  int line = 0;
  int column = 0;
  std::string source_line;
  std::string found;  ///< the value as written
};

/// A file as read: its text and where its keys stand ("board.width.nose12", "coat[2].ply[0].cloth").
struct Source {
  std::string name;  ///< as the user named it
  std::string text;
  std::map<std::string, Where> keys;
};

struct JobFile {
  Source source;
  board::Spec board;
  std::vector<laminate::CoatSpec> coats;
  /// Values the reader filled in because the file names no number ("rail.medium"), by standing.
  std::vector<laminate::Assumption> assumed;
};

/// Reads and checks a job file. Everything wrong in it is reported at once, a syntax error alone.
/// Files above 4 MiB, folders, binary and empty files are refused, each with its own code "file.*".
base::Result<JobFile> read_job(const std::filesystem::path& path);
/// The same from text; `name` is used in messages.
base::Result<JobFile> parse_job(std::string text, std::string name);

/// Adds file, line, column and the written value to problems whose `key` stands in the file; a key
/// that is missing takes the place of the nearest table above it.
base::Problems locate(base::Problems problems, const Source& source);

}  // namespace wetout::files
