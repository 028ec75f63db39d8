#include "card/layout.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>

namespace rimehaul::card {

namespace {

struct Letter {
  char32_t code = 0;
  std::size_t bytes = 1;
};

/// The letter at the front of UTF-8 text; a byte that starts none stands for itself.
Letter first_letter(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text.front());
  std::size_t bytes = 1;
  char32_t code = lead;
  if (lead >= 0xF0 && lead < 0xF8) {
    bytes = 4;
    code = lead & 0x07U;
  } else if (lead >= 0xE0 && lead < 0xF0) {
    bytes = 3;
    code = lead & 0x0FU;
  } else if (lead >= 0xC2 && lead < 0xE0) {
    bytes = 2;
    code = lead & 0x1FU;
  }
  if (bytes > text.size()) {
    return {lead, 1};
  }
  for (std::size_t i = 1; i < bytes; ++i) {
    const auto next = static_cast<unsigned char>(text[i]);
    if ((next & 0xC0U) != 0x80U) {
      return {lead, 1};
    }
    code = (code << 6U) | (next & 0x3FU);
  }
  return {code, bytes};
}

struct CodeRange {
  char32_t first;
  char32_t last;
};

template <std::size_t Count>
bool among(char32_t code, const std::array<CodeRange, Count>& ranges) {
  return std::ranges::any_of(
      ranges, [&](const CodeRange& range) { return code >= range.first && code <= range.last; });
}

/// Widths by the blocks of the Unicode Standard, annex 11 (East Asian Width), in broad strokes.
int columns_of(char32_t code) {
  constexpr std::array<CodeRange, 6> kCombining{{{0x0300, 0x036F},
                                                 {0x1AB0, 0x1AFF},
                                                 {0x1DC0, 0x1DFF},
                                                 {0x200B, 0x200F},
                                                 {0x20D0, 0x20FF},
                                                 {0xFE00, 0xFE2F}}};
  constexpr std::array<CodeRange, 8> kWide{{{0x1100, 0x115F},
                                            {0x2E80, 0xA4CF},
                                            {0xAC00, 0xD7A3},
                                            {0xF900, 0xFAFF},
                                            {0xFE30, 0xFE6F},
                                            {0xFF00, 0xFF60},
                                            {0x1F300, 0x1FAFF},
                                            {0x20000, 0x3FFFD}}};
  if (among(code, kCombining)) {
    return 0;
  }
  return among(code, kWide) ? 2 : 1;
}

/// Bytes of the longest front of a word that fits; at least one letter, with its combining marks.
std::size_t fitting_front(std::string_view word, int columns) {
  std::size_t bytes = 0;
  int used = 0;
  while (bytes < word.size()) {
    const Letter letter = first_letter(word.substr(bytes));
    const int wide = columns_of(letter.code);
    if (bytes > 0 && used + wide > columns) {
      break;
    }
    used += wide;
    bytes += letter.bytes;
  }
  return bytes;
}

/// Whether a word is a unit, which stays on the line of its number.
bool is_unit(std::string_view word) {
  constexpr std::array<std::string_view, 13> kUnits{"%", "m",   "km", "kg",  "L",    "h", "min",
                                                    "s", "deg", "cm", "m/s", "km/h", "N"};
  word = word.substr(0, word.find_last_not_of(",;:.)") + 1);
  return std::ranges::find(kUnits, word) != kUnits.end();
}

bool ends_in_digit(std::string_view word) {
  return !word.empty() && word.back() >= '0' && word.back() <= '9';
}

std::vector<std::string_view> words_in(std::string_view text) {
  std::vector<std::string_view> words;
  while (!text.empty()) {
    const std::size_t space = text.find(' ');
    const std::string_view word = text.substr(0, space);
    if (!words.empty() && ends_in_digit(words.back()) && is_unit(word) &&
        words.back().data() + words.back().size() + 1 == word.data()) {
      words.back() = {words.back().data(), words.back().size() + 1 + word.size()};
    } else if (space != 0) {
      words.push_back(word);
    }
    text.remove_prefix(space == std::string_view::npos ? text.size() : space + 1);
  }
  return words;
}

}  // namespace

int width_of(std::string_view text) {
  int width = 0;
  while (!text.empty()) {
    const Letter letter = first_letter(text);
    width += columns_of(letter.code);
    text.remove_prefix(letter.bytes);
  }
  return width;
}

std::string filled(std::string_view text, int width) {
  const int missing = std::max(width - width_of(text), 1);
  return std::string{text} + std::string(static_cast<std::size_t>(missing), ' ');
}

std::string set_right(std::string_view text, int width) {
  const int missing = std::max(width - width_of(text), 0);
  return std::string(static_cast<std::size_t>(missing), ' ') + std::string{text};
}

std::vector<std::string> folded(std::string_view text, const Fold& fold) {
  const std::string hang(static_cast<std::size_t>(fold.hang), ' ');
  std::vector<std::string> lines;
  std::string line;
  bool line_has_word = false;
  const auto next_line = [&] {
    lines.push_back(line);
    line = hang;
    line_has_word = false;
  };
  for (std::string_view word : words_in(text)) {
    const int gap = line_has_word ? 1 : 0;
    if (line_has_word && width_of(line) + gap + width_of(word) > fold.columns) {
      next_line();
    }
    line += line_has_word ? " " : "";
    while (width_of(line) + width_of(word) > fold.columns) {
      const std::size_t front = fitting_front(word, fold.columns - width_of(line));
      line += word.substr(0, front);
      word.remove_prefix(front);
      next_line();
    }
    line += word;
    line_has_word = true;
  }
  lines.push_back(line);
  return lines;
}

void Sheet::heading(std::string_view title) {
  if (!text_.empty()) {
    blank();
  }
  paragraph(title);
}

void Sheet::rule(char letter) {
  text_ += std::string(static_cast<std::size_t>(columns_), letter) + "\n";
}

void Sheet::blank() {
  text_ += '\n';
}

void Sheet::paragraph(std::string_view text) {
  labelled({0, 0, ""}, text);
}

void Sheet::labelled(const Label& label, std::string_view text) {
  const int margin = label.indent + label.width;
  std::string front(static_cast<std::size_t>(label.indent), ' ');
  front += label.words;
  const int missing = margin - width_of(front);
  front += std::string(static_cast<std::size_t>(std::max(missing, 0)), ' ');
  bool first = true;
  for (const std::string& line : folded(text, {columns_ - margin, 0})) {
    text_ += first ? front : std::string(static_cast<std::size_t>(margin), ' ');
    text_ += line;
    text_ += '\n';
    first = false;
  }
}

void Sheet::labelled(const Label& label, const Ends& ends) {
  const int margin = label.indent + label.width;
  const int gap = columns_ - margin - width_of(ends.left) - width_of(ends.right);
  if (gap < 2) {
    labelled(label, ends.left);
    labelled({margin, 0, ""}, ends.right);
    return;
  }
  labelled(label, ends.left);
  text_.pop_back();
  text_ += std::string(static_cast<std::size_t>(gap), ' ');
  text_ += ends.right;
  text_ += '\n';
}

void Sheet::as_it_stands(std::string_view line) {
  text_ += line;
  text_ += '\n';
}

void Sheet::list(std::string_view bullet, const std::vector<std::string>& entries) {
  for (const std::string& entry : entries) {
    labelled({0, width_of(bullet) + 1, bullet}, entry);
  }
}

}  // namespace rimehaul::card
