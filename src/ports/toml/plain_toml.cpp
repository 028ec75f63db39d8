#include "ports/toml/plain_toml.h"

#include <string>
#include <utility>

#include "base/fault.h"
#include "ports/toml/fault_log.h"

namespace rimehaul::ports::toml {

namespace {

/// Walks over a text letter by letter and knows what it is in.
class Walk {
 public:
  Walk(std::string_view text, const TextFile& file) : text_{text}, file_{&file} {}

  void to_the_end() {
    if (text_.starts_with("\xff\xfe") || text_.starts_with("\xfe\xff")) {
      refuse({"the file is UTF-16", "store it as UTF-8"});
    }
    // A mark of the byte order, as some editors write one, is not looked at.
    at_ = text_.starts_with("\xef\xbb\xbf") ? 3 : 0;
    for (; at_ < text_.size(); step()) {
      if (text_[at_] == '\n') {
        within_ = kNothing;
        before_ = '\n';
      } else if (within_ == kNothing) {
        look_outside();
      } else if (within_ != '#') {
        look_in_quotes();
      }
    }
  }

 private:
  static constexpr char kNothing = '\0';
  static constexpr std::string_view kBlanks = " \t\r";
  /// What keys and values stand behind: elsewhere the parser takes a quote for part of a word.
  static constexpr std::string_view kBeforeQuotes = "\n=[{,.";

  void look_outside() {
    const char letter = text_[at_];
    if (static_cast<unsigned char>(letter) >= 0x80) {
      refuse({"a letter beyond ASCII stands outside of quotes",
              "put names and texts with such letters in quotes"});
    }
    if (letter == '"' || letter == '\'') {
      look_at_opening(letter);
    }
    if (letter == '#' || letter == '"' || letter == '\'') {
      within_ = letter;
    }
    if (kBlanks.find(letter) == std::string_view::npos) {
      before_ = letter;
    }
  }

  void look_at_opening(char quote) const {
    if (kBeforeQuotes.find(before_) == std::string_view::npos) {
      refuse({"a quote stands where no text may begin", "put all of the text in quotes"});
    }
    if (text_.substr(at_, 3) == std::string(3, quote)) {
      refuse({"text of several lines is not read",
              "write it on one line, in single quotes or double"});
    }
  }

  void look_in_quotes() {
    const bool escapes = within_ == '"' && text_[at_] == '\\';
    if (escapes && at_ + 1 < text_.size() && text_[at_ + 1] != '\n') {
      step();
    } else if (text_[at_] == within_) {
      within_ = kNothing;
    }
  }

  void step() {
    const auto byte = static_cast<unsigned char>(text_[at_]);
    const bool goes_on = (byte & 0xc0U) == 0x80U;  // within a letter of several bytes
    column_ += goes_on ? 0 : 1;
    if (text_[at_] == '\n') {
      ++line_;
      column_ = 1;
    }
    ++at_;
  }

  [[noreturn]] void refuse(Complaint complaint) const {
    throw base::BadInput{
        {.file = file_->shown,
         .place = "line " + std::to_string(line_) + ", column " + std::to_string(column_),
         .problem = std::move(complaint.problem),
         .remedy = std::move(complaint.remedy)}};
  }

  std::string_view text_;
  const TextFile* file_;
  std::size_t at_ = 0;
  int line_ = 1;
  int column_ = 1;
  char before_ = '\n';      ///< the last letter outside of quotes and comments that is no blank
  char within_ = kNothing;  ///< '#' in a comment, a quote in quotes
};

}  // namespace

void expect_plain_toml(std::string_view text, const TextFile& file) {
  Walk{text, file}.to_the_end();
}

}  // namespace rimehaul::ports::toml
