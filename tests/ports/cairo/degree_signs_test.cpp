// Signs for degrees, and names that only look like them.
#include "ports/cairo/degree_signs.h"

#include <doctest/doctest.h>

using rimehaul::ports::cairo::with_degree_signs;

TEST_CASE("degrees behind a number get their sign, of angles and of Celsius") {
  CHECK(with_degree_signs("7.2 deg (12.7 %), up to 9.1 deg") ==
        "7.2\u00b0 (12.7 %), up to 9.1\u00b0");
  CHECK(with_degree_signs("no rain, -5 deg C") == "no rain, -5 \u00b0C");
  CHECK(with_degree_signs("-5 deg C, cloud") == "-5 \u00b0C, cloud");
}

TEST_CASE("a name behind an angle is no Celsius, and words stay words") {
  CHECK(with_degree_signs("060 deg Crow Top") == "060\u00b0 Crow Top");
  CHECK(with_degree_signs("060 deg C\u00f4te") == "060\u00b0 C\u00f4te");
  CHECK(with_degree_signs("within 15 degrees") == "within 15 degrees");
  CHECK(with_degree_signs("Hut deg Nord, deg") == "Hut deg Nord, deg");
  CHECK(with_degree_signs("").empty());
}
