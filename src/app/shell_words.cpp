#include "app/shell_words.h"

namespace rimehaul::app {

namespace {

/// Goes through a line letter by letter and knows what is quoted.
class Walker {
 public:
  /// What the next letter is.
  struct Step {
    char letter = '\0';
    bool counts = true;      ///< not a quote itself, nor the backslash before a letter
    bool separates = false;  ///< a blank between words
  };

  Step next(char letter) {
    if (escaped_) {
      escaped_ = false;
      return {letter};
    }
    if (letter == '\\' && quote_ != '\'') {
      escaped_ = true;
      return {letter, false};
    }
    if (quote_ == '\0' && (letter == '\'' || letter == '"')) {
      quote_ = letter;
      return {letter, false};
    }
    if (quote_ != '\0' && letter == quote_) {
      quote_ = '\0';
      return {letter, false};
    }
    return {letter, true, quote_ == '\0' && (letter == ' ' || letter == '\t' || letter == '\n')};
  }

 private:
  char quote_ = '\0';
  bool escaped_ = false;
};

/// The words as they were typed.
std::vector<std::string> raw_words(std::string_view line) {
  std::vector<std::string> words;
  Walker walker;
  bool between = true;
  for (const char letter : line) {
    const Walker::Step step = walker.next(letter);
    if (step.separates) {
      between = true;
      continue;
    }
    if (between) {
      words.emplace_back();
      between = false;
    }
    words.back() += letter;
  }
  if (between) {
    words.emplace_back();
  }
  return words;
}

}  // namespace

std::vector<std::string> words_of_line(std::string_view line) {
  std::vector<std::string> words;
  for (const std::string& raw : raw_words(line)) {
    Walker walker;
    std::string word;
    for (const char letter : raw) {
      if (walker.next(letter).counts) {
        word += letter;
      }
    }
    words.push_back(std::move(word));
  }
  return words;
}

std::vector<std::string> pieces_of_line(std::string_view line) {
  std::vector<std::string> pieces;
  for (std::string& word : raw_words(line)) {
    if (pieces.empty() || word.starts_with("--")) {
      pieces.push_back(std::move(word));
    } else {
      pieces.back() += " " + word;
    }
  }
  return pieces;
}

}  // namespace rimehaul::app
