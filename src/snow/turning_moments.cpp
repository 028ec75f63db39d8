#include "snow/turning_moments.h"

#include <algorithm>

namespace rimehaul::snow {

std::vector<units::Instant> in_order_within(std::vector<units::Instant> moments,
                                            units::Period during) {
  std::erase_if(moments,
                [&](units::Instant moment) { return moment <= during.from || during.to < moment; });
  std::ranges::sort(moments);
  moments.erase(std::unique(moments.begin(), moments.end()), moments.end());
  return moments;
}

}  // namespace rimehaul::snow
