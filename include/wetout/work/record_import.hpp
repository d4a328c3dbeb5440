// `record import`: boards of the past, all of a file at once.
#pragma once

#include <filesystem>

#include "wetout/base/problem.hpp"
#include "wetout/report/past_document.hpp"
#include "wetout/units/print.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

/// A document with what printing it needs beside it.
struct Imported {
  report::PastDocument document;
  units::System units = units::System::us;  ///< of the shop
};

/// Enters every fact of a file of past boards (docs/formats/past_boards.md) that is not in the log
/// yet, or none; with each what it takes from stock, as record() does. Boards that the log does not
/// know begin. A step is known by what it says: the same file again enters nothing. Problems, with
/// file and line: those of files::read_past_boards(), of reading quantities, and of record().
/// Throws joblog::StoreError.
base::Result<Imported> import_past(const Workshop& workshop, const std::filesystem::path& file);

}  // namespace wetout::work
