#include "html.hpp"

#include <gtest/gtest.h>

#include <stdexcept>

#include "layout.hpp"

namespace wetout::report {
namespace {

TEST(Html, TextsStayTexts) {
  EXPECT_EQ(Html().put("p", "<script>alert('a' & \"b\")</script>").take(),
            "<p>&lt;script&gt;alert(&#39;a&#39; &amp; &quot;b&quot;)&lt;/script&gt;</p>\n");
  EXPECT_EQ(Html().put("p", "x", {{"title", "\"><b>&'"}}).take(),
            "<p title=\"&quot;&gt;&lt;b&gt;&amp;&#39;\">x</p>\n");
  // Letters of any script and pictures as they are; what cannot be shown is not.
  EXPECT_EQ(html_text("דג 🏄 é"), "דג 🏄 é");
  EXPECT_EQ(html_text(std::string_view("a\0b\x1b\xff\n", 6)), "a b ? ");
  // Marks that turn the direction of what follows.
  EXPECT_EQ(html_text("a\u202eb"), "a b");
  EXPECT_EQ(html_text(layout::whole("212 g")), "212\u00a0g");
}

TEST(Html, MarkupOfOurOwnStandsAsItIs) {
  EXPECT_EQ(Html().raw(Markup::ours("<svg></svg>")).take(), "<svg></svg>");
  EXPECT_EQ(Html().code("style", Markup::ours("p > b { margin: 0 }")).take(),
            "<style>p > b { margin: 0 }</style>\n");
}

TEST(Html, ElementsNest) {
  EXPECT_EQ(Html().open("ul").put("li", "a").single("br", {{"id", "b"}}).close("ul").take(),
            "<ul><li>a</li>\n<br id=\"b\"></ul>\n");
}

TEST(Html, PutsNoSpaceBesideWords) {
  EXPECT_EQ(Html().open("p").put("b", "e4").text(", 2 m").close("p").take(),
            "<p><b>e4</b>, 2 m</p>\n");
}

TEST(Html, RefusesWhatWouldRunOrLoad) {
  EXPECT_THROW(Html().open("p", {{"onclick", "x"}}), std::logic_error);
  EXPECT_THROW(Html().open("img", {{"src", "https://example.org/x"}}), std::logic_error);
  EXPECT_THROW(Html().open("a", {{"href", "javascript:x"}}), std::logic_error);
  EXPECT_THROW(Html().open("p", {{"style", "background: url(x)"}}), std::logic_error);
  EXPECT_THROW(Html().open("p onclick=x"), std::logic_error);
  EXPECT_THROW(Html().open("p", {{"a b", "x"}}), std::logic_error);
  EXPECT_NO_THROW(Html().open("a", {{"href", "#cut"}}));
  EXPECT_THROW(Html().code("script", Markup::ours("</script>")), std::logic_error);
  EXPECT_THROW(Html().code("p", Markup::ours("x")), std::logic_error);
}

TEST(Html, RefusesTagsOutOfTurn) {
  EXPECT_THROW(Html().open("p").close("b"), std::logic_error);
  EXPECT_THROW(Html().close("p"), std::logic_error);
  EXPECT_THROW((void)Html().open("p").take(), std::logic_error);
}

}  // namespace
}  // namespace wetout::report
