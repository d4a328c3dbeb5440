#include "wetout/report/new_document.hpp"

#include "json_writer.hpp"
#include "layout.hpp"

namespace wetout::report {

template <>
struct Fields<NewFile> {
  static void visit(auto& v, const NewFile& file) {
    v("role", file.role);
    v("name", file.name);
  }
};
template <>
struct Fields<NewDocument> {
  static void visit(auto& v, const NewDocument& document) {
    v("program", document.program);
    v("made", document.made);
    v("files", document.files);
    v("written", document.written);
    v("next", document.next);
  }
};

std::string to_json(const NewDocument& document) { return document_json(new_format, document); }

std::string to_text(const NewDocument& document) {
  layout::Page page;
  for (const NewFile& file : document.files) {
    page.verbatim((document.written ? "wrote " : "would write ") + layout::plain(file.name) + " (" +
                  layout::plain(file.role) + ")");
  }
  page.verbatim("next: " + layout::plain(document.next));
  return page.text();
}

}  // namespace wetout::report
