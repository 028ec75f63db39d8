// Ratings and what they rest on, in words.
#include "card/rating_words.h"

#include "units/rounding.h"

namespace rimehaul::card {

std::string rating_words(const std::optional<rig::Rating>& rating) {
  if (!rating) {
    return "not given, so closed";
  }
  return units::text_of(rating->steepest, units::Round::down) + ", " +
         provenance_words(rating->provenance);
}

std::string provenance_words(const rig::Provenance& provenance) {
  const std::string standing = rig::words_for(provenance.standing);
  return provenance.source.empty() ? standing : standing + ": " + provenance.source;
}

}  // namespace rimehaul::card
