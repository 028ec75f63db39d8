// The name that somebody most likely meant.
#include "base/nearest_name.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

namespace rimehaul {

namespace {

using base::nearest_name;

const std::vector<std::string> kKeys{"payload", "gauge", "length", "width", "mass"};

}  // namespace

TEST_CASE("a slip of one letter finds the name that was meant") {
  CHECK(nearest_name("paylod", kKeys) == "payload");
  CHECK(nearest_name("gaugee", kKeys) == "gauge");
  CHECK(nearest_name("lenght", kKeys) == "length");
  CHECK(nearest_name("mass", kKeys) == "mass");
}

// "kitten" to "sitting" takes 3 changes (Levenshtein 1966, the usual example, value from memory);
// a third of 7 letters rounded up is 3.
TEST_CASE("as many changes as a third of the name are still close, one more is not") {
  CHECK(nearest_name("kitten", std::vector<std::string>{"sitting"}) == "sitting");
  CHECK_FALSE(nearest_name("kixten", std::vector<std::string>{"sitting"}).has_value());
}

TEST_CASE("nothing like it finds nothing, and so does an empty list") {
  CHECK_FALSE(nearest_name("colour", kKeys).has_value());
  CHECK_FALSE(nearest_name("", kKeys).has_value());
  CHECK_FALSE(nearest_name("payload", {}).has_value());
}

TEST_CASE("of two equally near names the first known one is taken, and the nearer beats it") {
  CHECK(nearest_name("bat", std::vector<std::string>{"cat", "hat"}) == "cat");
  CHECK(nearest_name("bats", std::vector<std::string>{"cats", "bat"}) == "cats");
  CHECK(nearest_name("lengths", std::vector<std::string>{"lengthy", "lengths"}) == "lengths");
}

}  // namespace rimehaul
