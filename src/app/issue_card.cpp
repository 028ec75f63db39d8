#include "app/issue_card.h"

#include <algorithm>
#include <memory>
#include <utility>

#include "app/answer.h"
#include "app/board_rows.h"
#include "app/card_keeper.h"
#include "app/deciders.h"
#include "app/names.h"
#include "app/plan_route.h"
#include "app/question.h"
#include "app/record_place.h"
#include "app/standing_board.h"
#include "base/require.h"
#include "ports/json/object.h"
#include "ports/openssl/digest.h"

namespace rimehaul::app {

namespace {

const day::NamedRoute& route_named(const LoadedSite& site, const std::string& name) {
  const auto route = std::ranges::find(site.routes, name, &day::NamedRoute::name);
  if (route == site.routes.end()) {
    throw WrongUsage{no_such({"route", names_of(site.routes)}, name)};
  }
  return *route;
}

/// Thrown where the board has become stale between the look at it and the printing.
struct Refused {
  std::string why;
};

/// What was asked for, all of it looked up.
struct Asked {
  const LoadedSite& site;
  const day::NamedRoute& route;
  day::Done to;
  units::Instant depart;
  LoadAsked load;
};

/// The board that lets the route be driven; throws Refused.
StandingBoard board_for(const Asked& asked, const day::Records& records) {
  auto standing = standing_board(asked.site, records, std::max(asked.depart, asked.to.at));
  if (const auto* none = std::get_if<NoCard>(&standing)) {
    throw Refused{none->why};
  }
  auto& board = std::get<StandingBoard>(standing);
  if (std::string why = why_not_driven(board, asked.route.name, asked.load); !why.empty()) {
    throw Refused{std::move(why)};
  }
  return std::move(board);
}

/// The same, the records let go of again.
StandingBoard board_now(const Asked& asked) {
  const auto records = records_of(asked.site);
  if (!records) {
    throw Refused{"no board has been signed yet; `rimehaul sign` does that"};
  }
  return board_for(asked, *records);
}

class Issuer : public CardKeeper {
 public:
  Issuer(const Asked& asked, const Outside& outside) : asked_{asked}, outside_{outside} {}

  card::CardIssue begin() override {
    writing_ = begin_writing(asked_.site, outside_);
    const StandingBoard standing = board_for(asked_, *writing_);
    kept_ = {.number = writing_->next(day::Kind::route_card),
             .board = standing.board.number,
             .route = asked_.route.name,
             .json = {},
             .digest = {},
             .head = writing_->head(),
             .issued = asked_.to};
    decided_ = route_on(standing, asked_.route.name)->permitted;
    const day::Done& signed_off = standing.board.signed_off;
    return {.number = kept_.number,
            .board = kept_.board,
            .route = kept_.route,
            .driver = asked_.to.by,
            .signed_by = signed_off.by + " (" + signed_off.role + ")",
            .log_head = text_of(kept_.head)};
  }

  void keep(const card::RouteCard& card, const std::string& record) override {
    base::require(writing_ != nullptr, "a card is begun before it is kept");
    if (const std::string decision = undecided(decided_, card); !decision.empty()) {
      throw Refused{"board " + std::to_string(kept_.board) +
                    " has not decided what the way asks for now: " + decision +
                    "; have it decided and signed"};
    }
    kept_.json = record;
    kept_.digest = ports::openssl::digest_of(record);
    writing_->add(kept_, {"issue", "card " + std::to_string(kept_.number),
                          kept_.route + " from board " + std::to_string(kept_.board)});
    writing_->commit();
    writing_.reset();
  }

 private:
  Asked asked_;
  const Outside& outside_;
  std::string decided_;  ///< by the board for the route, in its words
  std::unique_ptr<day::Writing> writing_;
  day::IssuedCard kept_;
};

RouteOptions route_options(const CardOptions& options, const Asked& asked,
                           const StandingBoard& standing) {
  RouteOptions route;
  route.common = options.common;
  route.rig = usual_rig(asked.site, asked.route);
  if (options.bed_kg) {
    route.rig.bed_kg = options.bed_kg;
  }
  if (options.towed_kg) {
    route.rig.towed_kg = options.towed_kg;
  }
  route.way.from = asked.route.stations.front();
  route.way.to = asked.route.stations.back();
  route.way.via.assign(asked.route.stations.begin() + 1, asked.route.stations.end() - 1);
  route.way.depart = options.depart;
  if (!route_on(standing, asked.route.name)->permitted.empty()) {
    route.way.permitted_by = standing.board.signed_off.by;
  }
  route.hours.windows = true;
  route.card = options.card;
  route.gpx = options.gpx;
  return route;
}

Status refuse(const Refused& refused, const CardOptions& options, const Outside& outside) {
  const std::string json = ports::json::Object{}
                               .whole("schema", 1)
                               .text("kind", "no_card")
                               .text("route", options.route)
                               .text("why", refused.why)
                               .bytes();
  give_answer({.text = "no card: " + refused.why + "\n", .json = json}, options.common, outside);
  return Status::honest_no;
}

}  // namespace

Status issue_card(const CardOptions& options, const Outside& outside) {
  const LoadedSite site = load_usable_site(options.common.site);
  const Asked asked{
      .site = site,
      .route = route_named(site, options.route),
      .to = driven_by(site, options.driver, outside),
      .depart = departure(options.depart, {outside.now, site.local_clock}),
      .load = options.bed_kg || options.towed_kg ? LoadAsked::another : LoadAsked::usual};
  try {
    const StandingBoard standing = board_now(asked);
    Issuer issuer{asked, outside};
    return plan_route(route_options(options, asked, standing), outside, &issuer);
  } catch (const Refused& refused) {
    return refuse(refused, options, outside);
  }
}

}  // namespace rimehaul::app
