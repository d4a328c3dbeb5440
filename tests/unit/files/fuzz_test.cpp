// Whatever the bytes: a value, or problems with a file and a line; never a crash, never for long.
// The longer runs are asked for with WETOUT_LONG_TESTS=1.
#include <gtest/gtest.h>
#include <rapidcheck.h>
// after gtest
#include <rapidcheck/gtest.h>

#include <cstdlib>
#include <random>

#include "sample.hpp"

namespace wetout::files {
namespace {

void check(const base::Problems& problems, const std::string& text) {
  RC_ASSERT(!problems.empty());
  for (const base::Problem& p : problems) {
    RC_ASSERT(!p.code.empty());
    RC_ASSERT(!p.message.empty());
    RC_ASSERT(p.file == "fuzz.toml");
    const bool whole_file = p.code == "file.empty" || p.code == "file.too_big" ||
                            p.code == "file.other_kind" || p.code == "file.more_problems";
    if (whole_file) continue;
    RC_ASSERT(p.line >= 1);
    RC_ASSERT(p.column >= 1);
    RC_ASSERT(p.line <= std::count(text.begin(), text.end(), '\n') + 1);
    RC_ASSERT(p.source_line.size() < 2000U);
  }
}

void read(const std::string& text) {
  const auto job = parse_job(text, "fuzz.toml");
  if (!job) check(job.error(), text);
  const auto shop = parse_shop(text, "fuzz.toml");
  if (!shop) check(shop.error(), text);
}

int scale() { return std::getenv("WETOUT_LONG_TESTS") != nullptr ? 20 : 1; }

RC_GTEST_PROP(Fuzz, RandomBytesAreAnswered, (const std::string& text)) { read(text); }

RC_GTEST_PROP(Fuzz, RandomTomlishTextIsAnswered, ()) {
  static const std::vector<std::string> pieces = {"[board]", "[[coat]]", "[[coat.ply]]",
                                                  "\n",      " = ",      "\"6 ft 4 in\"",
                                                  "'",       "\"",       "{",
                                                  "}",       "[",        "]",
                                                  ",",       "#",        "2 in",
                                                  "18:00",   "name",     "length",
                                                  "nan",     "inf",      "1e999",
                                                  "\u201c",  "\u201d",   "a.b",
                                                  "\\",      "0x",       "-",
                                                  "true",    "[shop]",   "[[resin]]",
                                                  "\"\"\"",  "'''",      "\r\n",
                                                  "\t",      "\u00fc",   "."};
  const auto picks = *rc::gen::container<std::vector<std::size_t>>(
      rc::gen::inRange<std::size_t>(0, pieces.size()));
  std::string text;
  for (const std::size_t pick : picks) text += pieces[pick];
  read(text);
}

/// One of the samples with a few pieces cut out, doubled, moved or overwritten.
std::string mutated(std::mt19937_64& random) {
  std::string text = random() % 2 == 0 ? input("job.toml") : input("shop.toml");
  const auto below = [&](std::size_t n) { return static_cast<std::size_t>(random() % n); };
  const std::size_t changes = 1 + below(6);
  for (std::size_t n = 0; n < changes && !text.empty(); ++n) {
    const std::size_t at = below(text.size());
    const std::size_t length = below(40);
    const std::string piece = text.substr(at, length);
    switch (below(6)) {
      case 0:
        text.erase(at, length);
        break;
      case 1:
        text.insert(below(text.size()), piece);
        break;
      case 2:
        text[at] = static_cast<char>(random());
        break;
      case 3:
        text[at] = "\"'[]{}=#,.\\\n 0-"[below(15)];
        break;
      case 4:
        text.resize(at);
        break;
      default:
        text.insert(at, 1 + below(300), "[{\"'\n#-9"[below(8)]);
        break;
    }
  }
  return text;
}

RC_GTEST_PROP(Fuzz, MutatedSamplesAreAnswered, (std::uint64_t seed)) {
  std::mt19937_64 random(seed);
  for (int n = 0; n < 10 * scale(); ++n) read(mutated(random));
}

TEST(Fuzz, DeepNestingIsAnswered) {
  for (const int depth : {10, 255, 256, 257, 5000, 200000}) {
    for (const char* open : {"[", "{a="}) {
      std::string text = "x = ";
      for (int i = 0; i < depth; ++i) text += open;
      EXPECT_FALSE(job_problems(text).empty()) << depth;
    }
    std::string dotted = "a";
    for (int i = 0; i < depth; ++i) dotted += ".a";
    EXPECT_FALSE(job_problems(dotted + " = 1\n").empty()) << depth;
    EXPECT_FALSE(job_problems("[" + dotted + "]\n").empty()) << depth;
  }
}

TEST(Fuzz, LongKeysAreCutOffBeforeTheyAreParsed) {
  const auto key = [](int parts) {
    std::string out = "a";
    for (int i = 1; i < parts; ++i) out += i % 2 == 0 ? ".a" : " . \"b\"";
    return out;
  };
  for (const std::string& text : {
           key(17) + " = 1\n",
           "[" + key(17) + "]\n",
           "x = { " + key(17) + " = 1 }\n",
           "x = { y = \"\"\"a\"\"\"\"\", " + key(17) + " = 1 }\n",
           "x = '''\n'\n'''\n" + key(17) + " = 1\n",
           "x = \"\\\"\" # '\n" + key(17) + " = 1\n",
       }) {
    const base::Problem p = only(job_problems(text));
    EXPECT_EQ(p.message, "this key has too many parts") << text;
    EXPECT_GT(p.column, 1);
  }
  EXPECT_NE(job_problems(key(16) + " = 1\n").at(0).message, "this key has too many parts");
  // Dots in texts, comments and numbers are no parts.
  const std::string dots(100, '.');
  EXPECT_TRUE(parse_job("# " + dots + "\n" + with(small_board, "Plank", "Plank " + dots) +
                            with(small_coat, "bottom hotcoat", "hot" + dots),
                        "job.toml"));
}

// What could make a reader quadratic. Each is answered in a fraction of a second, or not at all.
TEST(Fuzz, BigFilesOfOneKindAreAnswered) {
  const auto repeated = [](const std::string& head, const std::string& piece, std::size_t bytes) {
    std::string text = head;
    while (text.size() < bytes) text += piece;
    return text;
  };
  const std::size_t bytes = (std::size_t{1} << 17) * (scale() > 1 ? 24 : 1);
  const std::string numbered = [&] {
    std::string text;
    for (int i = 0; text.size() < bytes; ++i) text += "k" + std::to_string(i) + " = 1\n";
    return text;
  }();
  for (const std::string& text : {
           numbered,
           "[board]\n" + numbered,
           repeated("x = [", "1,", bytes) + "]\n",
           repeated("x = [", "{a=1},", bytes) + "]\n",
           repeated(small_board, "[[coat]]\n", bytes),
           repeated(small_board + small_coat + "after = [", "\"x\",", bytes) + "]\n",
           repeated(small_board + small_coat, "[[coat.ply]]\n", bytes),
           repeated("[shop]\n", "[[resin]]\n", bytes),
           repeated("[shop]\n", "[[material]]\nid=\"a\"\n", bytes),
           repeated("[shop]\n[hours]\nmon=[", "\"08:00-09:00\",", bytes) + "]\n",
           repeated("[shop]\n[[resin]]\ngel=[", "{air=\"25 C\",time=\"4 h\"},", bytes) + "]\n",
           repeated("[board]\n", "[[board.station]]\n", bytes),
           repeated("", "#", bytes) + "\nlap = 2 in\n",
           repeated("lap = 2 in ", "\"'[{", bytes),
       }) {
    EXPECT_FALSE(job_problems(text).empty());
    EXPECT_FALSE(shop_problems(text).empty());
  }
}

}  // namespace
}  // namespace wetout::files
