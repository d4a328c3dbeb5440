// The parts of a job sheet, each written to the same page.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "html.hpp"
#include "schedule_chart.hpp"
#include "schedule_view.hpp"
#include "wetout/report/job_sheet.hpp"

namespace wetout::report {

/// When a step may begin, and why not before and not after.
struct StepWindow {
  std::optional<time::Instant> from, until;
  std::string before, after;  ///< reasons in words; may be empty
  std::string notice;         ///< why it is not all good; may be empty
};
StepWindow window_of(const ScheduleView& view, const Entry& entry);

/// The schedule with nothing but the steps of one job.
ScheduleDocument of_one_job(const ScheduleDocument& document, std::string_view job);

/// A week of the room's air in a picture: temperature, dew point, when each coat may be started and
/// when it is.
std::vector<Markup> weather_charts(const ScheduleView& view, units::System system);
/// How far a film has cured, with its milestones; nothing where no curve is known.
std::optional<Markup> cure_chart(const ScheduleView& view, const RoomCourse& course,
                                 const Entry& wet);
/// "G gel 22:25": the letters that the picture bears.
std::vector<std::string> cure_legend(const ScheduleView& view, const Entry& wet);

class SheetWriter {
 public:
  SheetWriter(const JobSheet& sheet, units::System system, const time::Zone& zone);
  std::string page();

 private:
  // Sections, in their order.
  void head();
  void title();
  void overview();
  void worth_knowing();
  void lay_out();
  void cut();
  void work();
  void films();
  void record();

  void roll(const CutFrom& from);
  // Of the work.
  void day(time::WallTime day, const std::vector<const Entry*>& entries);
  void row(const Entry& entry);
  void card(const laminate::CoatNeed& planned, const Entry* wet);
  void batches(const laminate::CoatNeed& coat, const Entry* wet);
  void pours(const laminate::Batch& batch);
  void cup(const laminate::CoatNeed& coat, const laminate::Batch& batch, const Entry* wet);
  void clock(const laminate::CoatNeed& coat, const laminate::Batch& batch);
  void air(const Entry& entry);
  void window(const Entry& entry);
  void chances(const Entry& entry);
  void film(const Entry& wet);
  void cautions(const laminate::CoatNeed& coat);
  /// Room to write: what `record import` takes of a step, and the rest as a note.
  enum class Kind { coat, other };
  void fields(std::string_view coat, std::string_view step, const Entry* entry, Kind kind,
              std::string_view title);
  struct Field {
    std::string_view fact, label, type, mode, unit;
  };
  void field(const std::string& name, const Field& field, const std::string& value = {});

  void name(std::string_view text, std::string_view tag = "bdi");
  void section(std::string_view id, std::string_view title);
  [[nodiscard]] const laminate::CoatNeed& mixed(const laminate::CoatNeed& planned) const;
  [[nodiscard]] std::string coat_name(std::string_view id) const;
  [[nodiscard]] bool has_schedule() const { return view_.has_value(); }

  const JobSheet& sheet_;
  const laminate::Plan& plan_;
  units::System system_;
  const time::Zone& zone_;
  std::optional<ScheduleDocument> schedule_;
  std::optional<ScheduleView> view_;
  std::optional<RoomCourse> course_;
  Html page_;
};

}  // namespace wetout::report
