#include "app/shell_words.h"

#include <doctest/doctest.h>

#include "told.h"

namespace rimehaul::app {
namespace {

using Words = std::vector<std::string>;

TEST_CASE("a line falls into words as the shell itself takes it apart") {
  for (const std::string line : {"a b  c", "route \"Fell Lodge\" x", "a\\ b 'c \" d' \"e ' f\"",
                                 "--rig=\"Two Words\"", "''", "a''b \"\"", "a\\\"b"}) {
    CAPTURE(line);
    std::string told;
    for (const std::string& word : words_of_line(line)) {
      told += "[" + word + "]";
    }
    CHECK(told == testing::told_by("printf '[%s]' " + line));
  }
}

TEST_CASE(
    "the last word is the one at the end of the line, empty after a blank, open quotes and all") {
  CHECK(words_of_line("a b ") == Words{"a", "b", ""});
  CHECK(words_of_line("") == Words{""});
  CHECK(words_of_line("a \"Fell Lo") == Words{"a", "Fell Lo"});
  CHECK(words_of_line("a Fell\\ ") == Words{"a", "Fell "});
}

TEST_CASE("a line is cut before options, never between one and its value") {
  CHECK(pieces_of_line("p v SITE --rig \"A B\" --load 4") ==
        Words{"p v SITE", "--rig \"A B\"", "--load 4"});
}

}  // namespace
}  // namespace rimehaul::app
