// How a large drawing is cut into sheets of paper. In millimetres, x across and y down the paper.
#pragma once

#include <string>
#include <vector>

namespace wetout::report {

struct PaperSize {
  double width = 0.0, height = 0.0;
};
struct Box {
  double x = 0.0, y = 0.0, width = 0.0, height = 0.0;
};
struct PlanePoint {
  double x = 0.0, y = 0.0;
};

inline constexpr double sheet_margin = 10.0;   // what most printers leave white
inline constexpr double sheet_overlap = 10.0;  // of a sheet over the next

struct Sheet {
  int row = 0, column = 0;
  Box window;                              ///< of the drawing
  [[nodiscard]] std::string name() const;  ///< "2B": second row, second column
};
struct Sheets {
  PaperSize paper;  ///< as it is laid, upright or across
  int columns = 0, rows = 0;
  std::vector<Sheet> list;  ///< row by row, without the empty ones
};

/// Sheets over `extent` of the drawing, in whose middle they lie, that `shape` (closed) reaches.
Sheets sheets_over(const Box& extent, const std::vector<PlanePoint>& shape, PaperSize paper);

}  // namespace wetout::report
