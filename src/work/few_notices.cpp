#include "few_notices.hpp"

#include <algorithm>
#include <set>

namespace wetout::work {

void FewNotices::add(base::Notice notice, const std::string& job) {
  if (!job.empty() && notice.code != "record.utc") {
    notice.subject = job + (notice.subject.empty() ? "" : " ") + notice.subject;
  }
  const auto [found, is_new] = index_.emplace(std::pair(notice.code, notice.subject), all_.size());
  if (is_new) {
    all_.push_back(std::move(notice));
  } else if (notice.code == "stock.overdrawn" && notice.value) {
    *all_[found->second].value += *notice.value;
  }
}

base::Notices FewNotices::take(const std::string& file) const {
  constexpr std::ptrdiff_t most = 3;
  base::Notices few;
  std::set<std::string> said;
  for (const base::Notice& notice : all_) {
    const auto same = std::count_if(all_.begin(), all_.end(), [&](const base::Notice& other) {
      return other.code == notice.code;
    });
    if (same <= most || notice.code == "stock.overdrawn") {
      few.push_back(notice);
    } else if (said.insert(notice.code).second) {
      few.push_back({.code = notice.code,
                     .text = notice.text,
                     .subject = file,
                     .value = static_cast<double>(same),
                     .limit = std::nullopt,
                     .unit = "times"});
    }
  }
  return few;
}

}  // namespace wetout::work
