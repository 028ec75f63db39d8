// Reads a list of errands.
#include "ports/toml/errands_file.h"

#include <utility>

#include "ports/toml/table_reader.h"

namespace rimehaul::ports::toml {

namespace {

using units::Kilograms;

constexpr Range kLoad{.from = 0, .to = 10'000};

day::Errand read_errand(TableReader in) {
  day::Errand errand;
  errand.what = in.text("what").value_or("");
  errand.from = in.text("from").value_or("");
  errand.to = in.text("to").value_or("");
  if (!errand.from.empty() && errand.from == errand.to) {
    in.fault("to", {"is where it is taken from", "name the station that it is for"});
  }
  const std::size_t faults_before = in.faults();
  errand.bed = in.may<Kilograms>("load_kg", kLoad).value_or(errand.bed);
  errand.towed = in.may<Kilograms>("towed_load_kg", kLoad).value_or(errand.towed);
  errand.passengers =
      in.whole("passengers", {.from = 0, .to = 20}, Presence::may).value_or(errand.passengers);
  const bool is_something =
      errand.bed > Kilograms{0} || errand.towed > Kilograms{0} || errand.passengers > 0;
  if (!is_something && in.faults() == faults_before) {
    in.fault({"takes nothing along", "say load_kg, towed_load_kg or passengers"});
  }
  in.refuse_rest();
  return errand;
}

}  // namespace

base::Reading<day::Round> read_errands(const TextFile& file) {
  FaultLog log{file.shown};
  const Node root = parse_file(file);
  TableReader top{root, "", log};
  top.expect_schema();
  day::Round round;
  round.start = top.text("start").value_or("");
  round.end = top.text("end", Presence::may).value_or("");
  for (TableReader& table : top.tables("errand")) {
    const std::size_t faults_before = log.count();
    day::Errand errand = read_errand(table);
    if (log.count() == faults_before) {
      round.errands.push_back(std::move(errand));
    }
  }
  if (round.errands.empty() && log.count() == 0) {
    top.fault("errand", {"there is none", "write what is to be taken where under [[errand]]"});
  }
  top.refuse_rest();
  return {.data = std::move(round), .faults = log.in_order()};
}

}  // namespace rimehaul::ports::toml
