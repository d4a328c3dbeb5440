// The files a new shop starts with: the answer of `new`.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace wetout::report {

inline constexpr std::string_view new_format = "wetout.new/1";

struct NewFile {
  std::string role;  ///< shop | job
  std::string name;  ///< as it can be given to the next command
};
struct NewDocument {
  std::string program;
  std::string made;
  std::vector<NewFile> files;
  bool written = true;  ///< false for a dry run
  std::string next;     ///< the command to try now
};

/// One line; docs/formats/new.schema.json.
std::string to_json(const NewDocument& document);
std::string to_text(const NewDocument& document);

}  // namespace wetout::report
