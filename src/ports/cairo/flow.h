// Pieces set one below the other, down columns and on to further pages, so that none is ever cut.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "ports/cairo/canvas.h"
#include "ports/cairo/table.h"

namespace rimehaul::ports::cairo {

/// A heading with lines under it, each opened by a mark.
enum class ItemMark { none, tick_box, dash, warning };

struct TextBlock {
  std::string heading;
  ItemMark mark = ItemMark::none;
  std::vector<std::string> items;
};

/// One line of a list, known to links by a name and going to a place when clicked; empty: neither.
struct TiedItem {
  std::string text;
  std::string place{};
  std::string link{};
};

/// A label in bold and text beside it, both folded.
struct Labelled {
  std::string_view label;
  std::string_view text;
};

/// Columns of equal width on a page.
struct Columns {
  Box area{};
  int count = 1;
  double gap_pt = 16.0;
  double whole_pt = 0.0;  ///< what is too high for an area lower than this goes on to the next
};

/// Text that is only running words.
inline constexpr Lettering kRunning{.size_pt = 8.2};

/// Writes pieces one after another down the columns. A heading stays with what comes first under
/// it. When the last column is full `next_page` is asked for more and gives the area of the new
/// page; on an area without a lower end it never is.
class Flow {
 public:
  Flow(Canvas& canvas, const Columns& columns, std::function<Box()> next_page);

  [[nodiscard]] double column_width() const;
  /// Where the next piece begins.
  [[nodiscard]] Spot corner() const;
  void gap(double height_pt) { y_pt_ += height_pt; }
  /// Goes to the next column, or page, where less than this is left of the present one.
  void make_room(double height_pt);

  void next_page();

  void title(std::string_view text);    ///< structure H1
  void heading(std::string_view text);  ///< structure H2, with a rule under it
  void paragraph(std::string_view text, const Lettering& lettering = kRunning);
  void labelled(const Labelled& line, double label_width_pt);
  void item(const TiedItem& item, ItemMark mark = ItemMark::none);
  /// Its heading and its items; nothing where there are no items.
  void write(const TextBlock& block);
  /// The head again at the top of every column that the rows go on in.
  void table(const std::vector<TableColumn>& columns, const std::vector<TableRow>& rows);
  /// Keeps room of a height free in the present column, or at the head of the next; returns it.
  [[nodiscard]] Box keep(double height_pt);

 private:
  void next_column();
  [[nodiscard]] double item_height(const std::string& item) const;

  Canvas& canvas_;
  Columns columns_;
  std::function<Box()> next_page_;
  int column_ = 0;
  double y_pt_;
};

/// An area that goes on downwards without end, for a sheet that grows with what it says.
[[nodiscard]] Box endless(Spot corner, double width_pt);

}  // namespace rimehaul::ports::cairo
