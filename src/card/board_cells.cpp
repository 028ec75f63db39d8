#include "card/board_cells.h"

#include <cmath>

#include "base/joined.h"
#include "card/csv.h"
#include "card/words.h"
#include "units/rounding.h"

namespace rimehaul::card {

namespace {

using units::Round;

std::string number(double value, int decimals, Round round) {
  return std::isfinite(value) ? units::text_of(value, decimals, round) : "";
}

std::vector<std::string> opens_by(const BoardRow& row) {
  std::vector<std::string> loads = words::opens_with_loads(row.loads);
  for (std::string& load : loads) {
    load += row.and_decision ? " and a decision" : "";
  }
  return loads;
}

}  // namespace

std::vector<std::string> board_cell_heads() {
  return {"verdict", "worst_share", "share_allowed", "check",    "check_share", "reason", "found",
          "time_s",  "length_m",    "fuel_l",        "opens_by", "decision",    "way"};
}

std::vector<std::string> board_cells(const BoardRow& row, double allowed_share) {
  constexpr int kShareDecimals = 4;
  const bool open = row.verdict == passage::Verdict::open;
  const auto if_open = [open](double value, int decimals) {
    return open ? number(value, decimals, Round::up) : "";
  };
  const auto& binding = row.binding;
  return {passage::words_for(row.verdict),
          if_open(row.worst_share, kShareDecimals),
          number(allowed_share, kShareDecimals, Round::down),
          binding ? std::string{passage::facts_of(binding->check).key} : "",
          binding && binding->share ? number(*binding->share, kShareDecimals, Round::up) : "",
          csv_text(reason_of(row)),
          csv_text(binding ? words::outcome(*binding) : row.why),
          if_open(row.time.value(), 0),
          if_open(row.length.value(), 0),
          if_open(row.fuel.value(), 1),
          csv_text(base::joined(opens_by(row), "; ")),
          csv_text(row.decision),
          csv_text(base::joined(row.way, "; "))};
}

std::vector<std::string> load_cells(const rig::Load& load, const std::string& trailer) {
  return {number(load.bed.value(), 0, Round::nearest),
          trailer.empty() ? "" : number(load.towed.value(), 0, Round::nearest)};
}

}  // namespace rimehaul::card
