#include "card/csv.h"

#include <doctest/doctest.h>

using rimehaul::card::csv_record;
using rimehaul::card::csv_text;

TEST_CASE("hostile names stay one cell: commas, quotes and line breaks are quoted (RFC 4180)") {
  CHECK(csv_record({"a", "b"}) == "a,b\r\n");
  CHECK(csv_record({"", ""}) == ",\r\n");
  CHECK(csv_record({"Fell, upper"}) == "\"Fell, upper\"\r\n");
  CHECK(csv_record({"the \"Nose\""}) == "\"the \"\"Nose\"\"\"\r\n");  // RFC 4180, 2.7
  CHECK(csv_record({"two\nlines", "two\rlines"}) == "\"two\nlines\",\"two\rlines\"\r\n");
  CHECK(csv_record({"Skúli"}) == "Skúli\r\n");
}

TEST_CASE("a name that a spreadsheet would run is shown, not run") {
  CHECK(csv_text("=1+1") == "'=1+1");
  CHECK(csv_text("+Ridge") == "'+Ridge");
  CHECK(csv_text("-Ridge") == "'-Ridge");
  CHECK(csv_text("@Ridge") == "'@Ridge");
  CHECK(csv_text("\tRidge") == "'\tRidge");
  CHECK(csv_text("Ridge = top") == "Ridge = top");
  CHECK(csv_text("").empty());
}
