#include "wetout/report/potlife_document.hpp"

#include <array>

#include "json_writer.hpp"
#include "resin_fields.hpp"

namespace wetout::report {

template <>
struct Words<MassFrom> {
  static constexpr std::array all = {MassFrom::given, MassFrom::sheet, MassFrom::usual};
  static std::string_view word(MassFrom from) {
    return from == MassFrom::given ? "given" : from == MassFrom::sheet ? "sheet" : "usual";
  }
};
template <>
struct Words<UseEnds> {
  static constexpr std::array all = {UseEnds::by_heat, UseEnds::by_conversion};
  static std::string_view word(UseEnds ends) {
    return ends == UseEnds::by_heat ? "heat" : "conversion";
  }
};

template <>
struct Fields<CupAnswer> {
  static void visit(auto& v, auto& answer) {
    v("resin", answer.resin);
    v("mass_g", answer.mass, as::Grams{});
    v("air_c", answer.air, as::Celsius{});
    v("resin_c", answer.resin_temp, as::Celsius{});
    v("cup", answer.cup);
    v("gel_min", answer.gel, as::Minutes{});
    v("use_within_min", answer.use_within, as::Minutes{});
    v("peak_c", answer.peak, as::Celsius{});
    v("peak_min", answer.peak_at, as::Minutes{});
    v("runs_away", answer.runs_away);
  }
};
template <>
struct Fields<PouredOut> {
  static void visit(auto& v, auto& poured) {
    v("after_min", poured.after, as::Minutes{});
    v("conversion", poured.conversion, as::Share{});
    v("temperature_c", poured.temperature, as::Celsius{});
    v("spread_within_min", poured.spread_within, as::Minutes{});
    v("gel_min", poured.gel, as::Minutes{});
  }
};
template <>
struct Fields<WorkableBatch> {
  static void visit(auto& v, auto& workable) {
    v("time_min", workable.time, as::Minutes{});
    v("mass_g", workable.mass, as::Grams{});
    v("cup_full", workable.cup_full);
  }
};
template <>
struct Fields<DosedFilm> {
  static void visit(auto& v, auto& film) {
    v("dose_pct", film.dose, as::Percent{});
    v("air_c", film.air, as::Celsius{});
    v("gel_min", film.gel, as::Minutes{});
    v("use_within_min", film.use_within, as::Minutes{});
  }
};
template <>
struct Fields<SheetPotLife> {
  static void visit(auto& v, auto& line) {
    v("mass_g", line.mass, as::Grams{});
    v("air_c", line.air, as::Celsius{});
    v("printed_min", line.printed, as::Minutes{});
    v("model_min", line.model, as::Minutes{});
    v("closure", line.closure);
  }
};
template <>
struct Fields<PotLifeDocument> {
  static void visit(auto& v, auto& document) {
    v("program", document.program);
    v("made", document.made);
    Fields<CupAnswer>::visit(v, document.answer);
    v("name", document.name);
    v("chemistry", document.chemistry);
    v("mass_from", document.mass_from);
    v("use_ends", document.use_ends);
    v("cooling_matters", document.cooling_matters);
    v("film_open_min", document.film_open, as::Minutes{});
    v("film_gel_min", document.film_gel, as::Minutes{});
    v("poured", document.poured);
    v("workable", document.workable);
    v("dose_low_pct", document.dose_low, as::Percent{});
    v("dose_high_pct", document.dose_high, as::Percent{});
    v("doses", document.doses);
    v("sheet", document.sheet);
    v("grid", document.grid);
    v("missing", document.missing);
    v("assumptions", document.assumptions);
    v("cautions", document.cautions);
    v("notices", document.notices);
  }
};

std::string to_json(const PotLifeDocument& document) {
  return document_json(potlife_format, document);
}

}  // namespace wetout::report
