#include "writers.hpp"

#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <sstream>
#include <stdexcept>

namespace wetout::joblog::testing {

std::vector<std::string> run_writers(
    int writers,
    const std::function<void(int writer, const std::function<void(std::string)>& say)>& work) {
  int answers[2];
  int start[2];
  if (::pipe(answers) != 0 || ::pipe(start) != 0) throw std::runtime_error("no pipe");
  std::vector<pid_t> children;
  for (int writer = 0; writer < writers; ++writer) {
    const pid_t child = ::fork();
    if (child == 0) {
      ::close(start[1]);
      char gate = 0;
      if (::read(start[0], &gate, 1) != 0) ::_exit(2);  // returns at once when all are there
      const auto say = [&](const std::string& text) {
        const std::string line = text + "\n";
        if (::write(answers[1], line.data(), line.size()) < 0) ::_exit(3);
      };
      try {
        work(writer, say);
      } catch (const std::exception& error) {
        say(std::string("failed: ") + error.what());
        ::_exit(1);
      }
      ::_exit(0);
    }
    children.push_back(child);
  }
  ::close(start[0]);
  ::close(start[1]);
  ::close(answers[1]);
  std::string all;
  char buffer[4096];
  for (ssize_t got = 0; (got = ::read(answers[0], buffer, sizeof buffer)) > 0;) {
    all.append(buffer, static_cast<std::size_t>(got));
  }
  ::close(answers[0]);
  for (const pid_t child : children) {
    int status = 0;
    ::waitpid(child, &status, 0);
    EXPECT_EQ(status, 0);
  }
  std::vector<std::string> lines;
  std::istringstream stream(all);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

OpenOptions patient() {
  return {.access = Access::write, .busy_timeout = std::chrono::seconds(60)};
}

}  // namespace wetout::joblog::testing
