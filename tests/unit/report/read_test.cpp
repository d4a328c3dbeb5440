// Reading back what was written, and refusing what was not.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <nlohmann/json.hpp>
#include <set>

#include "plan_generator.hpp"
#include "sample.hpp"

namespace wetout::report {
namespace {

using Json = nlohmann::ordered_json;

RC_GTEST_PROP(ReadPlan, GivesTheSameBytesBack, ()) {
  const std::string json = to_json(any::plan());
  const auto document = read_plan(json);
  RC_ASSERT(document.has_value());
  RC_ASSERT(to_json(*document) == json);
}

TEST(ReadPlan, KeepsEveryValueOfTheSample) {
  const PlanDocument kept = as_kept(sample::plan());
  const PlanDocument plan = sample::plan();
  EXPECT_EQ(kept.program, plan.program);
  EXPECT_EQ(kept.made, plan.made);
  EXPECT_EQ(kept.job.revision, 3);
  EXPECT_TRUE(kept.job.saved);
  EXPECT_EQ(kept.inputs.size(), 2U);
  EXPECT_EQ(kept.inputs[1].role, "shop");
  ASSERT_EQ(kept.plan.coats.size(), plan.plan.coats.size());
  for (std::size_t i = 0; i < plan.plan.coats.size(); ++i) {
    EXPECT_EQ(kept.plan.coats[i].mix, plan.plan.coats[i].mix);
    EXPECT_EQ(kept.plan.coats[i].kind, plan.plan.coats[i].kind);
    EXPECT_EQ(kept.plan.coats[i].batches.size(), plan.plan.coats[i].batches.size());
  }
  EXPECT_EQ(kept.plan.totals.cost, plan.plan.totals.cost);
  EXPECT_EQ(kept.plan.totals.finished_weight, plan.plan.totals.finished_weight);
  EXPECT_EQ(kept.plan.cautions, plan.plan.cautions);
  EXPECT_EQ(kept.plan.notices, plan.plan.notices);
  EXPECT_EQ(kept.plan.plies[1].to, units::metres(1.4224));
  EXPECT_EQ(kept.plan.plies[0].to, std::nullopt);
}

// Calls use(path of the key, parent, key) once for each key; in lists for each element.
template <class Use>
void each_key(Json& node, const std::string& path, const Use& use) {
  if (node.is_object()) {
    std::vector<std::string> names;
    for (const auto& [key, value] : node.items()) names.push_back(key);
    for (const std::string& name : names) {
      const std::string here = path.empty() ? name : path + "." + name;
      use(here, node, name);
      each_key(node[name], here, use);
    }
  } else if (node.is_array()) {
    for (std::size_t i = 0; i < node.size(); ++i) {
      each_key(node[i], path + "[" + std::to_string(i) + "]", use);
    }
  }
}

// Money is read as one value: its parts are named by its own key.
std::string reported(const std::string& path) {
  for (const char* part : {".cost.amount", ".cost.currency"}) {
    if (path.ends_with(part)) return path.substr(0, path.rfind('.'));
  }
  return path;
}

// Keys that came later within the format's number: older documents do without.
bool came_later(const std::string& key) {
  return key == "spread_within_min" || key == "fill_peak_c";
}

TEST(ReadPlan, OlderDocumentsDoWithoutLaterKeys) {
  Json plan = Json::parse(to_json(sample::plan()));
  for (Json& coat : plan["coats"]) {
    coat.erase("fill_peak_c");
    for (Json& batch : coat["batches"]) batch.erase("spread_within_min");
  }
  const auto document = read_plan(plan.dump());
  ASSERT_TRUE(document);
  EXPECT_FALSE(document->plan.coats[0].fill_peak);
  EXPECT_FALSE(document->plan.coats[0].batches[0].spread_within);
}

TEST(ReadPlan, NamesEveryMissingKeyByItsPath) {
  Json plan = Json::parse(to_json(sample::plan()));
  std::size_t tried = 0;
  each_key(plan, "", [&](const std::string& path, Json& parent, const std::string& key) {
    if (came_later(key)) return;
    const Json whole = parent;
    parent.erase(key);
    const auto document = read_plan(plan.dump());
    parent = whole;
    ++tried;
    ASSERT_FALSE(document.has_value()) << path;
    ASSERT_EQ(document.error().size(), 1U) << path;
    EXPECT_EQ(document.error()[0].code, "document.key") << path;
    EXPECT_EQ(document.error()[0].key, reported(path));
  });
  EXPECT_GT(tried, 300U);
}

TEST(ReadPlan, NamesEveryValueOfAWrongTypeByItsPath) {
  Json plan = Json::parse(to_json(sample::plan()));
  each_key(plan, "", [&](const std::string& path, Json& parent, const std::string& key) {
    const Json right = parent[key];
    parent[key] = right.is_object() ? Json::array() : Json::object();
    const auto document = read_plan(plan.dump());
    parent[key] = right;
    ASSERT_FALSE(document.has_value()) << path;
    const base::Problem& problem = document.error()[0];
    EXPECT_EQ(problem.code, path == "format" ? "document.format" : "document.key") << path;
    EXPECT_EQ(problem.key, reported(path));
    EXPECT_FALSE(problem.expected.empty()) << path;
  });
}

TEST(ReadPlan, ReportsAllProblemsAtOnce) {
  Json plan = Json::parse(to_json(sample::plan()));
  plan["air_c"] = "warm";
  plan["coats"][2]["kind"] = "varnish";
  plan["coats"][1]["batches"][0].erase("mix_g");
  const auto document = read_plan(plan.dump());
  ASSERT_FALSE(document.has_value());
  ASSERT_EQ(document.error().size(), 3U);
  EXPECT_EQ(document.error()[0].key, "air_c");
  EXPECT_EQ(document.error()[0].found, "\"warm\"");
  EXPECT_EQ(document.error()[1].key, "coats[1].batches[0].mix_g");
  EXPECT_EQ(document.error()[2].key, "coats[2].kind");
  EXPECT_EQ(document.error()[2].expected, "seal | laminate | install | hotcoat | gloss");
}

TEST(ReadPlan, IgnoresKeysOfLaterVersions) {
  const std::string json = to_json(sample::plan());
  Json plan = Json::parse(json);
  plan["weather"] = {{"source", "a later version"}};
  plan["coats"][0]["batches"][0]["colour"] = "clear";
  const auto document = read_plan(plan.dump());
  ASSERT_TRUE(document.has_value());
  EXPECT_EQ(to_json(*document), json);
}

TEST(ReadPlan, RefusesAnotherFormat) {
  Json plan = Json::parse(to_json(sample::plan()));
  for (const Json& format : {Json("wetout.plan/2"), Json("wetout.mix/1"), Json(1)}) {
    plan["format"] = format;
    const auto document = read_plan(plan.dump());
    ASSERT_FALSE(document.has_value());
    ASSERT_EQ(document.error().size(), 1U);
    EXPECT_EQ(document.error()[0].code, "document.format");
  }
}

TEST(ReadPlan, RefusesTextThatIsNoJsonObject) {
  const std::string json = to_json(sample::plan());
  const std::string cut = json.substr(0, json.size() / 2);
  const std::string deep(100'000, '[');
  for (const std::string& text : {std::string(), std::string("[1]"), cut, deep, json + json,
                                  std::string("{\"format\": 1e999}"), std::string("\xff\xfe")}) {
    const auto document = read_plan(text);
    ASSERT_FALSE(document.has_value());
    EXPECT_EQ(document.error()[0].code, "document.syntax");
  }
}

TEST(ReadPlan, RefusesNumbersBeyondSense) {
  Json plan = Json::parse(to_json(sample::plan()));
  plan["coats"][0]["mix_g"] = 1e300;
  plan["coats"][0]["batches"][0]["n"] = 1e10;
  plan["job"]["revision"] = -1;
  const auto document = read_plan(plan.dump());
  ASSERT_FALSE(document.has_value());
  EXPECT_EQ(document.error().size(), 3U);
}

}  // namespace
}  // namespace wetout::report
