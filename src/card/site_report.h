// What was found when a site was read: everything wrong or doubtful, and what there is.
#pragma once

#include <string>
#include <vector>

#include "base/fault.h"
#include "card/route_card.h"

namespace rimehaul::card {

struct SiteReport {
  int schema = 1;
  std::string site;
  std::vector<base::Fault> faults;    ///< faults and doubts, in the order in which files were read
  std::vector<std::string> contents;  ///< "20 trails, 12.3 km", "4 rigs: ..."
  std::vector<InputFile> inputs;

  /// Whether nothing forbids the site's use.
  [[nodiscard]] bool usable() const;
};

/// The report as text, no line longer than `columns` (60 or more) except faults, which stand on one
/// line each so that they can be searched.
[[nodiscard]] std::string text_of(const SiteReport& report, int columns);

}  // namespace rimehaul::card
