// The process around a run: signals, streams, and the only place that catches everything.
#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <cstring>
#include <exception>
#include <functional>
#include <system_error>

#include "context.hpp"
#include "fd_stream.hpp"
#include "run.hpp"
#include "trouble.hpp"
#include "work_context.hpp"

namespace {

using namespace wetout;

extern "C" void on_interrupt(int /*signal*/) { ::_exit(cli::exit_interrupted); }

// For what can end with the best so far: the first interrupt asks it to, the second ends the
// process.
volatile std::sig_atomic_t asked_to_end = 0;
extern "C" void on_asked_to_end(int /*signal*/) {
  asked_to_end = 1;
  std::signal(SIGINT, on_interrupt);
}

std::function<bool()> catch_interrupt() {
  if (std::signal(SIGINT, on_asked_to_end) == SIG_IGN) std::signal(SIGINT, SIG_IGN);
  return [] { return asked_to_end != 0; };
}

void prepare_process() {
  // A closed standard stream would hand its number to the next file that is opened, the log for
  // one. Opened the wrong way round, it fails when it is used.
  for (const int descriptor : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
    if (::fcntl(descriptor, F_GETFD) == -1 && errno == EBADF) {
      ::open("/dev/null", descriptor == STDIN_FILENO ? O_WRONLY : O_RDONLY);
    }
  }
  std::signal(SIGPIPE, SIG_IGN);
  std::signal(SIGXFSZ, SIG_IGN);  // a file size limit is an error to report, not a death
  // One that was told to ignore interrupts (nohup, a background job) goes on ignoring them.
  if (std::signal(SIGINT, on_interrupt) == SIG_IGN) std::signal(SIGINT, SIG_IGN);
}

// What could not be written is said, but for a pipe that nobody reads any more.
int finish(cli::Context& context, const cli::FdBuffer& out, int code) {
  context.out.flush();
  if (out.error() == 0 || out.error() == EPIPE) return code;
  context.err << "wetout: error: the result could not be written: " << std::strerror(out.error())
              << '\n';
  return cli::exit_environment;
}

}  // namespace

int main(int argc, char** argv) {
  prepare_process();
  cli::FdBuffer out_buffer(STDOUT_FILENO);
  cli::FdBuffer err_buffer(STDERR_FILENO);
  std::ostream out(&out_buffer);
  std::ostream err(&err_buffer);
  err.tie(&out);  // what was printed first is seen first
  err << std::unitbuf;

  cli::Context context{.out = out, .err = err};
  context.names = cli::names_for_completion;
  int code = cli::exit_environment;
  try {
    std::error_code no_folder;  // it may have been removed; whoever needs it finds it empty
    context.environment = cli::read_environment([](const char* name) { return std::getenv(name); });
    context.current_folder = std::filesystem::current_path(no_folder);
    context.clock = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
    context.catch_interrupt = catch_interrupt;
    context.out_is_terminal = ::isatty(STDOUT_FILENO) == 1;
    context.err_is_terminal = ::isatty(STDERR_FILENO) == 1;
    code = cli::run(std::vector<std::string>(argv + (argc > 0 ? 1 : 0), argv + argc), context);
  } catch (...) {
    code = cli::fail(context, {cli::trouble(std::current_exception())}, cli::exit_environment);
  }
  return finish(context, out_buffer, code);
}
