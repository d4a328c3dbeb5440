#include "wetout/report/log_document.hpp"

#include <fmt/format.h>

#include "json_writer.hpp"
#include "layout.hpp"

namespace wetout::report {

template <>
struct Fields<LogDocument> {
  static void visit(auto& v, const LogDocument& log) {
    v("program", log.program);
    v("made", log.made);
    v("action", log.action);
    v("path", log.path);
    v("schema", log.schema);
    v("size_bytes", log.size_bytes);
    v("jobs", log.jobs);
    v("plans", log.plans);
    v("schedules", log.schedules);
    v("events", log.events);
    v("documents", log.documents);
    v("sound", log.sound);
    v("faults", log.faults);
    v("copy", log.copy);
    v("kept", log.kept);
  }
};

namespace {

std::string counted(int n, const char* what) {
  return fmt::format("{} {}{}", n, what, n == 1 ? "" : "s");
}

}  // namespace

std::string to_json(const LogDocument& document) { return document_json(log_format, document); }

std::string to_text(const LogDocument& document) {
  layout::Page page;
  page.verbatim("log        " + layout::plain(document.path));
  // Nothing was counted in a log that is damaged, or of a copy that was only looked at.
  if (document.schema > 0) {
    page.item("holds      ", counted(document.jobs, "job") + ", " +
                                 counted(document.plans, "plan") + ", " +
                                 counted(document.schedules, "schedule") + ", " +
                                 counted(document.events, "event") + ", " +
                                 counted(document.documents, "document"));
    page.item("size       ",
              fmt::format("{} bytes, tables of version {}", document.size_bytes, document.schema));
  }
  if (document.sound) page.item("checked    ", *document.sound ? "sound" : "damaged");
  for (const std::string& fault : document.faults) page.item("  * ", layout::plain(fault));
  if (document.copy) {
    page.verbatim((document.action == "restore" ? "taken from " : "copied to  ") +
                  layout::plain(*document.copy));
  }
  if (document.kept) page.verbatim("kept as    " + layout::plain(*document.kept));
  return page.text();
}

}  // namespace wetout::report
