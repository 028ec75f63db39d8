#include "card/card_sheet.h"

#include <algorithm>

#include "card/figures.h"

namespace rimehaul::card {

std::string number_of(const RouteCard& card, const std::string& digest) {
  std::string number = local_text(card.depart, card.local_clock);
  std::erase_if(number, [](char letter) { return letter == '-' || letter == ':'; });
  std::ranges::replace(number, ' ', '-');
  return number + "-" + digest.substr(0, 8);
}

std::string symbol_text(const CardImprint& imprint) {
  return "RIMEHAUL CARD " + imprint.number + " SHA-256 " + imprint.digest;
}

std::vector<MapWay> ways_of(const RouteCard& card) {
  std::vector<MapWay> ways;
  for (const CardLeg& leg : card.legs) {
    ways.push_back({.points = {}, .name = leg.trail, .verdict = leg.verdict, .number = leg.number});
  }
  // Where two legs join, the trace has their point once: it ends one and starts the next.
  for (std::size_t i = 0; i < card.trace.size(); ++i) {
    const TracePoint& point = card.trace[i];
    const auto leg = static_cast<std::size_t>(point.leg);
    if (i > 0 && ways[leg].points.empty()) {
      ways[leg].points.push_back(card.trace[i - 1].place);
    }
    ways[leg].points.push_back(point.place);
  }
  return ways;
}

}  // namespace rimehaul::card
