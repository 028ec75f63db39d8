// The door for the words of a command line.
#pragma once

#include <string>
#include <vector>

namespace rimehaul::app {

/// Throws WrongUsage unless every word is UTF-8 on one line, of 1 to 4096 bytes. So nothing that
/// was typed can steer a screen, break a line of a card, or be no text at all.
void expect_plain_words(const std::vector<std::string>& words);

}  // namespace rimehaul::app
