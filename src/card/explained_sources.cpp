#include "card/explained_sources.h"

#include <algorithm>
#include <array>

#include "card/rating_words.h"
#include "card/words.h"

namespace rimehaul::card {

namespace {

using passage::Check;
using passage::Finding;

std::string provenance_of(const std::optional<rig::Rating>& rating) {
  return rating ? provenance_words(rating->provenance) : std::string{"nobody has given one"};
}

/// The trailer's rating that a finding was held against.
const std::optional<rig::Rating>* trailer_rating_in(const Finding& finding,
                                                    const rig::Trailer& trailer) {
  struct Named {
    std::string_view symbol;
    const std::optional<rig::Rating>& rating;
  };
  const std::array<Named, 3> ratings{{{"rated_climb", trailer.climb},
                                      {"rated_descent", trailer.descent},
                                      {"rated_cross", trailer.cross}}};
  for (const Named& named : ratings) {
    for (const passage::Input& input : finding.inputs.all()) {
      if (input.name == named.symbol) {
        return &named.rating;
      }
    }
  }
  return nullptr;
}

std::string trailer_source(const Finding& finding, const rig::Rig& rig) {
  const auto* rating = rig.trailer ? trailer_rating_in(finding, *rig.trailer) : nullptr;
  return rating == nullptr ? std::string{"sheet of the trailer"} : provenance_of(*rating);
}

std::string sheet_words(const std::string& name, const rig::Provenance& provenance) {
  return "sheet of " + name + ": " + provenance_words(provenance);
}

}  // namespace

std::vector<std::string> sources_of(const passage::Judge& judge,
                                    const std::vector<std::optional<snow::SnowState>>& states) {
  std::vector<std::string> sources;
  for (const auto& state : states) {
    if (!state) {
      continue;
    }
    if (const auto& row = judge.grip().row(*state)) {
      sources.push_back("grip of " + words::snow_state(*state) + ": " +
                        std::string{words::grip_standing(row->standing)} + ": " + row->source);
    }
  }
  const rig::Rig& rig = judge.rig();
  sources.push_back(sheet_words(rig.carrier.name, rig.carrier.provenance));
  if (rig.trailer) {
    sources.push_back(sheet_words(rig.trailer->name, rig.trailer->provenance));
  }
  for (const std::string& line : rating_lines(rig)) {
    sources.push_back("rating: " + line);
  }
  return sources;
}

std::string source_of(const Finding& finding, const rig::Rig& rig) {
  const rig::SlopeRatings& ratings = rig::ratings_in_force(rig);
  switch (finding.check) {
    case Check::climb_rating:
      return provenance_of(ratings.climb);
    case Check::descent_rating:
      return provenance_of(ratings.descent);
    case Check::cross_rating:
      return provenance_of(ratings.cross);
    case Check::trailer_rating:
      return trailer_source(finding, rig);
    case Check::towed_mass:
    case Check::payload:
    case Check::seats:
      return sheet_words(rig.carrier.name, rig.carrier.provenance);
    case Check::trailer_payload:
      return rig.trailer ? sheet_words(rig.trailer->name, rig.trailer->provenance)
                         : std::string{"nothing is towed"};
    case Check::hitch_vertical:
      return std::string{passage::facts_of(finding.check).source} + "; rated by the " +
             sheet_words(rig.carrier.name, rig.carrier.provenance);
    default:
      return std::string{passage::facts_of(finding.check).source};
  }
}

}  // namespace rimehaul::card
