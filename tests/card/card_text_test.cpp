#include <doctest/doctest.h>

#include <sstream>

#include "card/card_text.h"
#include "card/sample_card.h"

namespace rimehaul::card {
namespace {

constexpr const char* kGolden = R"(
)";

TEST_CASE("the card reads as agreed, letter by letter, and the same twice") {
  const RouteCard card = testing::sample_card();
  CHECK(text_of(card, 80) == std::string{kGolden}.substr(1));
  CHECK(text_of(card, 80) == text_of(card, 80));
}

TEST_CASE("no line of the card is wider than asked for, whatever the names") {
  RouteCard card = testing::sample_card();
  card.title =
      "H\u00FCtte am B\u00E4renjoch und Sankt-Sebastian-im-Schnee-Materialseilbahn-Talstation to "
      "\u96EA\u5C71";
  card.legs[0].trail = std::string(200, 'x');
  for (const int columns : {60, 80, 120}) {
    std::istringstream lines{text_of(card, columns)};
    for (std::string line; std::getline(lines, line);) {
      CAPTURE(line);
      CHECK(width_of(line) <= columns);
    }
  }
}

}  // namespace
}  // namespace rimehaul::card
