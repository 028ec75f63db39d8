// Names that were typed, held against those that there are.
#pragma once

#include <string>
#include <vector>

namespace rimehaul::app {

/// A kind of thing that has names.
struct Named {
  std::string kind;
  std::vector<std::string> known;
};

/// "no rig is called "sollo"; did you mean "solo"?", or with all there are when none is near.
[[nodiscard]] std::string no_such(const Named& named, const std::string& typed);

/// "dry, moist or wet"
[[nodiscard]] std::string listed(const std::vector<std::string>& words, const std::string& last);

/// The names of things that have one.
template <class Things>
[[nodiscard]] std::vector<std::string> names_of(const Things& things) {
  std::vector<std::string> names;
  names.reserve(things.size());
  for (const auto& thing : things) {
    names.push_back(thing.name);
  }
  return names;
}

}  // namespace rimehaul::app
