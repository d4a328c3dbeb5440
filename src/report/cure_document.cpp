#include "wetout/report/cure_document.hpp"

#include "json_writer.hpp"
#include "resin_fields.hpp"

namespace wetout::report {

template <>
struct Fields<CureMilestone> {
  static void visit(auto& v, auto& milestone) {
    v("name", milestone.name);
    v("hours", milestone.after, as::Hours{});
    v("time", milestone.time);
    v("conversion", milestone.conversion, as::Share{});
    v("tg_c", milestone.tg, as::Celsius{});
    v("air_c", milestone.air, as::Celsius{});
    v("reached", milestone.reached);
    v("extrapolated", milestone.extrapolated);
    v("beyond_air", milestone.beyond_air);
    v("would_do_c", milestone.would_do, as::Celsius{});
  }
};
template <>
struct Fields<CurvePoint> {
  static void visit(auto& v, auto& point) {
    v("hours", point.after, as::Hours{});
    v("air_c", point.air, as::Celsius{});
    v("conversion", point.conversion, as::Share{});
    v("tg_c", point.tg, as::Celsius{});
  }
};
template <>
struct Fields<SheetTimeMet> {
  static void visit(auto& v, auto& residual) {
    v("what", residual.what);
    v("mass_g", residual.mass, as::Grams{});
    v("air_c", residual.air, as::Celsius{});
    v("printed_min", residual.printed, as::Minutes{});
    v("model_min", residual.model, as::Minutes{});
    v("closure", residual.closure);
  }
};
template <>
struct Fields<CureCalibration> {
  static void visit(auto& v, auto& calibration) {
    v("energy_kj_mol", calibration.energy_kj_mol, as::Plain{});
    v("sheet_energy_kj_mol", calibration.sheet_energy_kj_mol, as::Plain{});
    v("residuals", calibration.residuals);
    v("missing", calibration.missing);
    v("notices", calibration.notices);
  }
};
template <>
struct Fields<CureWeather> {
  static void visit(auto& v, auto& weather) {
    v("source", weather.source);
    v("from", weather.from);
    v("until", weather.until);
    v("room", weather.room);
  }
};
template <>
struct Fields<CureWarmBox> {
  static void visit(auto& v, auto& box) {
    v("set_c", box.set, as::Celsius{});
    v("after_h", box.after, as::Hours{});
    v("hottest_c", box.hottest, as::Celsius{});
  }
};
template <>
struct Fields<CureDocument> {
  static void visit(auto& v, auto& document) {
    v("program", document.program);
    v("made", document.made);
    v("resin", document.resin);
    v("name", document.name);
    v("chemistry", document.chemistry);
    v("start", document.start);
    v("air_c", document.air, as::Celsius{});
    v("weather", document.weather);
    v("warm_box", document.warm_box);
    v("dose_pct", document.dose, as::Percent{});
    v("milestones", document.milestones);
    v("curve", document.curve);
    v("calibration", document.calibration);
    v("assumptions", document.assumptions);
    v("cautions", document.cautions);
    v("notices", document.notices);
  }
};

std::string to_json(const CureDocument& document) { return document_json(cure_format, document); }

}  // namespace wetout::report
