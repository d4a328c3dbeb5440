// What is written: keys, their order, exact numbers. Keys are those of the format's contract,
// copied here by hand.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <nlohmann/json.hpp>
#include <sstream>

#include "plan_generator.hpp"
#include "sample.hpp"

namespace wetout::report {
namespace {

using Json = nlohmann::ordered_json;

std::string keys(const Json& object) {
  std::string out;
  for (const auto& [key, value] : object.items()) out += (out.empty() ? "" : " ") + key;
  return out;
}

TEST(PlanJson, HasTheKeysOfItsFormatInOrder) {
  const Json plan = Json::parse(to_json(sample::plan()));
  EXPECT_EQ(keys(plan),
            "format program made job inputs air_c board plies coats totals assumptions cautions "
            "notices");
  EXPECT_EQ(keys(plan["job"]), "id revision saved");
  EXPECT_EQ(keys(plan["inputs"][0]), "role name sha256");
  EXPECT_EQ(keys(plan["board"]),
            "id name foam length_m planform_area_m2 bottom_area_m2 deck_area_m2 area_error_m2 "
            "perimeter_m volume_l core_weight_g");
  EXPECT_EQ(keys(plan["plies"][0]),
            "id coat cloth face area_m2 lap_m lap_area_m2 cloth_area_m2 from_tail_m to_m width_m "
            "fibre_g resin_g thickness_mm fibre_fraction cut_length_m cut_width_m");
  const Json& coat = plan["coats"][1];
  EXPECT_EQ(
      keys(coat),
      "id name kind face resin laps area_m2 fibre_g resin_kept_g uptake_g trimmed_g "
      "sanded_g losses_g margin_g rounding_g mix_g spread_min fill_peak_c ratio additives batches");
  EXPECT_EQ(keys(coat["ratio"]), "by a b tolerance_pct");
  EXPECT_EQ(keys(coat["additives"][0]), "material share_pct");
  const Json& batch = coat["batches"][0];
  EXPECT_EQ(keys(batch),
            "n cup mix_g part_a_g part_b_g part_a_ml part_b_ml additives pours air_c resin_c "
            "gel_min use_within_min spread_within_min peak_c runs_away off_ratio_pct");
  EXPECT_EQ(keys(batch["additives"][0]), "material g");
  EXPECT_EQ(keys(batch["pours"][0]), "what add_g reads_g add_ml reads_ml");
  EXPECT_EQ(keys(plan["totals"]),
            "mix_g fibre_g resin_kept_g losses_g margin_g trimmed_g sanded_g finished_weight_g "
            "cost by_resin materials");
  EXPECT_EQ(keys(plan["totals"]["by_resin"][0]),
            "resin part_a_g part_b_g part_a_ml part_b_ml mix_g");
  EXPECT_EQ(keys(plan["totals"]["materials"][0]), "material amount unit cost");
  EXPECT_EQ(keys(plan["totals"]["cost"]), "amount currency");
  EXPECT_EQ(keys(plan["assumptions"][0]), "name value unit standing source used_by");
  EXPECT_EQ(keys(plan["cautions"][0]), "step text");
  EXPECT_EQ(keys(plan["notices"][0]), "code text subject value limit unit");
}

TEST(PlanJson, IsOneLine) {
  const std::string json = to_json(sample::plan());
  EXPECT_EQ(json.find('\n'), json.size() - 1);
}

TEST(PlanJson, CarriesUnitsAndWords) {
  const Json plan = Json::parse(to_json(sample::plan()));
  EXPECT_EQ(plan["format"], "wetout.plan/1");
  EXPECT_EQ(plan["air_c"], 22);
  EXPECT_EQ(plan["board"]["length_m"], 1.9304);
  EXPECT_EQ(plan["board"]["foam"], "eps");
  EXPECT_EQ(plan["coats"][0]["laps"], "cut");
  EXPECT_EQ(plan["coats"][2]["laps"], nullptr);
  EXPECT_EQ(plan["coats"][1]["additives"][0]["share_pct"], 2);
  EXPECT_EQ(plan["coats"][0]["ratio"]["by"], "volume");
  EXPECT_EQ(plan["coats"][1]["batches"][0]["use_within_min"], 17.4);
  EXPECT_EQ(plan["plies"][0]["thickness_mm"], 0.166);
  EXPECT_EQ(plan["totals"]["cost"]["amount"], "104.82");
  EXPECT_EQ(plan["coats"][0]["batches"][0]["peak_c"], nullptr);
}

TEST(PlanJson, HasNoRevisionWhenNotSaved) {
  const Json plan = Json::parse(to_json(sample::bare_plan()));
  EXPECT_EQ(plan["job"]["revision"], nullptr);
  EXPECT_EQ(plan["job"]["saved"], false);
}

// The shortest decimal of a whole number of milligrams, by another route than the writer's.
std::string shortest_grams(std::int64_t mg) {
  std::ostringstream out;
  out.imbue(std::locale::classic());
  out.precision(15);
  out << static_cast<long double>(mg) / 1000.0L;
  return out.str();
}

RC_GTEST_PROP(PlanJson, PrintsMilligramsAsShortestDecimals, ()) {
  PlanDocument document = sample::plan();
  const auto mg = *rc::gen::inRange<std::int64_t>(-999'999'999, 999'999'999);
  document.plan.board.core_weight = units::Milligrams(mg);
  const std::string json = to_json(document);
  const std::string key = "\"core_weight_g\":";
  const std::size_t at = json.find(key) + key.size();
  RC_ASSERT(json.substr(at, json.find('}', at) - at) == shortest_grams(mg));
}

TEST(PlanJson, RefusesNumbersThatAreNotFinite) {
  PlanDocument document = sample::plan();
  document.plan.board.length = units::metres(std::numeric_limits<double>::quiet_NaN());
  EXPECT_THROW(to_json(document), std::logic_error);
  document = sample::plan();
  document.plan.notices[0].value = std::numeric_limits<double>::infinity();
  EXPECT_THROW(to_json(document), std::logic_error);
}

}  // namespace
}  // namespace wetout::report
