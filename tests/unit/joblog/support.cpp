#include "support.hpp"

#include <grp.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <fstream>
#include <iterator>
#include <stdexcept>

namespace wetout::joblog::testing {
namespace fs = std::filesystem;
namespace {

constexpr uid_t nobody = 65534;

fs::path scratch(Where where) {
  const bool in_memory = where == Where::memory && ::getenv("TMPDIR") == nullptr;
  return in_memory && ::access("/dev/shm", W_OK) == 0 ? "/dev/shm" : fs::temp_directory_path();
}

std::string filler(int n, std::size_t bytes) {
  const std::string line = "line of " + std::to_string(n) + ", 0 1 2 3 4 5 6 7 8 9\n";
  std::string text;
  text.reserve(bytes + line.size());
  while (text.size() < bytes) text += line;
  return text;
}

std::string result_text(int n, int revision, std::size_t bytes) {
  return "result " + std::to_string(n) + " revision " + std::to_string(revision) + "\n" +
         filler(n, bytes);
}

std::string read_all(int fd) {
  std::string all;
  char buffer[4096];
  for (ssize_t got = 0; (got = ::read(fd, buffer, sizeof buffer)) > 0;) {
    all.append(buffer, static_cast<std::size_t>(got));
  }
  return all;
}

void write_all(int fd, const std::string& text) {
  for (std::size_t done = 0; done < text.size();) {
    const ssize_t put = ::write(fd, text.data() + done, text.size() - done);
    if (put <= 0) return;
    done += static_cast<std::size_t>(put);
  }
}

void become_nobody() {
  if (::getuid() != 0) return;
  if (::setgroups(0, nullptr) != 0 || ::setgid(nobody) != 0 || ::setuid(nobody) != 0) {
    throw std::runtime_error("cannot become nobody");
  }
}

}  // namespace

TempFolder::TempFolder(Where where) {
  std::string name = (scratch(where) / "wetout-joblog-XXXXXX").string();
  if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
  path_ = name;
  ::chmod(name.c_str(), 0755);
}

TempFolder::~TempFolder() {
  ::chmod(path_.c_str(), 0755);
  std::error_code ignored;
  fs::remove_all(path_, ignored);
}

std::string read_bytes(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

void write_bytes(const fs::path& path, const std::string& bytes) {
  std::ofstream(path, std::ios::binary) << bytes;
}

std::map<std::string, std::string> snapshot(const fs::path& folder) {
  std::map<std::string, std::string> files;
  for (const auto& entry : fs::directory_iterator(folder)) {
    files[entry.path().filename().string()] =
        entry.is_regular_file() ? read_bytes(entry.path()) : "not a file";
  }
  return files;
}

NewPlan sample_plan(int n, const std::string& slug, std::size_t body_bytes) {
  NewPlan plan;
  plan.job_slug = slug;
  plan.job_name = "The " + slug;
  plan.program = "wetout test";
  plan.made = Instant(std::chrono::seconds(1'750'000'000 + 60 * n));
  plan.input_key = base::sha256("key " + slug + std::to_string(n));
  plan.result_format = "wetout.plan/1";
  plan.result_body = [n, body_bytes](int revision) { return result_text(n, revision, body_bytes); };
  plan.inputs = {{"job", slug + ".toml", "wetout.job/1", "job " + filler(n, body_bytes / 3)},
                 {"shop", "shop.toml", "wetout.shop/1", "the shop stays the same"},
                 {"options", "", "wetout.options/1", "air=" + std::to_string(n)}};
  return plan;
}

std::string difference(const Log& log, int revision, int n, const std::string& slug,
                       std::size_t body_bytes) {
  const NewPlan expected = sample_plan(n, slug, body_bytes);
  const auto plan = log.plan(slug, revision);
  const std::string where = slug + " revision " + std::to_string(revision) + ": ";
  if (!plan) return where + "not there";
  if (plan->body != result_text(n, revision, body_bytes)) return where + "result differs";
  if (plan->made != expected.made || plan->program != expected.program ||
      plan->input_key != expected.input_key || plan->format != expected.result_format ||
      plan->revision != revision || plan->sha256 != base::sha256(plan->body)) {
    return where + "head differs";
  }
  const auto inputs = log.inputs(slug, revision);
  if (inputs.size() != expected.inputs.size()) return where + "inputs missing";
  for (const Input& wanted : expected.inputs) {
    bool found = false;
    for (const InputRow& input : inputs) {
      found = found || (input.role == wanted.role && input.name == wanted.name &&
                        input.format == wanted.format && input.body == wanted.body);
    }
    if (!found) return where + "input " + wanted.role + " differs";
  }
  return {};
}

void make_log(const fs::path& path, int plans) {
  Log log = Log::open(path, writing());
  for (int n = 1; n <= plans; ++n) log.save_plan(sample_plan(n));
}

OpenOptions writing() {
  return {.access = Access::write, .busy_timeout = std::chrono::milliseconds(60)};
}

OpenOptions reading() {
  return {.access = Access::read, .busy_timeout = std::chrono::milliseconds(60)};
}

std::string outcome(const std::function<void()>& work) {
  try {
    work();
    return "ok";
  } catch (const StoreError& error) {
    return std::string(to_string(error.kind()));
  }
}

std::string in_child(const std::function<std::string()>& work, User user) {
  int ends[2];
  if (::pipe(ends) != 0) throw std::runtime_error("no pipe");
  const pid_t child = ::fork();
  if (child == 0) {
    std::string answer;
    try {
      if (user == User::nobody) become_nobody();
      answer = work();
    } catch (const std::exception& error) {
      answer = std::string("exception: ") + error.what();
    }
    write_all(ends[1], answer);
    ::_exit(0);
  }
  ::close(ends[1]);
  std::string answer = read_all(ends[0]);
  ::close(ends[0]);
  int status = 0;
  ::waitpid(child, &status, 0);
  return WIFSIGNALED(status) ? "signal " + std::to_string(WTERMSIG(status)) : answer;
}

Holder::Holder(const std::function<std::shared_ptr<void>()>& work) {
  int ready[2];
  int release[2];
  if (::pipe(ready) != 0 || ::pipe(release) != 0) throw std::runtime_error("no pipe");
  child_ = ::fork();
  if (child_ == 0) {
    ::close(release[1]);
    try {
      const auto held = work();
      write_all(ready[1], "ready");
      read_all(release[0]);
    } catch (...) {
      ::_exit(1);  // the parent sees the pipe closed without a word
    }
    ::_exit(0);
  }
  ::close(ready[1]);
  ::close(release[0]);
  release_ = release[1];
  char buffer[5];
  const bool is_ready = ::read(ready[0], buffer, sizeof buffer) == 5;
  ::close(ready[0]);
  if (!is_ready) throw std::runtime_error("the child could not take what it should hold");
}

Holder::~Holder() {
  ::close(release_);
  ::waitpid(child_, nullptr, 0);
}

}  // namespace wetout::joblog::testing
