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

std::vector<std::string> rating_lines(const rig::Rig& rig) {
  const rig::SlopeRatings& ratings = rig::ratings_in_force(rig);
  std::vector<std::string> lines{"climb " + rating_words(ratings.climb),
                                 "descent " + rating_words(ratings.descent),
                                 "cross-slope " + rating_words(ratings.cross)};
  const auto add = [&](std::string_view name, const std::optional<rig::Rating>& rating) {
    if (rating) {
      lines.push_back(std::string{name} + " " + rating_words(rating));
    }
  };
  if (rig.trailer) {
    add("trailer climb", rig.trailer->climb);
    add("trailer descent", rig.trailer->descent);
    add("trailer cross-slope", rig.trailer->cross);
  }
  return lines;
}

}  // namespace rimehaul::card
