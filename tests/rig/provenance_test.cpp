// The words for how well a number is founded.
#include "rig/provenance.h"

#include <doctest/doctest.h>

#include <string>

namespace rimehaul::rig {

TEST_CASE("every standing of a number has its own words") {
  CHECK(std::string{words_for(Standing::maker)} == "maker");
  CHECK(std::string{words_for(Standing::published)} == "published");
  CHECK(std::string{words_for(Standing::site_measured)} == "measured by the site");
  CHECK(std::string{words_for(Standing::site_limit)} == "limit set by the site");
  CHECK(std::string{words_for(Standing::estimate)} == "estimate");
}

TEST_CASE("a standing that is none of them is told as the weakest, an estimate") {
  CHECK(std::string{words_for(static_cast<Standing>(5))} == "estimate");
  CHECK(Provenance{}.standing == Standing::estimate);
}

}  // namespace rimehaul::rig
