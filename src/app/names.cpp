#include "app/names.h"

#include "base/nearest_name.h"

namespace rimehaul::app {

std::string no_such(const Named& named, const std::string& typed) {
  const std::string line = "no " + named.kind + " is called \"" + typed + "\"";
  if (const auto nearest = base::nearest_name(typed, named.known)) {
    return line + "; did you mean \"" + *nearest + "\"?";
  }
  return line + "; there is " + (named.known.empty() ? "none" : listed(named.known, ", "));
}

std::string listed(const std::vector<std::string>& words, const std::string& last) {
  std::string list;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const char* between = i == 0 ? "" : ", ";
    list += (i > 0 && i + 1 == words.size() ? last : between) + words[i];
  }
  return list;
}

}  // namespace rimehaul::app
