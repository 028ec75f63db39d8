// Keeps faults with their lines and hands them out in the order of the file.
#include "ports/toml/fault_log.h"

#include <algorithm>
#include <utility>

namespace rimehaul::ports::toml {

void FaultLog::fault(const Spot& spot, Complaint complaint) {
  ++count_;
  add(spot, std::move(complaint), base::Weight::fault);
}

void FaultLog::doubt(const Spot& spot, Complaint complaint) {
  add(spot, std::move(complaint), base::Weight::doubt);
}

void FaultLog::add(const Spot& spot, Complaint complaint, base::Weight weight) {
  const std::string key = spot.path.empty() ? "" : " (" + spot.path + ")";
  entries_.push_back({spot.line,
                      {.file = file_,
                       .place = "line " + std::to_string(spot.line) + key,
                       .problem = std::move(complaint.problem),
                       .remedy = std::move(complaint.remedy),
                       .weight = weight}});
}

std::vector<base::Fault> FaultLog::in_order() const {
  std::vector<Entry> sorted = entries_;
  std::ranges::stable_sort(sorted, {}, &Entry::line);
  std::vector<base::Fault> faults;
  faults.reserve(sorted.size());
  for (const Entry& entry : sorted) {
    faults.push_back(entry.fault);
  }
  return faults;
}

}  // namespace rimehaul::ports::toml
