// Works again, from what is shown alone, every number that a finding was made of.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "formula.h"
#include "passage/workings.h"

namespace rimehaul::testing {

/// What is shown, by its symbol.
using Numbers = std::map<std::string, double>;

/// But for rounding. NaN agrees with nothing.
inline bool agree(double one, double other) {
  return std::abs(one - other) <= 1e-9 * std::max({1.0, std::abs(one), std::abs(other)});
}

/// Works every number of a list out from those before it, and adds them to what is shown. What was
/// shown before under the same symbol must be the same number.
inline void work_out(const std::vector<passage::Working>& list, Numbers& shown) {
  for (const passage::Working& working : list) {
    CAPTURE(working.symbol);
    CAPTURE(working.formula);
    CAPTURE(working.value.value);
    CHECK_FALSE(working.page.empty());
    const bool known = std::isfinite(working.value.value);
    if (!working.formula.empty() && known) {
      const Names names = [&](const std::string& name) { return shown.at(name); };
      double by_hand = std::nan("");
      CHECK_NOTHROW(by_hand = Formula(working.formula, names).value());
      CAPTURE(by_hand);
      CHECK(agree(by_hand, working.value.value));
    }
    const auto before = shown.find(working.symbol);
    const bool as_before = before == shown.end() || agree(before->second, working.value.value) ||
                           (!known && std::isnan(before->second));
    CHECK(as_before);
    shown[working.symbol] = working.value.value;
  }
}

/// A finding's formula and what it takes beside the finding's inputs and the shared numbers.
struct ShownBeside {
  std::string_view formula;
  std::vector<passage::Working> besides;
};

/// Works the demand and the capacity of a finding out from its inputs, what is shown beside it, and
/// what was shown before; false where it is told in words or of what is not known.
inline bool comes_out_again(const passage::Finding& finding, const ShownBeside& beside,
                            Numbers shown) {
  using passage::Check;
  CAPTURE(passage::facts_of(finding.check).key);
  CAPTURE(beside.formula);
  for (const passage::Input& input : finding.inputs.all()) {
    shown[std::string{input.name}] = input.value.value;
  }
  work_out(beside.besides, shown);
  const bool numbers = std::isfinite(finding.demand.value) && std::isfinite(finding.capacity.value);
  const bool in_words = finding.check == Check::mark || finding.check == Check::alone ||
                        finding.check == Check::wind || finding.check == Check::hours ||
                        !finding.formula.empty();  // the share of another check
  if (!numbers || in_words) {
    return false;
  }
  Comparison by_hand;
  CHECK_NOTHROW(by_hand = worked_out(std::string{beside.formula}, shown));
  CHECK(agree(by_hand.demand, finding.demand.value));
  CHECK(agree(by_hand.capacity, finding.capacity.value));
  if (finding.measure == passage::Measure::share && finding.share && finding.demand.value > 0) {
    CHECK(agree(*finding.share, finding.demand.value / finding.capacity.value));
  }
  return true;
}

}  // namespace rimehaul::testing
