// Reads rigs.toml: the machines first, then the rigs that are made of them.
#include "ports/toml/rig_sheets.h"

#include <map>
#include <optional>
#include <string>
#include <utility>

#include "base/nearest_name.h"
#include "ports/toml/machine_reader.h"
#include "ports/toml/table_reader.h"

namespace rimehaul::ports::toml {

namespace {

/// Machines by name; nothing for one whose sheet has a fault, which was told of there.
template <class Machine>
using Sheets = std::map<std::string, std::optional<Machine>>;

template <class Machine, class Read>
Sheets<Machine> sheets_in(TableReader in, Read read) {
  Sheets<Machine> sheets;
  for (const NamedReader& sheet : in.named_tables()) {
    sheets[sheet.name] = read(sheet);
  }
  return sheets;
}

/// The machine that a rig names under a key; complains when there is no sheet of that name.
template <class Machine>
std::optional<Machine> machine_named(TableReader& in, std::string_view key,
                                     const Sheets<Machine>& sheets) {
  const std::optional<std::string> name = in.text(key);
  if (!name) {
    return std::nullopt;
  }
  const auto sheet = sheets.find(*name);
  if (sheet != sheets.end()) {
    return sheet->second;
  }
  std::vector<std::string> known;
  for (const auto& [each, machine] : sheets) {
    known.push_back(each);
  }
  const auto nearest = base::nearest_name(*name, known);
  in.fault(key, {"there is no sheet named \"" + *name + "\"",
                 nearest ? "did you mean \"" + *nearest + "\"?" : "write its sheet in this file"});
  return std::nullopt;
}

std::optional<rig::Rig> read_rig(const NamedReader& named, const Sheets<rig::Carrier>& carriers,
                                 const Sheets<rig::Trailer>& trailers) {
  TableReader in = named.reader;
  const std::size_t faults_before = in.faults();
  const auto carrier = machine_named(in, "carrier", carriers);
  const bool tows = in.has("trailer");
  const auto trailer =
      tows ? machine_named(in, "trailer", trailers) : std::optional<rig::Trailer>{};
  const auto level = in.text("driver_level");
  in.refuse_rest();
  const bool is_whole = carrier && level && trailer.has_value() == tows;
  if (!is_whole || in.faults() != faults_before) {
    return std::nullopt;
  }
  rig::Rig rig;
  rig.name = named.name;
  rig.carrier = *carrier;
  rig.trailer = trailer;
  rig.driver_level = *level;
  rig.load.fuel = carrier->tank;
  return rig;
}

}  // namespace

base::Reading<std::vector<rig::Rig>> read_rigs(const TextFile& file) {
  FaultLog log{file.shown};
  const Node root = parse_file(file);
  TableReader top{root, "", log};
  top.expect_schema();

  const auto carriers = sheets_in<rig::Carrier>(top.table("carrier"), read_carrier);
  const auto trailers = sheets_in<rig::Trailer>(top.table("trailer"), read_trailer);
  std::vector<rig::Rig> rigs;
  TableReader named_rigs = top.table("rig");
  const std::vector<NamedReader> named = named_rigs.named_tables();
  for (const NamedReader& each : named) {
    if (auto rig = read_rig(each, carriers, trailers)) {
      rigs.push_back(std::move(*rig));
    }
  }
  if (named.empty()) {
    top.fault("rig", {"there is no rig", "write one under [rig.NAME]"});
  }
  top.refuse_rest();
  return {.data = std::move(rigs), .faults = log.in_order()};
}

}  // namespace rimehaul::ports::toml
