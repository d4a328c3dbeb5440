#include "wetout/files/write_file.hpp"

#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <fstream>
#include <iterator>

namespace wetout::files {
namespace {

namespace fs = std::filesystem;

constexpr Made page{"a page", "PAGE"};

class WriteFile : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string name = (fs::temp_directory_path() / "wetout-write-XXXXXX").string();
    ASSERT_NE(::mkdtemp(name.data()), nullptr);
    folder_ = name;
  }
  void TearDown() override { fs::remove_all(folder_); }

  void put(const char* name, const std::string& text) const {
    std::ofstream(folder_ / name, std::ios::binary) << text;
  }
  [[nodiscard]] std::string get(const char* name) const {
    std::ifstream in(folder_ / name, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
  }
  [[nodiscard]] std::size_t entries() const {
    return static_cast<std::size_t>(
        std::distance(fs::directory_iterator(folder_), fs::directory_iterator()));
  }
  static std::string code(const base::Result<void>& result) {
    return result ? "none" : result.error().front().code;
  }

  fs::path folder_;
};

TEST_F(WriteFile, WritesAndReplacesWhatItMadeBefore) {
  ASSERT_TRUE(write_made(folder_ / "a", "PAGE one", page));
  EXPECT_EQ(get("a"), "PAGE one");
  ASSERT_TRUE(write_made(folder_ / "a", "PAGE two", page));
  EXPECT_EQ(get("a"), "PAGE two");
  EXPECT_EQ(entries(), 1U);
}

TEST_F(WriteFile, LeavesAloneWhatIsSomebodysOwn) {
  put("board.toml", "[board]\n");
  put("short", "PA");
  put("empty", "");
  EXPECT_EQ(code(write_made(folder_ / "board.toml", "PAGE", page)), "file.not_ours");
  EXPECT_EQ(code(write_made(folder_ / "short", "PAGE", page)), "file.not_ours");
  EXPECT_EQ(get("board.toml"), "[board]\n");
  EXPECT_TRUE(write_made(folder_ / "empty", "PAGE", page));
}

TEST_F(WriteFile, SaysWhereItCannotWrite) {
  EXPECT_EQ(code(write_made(folder_ / "no" / "a", "PAGE", page)), "file.unwritable");
  EXPECT_EQ(code(write_made(folder_, "PAGE", page)), "file.folder");
  EXPECT_EQ(code(may_make("", page)), "file.missing");
  ASSERT_EQ(::mkfifo((folder_ / "pipe").c_str(), 0600), 0);
  EXPECT_EQ(code(write_made(folder_ / "pipe", "PAGE", page)), "file.special");
  EXPECT_EQ(entries(), 1U);
}

TEST_F(WriteFile, KeepsModeAndWritesThroughALink) {
  put("real", "PAGE old");
  fs::permissions(folder_ / "real", fs::perms::owner_read | fs::perms::owner_write);
  fs::create_symlink("real", folder_ / "link");
  ASSERT_TRUE(write_made(folder_ / "link", "PAGE new", page));
  EXPECT_EQ(get("real"), "PAGE new");
  EXPECT_TRUE(fs::is_symlink(folder_ / "link"));
  EXPECT_EQ(fs::status(folder_ / "real").permissions(),
            fs::perms::owner_read | fs::perms::owner_write);
}

}  // namespace
}  // namespace wetout::files
