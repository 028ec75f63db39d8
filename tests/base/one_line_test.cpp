#include "base/one_line.h"

#include <doctest/doctest.h>

#include <string>

using rimehaul::base::has_controls;
using rimehaul::base::is_one_line;
using rimehaul::base::one_line;

TEST_CASE("letters of any tongue stay as they are") {
  for (const std::string text : {"", "North Bowl", "Gräben", "Верх", "\u00a0", "\u2027\u2030",
                                 "\u2065\u206a", "\U0001F3BF"}) {
    CAPTURE(text);
    CHECK_FALSE(has_controls(text));
    CHECK(one_line(text) == text);
  }
}

TEST_CASE("what steers a terminal, breaks a line or turns the writing becomes one blank") {
  for (const std::string control :
       {"\n", "\r", "\t", "\x1b", "\x7f", "\u0080", "\u0085", "\u009b", "\u009f", "\u2028",
        "\u2029", "\u202a", "\u202e", "\u2066", "\u2069"}) {
    CAPTURE(control);
    CHECK(has_controls("a" + control + "b"));
    CHECK(one_line("a" + control + "b") == "a b");
    CHECK(has_controls(control));
  }
  CHECK(one_line(std::string("a\0b", 3)) == "a b");
  CHECK(has_controls(std::string("a\0", 2)));
}

TEST_CASE("text for people has 1 to 200 bytes") {
  CHECK_FALSE(is_one_line(""));
  CHECK_FALSE(is_one_line("  "));
  CHECK(is_one_line("a"));
  CHECK(is_one_line(std::string(200, 'a')));
  CHECK_FALSE(is_one_line(std::string(201, 'a')));
  CHECK_FALSE(is_one_line("two\nlines"));
}

TEST_CASE("text that ends within a letter is no control") {
  CHECK_FALSE(has_controls("\xc2"));
  CHECK_FALSE(has_controls("\xe2\x80"));
  CHECK(one_line("\xe2\x80") == "\xe2\x80");
}
