#include "card/departure_lines.h"

#include "card/figures.h"

namespace rimehaul::card {

using units::Instant;
using units::Period;
using units::TimeSpans;

namespace {

constexpr std::size_t kDateAndBlank = 11;

class Words {
 public:
  explicit Words(const DepartureHours& hours) : hours_{hours} {}

  [[nodiscard]] std::string clock(Instant moment) const {
    return local_text(moment, hours_.local_clock).substr(kDateAndBlank);
  }

  /// "09:10 to 10:40, 17:20 to 19:00"; empty where no whole minute lies in a window.
  [[nodiscard]] std::string windows(const TimeSpans& windows) const {
    std::string words;
    for (const Period& window : windows.periods()) {
      const Period minutes = day::whole_minutes_in(window);
      if (minutes.from <= minutes.to) {
        words += (words.empty() ? "" : ", ") + clock(minutes.from) + " to " + clock(minutes.to);
      }
    }
    return words;
  }

  [[nodiscard]] std::string out() const {
    const TimeSpans& out = hours_.departures.out;
    const TimeSpans after{{{{hours_.depart.seconds + 1}, hours_.departures.hours.to}}};
    const auto now = out.around(hours_.depart);
    if (!now.has_value()) {
      const std::string later = windows(out.shared_with(after));
      // Where a way back is asked for the hours are those from which both can be driven.
      const std::string both = hours_.departures.back ? " there and back" : "";
      return later.empty() ? "no departure from now on is open" + both
                           : "not this departure" + both + "; open from " + later;
    }
    const TimeSpans others = out.shared_with(TimeSpans{{*now}}.gaps_in(hours_.departures.hours));
    const std::string again = windows(others.shared_with(after));
    return "last safe departure " + clock(now->to) + (again.empty() ? "" : "; again from " + again);
  }

  [[nodiscard]] std::string allowed_for() const {
    const day::Departures& all = hours_.departures;
    return (all.late > units::Seconds{0} ? "; up to " + minutes_text(all.late) + " late allowed for"
                                         : std::string{"; no delay allowed for"}) +
           "; trips over by " + clock(all.hours.to) + " looked at";
  }

  [[nodiscard]] std::string back() const {
    const std::string windows_back = windows(*hours_.departures.back);
    return windows_back.empty()
               ? "none is open with its load, or none in time"
               : "set out from " + windows_back + ", " +
                     minutes_text(*hours_.departures.turn_round) + " after arriving or later";
  }

 private:
  const DepartureHours& hours_;
};

}  // namespace

std::vector<LabelledLine> departure_lines(const DepartureHours& hours) {
  const Words words{hours};
  std::vector<LabelledLine> lines{{"Hours", words.out() + words.allowed_for()}};
  if (hours.departures.back.has_value()) {
    lines.push_back({"Way back", words.back()});
  }
  return lines;
}

std::string no_departure_arrives_in_time() {
  return "no departure from now on arrives by the hour asked for, setting out late allowed for";
}

std::string wait_words(const Wait& wait) {
  constexpr std::int64_t kAlmostAMinute = 59;
  const Instant rounded_up{wait.until.seconds + kAlmostAMinute};
  return "wait at " + wait.station + " until " +
         local_text(rounded_up, wait.local_clock).substr(kDateAndBlank);
}

}  // namespace rimehaul::card
