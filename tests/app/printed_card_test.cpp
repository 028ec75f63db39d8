// `route --card` as its user meets it: a PDF, its record, and a symbol that ties the two together.
#include <doctest/doctest.h>

#include <fstream>
#include <sstream>

#include "app/tiny_site.h"
#include "ports/openssl/digest.h"
#include "told.h"

namespace rimehaul::app {
namespace {

using testing::Ran;
using testing::route_words;
using testing::run_command;
using testing::TinySite;

std::string bytes_of(const std::string& path) {
  std::ifstream file{path, std::ios::binary};
  std::ostringstream bytes;
  bytes << file.rdbuf();
  return bytes.str();
}

/// What a camera reads on the back of the card, from a picture of the page.
std::string symbol_on(const std::string& pdf) {
  const std::string command = "pdftoppm -r 110 -f 2 -png '" + pdf + "' '" + pdf +
                              "' && zbarimg -q --raw '" + pdf + "'-*.png 2>/dev/null";
  return testing::told_by(command);
}

TEST_CASE("the symbol on the back, read from 110 dots to the inch, names the record's own digest") {
  const TinySite site;
  const std::string pdf = site.path("card.pdf");
  const Ran ran = run_command(route_words(site, {"--card", pdf, "--now", "2026-02-01T10:00:00Z"}));
  CAPTURE(ran.err);
  REQUIRE(ran.status == Status::yes);
  const std::string record = bytes_of(pdf + ".record.json");
  const std::string digest = ports::openssl::digest_of(record).hex();
  const std::string symbol = symbol_on(pdf);
  CAPTURE(symbol);
  CHECK(symbol.find("RIMEHAUL CARD ") == 0);
  CHECK(symbol.find(" SHA-256 " + digest) != std::string::npos);
}

TEST_CASE("the same question at the same --now prints the same bytes") {
  const TinySite site;
  const std::string one = site.path("one.pdf");
  const std::string two = site.path("two.pdf");
  REQUIRE(run_command(route_words(site, {"--card", one, "--now", "2026-02-01T10:00:00Z"})).status ==
          Status::yes);
  REQUIRE(run_command(route_words(site, {"--card", two, "--now", "2026-02-01T10:00:00Z"})).status ==
          Status::yes);
  CHECK(bytes_of(one).size() > 10'000);
  CHECK(bytes_of(one) == bytes_of(two));
}

TEST_CASE("a card that cannot be written is one line, and leaves nothing half done") {
  const TinySite site;
  const Ran ran = run_command(route_words(site, {"--card", site.path("no/such/folder/card.pdf")}));
  CHECK(ran.status == Status::bad_input);
  CHECK(ran.err.find("card.pdf") != std::string::npos);
}

}  // namespace
}  // namespace rimehaul::app
