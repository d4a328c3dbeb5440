// The text and the drawing of a cutting.
#include <gtest/gtest.h>

#include "sample.hpp"
#include "text_checks.hpp"

namespace wetout::report {
namespace {

using units::System;

TEST(ClothText, FitsThePageAndNamesEveryPiece) {
  for (const System system : {System::us, System::metric}) {
    const std::string text = to_text(sample::cloth(), system);
    EXPECT_EQ(unfit_line(text), "");
    for (const CutFrom& from : sample::cloth().rolls) {
      for (const CutPiece& piece : from.pieces) {
        EXPECT_NE(text.find(piece.coat + "/" + piece.ply), std::string::npos) << piece.ply;
      }
    }
    EXPECT_NE(text.find("strip 2 of 2"), std::string::npos);
    EXPECT_NE(text.find("within 1.6 %"), std::string::npos) << "6.2 m over 6.1 m";
    EXPECT_NE(text.find("a remnant of"), std::string::npos);
    EXPECT_NE(text.find("2 boards"), std::string::npos);
  }
  EXPECT_NE(to_text(sample::cloth(), System::metric).find("290.0 cm     41.0 cm        0 mm"),
            std::string::npos)
      << to_text(sample::cloth(), System::metric);
}

TEST(ClothDrawing, IsToScaleAndEscapesNames) {
  const std::string svg = cloth_drawing(sample::cloth(), System::metric);
  EXPECT_TRUE(svg.starts_with(cloth_drawing_begins));
  EXPECT_NE(svg.find("Heron &amp; Sons &quot;fish&quot; &lt;6-4&gt;"), std::string::npos);
  EXPECT_EQ(svg.find("<6-4>"), std::string::npos);
  // 6.2 m on 244 mm of paper: 1:30, so that 0.76 m of roll is 25.3 mm high.
  EXPECT_NE(svg.find("scale 1:30"), std::string::npos);
  EXPECT_NE(svg.find("width=\"206.67\" height=\"25.33\""), std::string::npos) << svg;
}

TEST(ClothText, OfABoardWithoutClothSaysSo) {
  ClothDocument document = sample::cloth();
  document.rolls.clear();
  document.jobs.resize(1);
  EXPECT_NE(to_text(document, System::us).find("This board has no cloth."), std::string::npos);
}

}  // namespace
}  // namespace wetout::report
