#include "job_and_shop.hpp"

#include <algorithm>
#include <charconv>
#include <string>
#include <string_view>
#include <utility>

#include "learned_use.hpp"
#include "wetout/files/answer_store.hpp"

namespace wetout::work {
namespace {

namespace fs = std::filesystem;

bool of_shop(std::string_view key) {
  for (const std::string_view table : {"resin[", "cloth[", "material[", "cup[", "shop."}) {
    if (key.substr(0, table.size()) == table) return true;
  }
  return false;
}

void append_number(std::string& text, std::string_view key, double value) {
  char digits[32];
  const auto end = std::to_chars(digits, digits + sizeof digits, value);
  text.append(key).append(" ").append(digits, end.ptr).append("\n");
}

}  // namespace

bool is_file_argument(std::string_view argument) {
  return argument.find('/') != std::string_view::npos ||
         (argument.size() > 5 && argument.substr(argument.size() - 5) == ".toml");
}

fs::path shown(const Workshop& workshop, const fs::path& absolute) {
  const fs::path near = absolute.lexically_relative(workshop.here);
  return near.empty() || *near.begin() == ".." ? absolute : near;
}

base::Result<fs::path> find_shop(const Workshop& workshop, const fs::path& beside) {
  if (workshop.shop) return *workshop.shop;
  const fs::path absolute = (workshop.here / beside).lexically_normal();
  std::error_code error;
  for (fs::path folder = absolute.parent_path();; folder = folder.parent_path()) {
    const fs::path candidate = folder / "shop.toml";
    if (fs::is_regular_file(candidate, error)) return shown(workshop, candidate);
    if (folder == folder.parent_path()) break;
  }
  if (workshop.usual_shop && fs::is_regular_file(*workshop.usual_shop, error)) {
    return *workshop.usual_shop;
  }
  return base::fail(
      {.code = "shop.missing",
       .message = "there is no shop file for this job",
       .file = beside.string(),
       .expected = "shop.toml beside the job file or in a folder above it" +
                   (workshop.usual_shop ? ", or " + workshop.usual_shop->string() : std::string()),
       .hint = "name one with --shop FILE, or write one with \"wetout new\""});
}

base::Result<JobAndShop> read_job_and_shop(const Workshop& workshop, const fs::path& job) {
  auto job_file = files::read_job(job);
  const auto shop_path = find_shop(workshop, job);
  if (!shop_path) {
    base::Problems problems = job_file ? base::Problems{} : job_file.error();
    // A job file that is not there at all has no shop beside it either: one problem is enough.
    if (problems.empty()) problems = shop_path.error();
    return base::fail(std::move(problems));
  }
  auto shop_file = files::read_shop(*shop_path);
  if (!job_file || !shop_file) {
    base::Problems problems;
    if (!job_file) problems = job_file.error();
    if (!shop_file) {
      problems.insert(problems.end(), shop_file.error().begin(), shop_file.error().end());
    }
    return base::fail(std::move(problems));
  }
  return JobAndShop{std::move(*job_file), std::move(*shop_file), {}, {}};
}

base::Problems locate(base::Problems problems, const JobAndShop& both) {
  base::Problems located;
  for (base::Problem& problem : problems) {
    if (problem.key.empty() || !problem.file.empty()) {
      located.push_back(std::move(problem));
      continue;
    }
    const files::Source& source = of_shop(problem.key) ? both.shop.source : both.job.source;
    base::Problems one;
    one.push_back(std::move(problem));
    located.push_back(std::move(files::locate(std::move(one), source).front()));
  }
  return located;
}

base::Result<laminate::Plan> plan_of(const Workshop& workshop, const JobAndShop& both,
                                     const MixingChoices& choices) {
  laminate::PlanInput input;
  input.board = both.job.board;
  input.coats = both.job.coats;
  input.shop = both.shop.shop;
  input.air = choices.air.value_or(both.shop.shop.air);
  input.resin_temp = choices.resin_temp;
  input.cup = choices.cup;
  input.assumed = both.job.assumed;
  input.margins = both.margins;
  files::AnswerStore cups(workshop.cache);
  auto plan = laminate::make_plan(input, laminate::defaults(), &cups);
  if (!plan) return base::fail(locate(plan.error(), both));
  plan->notices.insert(plan->notices.begin(), both.shop.notices.begin(), both.shop.notices.end());
  plan->notices.insert(plan->notices.begin(), both.job.notices.begin(), both.job.notices.end());
  if (!both.learned.empty()) {
    plan->notices.push_back(
        {.code = "plan.learned", .text = "from records: " + in_words(both.learned)});
  }
  return std::move(*plan);
}

std::string to_text(const MixingChoices& choices) {
  std::string text;
  if (choices.air) append_number(text, "air_k", choices.air->in_kelvin());
  if (choices.resin_temp) append_number(text, "resin_k", choices.resin_temp->in_kelvin());
  if (choices.cup) text += "cup " + *choices.cup + "\n";
  return text;
}

MixingChoices choices_from(std::string_view text) {
  MixingChoices choices;
  while (!text.empty()) {
    const std::string_view line = text.substr(0, text.find('\n'));
    text.remove_prefix(std::min(text.size(), line.size() + 1));
    const std::size_t space = line.find(' ');
    if (space == std::string_view::npos) continue;
    const std::string_view key = line.substr(0, space);
    const std::string_view value = line.substr(space + 1);
    double number = 0.0;
    std::from_chars(value.data(), value.data() + value.size(), number);
    if (key == "air_k") choices.air = units::Temperature::kelvin(number);
    if (key == "resin_k") choices.resin_temp = units::Temperature::kelvin(number);
    if (key == "cup") choices.cup = std::string(value);
  }
  return choices;
}

}  // namespace wetout::work
