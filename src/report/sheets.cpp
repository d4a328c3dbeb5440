#include "sheets.hpp"

#include <algorithm>
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <cmath>
#include <utility>

namespace wetout::report {
namespace {

namespace bg = boost::geometry;
using Point = bg::model::d2::point_xy<double>;
using Polygon = bg::model::polygon<Point>;

// Of windows that overlap, so that all of them cover `length`.
int count(double length, double window) {
  const double step = window - sheet_overlap;
  return std::max(1, static_cast<int>(std::ceil((length - sheet_overlap) / step - 1e-9)));
}

Sheets laid(const Box& extent, const Polygon& shape, PaperSize paper) {
  const double width = paper.width - 2.0 * sheet_margin;
  const double height = paper.height - 2.0 * sheet_margin;
  Sheets sheets{paper, count(extent.width, width), count(extent.height, height), {}};
  const auto begin = [](double at, double length, int n, double window) {
    const double covered = n * (window - sheet_overlap) + sheet_overlap;
    return at - (covered - length) / 2.0;
  };
  const double left = begin(extent.x, extent.width, sheets.columns, width);
  const double top = begin(extent.y, extent.height, sheets.rows, height);
  for (int row = 0; row < sheets.rows; ++row) {
    for (int column = 0; column < sheets.columns; ++column) {
      const Box window{left + column * (width - sheet_overlap),
                       top + row * (height - sheet_overlap), width, height};
      // The strip that the sheet before has too is no reason for this one.
      const bg::model::box<Point> box({window.x + (column > 0 ? sheet_overlap : 0.0),
                                       window.y + (row > 0 ? sheet_overlap : 0.0)},
                                      {window.x + width, window.y + height});
      if (bg::intersects(box, shape)) sheets.list.push_back({row, column, window});
    }
  }
  return sheets;
}

}  // namespace

std::string Sheet::name() const {
  return std::to_string(row + 1) + static_cast<char>('A' + column);
}

Sheets sheets_over(const Box& extent, const std::vector<PlanePoint>& shape, PaperSize paper) {
  Polygon polygon;
  for (const PlanePoint& point : shape) bg::append(polygon.outer(), Point(point.x, point.y));
  bg::correct(polygon);
  Sheets upright = laid(extent, polygon, paper);
  Sheets across = laid(extent, polygon, {paper.height, paper.width});
  return across.list.size() < upright.list.size() ? std::move(across) : std::move(upright);
}

}  // namespace wetout::report
