// The answers of the commands as JSON.
#pragma once

#include <string>
#include <vector>

#include "card/explanation.h"
#include "card/new_site.h"
#include "card/refusal.h"
#include "card/route_card.h"
#include "card/site_report.h"

namespace rimehaul::ports::json {

// All canonical, as canonical_json of a card is.

/// Routes found, the best first: {"kind":"routes","routes":[card, ...]}.
[[nodiscard]] std::string routes_json(const std::vector<card::RouteCard>& cards);
[[nodiscard]] std::string refusal_json(const card::Refusal& refusal);
[[nodiscard]] std::string explanation_json(const card::Explanation& explanation);
[[nodiscard]] std::string site_report_json(const card::SiteReport& report);
[[nodiscard]] std::string new_site_json(const card::NewSite& made);

}  // namespace rimehaul::ports::json
