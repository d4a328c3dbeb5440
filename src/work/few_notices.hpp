// Notices of many records as few.
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <utility>

#include "wetout/base/notice.hpp"

namespace wetout::work {

/// The same notice of one subject is said once, what is short added up; one of more than three
/// subjects is said once with their number.
class FewNotices {
 public:
  /// `job` goes before the subject; empty: the subject is a material, whoever used it.
  void add(base::Notice notice, const std::string& job);
  /// `file` is the subject of what is said of many.
  base::Notices take(const std::string& file) const;

 private:
  std::map<std::pair<std::string, std::string>, std::size_t> index_;  // by code and subject
  base::Notices all_;
};

}  // namespace wetout::work
