#include "card/card_lines.h"

#include <algorithm>

#include "base/require.h"
#include "card/departure_lines.h"
#include "card/figures.h"
#include "card/words.h"

namespace rimehaul::card {

namespace {

constexpr std::size_t kDateAndBlank = 11;

std::string ahead_words(std::string_view what, const Ahead& ahead) {
  return std::string{what} +
         (ahead.distance ? " in " + distance_text(*ahead.distance) + " (" + ahead.name + ")"
                         : std::string{": none ahead on this route"});
}

}  // namespace

std::string verdict_word(passage::Verdict verdict) {
  std::string word = passage::words_for(verdict);
  std::ranges::transform(word, word.begin(), [](char letter) {
    return letter >= 'a' && letter <= 'z' ? static_cast<char>(letter - 'a' + 'A') : letter;
  });
  return word;
}

const CardLeg& tightest_leg(const RouteCard& card) {
  base::require(!card.legs.empty(), "a card has a leg");
  return *std::ranges::max_element(card.legs, {}, &CardLeg::binding_share);
}

std::string verdict_line(const RouteCard& card) {
  const CardLeg& tightest = tightest_leg(card);
  return "at most " + share_text(card.worst_share) + " of a limit (" + tightest.binding_check +
         ", leg " + std::to_string(tightest.number) +
         "); allowed here: " + allowed_text(card.allowed_share);
}

std::string rig_line(const RouteCard& card) {
  std::string rig = card.rig + ": " + card.carrier;
  if (!card.trailer.empty()) {
    rig += " with " + card.trailer + (card.trailer_braked ? " (braked)" : " (no brake)");
  }
  return rig + "; driver level " + card.driver_level;
}

std::string load_line(const RouteCard& card) {
  return words::load(card.load, card.trailer) + "; in all " + mass_text(card.total_mass);
}

std::string issue_line(const CardIssue& issue) {
  return std::to_string(issue.number) + ", of " + issue.route + ", to " + issue.driver +
         "; from board " + std::to_string(issue.board) + ", signed by " + issue.signed_by +
         "; log " + issue.log_head;
}

std::string leave_line(const RouteCard& card) {
  return local_text(card.depart, card.local_clock) + ", arrive about " +
         local_and_zone_text(card.arrive, card.local_clock).substr(kDateAndBlank);
}

std::vector<LabelledLine> departure_lines_of(const RouteCard& card) {
  return card.departures.has_value()
             ? departure_lines({*card.departures, card.depart, card.local_clock})
             : std::vector<LabelledLine>{};
}

std::string way_line(const RouteCard& card) {
  return std::string{words::preference(card.prefer)} + ": " + distance_text(card.length) +
         ", climb " + distance_text(card.climb) + ", drop " + distance_text(card.drop) + ", " +
         minutes_text(card.time) +
         (card.waits > units::Seconds{0} ? " of which waiting " + minutes_text(card.waits) : "") +
         ", fuel " + fuel_needed_text(card.fuel);
}

std::string snow_line(const RouteCard& card) {
  return words::snow_states(card.snow) + "; " + told_text(card.snow_told_by, card.local_clock);
}

std::string binding_line(const CardLeg& leg) {
  return leg.binding_check + ", " + share_text(leg.binding_share) + " of the limit" +
         (leg.binding_at ? " " + where_text({*leg.binding_at, *leg.binding_at}, leg.length) : "");
}

std::string ahead_line(const CardLeg& leg) {
  return ahead_words("turn-round", leg.turn_round) + "; " + ahead_words("refuge", leg.refuge);
}

std::string notice_line(const Notice& notice, const CardLeg& leg) {
  return where_text(notice.span, leg.length) + ": " + notice.words;
}

}  // namespace rimehaul::card
