// Entries of the ledger for tests, with few words.
#pragma once

#include <string>
#include <vector>

#include "wetout/joblog/log.hpp"

namespace wetout::joblog::testing {

Date day(int n);      ///< the n-th day from 2026-06-01 on
Instant noon(int n);  ///< of that day
EntryHead head(const std::string& token, int day = 0);

Material mass(const std::string& slug);
Material length(const std::string& slug);
Material pieces(const std::string& slug);

NewReceipt receipt(const std::string& token, std::vector<Received> parts, int day = 0);
NewUse use(const std::string& token, const std::string& job, const std::string& step,
           std::vector<Taking> takings, int day = 0);
NewWaste waste(const std::string& token, std::vector<Taking> takings, int day = 0);
NewCount count(const std::string& token, std::vector<Counted> counts, int day = 0);
NewLabour labour(const std::string& token, const std::string& job, std::int64_t minutes,
                 std::int64_t minor, int day = 0);
NewReversal reversal(const std::string& token, std::int64_t number);

/// Books it, or throws with what is wrong.
Booked book(Log& log, const NewEntry& entry);
/// The code of the first problem; empty when it was booked.
std::string refusal(Log& log, const NewEntry& entry);

/// "stock>board resin-a/A1 200@80; ...", as short as what is in it: "!" expired, "-n" overdrawn.
std::string lines(const Booked& booked);
/// "resin-a A1 800@320, A2 ...; cloth ...": what is on hand, by lot.
std::string stock(const Log& log, Lots lots = Lots::open);

/// A log in memory with the jobs sandpiper and egret.
Log ledger();

}  // namespace wetout::joblog::testing
