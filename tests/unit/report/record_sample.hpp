// What was recorded of an invented job.
#pragma once

#include "wetout/report/past_document.hpp"
#include "wetout/report/record_document.hpp"

namespace wetout::report::sample {

/// A call of four facts, one of them sent before.
RecordDocument record();
/// All that was recorded, in every kind.
RecordDocument record_list();
RecordDocument record_undo();
/// Two boards, the second of them entered before.
PastDocument past();

}  // namespace wetout::report::sample
