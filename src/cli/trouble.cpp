#include "trouble.hpp"

#include <new>
#include <stdexcept>
#include <string>

#include "wetout/base/environment_error.hpp"

namespace wetout::cli {

namespace {

// A broken promise says so itself, the standard library does not.
std::string bug(const std::string& what) {
  const std::string words = "bug in wetout: ";
  return "this is a " + (what.starts_with(words) ? what : words + what);
}

}  // namespace

base::Problem trouble(const std::exception_ptr& thrown) {
  base::Problem problem;
  try {
    std::rethrow_exception(thrown);
  } catch (const base::EnvironmentError& error) {
    problem.code = error.word();
    problem.message = error.what();
    problem.hint = error.hint();
  } catch (const std::logic_error& error) {
    problem.code = "bug";
    problem.message = bug(error.what());
    problem.hint = "please report it with the command and the files that it was given";
  } catch (const std::bad_alloc&) {
    problem.code = "memory";
    problem.message = "there is not enough memory";
  } catch (const std::exception& error) {
    problem.code = "environment";
    problem.message = error.what();
  } catch (...) {
    problem.code = "bug";
    problem.message = bug("something unknown was thrown");
  }
  return problem;
}

}  // namespace wetout::cli
