#include "ports/gdal/utf8.h"

#include <doctest/doctest.h>

#include <string>

using rimehaul::ports::gdal::is_utf8;
using rimehaul::ports::gdal::printable;
using rimehaul::ports::gdal::short_line;

// The Unicode Standard 15.0, table 3-7: well-formed UTF-8 byte sequences, at both ends of each row.
TEST_CASE("letters at both ends of every row of the standard's table are UTF-8") {
  for (const std::string text :
       {"", "a", "\x7f", "\xc2\x80", "\xdf\xbf", "\xe0\xa0\x80", "\xe0\xbf\xbf", "\xe1\x80\x80",
        "\xec\xbf\xbf", "\xed\x80\x80", "\xed\x9f\xbf", "\xee\x80\x80", "\xef\xbf\xbf",
        "\xf0\x90\x80\x80", "\xf0\xbf\xbf\xbf", "\xf1\x80\x80\x80", "\xf3\xbf\xbf\xbf",
        "\xf4\x80\x80\x80", "\xf4\x8f\xbf\xbf"}) {
    CAPTURE(text.size());
    CHECK(is_utf8(text));
    CHECK(is_utf8("a" + text + "z"));
  }
}

TEST_CASE(
    "a step outside each row is not: long forms, surrogates, halves, beyond the last letter") {
  for (const std::string text :
       {"\x80", "\xbf", "\xc0\x80", "\xc1\xbf", "\xc2\x7f", "\xc2\xc0", "\xe0\x9f\xbf",
        "\xed\xa0\x80", "\xed\xbf\xbf", "\xe1\x80", "\xf0\x8f\xbf\xbf", "\xf4\x90\x80\x80",
        "\xf5\x80\x80\x80", "\xf1\x80\x80", "\xff", "\xfe"}) {
    CAPTURE(text.size());
    CAPTURE(static_cast<int>(static_cast<unsigned char>(text.front())));
    CHECK_FALSE(is_utf8(text));
    CHECK_FALSE(is_utf8("a" + text + "z"));
  }
}

TEST_CASE("what is shown is one line of UTF-8 whatever came in") {
  CHECK(printable("Gräben") == "Gräben");
  CHECK(printable("Gr\xe4"
                  "ben") == "Gr?ben");
  CHECK(printable("\x9b"
                  "31m\nred\x1b[0m") == "?31m red [0m");
  CHECK(printable("a\u0085b\u202ec") == "a b c");
  CHECK(printable("") == "");
}

TEST_CASE("a long name is cut between two letters") {
  const std::string fits(200, 'a');
  CHECK(short_line(fits) == fits);
  CHECK(short_line(fits + "a") == std::string(197, 'a') + "...");
  // The second letter of two bytes would end at 198.
  CHECK(short_line(std::string(196, 'a') + "üüü") == std::string(196, 'a') + "...");
  CHECK(short_line(std::string(195, 'a') + "üüü") == std::string(195, 'a') + "ü...");
}
