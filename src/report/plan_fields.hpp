// The keys of the plan document, in the order of docs/formats/plan.schema.json.
#pragma once

#include <array>
#include <optional>
#include <type_traits>

#include "base_fields.hpp"
#include "fields.hpp"
#include "numbers.hpp"
#include "wetout/report/plan_document.hpp"

namespace wetout::report {

template <>
struct Words<board::Foam> {
  static constexpr std::array all = {board::Foam::eps, board::Foam::xps, board::Foam::pu};
  static std::string_view word(board::Foam foam) { return laminate::to_string(foam); }
};
template <>
struct Words<board::Face> {
  static constexpr std::array all = {board::Face::deck, board::Face::bottom};
  static std::string_view word(board::Face face) { return laminate::to_string(face); }
};
template <>
struct Words<laminate::CoatKind> {
  static constexpr std::array all = {laminate::CoatKind::seal, laminate::CoatKind::laminate,
                                     laminate::CoatKind::install, laminate::CoatKind::hotcoat,
                                     laminate::CoatKind::gloss};
  static std::string_view word(laminate::CoatKind kind) { return laminate::to_string(kind); }
};
template <>
struct Words<laminate::Laps> {
  static constexpr std::array all = {laminate::Laps::cut, laminate::Laps::free};
  static std::string_view word(laminate::Laps laps) { return laminate::to_string(laps); }
};
template <>
struct Words<resin::By> {
  static constexpr std::array all = {resin::By::mass, resin::By::volume};
  static std::string_view word(resin::By by) { return by == resin::By::mass ? "mass" : "volume"; }
};

template <>
struct Fields<JobRef> {
  static void visit(auto& v, auto& job) {
    v("id", job.id);
    std::optional<int> revision;
    if (job.revision != 0) revision = job.revision;
    v("revision", revision);
    if constexpr (!std::is_const_v<std::remove_reference_t<decltype(job)>>) {
      job.revision = revision.value_or(0);
    }
    v("saved", job.saved);
  }
};
template <>
struct Fields<InputRef> {
  static void visit(auto& v, auto& input) {
    v("role", input.role);
    v("name", input.name);
    v("sha256", input.sha256);
  }
};
template <>
struct Fields<laminate::BoardSummary> {
  static void visit(auto& v, auto& board) {
    v("id", board.id);
    v("name", board.name);
    v("foam", board.foam);
    v("length_m", board.length, as::Metres{});
    v("planform_area_m2", board.planform, as::SquareMetres{});
    v("bottom_area_m2", board.bottom, as::SquareMetres{});
    v("deck_area_m2", board.deck, as::SquareMetres{});
    v("area_error_m2", board.area_error, as::SquareMetres{});
    v("perimeter_m", board.perimeter, as::Metres{});
    v("volume_l", board.volume, as::Litres{});
    v("core_weight_g", board.core_weight, as::Grams{});
  }
};
template <>
struct Fields<laminate::PlyNeed> {
  static void visit(auto& v, auto& ply) {
    v("id", ply.id);
    v("coat", ply.coat);
    v("cloth", ply.cloth);
    v("face", ply.face);
    v("area_m2", ply.area, as::SquareMetres{});
    v("lap_m", ply.lap, as::Metres{});
    v("lap_area_m2", ply.lap_area, as::SquareMetres{});
    v("cloth_area_m2", ply.cloth_area, as::SquareMetres{});
    v("from_tail_m", ply.from_tail, as::Metres{});
    v("to_m", ply.to, as::Metres{});
    v("width_m", ply.width, as::Metres{});
    v("fibre_g", ply.fibre, as::Grams{});
    v("resin_g", ply.resin, as::Grams{});
    v("thickness_mm", ply.thickness, as::Millimetres{});
    v("fibre_fraction", ply.fibre_fraction, as::Share{});
    v("cut_length_m", ply.cut_length, as::Metres{});
    v("cut_width_m", ply.cut_width, as::Metres{});
  }
};
template <>
struct Fields<laminate::Pour> {
  static void visit(auto& v, auto& pour) {
    v("what", pour.what);
    v("add_g", pour.add, as::Grams{});
    v("reads_g", pour.reads, as::Grams{});
    v("add_ml", pour.add_volume, as::Millilitres{});
    v("reads_ml", pour.reads_volume, as::Millilitres{});
  }
};
template <>
struct Fields<laminate::AdditiveAmount> {
  static void visit(auto& v, auto& additive) {
    v("material", additive.material);
    v("g", additive.mass, as::Grams{});
  }
};
template <>
struct Fields<laminate::Batch> {
  static void visit(auto& v, auto& batch) {
    v("n", batch.n);
    v("cup", batch.cup);
    v("mix_g", batch.mix, as::Grams{});
    v("part_a_g", batch.part_a, as::Grams{});
    v("part_b_g", batch.part_b, as::Grams{});
    v("part_a_ml", batch.part_a_volume, as::Millilitres{});
    v("part_b_ml", batch.part_b_volume, as::Millilitres{});
    v("additives", batch.additives);
    v("pours", batch.pours);
    v("air_c", batch.air, as::Celsius{});
    v("resin_c", batch.resin, as::Celsius{});
    v("gel_min", batch.gel, as::Minutes{});
    v("use_within_min", batch.use_within, as::Minutes{});
    v.later("spread_within_min", batch.spread_within, as::Minutes{});
    v("peak_c", batch.peak, as::Celsius{});
    v("runs_away", batch.runs_away);
    v("off_ratio_pct", batch.off_ratio, as::Percent{});
  }
};
template <>
struct Fields<laminate::Ratio> {
  static void visit(auto& v, auto& ratio) {
    v("by", ratio.by);
    v("a", ratio.a, as::Plain{});
    v("b", ratio.b, as::Plain{});
    v("tolerance_pct", ratio.tolerance, as::Percent{});
  }
};
template <>
struct Fields<laminate::Additive> {
  static void visit(auto& v, auto& additive) {
    v("material", additive.material);
    v("share_pct", additive.share, as::Percent{});
  }
};
template <>
struct Fields<laminate::CoatNeed> {
  static void visit(auto& v, auto& coat) {
    v("id", coat.id);
    v("name", coat.name);
    v("kind", coat.kind);
    v("face", coat.face);
    v("resin", coat.resin);
    v("laps", coat.laps);
    v("area_m2", coat.area, as::SquareMetres{});
    v("fibre_g", coat.fibre, as::Grams{});
    v("resin_kept_g", coat.kept, as::Grams{});
    v("uptake_g", coat.uptake, as::Grams{});
    v("trimmed_g", coat.trimmed, as::Grams{});
    v("sanded_g", coat.sanded, as::Grams{});
    v("losses_g", coat.losses, as::Grams{});
    v("margin_g", coat.margin, as::Grams{});
    v("rounding_g", coat.rounding, as::Grams{});
    v("mix_g", coat.mix, as::Grams{});
    v("spread_min", coat.spread, as::Minutes{});
    v.later("fill_peak_c", coat.fill_peak, as::Celsius{});
    v("ratio", coat.ratio);
    v("additives", coat.additives);
    v("batches", coat.batches);
  }
};
template <>
struct Fields<laminate::ResinTotal> {
  static void visit(auto& v, auto& total) {
    v("resin", total.resin);
    v("part_a_g", total.part_a, as::Grams{});
    v("part_b_g", total.part_b, as::Grams{});
    v("part_a_ml", total.part_a_volume, as::Millilitres{});
    v("part_b_ml", total.part_b_volume, as::Millilitres{});
    v("mix_g", total.mix, as::Grams{});
  }
};
template <>
struct Fields<laminate::MaterialTotal> {
  static void visit(auto& v, auto& total) {
    v("material", total.material);
    v("amount", total.amount, as::Share{});
    v("unit", total.unit);
    v("cost", total.cost);
  }
};
template <>
struct Fields<laminate::Totals> {
  static void visit(auto& v, auto& totals) {
    v("mix_g", totals.mix, as::Grams{});
    v("fibre_g", totals.fibre, as::Grams{});
    v("resin_kept_g", totals.kept, as::Grams{});
    v("losses_g", totals.losses, as::Grams{});
    v("margin_g", totals.margin, as::Grams{});
    v("trimmed_g", totals.trimmed, as::Grams{});
    v("sanded_g", totals.sanded, as::Grams{});
    v("finished_weight_g", totals.finished_weight, as::Grams{});
    v("cost", totals.cost);
    v("by_resin", totals.by_resin);
    v("materials", totals.materials);
  }
};
template <>
struct Fields<laminate::Assumption> {
  static void visit(auto& v, auto& assumption) {
    v("name", assumption.name);
    v("value", assumption.value, as::Plain{});
    v("unit", assumption.unit);
    v("standing", assumption.standing);
    v("source", assumption.source);
    v("used_by", assumption.used_by);
  }
};
template <>
struct Fields<laminate::Caution> {
  static void visit(auto& v, auto& caution) {
    v("step", caution.step);
    v("text", caution.text);
  }
};
/// Everything but `format`, which its own writer and reader look after.
template <>
struct Fields<PlanDocument> {
  static void visit(auto& v, auto& document) {
    v("program", document.program);
    v("made", document.made);
    v("job", document.job);
    v("inputs", document.inputs);
    v("air_c", document.plan.air, as::Celsius{});
    v("board", document.plan.board);
    v("plies", document.plan.plies);
    v("coats", document.plan.coats);
    v("totals", document.plan.totals);
    v("assumptions", document.plan.assumptions);
    v("cautions", document.plan.cautions);
    v("notices", document.plan.notices);
  }
};

}  // namespace wetout::report
