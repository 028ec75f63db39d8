// rules.toml: the site's rules over the cautious defaults.
#pragma once

#include <string>
#include <vector>

#include "base/fault.h"
#include "passage/rules.h"
#include "ports/toml/text_file.h"

namespace rimehaul::ports::toml {

/// Reads the rules; what is not said stays at default_rules(), and the time zone is site.toml's.
/// With any fault the allowed share is NaN, so that nothing is open. Throws BadInput only when the
/// file cannot be read, is no TOML or of a newer schema.
[[nodiscard]] base::Reading<passage::Rules> read_rules(const TextFile& file);

/// One rule as a person orders it, "most_wind_kmh = 50" or "passengers.wettest = 'dry'".
struct RuleChange {
  std::string key;   ///< "most_wind_kmh"
  std::string text;  ///< as typed
};
/// Throws BadInput unless the text is one key and its value; whether there is such a rule is told
/// when it is read over the rules.
[[nodiscard]] RuleChange rule_change(const std::string& text);

/// The rules as if each change stood in the file in place of what it says of that key, the later
/// ones winning. Faults of a change name its text in place of the file.
[[nodiscard]] base::Reading<passage::Rules> read_rules_with(const TextFile& file,
                                                            const std::vector<RuleChange>& changes);

}  // namespace rimehaul::ports::toml
