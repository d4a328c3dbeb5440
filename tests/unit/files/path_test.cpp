#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <filesystem>

#include "sample.hpp"

namespace wetout::files {
namespace {

namespace fs = std::filesystem;

class FilePath : public ::testing::Test {
 protected:
  FilePath() {
    std::string pattern = (fs::temp_directory_path() / "wetout-files-XXXXXX").string();
    folder_ = ::mkdtemp(pattern.data());
    fs::permissions(folder_, fs::perms::all);
  }
  ~FilePath() override { fs::remove_all(folder_); }

  fs::path write(const std::string& name, const std::string& text) const {
    std::ofstream(folder_ / name, std::ios::binary) << text;
    return folder_ / name;
  }
  static base::Problem refused(const fs::path& path) {
    const auto job = read_job(path);
    return job ? base::Problem{} : only(job.error());
  }

  fs::path folder_;
};

TEST_F(FilePath, ReadsWhatIsThere) {
  const auto job = read_job(write("job.toml", input("job.toml")));
  ASSERT_TRUE(job) << list(job.error());
  EXPECT_EQ(job->source.text, input("job.toml"));
  EXPECT_EQ(job->source.name, (folder_ / "job.toml").string());
}

TEST_F(FilePath, MissingFileSuggestsANameNearIt) {
  write("sandpiper.toml", "x");
  const base::Problem p = refused(folder_ / "sandpipper.toml");
  EXPECT_EQ(p.code, "file.missing");
  EXPECT_EQ(p.file, (folder_ / "sandpipper.toml").string());
  EXPECT_TRUE(contains(p.hint, "did you mean")) << p.hint;
  EXPECT_TRUE(contains(p.hint, "sandpiper.toml")) << p.hint;
}

TEST_F(FilePath, MissingFolderIsNamed) {
  const base::Problem p = refused(folder_ / "no" / "job.toml");
  EXPECT_EQ(p.code, "file.missing");
  EXPECT_TRUE(contains(p.message, "no folder")) << p.message;
}

TEST_F(FilePath, NoNameAtAll) { EXPECT_EQ(refused("").code, "file.missing"); }

TEST_F(FilePath, DanglingLinkIsCalledALink) {
  fs::create_symlink(folder_ / "gone.toml", folder_ / "link.toml");
  const base::Problem p = refused(folder_ / "link.toml");
  EXPECT_EQ(p.code, "file.missing");
  EXPECT_TRUE(contains(p.message, "link")) << p.message;
}

TEST_F(FilePath, LinkInACircleIsUnreadable) {
  fs::create_symlink(folder_ / "b.toml", folder_ / "a.toml");
  fs::create_symlink(folder_ / "a.toml", folder_ / "b.toml");
  EXPECT_EQ(refused(folder_ / "a.toml").code, "file.unreadable");
}

TEST_F(FilePath, FolderIsRefused) { EXPECT_EQ(refused(folder_).code, "file.folder"); }

TEST_F(FilePath, PipeIsRefusedAndNotWaitedFor) {
  ASSERT_EQ(::mkfifo((folder_ / "pipe").c_str(), 0600), 0);
  EXPECT_EQ(refused(folder_ / "pipe").code, "file.special");
}

TEST_F(FilePath, EmptyFileIsRefused) {
  EXPECT_EQ(refused(write("a.toml", "")).code, "file.empty");
  EXPECT_EQ(refused(write("b.toml", " \r\n\t\n")).code, "file.empty");
  EXPECT_EQ(refused(write("c.toml", "\xef\xbb\xbf\n")).code, "file.empty");
}

TEST_F(FilePath, NulIsBinaryWithItsPlace) {
  const base::Problem p = refused(write("a.toml", std::string("[board]\nna\0me", 13)));
  EXPECT_EQ(p.code, "file.binary");
  EXPECT_EQ(p.line, 2);
  EXPECT_EQ(p.column, 3);
  EXPECT_EQ(p.found, "byte 0x00 at offset 10");
}

TEST_F(FilePath, BytesThatAreNotUtf8AreBinaryWithTheirPlace) {
  const base::Problem p = refused(write("a.toml", "# \u00fc\nname = \"\xe9t\xe9\"\n"));
  EXPECT_EQ(p.code, "file.binary");
  EXPECT_EQ(p.line, 2);
  EXPECT_EQ(p.column, 9);
  EXPECT_EQ(p.found, "byte 0xe9 at offset 13");
  EXPECT_TRUE(contains(p.hint, "UTF-8")) << p.hint;
}

// Unicode standard, table 3-7: what is not well-formed.
TEST_F(FilePath, IllFormedUtf8IsBinary) {
  const char* cases[] = {"\xc0\xaf",
                         "\xe0\x9f\xbf",
                         "\xed\xa0\x80",
                         "\xf0\x8f\xbf\xbf",
                         "\xf4\x90\x80\x80",
                         "\xf5\x80\x80\x80",
                         "\x80",
                         "\xe2\x82",
                         "\xff"};
  for (const char* bytes : cases) {
    EXPECT_EQ(refused(write("a.toml", std::string("# ") + bytes)).code, "file.binary");
  }
  // The edges of what is.
  for (const char* bytes : {"\xc2\x80", "\xe0\xa0\x80", "\xed\x9f\xbf", "\xf4\x8f\xbf\xbf"}) {
    const base::Problems problems = job_problems(std::string("x = \"") + bytes + "\"");
    EXPECT_NE(problems.at(0).code, "file.binary");
  }
}

TEST_F(FilePath, Utf16IsNamed) {
  const base::Problem p = refused(write("a.toml", std::string("\xff\xfe[\0b\0", 6)));
  EXPECT_EQ(p.code, "file.binary");
  EXPECT_TRUE(contains(p.message, "UTF-16")) << p.message;
}

// Reading a terabyte would not end within the patience of any test.
TEST_F(FilePath, BigFileIsRefusedWithoutReadingIt) {
  const fs::path path = write("big.toml", "x");
  for (const std::uintmax_t size : {std::uintmax_t{50} << 20, std::uintmax_t{1} << 40}) {
    fs::resize_file(path, size);
    const base::Problem p = refused(path);
    EXPECT_EQ(p.code, "file.too_big");
    EXPECT_TRUE(contains(p.expected, "4 MiB")) << p.expected;
  }
}

TEST_F(FilePath, FourMebibytesAreReadAndOneByteMoreIsNot) {
  const std::string text = small_board + small_coat;
  const std::size_t limit = std::size_t{4} << 20;
  const std::string filled = text + "#" + std::string(limit - text.size() - 1, '.');
  EXPECT_TRUE(read_job(write("a.toml", filled)));
  EXPECT_EQ(refused(write("a.toml", filled + ".")).code, "file.too_big");
  EXPECT_EQ(only(job_problems(filled + ".")).code, "file.too_big");
}

TEST_F(FilePath, UnreadableFileSaysSo) {
  const fs::path path = write("a.toml", "x");
  fs::permissions(path, fs::perms::none);
  const bool root = ::geteuid() == 0;
  constexpr uid_t nobody = 65534;
  // For root no file is unreadable.
  ASSERT_TRUE(!root || ::seteuid(nobody) == 0);
  const base::Problem p = refused(path);
  ASSERT_TRUE(!root || ::seteuid(0) == 0);
  EXPECT_EQ(p.code, "file.unreadable");
  EXPECT_FALSE(p.hint.empty());
}

TEST_F(FilePath, ByteOrderMarkIsNoPartOfTheFirstLine) {
  const base::Problem p = refused(write("a.toml",
                                        "\xef\xbb\xbf"
                                        "lap = 2 in\n"));
  EXPECT_EQ(p.line, 1);
  EXPECT_EQ(p.column, 7);
  EXPECT_EQ(p.source_line, "lap = 2 in");
  EXPECT_TRUE(parse_job("\xef\xbb\xbf" + input("job.toml"), "job.toml"));
}

TEST_F(FilePath, CarriageReturnsChangeNothing) {
  std::string text;
  for (const char c : job_with("length = \"6 ft 4 in\"", "length = 76")) {
    if (c == '\n') text += '\r';
    text += c;
  }
  const base::Problem p = refused(write("a.toml", text));
  EXPECT_EQ(p.line, 5);
  EXPECT_EQ(p.column, 10);
  EXPECT_FALSE(contains(p.source_line, "\r"));
}

}  // namespace
}  // namespace wetout::files
