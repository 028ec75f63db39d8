#include "snow/site_status.h"

#include <algorithm>

namespace rimehaul::snow {

std::optional<bool> SiteStatus::is_clear(const std::string& mark, units::Instant when) const {
  std::optional<bool> clear;
  for (const MarkStatus& said : marks) {
    if (said.mark == mark && (!said.until || when <= *said.until)) {
      clear = clear.value_or(true) && said.clear;
    }
  }
  return clear;
}

std::optional<units::Instant> SiteStatus::groomed(const std::string& trail) const {
  std::optional<units::Instant> latest;
  for (const Grooming& said : grooming) {
    if (said.trail == trail) {
      latest = latest ? std::max(*latest, said.finished) : said.finished;
    }
  }
  return latest;
}

std::vector<units::Instant> SiteStatus::turning_moments() const {
  std::vector<units::Instant> moments;
  for (const MarkStatus& said : marks) {
    if (said.until) {
      moments.push_back({said.until->seconds + 1});
    }
  }
  for (const Grooming& said : grooming) {
    moments.push_back(said.finished);
  }
  if (last_weather) {
    moments.push_back(*last_weather);
  }
  return moments;
}

void SiteStatus::end_by(units::Instant until) {
  for (MarkStatus& said : marks) {
    said.until = said.until ? std::min(*said.until, until) : until;
  }
}

}  // namespace rimehaul::snow
