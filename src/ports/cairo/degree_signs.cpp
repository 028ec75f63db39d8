#include "ports/cairo/degree_signs.h"

#include <string_view>

namespace rimehaul::ports::cairo {

namespace {

bool is_digit(char letter) {
  return '0' <= letter && letter <= '9';
}

bool is_letter(char letter) {
  return ('a' <= letter && letter <= 'z') || ('A' <= letter && letter <= 'Z') ||
         static_cast<unsigned char>(letter) >= 0x80;
}

/// Whether a word stands at a place and ends there: "deg" is none in "degrees", nor "deg C" in
/// "060 deg Crow Top".
bool stands_at(std::string_view text, std::size_t at, std::string_view word) {
  const std::size_t end = at + word.size();
  return text.substr(at, word.size()) == word && (end == text.size() || !is_letter(text[end]));
}

}  // namespace

std::string with_degree_signs(std::string text) {
  constexpr std::string_view kWord = " deg";
  constexpr std::string_view kCelsius = " deg C";
  for (std::size_t at = text.find(kWord); at != std::string::npos; at = text.find(kWord, at + 1)) {
    if (at == 0 || !is_digit(text[at - 1]) || !stands_at(text, at, kWord)) {
      continue;
    }
    const bool celsius = stands_at(text, at, kCelsius);
    text.replace(at, celsius ? kWord.size() + 1 : kWord.size(), celsius ? " \u00b0" : "\u00b0");
  }
  return text;
}

}  // namespace rimehaul::ports::cairo
