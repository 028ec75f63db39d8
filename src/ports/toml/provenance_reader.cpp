// Reads provenance, and refuses a rating that nobody stands for.
#include "ports/toml/provenance_reader.h"

#include <array>
#include <string>
#include <utility>

namespace rimehaul::ports::toml {

namespace {

using rig::Standing;

constexpr std::array<Word<Standing>, 5> kStandings{{{"maker", Standing::maker},
                                                    {"published", Standing::published},
                                                    {"site_measured", Standing::site_measured},
                                                    {"site_limit", Standing::site_limit},
                                                    {"estimate", Standing::estimate}}};

}  // namespace

std::optional<rig::Provenance> read_provenance(TableReader& in, Estimates estimates) {
  const std::optional<Standing> standing = in.word("standing", kStandings);
  const bool by_site = standing == Standing::site_measured || standing == Standing::site_limit;
  const std::optional<std::string> source = in.text("source");
  const std::optional<std::string> date = in.day("date", by_site ? Presence::must : Presence::may);
  if (standing == Standing::estimate && estimates == Estimates::refused) {
    in.fault("standing", {"an estimate is no rating",
                          "name the maker's manual, or a site limit with its person and date"});
    return std::nullopt;
  }
  if (!standing || !source || (by_site && !date)) {
    return std::nullopt;
  }
  return rig::Provenance{.standing = *standing, .source = *source + (date ? ", " + *date : "")};
}

std::optional<SteepestRead> read_steepest(TableReader in, Range range, Estimates estimates) {
  const std::size_t faults_before = in.faults();
  const double deg = in.must<double>("deg", range);
  std::optional<rig::Provenance> provenance = read_provenance(in, estimates);
  in.refuse_rest();
  if (!provenance || in.faults() != faults_before) {
    return std::nullopt;
  }
  return SteepestRead{.deg = deg, .provenance = std::move(*provenance)};
}

std::optional<rig::Rating> read_rating(TableReader& in, std::string_view key) {
  constexpr Range kSteepest{.above = 0, .to = 60};
  auto table = in.table_if_there(key);
  if (!table) {
    return std::nullopt;
  }
  auto read = read_steepest(*table, kSteepest, Estimates::refused);
  if (!read) {
    return std::nullopt;
  }
  return rig::Rating{.steepest = units::Slope::from_degrees(read->deg),
                     .provenance = std::move(read->provenance)};
}

}  // namespace rimehaul::ports::toml
