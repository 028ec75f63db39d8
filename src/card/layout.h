// A plain sheet of text: headings, labelled lines and lists, folded at a number of columns.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace rimehaul::card {

/// Columns that UTF-8 text takes on a terminal: marks that combine take none, wide East Asian
/// letters and pictographs two, all else one. A byte that is no UTF-8 counts as one.
[[nodiscard]] int width_of(std::string_view text);

/// Text and spaces up to a width, one at least, so that cells of a row never run into each other.
[[nodiscard]] std::string filled(std::string_view text, int width);
/// Spaces up to a width, and text at its right end; text that is wider stands as it is.
[[nodiscard]] std::string set_right(std::string_view text, int width);

/// How a paragraph stands on its lines.
struct Fold {
  int columns = 80;  ///< 20 or more
  int hang = 0;      ///< spaces before every line but the first
};

/// Text folded at spaces into lines of at most `columns`, a number kept with its unit. A word
/// longer than a line is continued on the next between two letters; nothing is ever left out.
[[nodiscard]] std::vector<std::string> folded(std::string_view text, const Fold& fold);

/// Lines being written one after the other.
class Sheet {
 public:
  explicit Sheet(int columns) : columns_{columns} {}

  /// A heading with an empty line before it, unless it is the first line.
  void heading(std::string_view title);
  void rule(char letter);
  void blank();
  /// A paragraph from the left margin.
  void paragraph(std::string_view text);
  /// A label in a column of its own, `indent` from the left, and text beside it.
  struct Label {
    int indent = 0;
    int width = 0;  ///< of label and gap
    std::string_view words;
  };
  void labelled(const Label& label, std::string_view text);
  struct Ends {
    std::string_view left;
    std::string_view right;
  };
  /// Likewise with a word at the right end; on a line of its own when the text leaves no room.
  void labelled(const Label& label, const Ends& ends);
  /// A line with text at both ends.
  void both_ends(const Ends& ends) { labelled({}, ends); }
  /// A line of a table, whose maker has seen to its columns.
  void as_it_stands(std::string_view line);
  /// One line per entry, each opened by `bullet`.
  void list(std::string_view bullet, const std::vector<std::string>& entries);

  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  int columns_;
  std::string text_;
};

}  // namespace rimehaul::card
