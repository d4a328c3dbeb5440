// What a step waits for: films below it, laps of the other face, dust.
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "board_work.hpp"
#include "random_coats.hpp"

namespace wetout::schedule {
namespace {

using board::Face;
using laminate::CoatKind;
using laminate::Laps;
using sample::find;
using sample::find_group;
using sample::Random;
using sample::waits;

std::size_t u(int i) { return static_cast<std::size_t>(i); }

std::vector<laminate::CoatSpec> two_lams(double bottom_lap, double deck_lap,
                                         std::string deck_resin = "kelp-slow") {
  std::vector coats = {sample::lam("bottom-lam", Face::bottom, Laps::free, bottom_lap),
                       sample::lam("deck-lam", Face::deck, Laps::free, deck_lap)};
  coats[1].resin = std::move(deck_resin);
  return coats;
}

/// The window of `film` for `wet`: over before recoat_until, counted as slack.
bool has_window(const BoardSteps& steps, const char* film, const char* wet, When when) {
  const auto all = sample::links(steps, film, wet);
  return std::any_of(all.begin(), all.end(), [&](const Link& link) {
    return link.moment == Moment::recoat_until && link.to_end && link.tight && link.max &&
           *link.max == units::Duration{} && link.when == when;
  });
}

TEST(Laps, AreARecoatOfTheOtherFacesFilm) {
  // Either goes round the rail: the films meet, as a band.
  for (const auto& [bottom, deck] : {std::pair{2.0, 2.0}, {2.0, 0.0}, {0.0, 2.0}}) {
    const BoardSteps steps = sample::steps(sample::rough(two_lams(bottom, deck)));
    const int g = find_group(steps, "deck-lam/band");
    ASSERT_GE(g, 0) << bottom << " " << deck;
    EXPECT_EQ(find_group(steps, "deck-lam/ground"), -1);
    EXPECT_TRUE(waits(steps, "deck-lam/wet", "bottom-lam/wet", Moment::recoat_from));
    EXPECT_TRUE(has_window(steps, "bottom-lam/wet", "deck-lam/wet", {g, 0}));
    const int scuff = find(steps, "deck-lam/scuff-laps");
    ASSERT_GE(scuff, 0);
    EXPECT_EQ(steps.steps[u(scuff)].when, (When{g, 1}));
    EXPECT_TRUE(waits(steps, "deck-lam/scuff-laps", "bottom-lam/wet", Moment::sandable));
    EXPECT_EQ(find(steps, "deck-lam/wash"), -1);  // not the whole face
  }
  const BoardSteps apart = sample::steps(sample::rough(two_lams(0.0, 0.0)));
  EXPECT_TRUE(apart.groups.empty());
  EXPECT_FALSE(waits(apart, "deck-lam/wet", "bottom-lam/wet", Moment::recoat_from));
}

TEST(Laps, OfTheSecondHotcoatAreThoseOfTheFirst) {
  // The first of both goes past the apex, onto the other face's lam; the second lands on it.
  const BoardSteps steps = sample::steps(sample::rough(sample::usual_coats()));
  EXPECT_TRUE(waits(steps, "bottom-hot/wet", "bottom-lam/wet", Moment::recoat_from));
  EXPECT_TRUE(waits(steps, "bottom-hot/wet", "deck-lam/wet", Moment::recoat_from));
  EXPECT_TRUE(waits(steps, "bottom-hot/scuff", "bottom-lam/wet", Moment::sandable));
  EXPECT_TRUE(waits(steps, "bottom-hot/scuff-laps", "deck-lam/wet", Moment::sandable));
  EXPECT_TRUE(waits(steps, "deck-hot/wet", "deck-lam/wet", Moment::recoat_from));
  EXPECT_TRUE(waits(steps, "deck-hot/scuff-laps", "bottom-hot/wet", Moment::sandable));
  EXPECT_TRUE(sample::links(steps, "bottom-lam/wet", "deck-hot/wet").empty());
}

// Laps of the lam lie on the other face, and those of a hotcoat beyond them: two films, each with
// its own window.
TEST(Laps, OfTwoFilmsAreTwoChoices) {
  const BoardSteps steps =
      sample::steps(sample::rough({sample::lam("bottom-lam", Face::bottom, Laps::free),
                                   sample::lam("deck-lam", Face::deck, Laps::free),
                                   sample::coat("deck-hot", Face::deck, CoatKind::hotcoat),
                                   sample::coat("bottom-hot", Face::bottom, CoatKind::hotcoat)}));
  EXPECT_TRUE(waits(steps, "bottom-hot/wet", "deck-lam/wet", Moment::recoat_from));
  EXPECT_TRUE(waits(steps, "bottom-hot/wet", "deck-hot/wet", Moment::recoat_from));
  int windows = 0, scuffs = 0;
  for (const StepGroup& group : steps.groups) windows += group.id.rfind("bottom-hot/band", 0) == 0;
  for (const Step& step : steps.steps) {
    scuffs += step.name.coat == "bottom-hot" && step.name.word == StepWord::scuff &&
              step.name.detail.rfind("laps", 0) == 0;
  }
  EXPECT_EQ(windows, 2);
  EXPECT_EQ(scuffs, 2);
}

TEST(Recoat, IsAChoiceOfTheWindowOrAWashAndAScuff) {
  const BoardSteps steps =
      sample::steps(sample::planned({sample::lam("lam", Face::bottom, Laps::free, 0.0),
                                     sample::coat("hot", Face::bottom, CoatKind::hotcoat)}));
  const int g = find_group(steps, "hot/ground");
  ASSERT_GE(g, 0);
  EXPECT_EQ(steps.groups[u(g)].options, (std::vector<std::string>{"window", "scuffed"}));
  EXPECT_TRUE(has_window(steps, "lam/wet", "hot/wet", {g, 0}));
  EXPECT_TRUE(waits(steps, "hot/wet", "lam/wet", Moment::recoat_from));
  EXPECT_TRUE(waits(steps, "hot/wash", "lam/wet", Moment::handle));
  EXPECT_TRUE(waits(steps, "hot/scuff", "lam/wet", Moment::sandable));
  EXPECT_EQ(steps.steps[u(find(steps, "hot/wash"))].when, (When{g, 1}));
  EXPECT_EQ(steps.steps[u(find(steps, "hot/scuff"))].when, (When{g, 1}));
  EXPECT_FALSE(steps.steps[u(find(steps, "hot/wash"))].dusty);
  EXPECT_TRUE(steps.steps[u(find(steps, "hot/scuff"))].dusty);
}

TEST(Recoat, IsScuffedWithoutAChoiceWhereNothingGoesWetOnWet) {
  struct Case {
    const char *below, *above;
  };
  const Case cases[] = {{"kelp-slow", "reed"},   // families
                        {"reed", "kelp-slow"},   //
                        {"poly", "kelp-quick"},  // chemistries
                        {"poly-waxed", "poly"},  // wax
                        {"poly-waxed", "poly-waxed"}};
  for (const Case& one : cases) {
    SCOPED_TRACE(std::string(one.below) + ", " + one.above);
    auto coats = two_lams(0.0, 0.0);
    coats[1].face = Face::bottom;
    coats[0].resin = one.below;
    coats[1].resin = one.above;
    const BoardSteps steps = sample::steps(sample::rough(coats));
    EXPECT_EQ(find_group(steps, "deck-lam/ground"), -1);
    for (const char* name : {"deck-lam/wash", "deck-lam/scuff"}) {
      ASSERT_GE(find(steps, name), 0);
      EXPECT_EQ(steps.steps[u(find(steps, name))].when, When{});
    }
    EXPECT_TRUE(waits(steps, "deck-lam/scuff", "bottom-lam/wet", Moment::sandable));
  }
  // A laminating polyester under another: inside its window.
  auto coats = two_lams(0.0, 0.0);
  coats[1].face = Face::bottom;
  coats[0].resin = coats[1].resin = "poly";
  EXPECT_GE(find_group(sample::steps(sample::rough(coats)), "deck-lam/ground"), 0);
}

// Quick and slow of one family go wet on wet; a resin without a family only on itself.
TEST(Recoat, KeepsToFamilies) {
  EXPECT_GE(find_group(sample::steps(sample::rough(two_lams(2, 2, "kelp-quick"))), "deck-lam/band"),
            0);
  EXPECT_EQ(find_group(sample::steps(sample::rough(two_lams(2, 2, "reed"))), "deck-lam/band"), -1);
  auto both = two_lams(2, 2, "reed");
  both[0].resin = "reed";
  EXPECT_GE(find_group(sample::steps(sample::rough(both)), "deck-lam/band"), 0);
}

TEST(Recoat, WantsAFilmThatWasNotInTheNoticeBand) {
  const auto good_film = [](const BoardSteps& steps, const char* to) {
    std::vector<Link> found;
    for (const Link& link : steps.links) {
      if (link.good_film && to_string(steps.steps[u(link.to)].name) == to) found.push_back(link);
    }
    return found;
  };
  std::vector coats = {sample::lam("lam", Face::bottom, Laps::free, 0.0),
                       sample::coat("hot", Face::bottom, CoatKind::hotcoat)};
  const BoardSteps printed = sample::steps(sample::rough(coats));
  EXPECT_TRUE(good_film(printed, "hot/wet").empty());
  EXPECT_TRUE(good_film(printed, "hot/sand").empty());
  EXPECT_EQ(find(printed, "hot/wash-sand"), -1);
  for (auto& coat : coats) coat.resin = "reed";
  const BoardSteps band = sample::steps(sample::rough(coats));
  const auto recoat = good_film(band, "hot/wet");
  ASSERT_EQ(recoat.size(), 1U);
  EXPECT_EQ(recoat.front().when, (When{find_group(band, "hot/ground"), 0}));
  const auto sand = good_film(band, "hot/sand");
  ASSERT_EQ(sand.size(), 1U);
  EXPECT_EQ(sand.front().when, (When{find_group(band, "hot/notice"), 0}));
  ASSERT_GE(find(band, "hot/wash-sand"), 0);
  EXPECT_EQ(band.steps[u(find(band, "hot/wash-sand"))].when,
            (When{find_group(band, "hot/notice"), 1}));
}

TEST(CutLaps, AreTrimmedWhileRubberOrGroundLater) {
  const BoardSteps steps = sample::steps(sample::rough(sample::usual_coats()));
  const int g = find_group(steps, "bottom-lam/laps");
  ASSERT_GE(g, 0);
  EXPECT_EQ(steps.groups[u(g)].options, (std::vector<std::string>{"cut", "ground"}));
  EXPECT_EQ(steps.steps[u(find(steps, "bottom-lam/trim"))].when, (When{g, 0}));
  EXPECT_EQ(steps.steps[u(find(steps, "bottom-lam/feather-edge"))].when, (When{g, 1}));
  EXPECT_EQ(steps.steps[u(find(steps, "bottom-lam/feather"))].when, When{});
  EXPECT_TRUE(waits(steps, "bottom-lam/trim", "bottom-lam/wet", Moment::gel));
  const auto trim = sample::links(steps, "bottom-lam/wet", "bottom-lam/trim");
  EXPECT_TRUE(std::any_of(trim.begin(), trim.end(), [&](const Link& link) {
    return link.moment == Moment::trim_until && link.to_end && link.tight && link.max &&
           *link.max == units::Duration{};
  }));
  for (const char* name : {"bottom-lam/feather-edge", "bottom-lam/feather"}) {
    EXPECT_TRUE(waits(steps, name, "bottom-lam/wet", Moment::sandable)) << name;
    EXPECT_GT(find(steps, name), find(steps, "deck-lam/flip")) << name;
    EXPECT_LT(find(steps, name), find(steps, "deck-lam/wet")) << name;
  }
  for (const char* name : {"deck-lam/trim", "deck-lam/feather", "deck-lam/feather-edge"}) {
    EXPECT_EQ(find(steps, name), -1) << name;  // its laps are free
  }
  // Nothing goes round the rail, nothing is cut.
  auto coats = sample::usual_coats();
  coats[0].plies.front().lap = units::inches(0);
  EXPECT_EQ(find(sample::steps(sample::rough(coats)), "bottom-lam/trim"), -1);
}

TEST(Gloss, GoesOnSandedHotcoats) {
  auto coats = sample::usual_coats();
  coats.push_back(sample::coat("bottom-gloss", Face::bottom, CoatKind::gloss));
  coats.push_back(sample::coat("deck-gloss", Face::deck, CoatKind::gloss));
  const BoardSteps steps = sample::steps(sample::planned(coats));
  for (const char* hot : {"bottom-hot/sand", "deck-hot/sand"}) {
    ASSERT_GE(find(steps, hot), 0);
    EXPECT_LT(find(steps, hot), find(steps, "bottom-gloss/wet"));
    EXPECT_TRUE(steps.steps[u(find(steps, hot))].dusty);
  }
  EXPECT_TRUE(waits(steps, "bottom-hot/sand", "bottom-hot/wet", Moment::sandable));
  // What was sanded is ready: neither window nor scuff, but for the gloss of the other face.
  EXPECT_EQ(find_group(steps, "bottom-gloss/ground"), -1);
  EXPECT_EQ(find(steps, "bottom-gloss/scuff"), -1);
  EXPECT_TRUE(sample::links(steps, "bottom-hot/wet", "bottom-gloss/wet").empty());
  EXPECT_TRUE(waits(steps, "deck-gloss/scuff-laps", "bottom-gloss/wet", Moment::sandable));
  for (const char* gloss : {"bottom-gloss", "deck-gloss"}) {
    const std::string sand = std::string(gloss) + "/sand", polish = std::string(gloss) + "/polish";
    EXPECT_TRUE(waits(steps, sand, std::string(gloss) + "/wet", Moment::sandable));
    EXPECT_FALSE(steps.steps[u(find(steps, sand))].dusty);  // wet
    EXPECT_EQ(find(steps, polish), find(steps, sand) + 1);
  }
}

TEST(Inserts, AreRoutedOnceTheLamIsSandableAndOpenedUnderTheHotcoat) {
  const BoardSteps steps = sample::steps(sample::rough(sample::usual_coats()));
  EXPECT_TRUE(steps.steps[u(find(steps, "boxes/prepare"))].dusty);
  EXPECT_TRUE(waits(steps, "boxes/prepare", "bottom-lam/wet", Moment::sandable));
  EXPECT_FALSE(waits(steps, "boxes/prepare", "deck-lam/wet", Moment::sandable));
  EXPECT_EQ(find(steps, "boxes/watch-15"), -1);
  EXPECT_TRUE(waits(steps, "boxes/open", "bottom-hot/wet", Moment::sandable));
  EXPECT_LT(find(steps, "boxes/open"), find(steps, "bottom-hot/sand"));
  EXPECT_TRUE(steps.steps[u(find(steps, "boxes/open"))].dusty);
  // Without a hotcoat over them there is nothing to open.
  auto coats = sample::usual_coats();
  coats.resize(3);
  EXPECT_EQ(find(sample::steps(sample::rough(coats)), "boxes/open"), -1);
}

// A fill that is still soft is neither covered nor sanded through.
TEST(Inserts, HaveAFilmToo) {
  const BoardSteps steps = sample::steps(sample::rough(sample::usual_coats()));
  EXPECT_TRUE(waits(steps, "bottom-hot/scuff", "boxes/wet", Moment::sandable));
  EXPECT_TRUE(waits(steps, "bottom-hot/wet", "boxes/wet", Moment::recoat_from));
  EXPECT_TRUE(waits(steps, "boxes/open", "boxes/wet", Moment::sandable));
  EXPECT_TRUE(sample::links(steps, "boxes/wet", "deck-hot/scuff").empty());
}

/// The films that a dry abrasion goes into.
std::vector<std::string> abraded(const Step& step, const std::vector<laminate::CoatSpec>& coats) {
  const auto wet = [](const std::string& id) { return id + "/wet"; };
  const auto& coat = coats[u(step.coat)];
  if (step.name.word == StepWord::sand || step.name.word == StepWord::feather) {
    return {wet(coat.id)};
  }
  return {};
}

TEST(Abrasion, WaitsUntilAFilmIsSandable) {
  Random random(21);
  int seen = 0;
  for (int k = 0; k < 200; ++k) {
    const auto coats = sample::random_coats(random);
    const BoardSteps steps = sample::steps(sample::rough(coats));
    for (int i = 0; u(i) < steps.steps.size(); ++i) {
      const Step& step = steps.steps[u(i)];
      if (!step.dusty) continue;
      ++seen;
      const bool waits_for_some =
          std::any_of(steps.links.begin(), steps.links.end(), [&](const Link& link) {
            return link.to == i && link.moment == Moment::sandable && link.min &&
                   link.when == When{};
          });
      // Foam may be routed before anything lies on it.
      const auto& own = coats[u(step.coat)];
      const bool bare =
          step.name.word == StepWord::prepare &&
          std::none_of(coats.begin(), coats.end(), [&](const auto& other) {
            const int wet = steps.wets[u(static_cast<int>(&other - coats.data()))];
            return other.face == own.face && wet < i && other.kind != CoatKind::install;
          });
      EXPECT_TRUE(waits_for_some || bare) << to_string(step.name);
      for (const std::string& film : abraded(step, coats)) {
        EXPECT_TRUE(waits(steps, to_string(step.name), film, Moment::sandable));
      }
    }
  }
  EXPECT_GT(seen, 500);
}

// A board lies on the film of its other face while it is sanded.
TEST(Abrasion, OfOneFaceWaitsUntilTheOtherCanBeHandled) {
  const BoardSteps steps = sample::steps(sample::rough(sample::usual_coats()));
  EXPECT_TRUE(waits(steps, "bottom-hot/sand", "deck-hot/wet", Moment::handle));
}

}  // namespace
}  // namespace wetout::schedule
