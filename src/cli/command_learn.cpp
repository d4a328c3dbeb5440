#include "registry.hpp"
#include "wetout/report/learn_document.hpp"
#include "wetout/work/learn.hpp"
#include "work_context.hpp"

namespace wetout::cli {

int run_learn(const Parsed& parsed, Context& context) {
  work::LearnRequest request;
  if (const auto event = parsed.count("--forget")) request.forget.push_back(*event);
  if (const auto event = parsed.count("--remember")) request.remember.push_back(*event);
  const auto learned = work::learn(workshop(parsed, context), request);
  if (!learned) return fail(context, learned.error());
  context.out << (context.json ? report::to_json(*learned) : report::to_text(*learned));
  return exit_done;
}

}  // namespace wetout::cli
