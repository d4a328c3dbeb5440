#include "wetout/report/check_document.hpp"

#include "base_fields.hpp"
#include "json_writer.hpp"
#include "layout.hpp"
#include "phrases.hpp"
#include "wetout/report/problems_document.hpp"

namespace wetout::report {

template <>
struct Fields<CheckedFile> {
  static void visit(auto& v, const CheckedFile& file) {
    v("name", file.name);
    v("ok", file.problems.empty());
    v("problems", file.problems);
    v("notices", file.notices);
  }
};
template <>
struct Fields<CheckDocument> {
  static void visit(auto& v, const CheckDocument& document) {
    v("program", document.program);
    v("made", document.made);
    v("files", document.files);
  }
};

std::string to_json(const CheckDocument& document) { return document_json(check_format, document); }

std::string to_text(const CheckDocument& document, units::System system) {
  std::string out;
  for (const CheckedFile& file : document.files) {
    layout::Page page;
    if (file.problems.empty()) page.item("", layout::plain(file.name) + ": good");
    for (const base::Notice& notice : file.notices) {
      page.item("  * ", subject_text(notice) + notice_text(notice, system));
    }
    out += problems_text(file.problems) + page.text();
  }
  return out;
}

}  // namespace wetout::report
