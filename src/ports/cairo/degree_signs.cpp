#include "ports/cairo/degree_signs.h"

#include <string_view>

namespace rimehaul::ports::cairo {

namespace {

bool is_digit(char letter) {
  return '0' <= letter && letter <= '9';
}

bool is_letter(char letter) {
  return ('a' <= letter && letter <= 'z') || ('A' <= letter && letter <= 'Z');
}

}  // namespace

std::string with_degree_signs(std::string text) {
  constexpr std::string_view kWord = " deg";
  constexpr std::string_view kCelsius = " deg C";
  for (std::size_t at = text.find(kWord); at != std::string::npos; at = text.find(kWord, at + 1)) {
    const std::size_t end = at + kWord.size();
    const bool whole_word = end == text.size() || !is_letter(text[end]);
    if (at == 0 || !is_digit(text[at - 1]) || !whole_word) {
      continue;
    }
    const bool celsius = text.compare(at, kCelsius.size(), kCelsius) == 0;
    text.replace(at, celsius ? kWord.size() + 1 : kWord.size(), celsius ? " \u00b0" : "\u00b0");
  }
  return text;
}

}  // namespace rimehaul::ports::cairo
