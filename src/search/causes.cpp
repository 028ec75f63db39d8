#include "search/causes.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <numeric>
#include <tuple>

namespace rimehaul::search {

namespace {

using Key = std::tuple<passage::Check, passage::Stand, std::string, std::string>;

Key key_of(const passage::Finding& finding, double allowed_share) {
  return {finding.check, passage::stand_of(finding, allowed_share), finding.missing,
          finding.refused};
}

/// Whether a check lacks the very heights or snow that the check for these says are not known.
bool only_follows(const passage::Finding& finding, const std::vector<passage::Finding>& all) {
  using enum passage::Check;
  return !finding.missing.empty() && std::ranges::any_of(all, [&](const passage::Finding& other) {
    return (other.check == heights_known || other.check == snow_known) &&
           other.check < finding.check && other.missing == finding.missing;
  });
}

/// Obstacles in the order in which a driver comes to them.
std::vector<std::size_t> in_driving_order(const NoRoute& none) {
  std::vector<std::size_t> order(none.obstacles.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  const auto place_of = [&](std::size_t index) {
    const Obstacle& obstacle = none.obstacles[index];
    return std::pair{std::find(none.way.begin(), none.way.end(), obstacle.leg) - none.way.begin(),
                     obstacle.turn_from.has_value()};
  };
  std::ranges::stable_sort(order, {}, place_of);
  return order;
}

/// Findings of an obstacle that are causes of their own.
std::vector<passage::Finding> own_findings(const Obstacle& obstacle) {
  if (obstacle.findings.empty()) {
    return {obstacle.finding};
  }
  std::vector<passage::Finding> own;
  std::ranges::copy_if(
      obstacle.findings, std::back_inserter(own),
      [&](const passage::Finding& finding) { return !only_follows(finding, obstacle.findings); });
  return own;
}

}  // namespace

std::vector<Cause> causes_of(const NoRoute& none, double allowed_share) {
  std::map<Key, Cause> by_key;
  for (const std::size_t index : in_driving_order(none)) {
    for (const passage::Finding& finding : own_findings(none.obstacles[index])) {
      Cause& cause = by_key[key_of(finding, allowed_share)];
      if (cause.obstacles.empty() || passage::binds_before(finding, cause.finding)) {
        cause.worst = index;
        cause.finding = finding;
      }
      cause.obstacles.push_back(index);
    }
  }
  std::vector<Cause> causes;
  causes.reserve(by_key.size());
  for (auto& [key, cause] : by_key) {
    causes.push_back(std::move(cause));
  }
  std::ranges::stable_sort(causes, [](const Cause& a, const Cause& b) {
    return a.obstacles.size() != b.obstacles.size() ? a.obstacles.size() > b.obstacles.size()
                                                    : passage::binds_before(a.finding, b.finding);
  });
  return causes;
}

}  // namespace rimehaul::search
