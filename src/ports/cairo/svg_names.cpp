#include "ports/cairo/svg_names.h"

#include <map>
#include <regex>

namespace rimehaul::ports::cairo {

// Text is drawn as outlines, so such names stand in attributes only.
std::string with_own_numbers(const std::string& svg) {
  const std::regex name{R"((["#])([a-z]+)([0-9]+)(?=[-")]))"};
  std::map<std::string, std::map<std::string, std::size_t>> numbers;
  std::string named;
  std::size_t done = 0;
  for (std::sregex_iterator at{svg.begin(), svg.end(), name}; at != std::sregex_iterator{}; ++at) {
    const std::smatch& found = *at;
    auto& of_kind = numbers[found[2]];
    const std::size_t number = of_kind.emplace(found[3], of_kind.size()).first->second;
    named += svg.substr(done, static_cast<std::size_t>(found.position()) - done);
    named += found[1].str() + found[2].str() + std::to_string(number);
    done = static_cast<std::size_t>(found.position() + found.length());
  }
  return named + svg.substr(done);
}

}  // namespace rimehaul::ports::cairo
