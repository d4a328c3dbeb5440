#include "wetout/report/template_pdf.hpp"

#include <gtest/gtest.h>

namespace wetout::report {
namespace {

using units::metres;
using units::millimetres;

TemplateDrawing board() {
  TemplateDrawing drawing;
  drawing.title = "Pico, outline";
  drawing.about = "5 ft 4 in long";
  drawing.length = metres(1.6);
  drawing.outline = {{metres(0), metres(0)},
                     {metres(0.8), metres(0.27)},
                     {metres(1.6), metres(0)},
                     {metres(0.8), metres(-0.27)}};
  drawing.stations = {{metres(0.8), metres(0.27), "80 cm: 27 cm"}};
  return drawing;
}

TemplatePdf pdf(const TemplateDrawing& drawing, Paper paper) {
  return template_pdf(drawing, paper, "2026-06-13T16:15:00Z");
}

std::size_t count(const std::string& text, std::string_view part) {
  std::size_t n = 0;
  for (std::size_t at = 0; (at = text.find(part, at)) != std::string::npos; at += part.size()) ++n;
  return n;
}

TEST(TemplatePdf, HasAPageForEachSheetAndOneBefore) {
  const TemplatePdf half = pdf(board(), Paper::a4);
  EXPECT_TRUE(half.bytes.starts_with("%PDF-1."));
  EXPECT_EQ(count(half.bytes, "/Type /Page %"), static_cast<std::size_t>(half.sheets) + 1U);
  EXPECT_NE(half.bytes.find(template_pdf_mark), std::string::npos);
  TemplateDrawing both = board();
  both.whole = true;
  EXPECT_GT(pdf(both, Paper::a4).sheets, half.sheets);
}

TEST(TemplatePdf, OfARollIsOnePage) {
  const TemplatePdf roll = pdf(board(), Paper::roll);
  EXPECT_EQ(roll.sheets, 1);
  EXPECT_EQ(count(roll.bytes, "/Type /Page %"), 1U);
}

TEST(TemplatePdf, IsTheSameForTheSame) {
  EXPECT_EQ(pdf(board(), Paper::letter).bytes, pdf(board(), Paper::letter).bytes);
}

// Bytes that are no text must not stop the drawing.
TEST(TemplatePdf, TakesAnyName) {
  TemplateDrawing drawing = board();
  drawing.title = "\xff\xfe <b> (\\) \x01 \xd7\xa9\xd7\x9c\xd7\x95\xd7\x9d";
  drawing.bands = {{millimetres(50), std::string(500, 'x')}};
  drawing.patches = {{metres(0.2), metres(0.9), metres(0.3), "\xc3\x28"}};
  EXPECT_GT(pdf(drawing, Paper::a4).bytes.size(), 1000U);
}

}  // namespace
}  // namespace wetout::report
