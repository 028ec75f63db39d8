// A round of errands as text.
#include <algorithm>

#include "base/joined.h"
#include "card/board_words.h"
#include "card/card_lines.h"
#include "card/figures.h"
#include "card/layout.h"
#include "card/round_report.h"
#include "card/words.h"

namespace rimehaul::card {

namespace {

constexpr int kHeadWidth = 12;
constexpr std::size_t kDateAndBlank = 11;

void head_item(Sheet& sheet, std::string_view label, const std::string& text) {
  sheet.labelled({0, kHeadWidth, label}, text);
}

void call_item(Sheet& sheet, std::string_view label, const std::string& text) {
  sheet.labelled({4, 10, label}, text);
}

std::string clock(units::Instant moment, const RoundReport& report) {
  return local_text(moment, report.local_clock).substr(kDateAndBlank);
}

std::string stations_of(const RoundReport& report) {
  std::vector<std::string> names;
  for (const RoundCall& call : report.calls) {
    names.push_back(call.station);
  }
  return base::joined(names, " - ");
}

std::string order_words(search::Preference prefer) {
  switch (prefer) {
    case search::Preference::quickest:
      return "the one with the earliest end";
    case search::Preference::least_fuel:
      return "the one with the least fuel";
    case search::Preference::safest:
      break;
  }
  return "the one with the least share of any limit, then the earliest end";
}

/// "as little as 38 % of a limit, and end at 10:12 at the earliest", or what else is preferred.
std::string at_best_words(const search::OrderWorth& least, const RoundReport& report) {
  const std::string ends = "at " + clock(least.arrives, report) + " at the earliest";
  switch (report.prefer) {
    case search::Preference::quickest:
      return "end " + ends;
    case search::Preference::least_fuel:
      return "take as little as " + fuel_there_text(least.fuel) + ", and end " + ends;
    case search::Preference::safest:
      break;
  }
  return "come to as little as " + least_share_text(least.worst_share) + " of a limit, and end " +
         ends;
}

/// What the order is, and how far that is proven.
std::string order_lines(const RoundReport& report) {
  if (!report.not_ruled_out.has_value()) {
    return "of all orders that hold, " + order_words(report.prefer);
  }
  return "of the orders that were followed to their end, " + order_words(report.prefer) +
         ". It is not proven the best: the hours change the snow, and there are too many orders to "
         "follow all of them. Others may " +
         at_best_words(*report.not_ruled_out, report);
}

std::string at_every_stop(const RoundReport& report) {
  return minutes_text(report.halt) + " at every stop";
}

/// "gas bottles, 120 kg on the bed, for Fell Lodge"
std::string errand_words(const day::Errand& errand, const std::string& other_end) {
  std::vector<std::string> parts{errand.what};
  if (errand.bed > units::Kilograms{0}) {
    parts.push_back(mass_text(errand.bed) + " on the bed");
  }
  if (errand.towed > units::Kilograms{0}) {
    parts.push_back(mass_text(errand.towed) + " on the trailer");
  }
  if (errand.passengers > 0) {
    parts.push_back(std::to_string(errand.passengers) +
                    (errand.passengers == 1 ? " passenger" : " passengers"));
  }
  return base::joined(parts, ", ") + ", " + other_end;
}

std::string hours_of(const RoundCall& call, const RoundReport& report) {
  std::vector<std::string> parts;
  if (call.arrives) {
    parts.push_back("arrive about " + clock(*call.arrives, report));
  }
  if (call.leaves) {
    parts.push_back("leave " + clock(*call.leaves, report));
  }
  return base::joined(parts, ", ");
}

void write_call(std::size_t index, const RoundReport& report, Sheet& sheet) {
  const RoundCall& call = report.calls[index];
  const std::string number = std::to_string(index + 1);
  sheet.labelled({0, 4, std::string(number.size() < 2 ? 1U : 0U, ' ') + number},
                 {call.station, hours_of(call, report)});
  std::string_view label = "put off";
  for (const day::Errand& errand : call.put_off) {
    call_item(sheet, label, errand_words(errand, "from " + errand.from));
    label = "";
  }
  label = "take on";
  for (const day::Errand& errand : call.taken_on) {
    call_item(sheet, label, errand_words(errand, "for " + errand.to));
    label = "";
  }
  if (call.aboard) {
    call_item(sheet, "aboard", words::load(*call.aboard, report.trailer));
  }
}

/// Trails in driving order, none twice in a row.
std::string trails_of(const RouteCard& trip) {
  std::vector<std::string> trails;
  for (const CardLeg& leg : trip.legs) {
    if (trails.empty() || trails.back() != leg.trail) {
      trails.push_back(leg.trail);
    }
  }
  return base::joined(trails, ", ");
}

void write_trip(const RouteCard& trip, std::size_t number, Sheet& sheet) {
  call_item(sheet, "drive",
            "trip " + std::to_string(number) + ", " + verdict_word(trip.verdict) + ": " +
                trails_of(trip));
  call_item(sheet, "", verdict_line(trip));
  call_item(sheet, "", way_line(trip));
  for (const std::string& decision : trip.permitted) {
    call_item(sheet, "", "permitted by " + trip.permitted_by + ": " + decision);
  }
}

void write_plan(const RoundReport& report, Sheet& sheet) {
  const std::size_t tightest = tightest_trip(report);
  const RouteCard& first = report.trips.front();
  sheet.both_ends({"ROUND OF ERRANDS", report.site});
  sheet.paragraph(stations_of(report));
  sheet.rule('=');
  head_item(sheet, verdict_word(verdict_of(report)),
            "trip " + std::to_string(tightest + 1) +
                " is the tightest: " + verdict_line(report.trips[tightest]));
  head_item(sheet, "Order", order_lines(report));
  head_item(sheet, "Rig", rig_line(first));
  head_item(sheet, "Hours",
            "leave " + local_text(first.depart, report.local_clock) + ", over about " +
                local_and_zone_text(*report.calls.back().arrives, report.local_clock)
                    .substr(kDateAndBlank) +
                "; " + at_every_stop(report));
  head_item(sheet, "Fuel",
            fuel_needed_text(report.fuel) + " of " + fuel_there_text(report.fuel_to_spare) +
                " above the reserve, refuelling not counted");
  head_item(sheet, "Snow", snow_line(first));
  sheet.paragraph(words::planning_aid());
  sheet.heading("STOPS AND TRIPS");
  for (std::size_t i = 0; i < report.calls.size(); ++i) {
    write_call(i, report, sheet);
    if (i < report.trips.size()) {
      write_trip(report.trips[i], i + 1, sheet);
    }
  }
  sheet.heading("EVERY TRIP HAS A CARD");
  sheet.paragraph(
      "It tells its marks, turns, radio and what to turn back for, and is not replaced by this "
      "list; --into prints all of them.");
  sheet.heading("CAUTIONS");
  sheet.list("!", first.cautions);
  if (!report.orders.empty()) {
    sheet.heading("ORDERS IN FORCE");
    sheet.list("-", report.orders);
  }
  std::size_t places = 0;
  for (const RouteCard& trip : report.trips) {
    places += trip.places_rewalked;
  }
  sheet.heading("MADE FROM");
  sheet.list("-", made_from_lines({report.made_from, places, report.local_clock}));
}

void write_no_round(const RoundReport& report, Sheet& sheet) {
  sheet.both_ends({"NO ROUND", report.site});
  sheet.rule('=');
  sheet.paragraph(
      report.not_ruled_out.has_value()
          ? "No order of the stops was found to hold, each judged with what is aboard on the way "
            "to it. Some may: the hours change the snow, and there are too many orders to follow "
            "all "
            "of them."
          : "No order of the stops holds, each judged with what is aboard on the way to it.");
  head_item(sheet, "Rig", report.rig);
  head_item(sheet, "Stops", at_every_stop(report));
  sheet.heading("THE FARTHEST THAT IT GETS");
  for (std::size_t i = 0; i < report.calls.size(); ++i) {
    write_call(i, report, sheet);
  }
  sheet.heading("NOT REACHED FROM THERE");
  for (const UnreachedCall& call : report.unreached) {
    sheet.labelled({0, 2, "-"}, call.station + ", setting out " + clock(call.ready, report) +
                                    " with " + words::load(call.aboard, report.trailer) + ": " +
                                    call.why);
  }
}

}  // namespace

std::string text_of(const RoundReport& report, int columns) {
  Sheet sheet{columns};
  if (report.holds()) {
    write_plan(report, sheet);
  } else {
    write_no_round(report, sheet);
  }
  return sheet.text();
}

}  // namespace rimehaul::card
