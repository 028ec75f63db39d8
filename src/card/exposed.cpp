#include "card/exposed.h"

#include <algorithm>
#include <cmath>

#include "passage/footfall.h"

namespace rimehaul::card {

using units::Metres;

namespace {

/// By chainage along the whole route, the rig's length added.
std::vector<geo::Span> along_route(const search::Route& route, Metres rig_length) {
  std::vector<geo::Span> spans;
  Metres before{0};
  for (const search::RouteLeg& part : route.legs) {
    for (const geo::Span& span : part.judgement.exposed) {
      const geo::Span wide{before + span.from - rig_length, before + span.to + rig_length};
      if (!spans.empty() && wide.from <= spans.back().to) {
        spans.back().to = std::max(spans.back().to, wide.to);
      } else {
        spans.push_back(wide);
      }
    }
    before += part.judgement.length;
  }
  return spans;
}

/// Whole metres, outwards, but within the leg.
geo::Span widened(const geo::Span& span, Metres length) {
  return {Metres{std::floor(std::max(span.from, Metres{0}).value())},
          std::min(Metres{std::ceil(span.to.value())}, length)};
}

}  // namespace

std::vector<std::vector<geo::Span>> exposed_spans(const search::Route& route, const rig::Rig& rig) {
  const std::vector<geo::Span> whole = along_route(route, passage::overall_length(rig));
  std::vector<std::vector<geo::Span>> legs;
  Metres before{0};
  for (const search::RouteLeg& part : route.legs) {
    std::vector<geo::Span> own;
    const Metres after = before + part.judgement.length;
    for (const geo::Span& span : whole) {
      if (span.from < after && span.to > before) {
        const geo::Span here =
            widened({span.from - before, span.to - before}, part.judgement.length);
        if (!own.empty() && here.from <= own.back().to) {
          own.back().to = here.to;
        } else {
          own.push_back(here);
        }
      }
    }
    legs.push_back(std::move(own));
    before = after;
  }
  return legs;
}

Metres metres_of(const std::vector<geo::Span>& spans) {
  Metres sum{0};
  for (const geo::Span& span : spans) {
    sum += span.to - span.from;
  }
  return sum;
}

}  // namespace rimehaul::card
