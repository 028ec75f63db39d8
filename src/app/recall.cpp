#include "app/recall.h"

#include <algorithm>

#include "app/answer.h"
#include "app/deciders.h"
#include "app/record_place.h"
#include "card/figures.h"
#include "ports/gdal/records_file.h"
#include "ports/json/object.h"

namespace rimehaul::app {

namespace {

constexpr units::Seconds kToldFor{24.0 * 3600.0};

std::string route_of(const day::Recall& recalled,
                     const std::vector<day::Kept<day::IssuedCard>>& cards) {
  const auto card = std::ranges::find_if(
      cards, [&](const auto& kept) { return kept.thing.number == recalled.card; });
  return card == cards.end() ? "" : card->thing.route;
}

std::string words_of(const day::Recall& recalled,
                     const std::vector<day::Kept<day::IssuedCard>>& cards,
                     const units::LocalClock& local_clock) {
  const auto card = std::ranges::find_if(
      cards, [&](const auto& kept) { return kept.thing.number == recalled.card; });
  const std::string route =
      card == cards.end() ? ""
                          : " (" + card->thing.route + ", issued to " + card->thing.issued.by + ")";
  return "issue " + std::to_string(recalled.card) + route + " was recalled by " +
         recalled.recalled.by + ", " + card::local_text(recalled.recalled.at, local_clock) + ": " +
         recalled.reason;
}

std::string none_issued(std::int64_t number) {
  return "no card has been issued as number " + std::to_string(number) +
         "; the log of the site tells those that were";
}

/// Why a card cannot be recalled; empty: it can.
std::string why_not(const day::Records& records, std::int64_t number) {
  const auto cards = records.cards();
  if (std::ranges::none_of(cards, [&](const auto& kept) { return kept.thing.number == number; })) {
    return none_issued(number);
  }
  const auto recalls = records.recalls();
  const bool already =
      std::ranges::any_of(recalls, [&](const auto& kept) { return kept.thing.card == number; });
  return already ? "issue " + std::to_string(number) + " is recalled already" : "";
}

Status tell_none(const std::string& why, const RecallOptions& options, const Outside& outside) {
  const std::string json = ports::json::Object{}
                               .whole("schema", 1)
                               .text("kind", "recall")
                               .whole("issue", options.card)
                               .text("why_not", why)
                               .bytes();
  const std::string nothing =
      "nothing is recalled: " + why + ". No card has changed by this command.\n";
  give_answer({.text = nothing, .json = json}, options.common, outside);
  return Status::honest_no;
}

}  // namespace

Status recall(const RecallOptions& options, const Outside& outside) {
  const LoadedSite site = load_usable_site(options.common.site);
  if (options.person.empty()) {
    throw WrongUsage{"nobody recalls it; say --as PERSON"};
  }
  const day::Done by = decided_by(site, options.person, outside);
  if (records_of(site) == nullptr) {
    return tell_none(none_issued(options.card), options, outside);
  }
  const auto writing = begin_writing(site, outside);
  if (const std::string why = why_not(*writing, options.card); !why.empty()) {
    return tell_none(why, options, outside);
  }
  const auto cards = writing->cards();
  const day::Recall recalled{.number = writing->next(day::Kind::card_recall),
                             .card = options.card,
                             .reason = options.reason,
                             .recalled = by};
  writing->add(recalled, {"recall", "card " + std::to_string(options.card), options.reason});
  writing->commit();
  const std::string text = words_of(recalled, cards, site.local_clock) +
                           "\nThe paper is still out there: call the driver.\n";
  const std::string json = ports::json::Object{}
                               .whole("schema", 1)
                               .text("kind", "recall")
                               .whole("issue", options.card)
                               .text("route", route_of(recalled, cards))
                               .text("reason", options.reason)
                               .bytes();
  give_answer({.text = text, .json = json}, options.common, outside);
  return Status::yes;
}

std::vector<base::Fault> doubts_about_recalled(const day::Records& records,
                                               const units::LocalClock& local_clock,
                                               units::Instant now) {
  std::vector<base::Fault> doubts;
  const auto cards = records.cards();
  for (const auto& kept : records.recalls()) {
    if (now <= units::after(kept.thing.recalled.at, kToldFor)) {
      doubts.push_back({.file = ports::gdal::RecordsPlace{}.name,
                        .place = "",
                        .problem = words_of(kept.thing, cards, local_clock),
                        .remedy = "make sure that nobody drives by it",
                        .weight = base::Weight::doubt});
    }
  }
  return doubts;
}

}  // namespace rimehaul::app
