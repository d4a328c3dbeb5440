#include "run.hpp"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <map>
#include <new>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "everything.hpp"
#include "fd_stream.hpp"
#include "help.hpp"
#include "registry.hpp"
#include "trouble.hpp"
#include "wetout/base/environment_error.hpp"

namespace wetout::cli {
namespace {

namespace fs = std::filesystem;

struct Outcome {
  int code = -1;
  std::string out;
  std::string err;
};

Outcome ran(const std::vector<std::string>& args, bool terminal = false,
            const Environment& environment = {}) {
  std::ostringstream out;
  std::ostringstream err;
  Context context{.out = out, .err = err};
  context.environment = environment;
  context.err_is_terminal = terminal;
  const int code = run(args, context);
  return {code, out.str(), err.str()};
}

TEST(Run, WithoutACommandSaysBrieflyHowOnStderr) {
  const Outcome outcome = ran({});
  EXPECT_EQ(outcome.code, exit_usage);
  EXPECT_EQ(outcome.out, "");
  EXPECT_EQ(outcome.err, short_help(offered_program()));
}

TEST(Run, HelpAndVersionGoToStdout) {
  EXPECT_EQ(ran({"--help"}).out, program_help(offered_program()));
  EXPECT_EQ(ran({"--help"}).code, exit_done);
  EXPECT_EQ(ran({"help"}).out, program_help(offered_program()));
  EXPECT_EQ(ran({"--help"}).err, "");
  EXPECT_EQ(ran({"--version"}).out, "wetout " WETOUT_VERSION "\n");
  for (const Place& place : places(offered_program())) {
    std::vector<std::string> line(place.path.begin(), place.path.end());
    line.emplace_back("-h");
    const Outcome outcome = ran(line);
    EXPECT_EQ(outcome.code, exit_done) << words(place);
    EXPECT_EQ(outcome.out, command_help(offered_program(), place.path)) << words(place);
    EXPECT_EQ(outcome.err, "") << words(place);
    line.pop_back();
    line.insert(line.begin(), "help");
    EXPECT_EQ(ran(line).out, outcome.out) << words(place);
  }
}

TEST(Run, ABadCommandLineIsToldOnStderrAndEndsWithTwo) {
  for (const std::vector<std::string>& line : {std::vector<std::string>{"plna"},
                                               {"help", "--mna"},
                                               {"completion"},
                                               {"completion", "tcsh"},
                                               {"help", "nonsense"},
                                               {"help", "help", "more"},
                                               {"--now", "soon", "help"}}) {
    const Outcome outcome = ran(line);
    EXPECT_EQ(outcome.code, exit_usage) << line.back();
    EXPECT_EQ(outcome.out, "") << line.back();
    EXPECT_EQ(outcome.err.find("wetout: error: "), 0U) << outcome.err;
  }
}

TEST(Run, WithJsonProblemsAreADocumentOnStdout) {
  for (const std::vector<std::string>& line :
       {std::vector<std::string>{"plna", "--json"}, {"--json"}, {"--json", "help", "nonsense"}}) {
    const Outcome outcome = ran(line);
    EXPECT_EQ(outcome.code, exit_usage);
    EXPECT_EQ(outcome.out.find("{\"format\":\"wetout.problems/1\",\"problems\":[{"), 0U);
    EXPECT_EQ(outcome.out.find('\n'), outcome.out.size() - 1);
    EXPECT_EQ(outcome.err, "");
  }
}

TEST(Run, ColourIsForTerminalsUnlessSomeoneMinds) {
  const auto coloured = [](const Outcome& outcome) {
    return outcome.err.find('\x1b') != std::string::npos;
  };
  Environment plain;
  plain.plain = true;
  EXPECT_FALSE(coloured(ran({"plna"})));
  EXPECT_TRUE(coloured(ran({"plna"}, true)));
  EXPECT_FALSE(coloured(ran({"plna"}, true, plain)));
  EXPECT_TRUE(coloured(ran({"plna", "--color", "always"}, false, plain)));
  EXPECT_FALSE(coloured(ran({"plna", "--color=never"}, true)));
  EXPECT_TRUE(coloured(ran({"help", "nonsense", "--color", "always"})));
}

TEST(Run, CompleteWordsPrintsNamesAndNeverFails) {
  const auto words_with = [](Context::Names names) {
    std::ostringstream out;
    std::ostringstream err;
    Context context{.out = out, .err = err};
    context.names = std::move(names);
    EXPECT_EQ(run({"complete-words", "coats", "--", "sand"}, context), exit_done);
    EXPECT_EQ(err.str(), "");
    return out.str();
  };
  EXPECT_EQ(words_with({}), "");
  EXPECT_EQ(words_with(
                [](NameKind kind, const std::vector<std::string>& before, const Parsed&, Context&) {
                  EXPECT_EQ(kind, NameKind::coats);
                  return std::vector<std::string>{"a", before.at(0)};
                }),
            "a\nsand\n");
  EXPECT_EQ(words_with([](NameKind, const std::vector<std::string>&, const Parsed&,
                          Context&) -> std::vector<std::string> {
              throw base::EnvironmentError("log.locked", "locked");
            }),
            "");
}

TEST(Context, SaysHowMuchIsAskedFor) {
  const auto said = [](const std::vector<std::string>& args) {
    std::ostringstream out;
    std::ostringstream err;
    Context context{.out = out, .err = err};
    apply(*parsed(args), context);
    const base::Sink to = sink(context);
    to(base::Level::error, "e");
    to(base::Level::warn, "w");
    to(base::Level::info, "i");
    to(base::Level::debug, "d");
    say(context, "s");
    EXPECT_EQ(out.str(), "");
    return err.str();
  };
  EXPECT_EQ(said({"jobs"}), "e\nw\ns\n");
  EXPECT_EQ(said({"jobs", "-q"}), "e\n");
  EXPECT_EQ(said({"jobs", "-v"}), "e\nw\ni\nd\ns\n");
}

TEST(Context, TakesTheLogFromTheNearestPlaceThatNamesOne) {
  std::ostringstream nowhere;
  Context context{.out = nowhere, .err = nowhere};
  EXPECT_THROW((void)log_path(*parsed({"jobs"}), context), base::EnvironmentError);
  context.environment.data_folder = "/data/wetout";
  EXPECT_EQ(log_path(*parsed({"jobs"}), context), fs::path("/data/wetout/log.db"));
  context.environment.log = "env.db";
  EXPECT_EQ(log_path(*parsed({"jobs"}), context), fs::path("env.db"));
  EXPECT_EQ(log_path(*parsed({"jobs", "--log", "own.db"}), context), fs::path("own.db"));
}

TEST(Context, TakesTheShopAndTheUnitsFromTheOptions) {
  std::ostringstream nowhere;
  Context context{.out = nowhere, .err = nowhere};
  apply(*parsed({"jobs"}), context);
  EXPECT_FALSE(context.shop);
  EXPECT_FALSE(context.units);
  EXPECT_FALSE(configured_shop(context));
  context.environment.shop = "env.toml";
  context.environment.config_folder = "/config/wetout";
  apply(*parsed({"jobs", "--units", "metric", "--dry-run"}), context);
  EXPECT_EQ(context.shop, fs::path("env.toml"));
  EXPECT_EQ(context.units, units::System::metric);
  EXPECT_TRUE(context.dry_run);
  EXPECT_EQ(configured_shop(context), fs::path("/config/wetout/shop.toml"));
  apply(*parsed({"jobs", "--shop", "own.toml"}), context);
  EXPECT_EQ(context.shop, fs::path("own.toml"));
}

TEST(Context, NowIsTheClockUnlessOneIsGiven) {
  std::ostringstream nowhere;
  Context context{.out = nowhere, .err = nowhere};
  context.clock = time::Instant(std::chrono::seconds(1000));
  EXPECT_EQ(*now(*parsed({"jobs"}), context, time::Zone()), context.clock);
  EXPECT_EQ(*now(*parsed({"jobs", "--now", "1970-01-01 00:01"}), context, time::Zone()),
            time::Instant(std::chrono::seconds(60)));
}

TEST(Environment, FollowsTheXdgRules) {
  const auto read = [](std::map<std::string, const char*> variables) {
    return read_environment([variables](const char* name) {
      const auto found = variables.find(name);
      return found == variables.end() ? nullptr : found->second;
    });
  };
  EXPECT_FALSE(read({}).data_folder);
  EXPECT_EQ(read({{"HOME", "/h"}}).data_folder, fs::path("/h/.local/share/wetout"));
  EXPECT_EQ(read({{"HOME", "/h"}}).config_folder, fs::path("/h/.config/wetout"));
  EXPECT_EQ(read({{"HOME", "/h"}, {"XDG_DATA_HOME", "/d"}}).data_folder, fs::path("/d/wetout"));
  EXPECT_EQ(read({{"XDG_CONFIG_HOME", "/c"}}).config_folder, fs::path("/c/wetout"));
  EXPECT_EQ(read({{"HOME", "/h"}}).cache_folder, fs::path("/h/.cache/wetout"));
  EXPECT_EQ(read({{"HOME", "/h"}, {"XDG_CACHE_HOME", "/c"}}).cache_folder, fs::path("/c/wetout"));
  // Relative ones are to be ignored, and empty ones are not set.
  EXPECT_EQ(read({{"HOME", "/h"}, {"XDG_DATA_HOME", "d"}}).data_folder,
            fs::path("/h/.local/share/wetout"));
  EXPECT_EQ(read({{"HOME", "/h"}, {"XDG_DATA_HOME", ""}}).data_folder,
            fs::path("/h/.local/share/wetout"));
  EXPECT_FALSE(read({{"WETOUT_LOG", ""}}).log);
  EXPECT_EQ(read({{"WETOUT_LOG", "x"}}).log, "x");
  EXPECT_EQ(read({{"WETOUT_SHOP", "y"}}).shop, "y");
  EXPECT_TRUE(read({{"NO_COLOR", "1"}}).plain);
  EXPECT_FALSE(read({{"NO_COLOR", ""}}).plain);
  EXPECT_TRUE(read({{"TERM", "dumb"}}).plain);
}

template <class Thrown>
base::Problem trouble_of(const Thrown& thrown) {
  return trouble(std::make_exception_ptr(thrown));
}

TEST(Trouble, TellsBugsFromTheEnvironment) {
  const base::Problem locked = trouble_of(base::EnvironmentError("log.locked", "locked", "wait"));
  EXPECT_EQ(locked.code, "log.locked");
  EXPECT_EQ(locked.message, "locked");
  EXPECT_EQ(locked.hint, "wait");
  EXPECT_EQ(trouble_of(std::logic_error("x")).code, "bug");
  EXPECT_EQ(trouble_of(std::logic_error("x")).message, "this is a bug in wetout: x");
  EXPECT_EQ(trouble_of(std::logic_error("bug in wetout: x")).message, "this is a bug in wetout: x");
  EXPECT_EQ(trouble_of(std::bad_alloc()).code, "memory");
  EXPECT_EQ(trouble_of(std::runtime_error("no zones")).code, "environment");
  EXPECT_EQ(trouble_of(std::runtime_error("no zones")).message, "no zones");
  EXPECT_EQ(trouble_of(42).code, "bug");
}

TEST(FdStream, WritesAllAndRemembersWhyItCouldNot) {
  int ends[2] = {};
  ASSERT_EQ(::pipe(ends), 0);
  const std::string text(40000, 'x');
  {
    FdBuffer buffer(ends[1]);
    std::ostream stream(&buffer);
    stream << text << std::flush;
    EXPECT_EQ(buffer.error(), 0);
  }
  std::string got(text.size(), '\0');
  std::size_t at = 0;
  while (at < got.size()) {
    const ssize_t n = ::read(ends[0], got.data() + at, got.size() - at);
    ASSERT_GT(n, 0);
    at += static_cast<std::size_t>(n);
  }
  EXPECT_EQ(got, text);

  ::close(ends[0]);
  const auto old = std::signal(SIGPIPE, SIG_IGN);
  FdBuffer broken(ends[1]);
  std::ostream to_broken(&broken);
  to_broken << "x" << std::flush;
  EXPECT_EQ(broken.error(), EPIPE);
  EXPECT_FALSE(to_broken);
  std::signal(SIGPIPE, old);
  ::close(ends[1]);

  const int full = ::open("/dev/full", O_WRONLY);
  ASSERT_GE(full, 0);
  FdBuffer no_room(full);
  std::ostream to_full(&no_room);
  to_full << text;
  to_full.flush();
  EXPECT_EQ(no_room.error(), ENOSPC);
  ::close(full);
}

}  // namespace
}  // namespace wetout::cli
