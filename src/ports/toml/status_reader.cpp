#include "ports/toml/status_reader.h"

#include <algorithm>

namespace rimehaul::ports::toml {

namespace {

snow::MarkStatus read_status(TableReader in) {
  // What cannot be read counts as not clear.
  snow::MarkStatus status{.mark = in.text("mark").value_or(""),
                          .clear = in.yes_no("clear").value_or(false),
                          .until = std::nullopt};
  if (in.has("until")) {
    status.until = in.moment("until");
  }
  in.refuse_rest();
  return status;
}

void read_grooming(TableReader in, std::optional<units::Instant> observed,
                   std::vector<snow::Grooming>& grooming) {
  const auto finished = in.moment("finished");
  if (finished && observed && !(*finished <= *observed)) {
    in.fault("finished", {"is later than the report was observed", "correct one of them"});
  }
  for (const std::string& trail : in.texts("trails", Presence::must)) {
    if (finished) {
      grooming.push_back({trail, *finished});
    }
  }
  in.refuse_rest();
}

std::optional<units::Instant> read_last_weather(TableReader& top,
                                                std::optional<units::Instant> observed) {
  if (!top.has("last_weather")) {
    return std::nullopt;
  }
  const auto ended = top.moment("last_weather");
  if (ended && observed && !(*ended <= *observed)) {
    top.fault("last_weather", {"is later than the report was observed", "correct one of them"});
  }
  return ended;
}

}  // namespace

snow::SiteStatus read_site_status(TableReader& top, std::optional<units::Instant> observed) {
  snow::SiteStatus status;
  status.tow_out_ready = top.yes_no("tow_out_ready", Presence::may);
  status.last_weather = read_last_weather(top, observed);
  for (TableReader& table : top.tables("status")) {
    snow::MarkStatus said = read_status(table);
    const bool twice =
        std::ranges::find(status.marks, said.mark, &snow::MarkStatus::mark) != status.marks.end();
    if (twice) {
      table.fault("mark", {"'" + said.mark + "' has a status already", "keep one of them"});
    }
    status.marks.push_back(std::move(said));
  }
  for (TableReader& table : top.tables("groomed")) {
    read_grooming(table, observed, status.grooming);
  }
  return status;
}

}  // namespace rimehaul::ports::toml
