#include "wetout/report/jobs_document.hpp"

#include "json_writer.hpp"
#include "layout.hpp"
#include "phrases.hpp"

namespace wetout::report {

template <>
struct Fields<JobLine> {
  static void visit(auto& v, const JobLine& job) {
    v("id", job.id);
    v("name", job.name);
    v("created", job.created);
    v("archived", job.archived);
    v("revision", job.revision);
    v("made", job.made);
  }
};
template <>
struct Fields<JobsDocument> {
  static void visit(auto& v, const JobsDocument& document) {
    v("program", document.program);
    v("made", document.made);
    v("jobs", document.jobs);
  }
};

std::string to_json(const JobsDocument& document) { return document_json(jobs_format, document); }

std::string to_text(const JobsDocument& document) {
  layout::Page page;
  if (document.jobs.empty()) {
    page.line("No jobs in the log.");
    return page.text();
  }
  constexpr std::size_t id_columns = 24;
  constexpr std::size_t revision_columns = 4;
  constexpr std::size_t when_columns = 16;  // to the minute
  constexpr std::size_t name_columns =
      layout::page_columns - id_columns - revision_columns - when_columns - 5;
  const auto row = [&](std::string_view id, std::string_view revision, std::string_view when,
                       const std::string& name) {
    page.line(layout::left(id, id_columns) + ' ' + layout::right(revision, revision_columns) +
              "  " + layout::left(when, when_columns) + "  " + layout::fit(name, name_columns));
  };
  row("job", "rev.", "planned", "name");
  for (const JobLine& job : document.jobs) {
    std::string when = job.made ? when_text(*job.made) : "-";
    constexpr std::size_t to_the_minute = 16;
    if (when.size() > to_the_minute) when.resize(to_the_minute);
    const std::string name = layout::plain(job.name);
    row(layout::plain(job.id), job.revision ? std::to_string(*job.revision) : "-", when,
        job.archived ? "(archived) " + name : name);
  }
  return page.text();
}

}  // namespace wetout::report
