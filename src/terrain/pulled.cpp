#include "terrain/pulled.h"

#include <cmath>
#include <numbers>

namespace rimehaul::terrain {

using units::Metres;

HeadingOff::HeadingOff(const geo::Polyline& line, const Pulled& pulled) : pulled_{pulled} {
  for (std::size_t i = 1; i < line.segment_count(); ++i) {
    const double turn_deg = line.segment_bearing(i - 1).turn_to(line.segment_bearing(i));
    corners_.push_back({line.chainage(i), std::abs(turn_deg)});
  }
}

double HeadingOff::on(geo::Span span) {
  left_deg_ *= remaining(span.from - asked_);
  for (; next_ < corners_.size() && corners_[next_].at <= span.from; ++next_) {
    left_deg_ += corners_[next_].turn_deg * remaining(span.from - corners_[next_].at);
  }
  asked_ = span.from;
  double off_deg = left_deg_;
  for (std::size_t i = next_; i < corners_.size() && corners_[i].at <= span.to + pulled_.ahead;
       ++i) {
    off_deg += corners_[i].turn_deg;
  }
  return off_deg;
}

double HeadingOff::remaining(Metres past) const {
  return std::exp(-2.0 * (past / pulled_.drawbar) / std::numbers::pi);
}

}  // namespace rimehaul::terrain
