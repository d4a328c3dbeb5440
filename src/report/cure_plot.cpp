#include "cure_plot.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <string_view>

#include "wetout/time/print.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {
namespace {

constexpr std::size_t axis_column = 6;  // "100 % |"
// From the axis on; leaves room for a label of the last tick.
constexpr std::size_t width = 65;
constexpr int rows = 11;  // every 10 %
// Three heights within a line of text.
constexpr int levels = 3 * rows;
constexpr std::string_view level_marks = ".-'";
constexpr std::array tick_hours = {0.25, 0.5, 1.0, 2.0, 3.0, 4.0, 6.0, 8.0, 12.0, 24.0, 48.0, 72.0};
constexpr double most_ticks = 6.0;
constexpr std::size_t page = 80;

double tick_for(double hours) {
  for (const double tick : tick_hours) {
    if (hours / tick <= most_ticks) return tick;
  }
  return std::ceil(hours / most_ticks / 24.0) * 24.0;
}

double conversion_at(const std::vector<CurvePoint>& curve, double hours) {
  const auto next = std::find_if(curve.begin() + 1, curve.end() - 1, [&](const CurvePoint& p) {
    return units::in_hours(p.after) >= hours;
  });
  const CurvePoint &a = *(next - 1), &b = *next;
  const double from = units::in_hours(a.after), to = units::in_hours(b.after);
  const double part = to > from ? std::clamp((hours - from) / (to - from), 0.0, 1.0) : 1.0;
  return a.conversion + part * (b.conversion - a.conversion);
}

class Plotter {
 public:
  explicit Plotter(const CurvePlot& plot)
      : plot_(plot), hours_(units::in_hours(plot.until)), tick_(tick_for(hours_)) {}

  std::vector<std::string> draw() {
    curve();
    axis();
    marks();
    return std::move(lines_);
  }

 private:
  [[nodiscard]] std::size_t column(double hours) const {
    return static_cast<std::size_t>(std::lround(hours / hours_ * static_cast<double>(width - 1)));
  }

  void curve() {
    std::vector<std::string> field(rows, std::string(width, ' '));
    int before = -1;
    for (std::size_t x = 1; x < width; ++x) {
      const double hours = hours_ * static_cast<double>(x) / static_cast<double>(width - 1);
      // A line of text is 10 % high, its own value in its middle.
      const double height = (conversion_at(plot_.curve, hours) * 10.0 + 0.5) * 3.0;
      const int level = std::clamp(static_cast<int>(std::floor(height)), 0, levels - 1);
      field[row_of(level)][x] = level_marks[static_cast<std::size_t>(level % 3)];
      for (int between = before + 3; before >= 0 && between / 3 < level / 3; between += 3) {
        field[row_of(between)][x] = '|';
      }
      before = level;
    }
    for (int row = 0; row < rows; ++row) {
      const int percent = 100 - 10 * row;
      const std::string label = percent % 20 == 0 ? fmt::format("{:3} %", percent) : "";
      lines_.push_back(
          fmt::format("{:5} |{}", label, field[static_cast<std::size_t>(row)].substr(1)));
    }
  }
  static std::size_t row_of(int level) { return static_cast<std::size_t>(rows - 1 - level / 3); }

  void axis() {
    std::string line(width, '-');
    std::vector<double> ticks;
    for (double hours = 0.0; hours <= hours_ * (1.0 + 1e-9); hours += tick_) {
      ticks.push_back(hours);
      line[column(hours)] = '+';
    }
    lines_.push_back(std::string(axis_column, ' ') + line.replace(0, 1, "+"));
    std::string elapsed(page, ' '), clock = elapsed;
    std::string day;
    for (const double hours : ticks) {
      put(elapsed, column(hours), hours_text(hours));
      if (!plot_.start) continue;
      const auto at = *plot_.start + std::chrono::seconds(std::llround(hours * 3600.0));
      const std::string today = time::print_wall(at, plot_.zone).substr(0, 3);
      put(clock, column(hours),
          (today == day ? "" : today + " ") + time::clock_time(at, plot_.zone));
      day = today;
    }
    lines_.push_back(elapsed);
    if (plot_.start) lines_.push_back(clock);
  }

  static std::string hours_text(double hours) {
    if (hours > 0.0 && hours < 1.0) return fmt::format("{:.0f} min", hours * 60.0);
    if (hours >= 96.0) return fmt::format("{:g} days", hours / 24.0);
    return units::print_number(hours, 2) + " h";
  }

  // Begins under its tick.
  static void put(std::string& line, std::size_t at, std::string_view text) {
    line.replace(at + axis_column, text.size(), text);
  }

  void marks() {
    std::vector<std::string> under;
    for (const PlotMark& mark : plot_.marks) {
      const double hours = units::in_hours(mark.at);
      const bool beyond = hours > hours_;
      const std::string text = std::string(1, mark.letter) + (beyond ? ">" : "");
      const std::size_t x = axis_column + (beyond ? width - 1 : column(std::max(0.0, hours)));
      std::size_t row = 0;
      while (row < under.size() && !is_free(under[row], x, text.size())) ++row;
      if (row == under.size()) under.emplace_back(page, ' ');
      under[row].replace(x, text.size(), text);
    }
    lines_.insert(lines_.end(), under.begin(), under.end());
  }
  static bool is_free(const std::string& line, std::size_t at, std::size_t columns) {
    return line.find_first_not_of(' ', at) >= at + columns;
  }

  const CurvePlot& plot_;
  double hours_, tick_;
  std::vector<std::string> lines_;
};

}  // namespace

std::vector<std::string> plot_text(const CurvePlot& plot) {
  std::vector<std::string> lines = Plotter(plot).draw();
  for (std::string& line : lines) line.erase(line.find_last_not_of(' ') + 1);
  return lines;
}

units::Duration plot_end(units::Duration last) {
  const double hours = std::max(units::in_hours(last), 0.5);
  const double tick = tick_for(hours);
  return units::hours(std::ceil(hours / tick - 1e-9) * tick);
}

}  // namespace wetout::report
